package rule

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/support"
	"example.com/lugbook/model/unit"
)

var preCharge = Rule{
	ID: "pre-charge", Title: "A contactor closes on an empty capacitor, or the pre-charge is overloaded",
	Family: Contactors, Severity: Fault,
	About: "Computes for each contactor before a controller with a capacitor what leads round the open contact, how far the capacitor " +
		"fills, what the contact closes on, and what the resistor takes. Speaks if nothing leads round it, if something keeps the " +
		"capacitor from filling, or if the resistor takes more than it stands. A caution if typical figures decide.",
	Why: "A controller has a capacitor at its input that is empty after a rest. Switched straight onto the pack it takes thousands of amperes for a moment: the contacts " +
		"of the contactor spark, pit, and one day stay welded, and then no key and no pedal takes the controller off the pack. A resistor from stud " +
		"to stud fills the capacitor slowly first, and the contact closes on a volt or two.",
	Tell: "After a night with the contactor open measure across its two large studs: with a working pre-charge only a volt or two stands there, without one the whole " +
		"pack. A crack and a blue flash at the first click of the day is the same. A resistor that has burnt brown has been " +
		"feeding something that draws on the load side.",
	Blind: "The capacitance is the maker's figure, else a typical one. How long a contactor waits is our choice: 30 s after the battery is joined, 5 s after the key. A controller that " +
		"fills itself is known by its figure precharge-resistance. Contactors in the negative of a drive are judged as those in the positive.",
	Bad:   "a contactor before a controller of 5 mF without a resistor over its studs",
	Good:  "a 470 ohm resistor of 10 W over the studs",
	Wrong: Example{Of: filled, But: []string{"part pre", "", "wire p1", "", "wire p2", ""}},
	Right: Example{Of: filled, But: []string{"+", "stack sol.L1 w2 p1\nstack sol.L2 w3 p2"}},
	Basis: Basis{"the charge of an empty capacitor makes a current of thousands of amperes for a fraction of a millisecond, which pits and welds contacts",
		"follows from the circuit: I = V / R, tau = R C; the ratings are the makers'"},
	Remedy: "fit a resistor from L1 to L2 that fills the capacitor in some seconds, and one that stands its first power",
	Run:    runPreCharge,
}

func runPreCharge(p *Pass) {
	if p.unsound() {
		return
	}
	for _, c := range p.support().PreCharge {
		subjects := []Subject{OfPart(c.Line.Part)}
		var parts []model.PartID
		for _, path := range c.Paths {
			for _, id := range path.Parts {
				parts = append(parts, id)
				subjects = appendNew(subjects, OfPart(id))
			}
		}
		subjects = appendNew(subjects, OfPart(c.Controller))
		for _, g := range worse(c.Judgements) {
			f := Finding{
				Severity: g.severity,
				Message:  fmt.Sprintf("before %s: %s", c.Controller, g.text),
				Subjects: subjects,
				Fixes:    p.fitResistor(c),
			}
			if len(c.Paths) == 0 {
				f.Figure = Figure{What: "current of closing", Value: unit.A(math.Round(c.Inrush)).Any()}
				if peak := p.Net.KnownFigure(p.Sheet.Part(c.Line.Part), "peak-current"); peak.OK {
					f.Figure.Limit, f.Figure.Decides = unit.A(peak.Value).Any(), "peak current of "+string(c.Line.Part)
				}
			}
			if f.Severity == Fault && restsOnTypical(c, parts) {
				f.Severity = Caution
				f.Message += unconfirmed
			}
			p.report(f)
		}
	}
}

// usualPreCharge is the pre-charge resistor of a system up to a voltage: from memory, common
// practice of the makers of controllers. Each stands its first power at full charge for long.
var usualPreCharge = []struct{ upTo, ohms float64 }{{40, 250}, {60, 470}, {100, 1000}}

// fitResistor puts the usual resistor over the studs of a contactor that has none, or in the
// place of the only one that does not stand its power.
func (p *Pass) fitResistor(c support.PreCharge) []edit.Edit {
	for _, usual := range usualPreCharge {
		if p.Job.System.Volts() > usual.upTo {
			continue
		}
		ratings := []model.Rating{
			{Name: "resistance", Value: unit.Ohms(usual.ohms).Any(), Source: toBeFitted},
			{Name: "power-rating", Value: unit.W(10).Any(), Source: toBeFitted},
			{Name: "surge-power", Value: unit.W(50).Any(), Source: toBeFitted},
		}
		title := fmt.Sprintf("fit a resistor of %s ohm, 10 W, over the studs of %s", number(usual.ohms), c.Line.Part)
		switch {
		case len(c.Paths) == 0:
			part := model.Part{ID: p.freePart("pre"), Kind: "precharge-resistor", Zone: p.Sheet.Part(c.Line.Part).Zone, Ratings: ratings}
			return []edit.Edit{p.putAcross(title, part, "a", "b", c.Line, c.Load)}
		case len(c.Paths) == 1 && len(c.Paths[0].Parts) == 1 && !c.Paths[0].Inside && c.Left <= 2*reversedVolts && p.isResistor(c.Paths[0].Parts[0]):
			var edits []edit.Edit
			for _, r := range ratings {
				edits = append(edits, p.rate(c.Paths[0].Parts[0], r.Name, r.Value))
			}
			return []edit.Edit{together(title+" in place of "+string(c.Paths[0].Parts[0]), edits...)}
		}
		return nil
	}
	return nil
}

// isResistor reports whether a part is a pre-charge resistor by its element.
func (p *Pass) isResistor(id model.PartID) bool {
	d := p.Net.Cat.Definition(p.Sheet.Part(id).Kind)
	return len(d.Elements) == 1 && d.Elements[0].Is == model.ResistanceElement && d.Elements[0].Ohms == "resistance"
}

// graded is a judgement of the support package as a finding has it.
type graded struct {
	severity Severity
	text     string
}

// severities tells the grades that are findings.
var severities = map[support.Grade]Severity{support.Caution: Caution, support.Fault: Fault, support.Danger: Danger}

// worse lists the judgements that are worse than a note.
func worse(list []support.Judgement) []graded {
	var out []graded
	for _, j := range list {
		if s, is := severities[j.Grade]; is {
			out = append(out, graded{s, j.Text})
		}
	}
	return out
}

// restsOnTypical reports whether typical figures decide about a pre-charge: of its
// resistors, and of the contactor if that closes on a voltage.
func restsOnTypical(c support.PreCharge, resistors []model.PartID) bool {
	closesLive := len(c.Paths) == 0 || c.Waited > criticalDrop*c.Volts
	return assumed(c.Assumptions, []string{"resistance", "power-rating", "surge-power"}, resistors...) ||
		closesLive && assumed(c.Assumptions, []string{"peak-current"}, c.Line.Part)
}

// assumed reports whether a result rests on a typical figure for one of some ratings of
// some parts.
func assumed(list []support.Assumption, ratings []string, parts ...model.PartID) bool {
	return slices.ContainsFunc(list, func(a support.Assumption) bool {
		rating, _, _ := strings.Cut(a.Text, " ")
		return slices.Contains(parts, model.PartID(a.Of)) && slices.Contains(ratings, rating) && strings.Contains(a.Text, "typical")
	})
}
