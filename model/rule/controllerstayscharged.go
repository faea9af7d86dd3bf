package rule

import (
	"fmt"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/state"
	"example.com/lugbook/model/support"
	"example.com/lugbook/model/unit"
)

var controllerStaysCharged = Rule{
	ID: "controller-stays-charged", Title: "Nothing that is switched takes the charge off a controller",
	Family: Contactors, Severity: Note,
	About: "Looks at each pre-charge that fills a controller with the cart parked and opens the main isolator, the pack's own switch and the tow switch in turn. It speaks if " +
		"the isolator is there and the controller stays on the pack all the same, or if none of the three takes it off. Tells the energy that the capacitor holds.",
	Why: "A pre-charge resistor from stud to stud goes round the contactor and round the key: the controller stays at the pack's voltage day and " +
		"night. That spares the contact, and it surprises the one who opens the isolator, takes a nut off B+ and slips with the wrench. Some " +
		"joules are enough for a burn and for a fright that hits a head on the frame.",
	Tell: "Key off, isolator open: measure B+ against B- at the controller. Pack voltage that stays is this; a voltage that falls over minutes is the capacitor alone.",
	Blind: "It knows three things that take the feed off: a main isolator, the switch of a pack's own management, a tow switch. A fuse pulled by hand is not counted. How long a " +
		"capacitor takes to empty by itself is not computed: measure before touching.",
	Bad:   "the pre-charge goes round the isolator as well as the contactor",
	Good:  "the pre-charge begins behind the isolator",
	Wrong: Example{Of: isolatedPack, But: []string{"wire p1", "wire p1 iso.in pre.a gauge=18AWG insulation=105C length=80mm"}},
	Right: Example{Of: isolatedPack},
	Basis: Basis{"before work on a controller its capacitor is discharged and measured", "common practice; E = C V^2 / 2 follows from the circuit"},
	Remedy: "before touching B+ or B- take pack negative off, discharge the capacitor through a 60 W mains lamp or a resistor of some 100 ohm and 10 " +
		"W, and measure under 5 V; to mend it, begin the pre-charge behind the isolator",
	Run: runControllerStaysCharged,
}

// isolatedPack is a pack with an isolator before contactor and controller.
const isolatedPack = `
part pack lithium-pack-16
part fu1 fuse-class-t fuse-rating=200A
part iso isolator
part sol contactor-48v
part pre precharge-resistor
part ctrl controller-series
wire w1 pack.POS fu1.in gauge=2AWG insulation=105C length=150mm
wire w2 fu1.out iso.in gauge=2AWG insulation=105C length=0.3m
wire w3 iso.out sol.L1 gauge=2AWG insulation=105C length=0.3m
wire w4 sol.L2 ctrl.B+ gauge=2AWG insulation=105C length=0.3m
wire w5 ctrl.B- pack.NEG gauge=2AWG insulation=105C length=0.7m
wire p1 sol.L1 pre.a gauge=18AWG insulation=105C length=80mm
wire p2 sol.L2 pre.b gauge=18AWG insulation=105C length=80mm
at pack.POS cover=fitted
`

func runControllerStaysCharged(p *Pass) {
	if p.unsound() {
		return
	}
	for _, c := range p.support().PreCharge {
		if len(c.Paths) == 0 || c.State != state.Parked || c.Bridged {
			continue
		}
		by, past := p.takesOff(c)
		if by && !past {
			continue
		}
		p.reportCharged(c, past)
	}
}

// takesOff reports whether the isolator, the pack's switch or the tow switch takes a controller
// off the pack, and whether it stays on it past an open isolator.
func (p *Pass) takesOff(c support.PreCharge) (by, past bool) {
	for _, name := range []string{state.Isolated, state.PackAsleep, state.Tow} {
		in := p.inState(name)
		if in == nil {
			continue
		}
		off := !p.holds(in, c.Controller)
		by = by || off
		past = past || name == state.Isolated && !off
	}
	return by, past
}

// holds reports whether the capacitor of a controller has voltage in a solution.
func (p *Pass) holds(in *network.Solution, id model.PartID) bool {
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if l.Is(model.CapacitorElement) && l.Part.ID == id && across(in, l) {
			return true
		}
	}
	return false
}

func (p *Pass) reportCharged(c support.PreCharge, past bool) {
	subjects := []Subject{OfPart(c.Controller)}
	var names []string
	for _, path := range c.Paths {
		names = append(names, pathName(path))
		for _, id := range path.Parts {
			subjects = appendNew(subjects, OfPart(id))
		}
	}
	f := Finding{State: state.Parked, Subjects: subjects}
	f.Message = fmt.Sprintf("%s %s %s on %s with everything off", listWords(names), keepsOrKeep(len(names)), c.Controller, volts(c.Full))
	if past {
		f.State = state.Isolated
		f.Message = fmt.Sprintf("%s %s %s on %s with the isolator open", listWords(names), keepsOrKeep(len(names)), c.Controller, volts(c.Full))
		f.Subjects = appendNew(f.Subjects, p.controlsOf(model.Isolator)...)
	}
	if c.Farads > 0 {
		f.Message += fmt.Sprintf(": %s J in %s mF", number(c.Joules), number(1000*c.Farads))
	}
	f.Figure = Figure{What: "voltage at " + string(c.Controller), Value: unit.V(c.Full).Any()}
	p.report(f)
}

func keepsOrKeep(n int) string {
	if n == 1 {
		return "keeps"
	}
	return "keep"
}
