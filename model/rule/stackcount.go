package rule

import (
	"fmt"

	"example.com/lugbook/model/basis"
	"example.com/lugbook/model/unit"
)

var stackCount = Rule{
	ID: "stack-count", Title: "Too many lugs on one stud",
	Family: Studs, Severity: Caution,
	About: "Counts the lugs on each stud against the limit lugs-per-stud: four by the base table.",
	Why: "Every lug of a stack adds a joint, and every joint creeps a little as the copper warms and cools: five soft faces under one nut " +
		"loosen where two stay tight. Thick lugs also use up the thread, until the nut holds by a turn and a half. And whoever has to take off " +
		"one wire takes off all that lie on it, in the dark of the battery bay, with the pack behind it.",
	Tell: "Count the lugs, boot off. Then look at the end of the stud: with washer and nut on, at least one and a half turns of thread must " +
		"stand out of the nut. If they do not, the stack is too high whatever its count.",
	Blind: "It counts wires that land on the stud, each as one lug: two wires crimped into one barrel count as two. Length of thread and " +
		"thickness of lugs are not recorded. Screws, tabs and pins are not studs and are not counted.",
	Bad:  "five wires land on bus.POST",
	Good: "four wires land on bus.POST",
	Wrong: Example{Of: countExample, But: []string{"+", "part lt4 lamp-12v\nwire a4 bus.POST lt4.+ gauge=16AWG insulation=105C length=1m\nwire n4 lt4.- b1.- gauge=16AWG insulation=105C length=2m",
		"stack bus.POST", "stack bus.POST w3 a1 a2 a3 a4", "stack b1.-", "stack b1.- n1 n2 n3 n4"}},
	Right:  Example{Of: countExample},
	Basis:  Basis{"no more than four terminals are secured to one stud; more need a bar or a jumper to a second stud", "ABYC E-11 11.14.6.9; FAA AC 43.13-1B 11-174b"},
	Remedy: "move the smaller wires to a bus bar and join it to the stud with one cable",
	Run:    runStackCount,
}

const countExample = `
job system=12V
part b1 lead-battery-12v
part fu1 fuse-cartridge fuse-rating=10A
part sw switch
part bus bus-post
part lt1 lamp-12v
part lt2 lamp-12v
part lt3 lamp-12v
wire w1 b1.+ fu1.in gauge=14AWG insulation=105C length=150mm
wire w2 fu1.out sw.IN gauge=14AWG insulation=105C length=1m
wire w3 sw.OUT bus.POST gauge=14AWG insulation=105C length=1m
wire a1 bus.POST lt1.+ gauge=16AWG insulation=105C length=1m
wire a2 bus.POST lt2.+ gauge=16AWG insulation=105C length=1m
wire a3 bus.POST lt3.+ gauge=16AWG insulation=105C length=1m
wire n1 lt1.- b1.- gauge=16AWG insulation=105C length=2m
wire n2 lt2.- b1.- gauge=16AWG insulation=105C length=2m
wire n3 lt3.- b1.- gauge=16AWG insulation=105C length=2m
stack bus.POST w3 a1 a2 a3
stack b1.- n1 n2 n3
at b1.+ cover=fitted
`

func runStackCount(p *Pass) {
	most, source := p.limitFrom(basis.LugsPerStud)
	for _, s := range p.studs() {
		count := unit.Pcs(len(s.wires)).Any()
		if count.SI() <= most.SI() {
			continue
		}
		subjects := []Subject{OfTerminal(s.at)}
		for _, w := range s.wires {
			subjects = append(subjects, OfWire(w.ID))
		}
		p.report(Finding{
			Message:  fmt.Sprintf("%d lugs on %s; %s are the most", len(s.wires), s.at, number(most.SI())),
			Subjects: subjects,
			Figure:   Figure{What: "lugs on " + s.at.String(), Value: count, Limit: most, Decides: source},
		})
	}
}
