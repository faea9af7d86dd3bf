package rule

import (
	"fmt"

	"example.com/lugbook/model"
	"example.com/lugbook/model/conductor"
)

var lugHole = Rule{
	ID: "lug-hole", Title: "A lug's hole does not suit its stud",
	Family: Studs, Severity: Fault,
	About: "Compares the hole of each recorded lug with its stud. Too small or more than one size larger is a fault, one size larger " +
		"a caution, and an inch lug on the neighbouring metric stud, or the reverse, a note. Silent where a lug's size is " +
		"not recorded.",
	Bad:    "a 3/8 in lug on a #10 coil stud",
	Good:   "an M8 lug on an M8 stud",
	Basis:  Basis{"a ring terminal is of the same nominal size as its stud", "ABYC E-11 11.14.6.10"},
	Remedy: "fit a lug made for that stud",
	Run:    runLugHole,
}

func runLugHole(p *Pass) {
	for _, s := range p.studs() {
		for _, w := range s.wires {
			if lug := w.LugAt(s.at); !lug.IsZero() && s.size.IsZero() {
				p.missing(Gap{Datum: "the stud size", Field: "stud", Decides: "whether the lugs on it fit", Worst: Fault, Subjects: []Subject{OfTerminal(s.at)}})
				break
			}
			p.judgeLug(s, w)
		}
	}
}

func (p *Pass) judgeLug(s stud, w *model.Wire) {
	fit := conductor.FitOf(w.LugAt(s.at), s.size)
	severity := map[conductor.Fit]Severity{
		conductor.DoesNotPass: Fault, conductor.TooLarge: Fault, conductor.OneLarger: Caution, conductor.Measure: Caution, conductor.NearMatch: Note,
	}[fit]
	if severity == "" {
		return
	}
	p.report(Finding{
		Severity: severity,
		Message:  fmt.Sprintf("the %s lug of %s on the %s stud %s: %s", w.LugAt(s.at), w.ID, s.size, s.at, fit),
		Subjects: []Subject{OfTerminal(s.at), OfWire(w.ID)},
	})
}
