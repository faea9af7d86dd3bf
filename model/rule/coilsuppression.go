package rule

import (
	"fmt"

	"example.com/lugbook/model/support"
)

var coilSuppression = Rule{
	ID: "coil-suppression", Title: "A coil has no suppression, or one that does not stand it",
	Family: Contactors, Severity: Caution,
	About: "Looks at each coil for a diode across it, for suppression built into it or into the driver that switches it, and holds the " +
		"diode against the full voltage and the coil's current. Coils without any are told in one finding; a driver of which nothing is " +
		"recorded is a note. Reversed diodes have a rule of their own.",
	Bad:    "a contactor coil that pedal switch and key open with nothing across it",
	Good:   "a diode across the coil with its band at coil+",
	Basis:  Basis{"a coil keeps its current when its switch opens and drives it through an arc at some hundred volts", Practice},
	Remedy: "fit a diode across the coil, band to the positive side, that holds back twice the full voltage",
	Run:    runCoilSuppression,
}

func runCoilSuppression(p *Pass) {
	if p.unsound() {
		return
	}
	var bare, drivers []Subject
	for _, c := range p.support().Coils {
		switch {
		case c.FedIn == "":
		case len(c.Diodes) == 0 && c.BuiltIn == "" && c.Driver != nil:
			drivers = appendNew(drivers, OfPart(c.Driver.At.Part))
		case len(c.Diodes) == 0 && c.BuiltIn == "":
			bare = append(bare, OfPart(c.Part))
		default:
			p.reportCoil(c)
		}
	}
	if len(bare) > 0 {
		p.report(Finding{Message: fmt.Sprintf("nothing takes the kick of the coil of %s", list(bare)), Subjects: bare})
	}
	if len(drivers) > 0 {
		p.missing(Gap{Datum: "the clamp voltage of the coil drivers", Field: "clamp-voltage", Decides: "whether the coils on them need a diode", Worst: Caution, Subjects: drivers})
	}
}

// diodeRatings are the figures that decide about a suppression diode.
var diodeRatings = []string{"reverse-voltage", "continuous-current"}

// reportCoil reports what is judged of one coil, its reversed diodes left out.
func (p *Pass) reportCoil(c support.Coil) {
	subjects := []Subject{OfPart(c.Part)}
	for _, d := range c.Diodes {
		if d.Reversed {
			return
		}
		subjects = append(subjects, OfPart(d.Part))
	}
	for _, g := range worse(c.Judgements) {
		f := Finding{Severity: g.severity, Message: fmt.Sprintf("%s: %s", c.Part, g.text), Subjects: subjects}
		for _, s := range subjects {
			if f.Severity == Fault && assumed(c.Assumptions, diodeRatings, s.Part) {
				f.Severity = Caution
				f.Message += unconfirmed
			}
		}
		p.report(f)
	}
}
