package rule

import (
	"slices"

	"example.com/lugbook/model"
)

var torqueNotKnown = Rule{
	ID: "torque-not-known", Title: "The torque of a pack's stud is not recorded",
	Family: Studs, Severity: Note,
	About: "On a plan and an as-built sheet, names the studs of batteries and packs that have no torque recorded: one note. Other studs of the " +
		"traction path without one are a question. As found nothing is asked, for what comes off needs no torque.",
	Why: "The stud of a pack is a brass insert in plastic or a post of lead: it takes a few newton metres, as little as a fifth of what a steel bolt of the " +
		"same thread takes. Done up by feel it strips, or it turns in its case and breaks the weld to the cells inside, and the pack is scrap. " +
		"Left slack it gets hot at the first hill. Only its maker knows the figure, and it is printed on the pack or its sheet.",
	Tell: "Read it on the pack's label or in its sheet, in N m or lbf in: 1 N m is 8.85 lbf in. Set an insulated wrench to it, tighten in one slow pull, and mark " +
		"the nut with paint. After the first day's work check it once, cold.",
	Blind: "There is no table to take it from: tables for steel bolts are far too high for a battery post, so none is offered. It doesn't know " +
		"whether a recorded torque was put on.",
	Bad:    "the plan says nothing of the torque at pack.POS",
	Good:   "9 N m by the pack's sheet",
	Wrong:  Example{Of: studExample, But: []string{"+", "sheet plan"}},
	Right:  Example{Of: studExample, But: []string{"+", "at pack.POS torque=9_N_m\nat pack.NEG torque=9_N_m\nsheet plan"}},
	Basis:  Basis{"a stud is tightened by its maker's record; torques of battery inserts read in makers' sheets lie far below those of steel bolts", Practice},
	Remedy: "read the torque off the part's label or sheet and record it at the terminal",
	Run:    runTorqueNotKnown,
}

func runTorqueNotKnown(p *Pass) {
	if p.Sheet.Name == model.AsFound {
		return
	}
	var packs, others []Subject
	for _, s := range p.studs() {
		def, record := p.Net.DefinitionOf(s.at), p.Sheet.Terminal(s.at)
		t := p.Net.TerminalDef(s.at)
		switch {
		case record != nil && !record.Torque.IsZero(), def == nil, t == nil:
		case def.Family == model.Storage:
			packs = append(packs, OfTerminal(s.at))
		case t.Serves == model.Traction && slices.ContainsFunc(s.wires, func(w *model.Wire) bool { return p.traction(p.Net.WireLink(w.ID)) }):
			others = append(others, OfTerminal(s.at))
		}
	}
	if len(packs) > 0 {
		p.missing(Gap{Datum: "the torque", Field: "torque", Decides: "how tight a post may be done up before it breaks", Worst: Fault, Subjects: packs})
	}
	if len(others) > 0 {
		p.missing(Gap{Datum: "the torque", Field: "torque", Decides: "how tight the nut belongs", Worst: Caution, Quiet: true, Subjects: others})
	}
}
