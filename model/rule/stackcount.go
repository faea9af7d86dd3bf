package rule

import (
	"fmt"

	"example.com/lugbook/model/conductor"
)

var stackCount = Rule{
	ID: "stack-count", Title: "Too many lugs on one stud",
	Family: Studs, Severity: Caution,
	About:  "Counts the lugs on each stud; more than four are too many.",
	Bad:    "five wires land on pack.POS",
	Good:   "two wires land on pack.POS, the others on a bus bar behind the main fuse",
	Basis:  Basis{"no more than four terminals are secured to one stud; more need a bar or a jumper to a second stud", "ABYC E-11 11.14.6.9; FAA AC 43.13-1B 11-174b"},
	Remedy: "move the smaller wires to a bus bar and join it to the stud with one cable",
	Run:    runStackCount,
}

func runStackCount(p *Pass) {
	for _, s := range p.studs() {
		if len(s.wires) <= conductor.MostLugs {
			continue
		}
		subjects := []Subject{OfTerminal(s.at)}
		for _, w := range s.wires {
			subjects = append(subjects, OfWire(w.ID))
		}
		p.report(Finding{
			Message:  fmt.Sprintf("%d lugs on %s; %d are the most", len(s.wires), s.at, conductor.MostLugs),
			Subjects: subjects,
		})
	}
}
