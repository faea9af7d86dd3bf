package rule

import (
	"fmt"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

var shuntReversed = Rule{
	ID: "shunt-reversed", Title: "A shunt or its sense pair is reversed",
	Family: Packs, Severity: Fault,
	About: "Looks at which side of a shunt is joined to the pack's negative by metal: it must be BATT. Then at the sense pair of each " +
		"meter on it: sense+ belongs to the LOAD side.",
	Bad:    "pack.NEG goes to shunt.LOAD and the controller's B- to shunt.BATT",
	Good:   "pack.NEG goes to shunt.BATT and the controller's B- to shunt.LOAD",
	Basis:  Basis{"the meter then counts discharge as charge and calls an empty pack full", Physics},
	Remedy: "swap the two cables on the shunt, or the two sense leads",
	Run:    runShuntReversed,
}

func runShuntReversed(p *Pass) {
	low, _, ok := p.Net.Poles()
	if !ok {
		return
	}
	metal := p.metal()
	for i := range p.Net.Links() {
		shunt := &p.Net.Links()[i]
		if !shunt.Is(model.ResistanceElement) || shunt.Def.Family != model.Metering || !shunt.Conducts() {
			continue
		}
		if metal.Same(shunt.B, low) && !metal.Same(shunt.A, low) {
			p.report(Finding{
				Message:  fmt.Sprintf("%s is joined to %s, so %s counts the wrong way", p.at(shunt.B), p.at(low), shunt.Part.ID),
				Subjects: []Subject{OfPart(shunt.Part.ID), p.terminal(shunt.A), p.terminal(shunt.B)},
			})
		}
		p.judgeSense(shunt)
	}
}

// judgeSense looks for a sense pair that lies on a shunt the wrong way round.
func (p *Pass) judgeSense(shunt *network.Link) {
	metal := p.metal()
	for i := range p.Net.Links() {
		sense := &p.Net.Links()[i]
		if sense == shunt || !sense.Is(model.ResistanceElement) || sense.Def.Family != model.Metering {
			continue
		}
		if metal.Same(sense.A, shunt.A) && metal.Same(sense.B, shunt.B) {
			p.report(Finding{
				Message:  fmt.Sprintf("%s is on the pack's side of %s and %s on the cart's side", p.at(sense.A), shunt.Part.ID, p.at(sense.B)),
				Subjects: []Subject{OfPart(sense.Part.ID), p.terminal(sense.A), p.terminal(sense.B)},
			})
		}
	}
}
