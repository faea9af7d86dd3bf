package rule

import (
	"fmt"
	"slices"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/support"
)

var preCharge = Rule{
	ID: "pre-charge", Title: "A contactor closes on an empty capacitor, or the pre-charge is overloaded",
	Family: Contactors, Severity: Fault,
	About: "Computes for each contactor before a controller with a capacitor what leads round the open contact, how far the capacitor " +
		"fills, what the contact closes on, and what the resistor takes. Speaks if nothing leads round it, if something keeps the " +
		"capacitor from filling, or if the resistor takes more than it stands. A caution if typical figures decide.",
	Bad:  "a contactor before a controller of 5 mF without a resistor over its studs",
	Good: "a 470 ohm resistor of 10 W over the studs",
	Basis: Basis{"the charge of an empty capacitor makes a current of thousands of amperes for a millisecond, which pits and welds contacts",
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
			}
			if f.Severity == Fault && restsOnTypical(c, parts) {
				f.Severity = Caution
				f.Message += unconfirmed
			}
			p.report(f)
		}
	}
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
