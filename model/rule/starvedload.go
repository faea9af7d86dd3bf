package rule

import (
	"fmt"

	"example.com/lugbook/model"
	"example.com/lugbook/model/unit"
)

var starvedLoad = Rule{
	ID: "starved", Title: "A device pulls its own voltage down and does not work",
	Family: Chain, Severity: Fault,
	About: "Speaks if a load or a reducer would work at the voltage that it finds, and by its own current pulls that below what it needs: " +
		"it hangs behind a resistance, a corroded joint or another load. Named with the first state in which it does. A drive behind an " +
		"open contactor is told by does-not-drive.",
	Why: "A meter takes no current and shows the full voltage through a corroded joint or the filament of a lamp. As soon as the device wants its current, the resistance keeps " +
		"most of the voltage for itself: the reducer starts, sees too little, stops, starts again; the radio resets; the relay drops.",
	Tell: "Measure at the device while it is switched on and again with its plug off: full voltage without it, far less with it, is a resistance in its feed or its return. " +
		"Then measure from joint to joint along the way under load; the one that takes volts is the one.",
	Blind: "Typical currents of the library stand where none is recorded. A device that works on too little, only worse, is told by drop-too-high. A drive behind an open " +
		"contactor is told by does-not-drive.",
	Bad:  "a reducer is fed through a resistor that was left in its feed",
	Good: "the reducer has its feed straight from the fuse",
	Wrong: Example{Of: behindResistor, But: []string{"wire k2", "wire k2 fu.out pre.a gauge=12AWG insulation=105C length=1m",
		"+", "part pre precharge-resistor\nwire k5 pre.b red.IN+ gauge=12AWG insulation=105C length=1m"}},
	Right:  Example{Of: behindResistor},
	Basis:  Basis{"behind too much resistance a meter without load reads full voltage while the device gets too little", Physics},
	Remedy: "measure under load and find the resistance: joint, switch, thin wire, or a load in series",
	Run:    runStarvedLoad,
}

// behindResistor is a reducer on the pack.
const behindResistor = `
part pack lithium-pack-16
part fu fuse-cartridge fuse-rating=15A
part red reducer-isolated
wire k1 pack.POS fu.in gauge=12AWG insulation=105C length=100mm
wire k2 fu.out red.IN+ gauge=12AWG insulation=105C length=1m
wire k3 red.IN- pack.NEG gauge=12AWG insulation=105C length=1m
wire k4 fu.out red.WAKE gauge=16AWG insulation=105C length=1m
part lt lamp-12v
wire k6 red.OUT+ lt.+ gauge=16AWG insulation=105C length=1m
wire k7 lt.- red.OUT- gauge=16AWG insulation=105C length=1m
at pack.POS cover=fitted
`

func runStarvedLoad(p *Pass) {
	if p.unsound() {
		return
	}
	told := map[model.PartID]bool{}
	for _, s := range p.solved() {
		for i := range p.Net.Links() {
			l := &p.Net.Links()[i]
			if l.Part == nil || told[l.Part.ID] || !s.solution.Starved(l) || p.isDriveLoad(l) {
				continue
			}
			told[l.Part.ID] = true
			left, _ := s.solution.Voltage(l.A, l.B)
			message := fmt.Sprintf("%s finds %s (%s) and pulls that down by its own current", l.Part.ID, volts(left), s.state.Name)
			if least := p.Net.KnownFigure(l.Part, leastRating); least.OK {
				message += fmt.Sprintf(", below the %s that it needs", volts(least.Value))
			}
			f := Finding{State: s.state.Name, Message: message, Subjects: []Subject{OfPart(l.Part.ID)}}
			if least := p.Net.KnownFigure(l.Part, leastRating); least.OK && left < least.Value {
				f.Figure = Figure{What: "voltage at " + string(l.Part.ID), Value: unit.V(left).Any(), Limit: unit.V(least.Value).Any(), Least: true, Decides: "what it needs to work"}
			}
			p.report(f)
		}
	}
}
