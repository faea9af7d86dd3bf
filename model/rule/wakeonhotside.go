package rule

import (
	"fmt"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/unit"
)

var wakeOnHotSide = Rule{
	ID: "wake-on-hot-side", Title: "A wake lead is on the hot side of the key",
	Family: Supply, Severity: Caution,
	About: "Looks at each reducer and device that has a wake or enable lead, on a cart with a key: is the lead fed with the cart parked? The charge that it costs is reckoned by stand-by-drain.",
	Why: "A reducer asleep takes less than a milliampere, awake it takes thirty to sixty, day and night, with nothing switched on behind it. The wake lead is there so that the key " +
		"decides. Put on the hot side of the key, or looped to the reducer's own input because that is the nearest positive, it keeps the reducer awake for ever, and " +
		"all that has no switch of its own on the 12 V side lives with it: sockets, radios, a telephone left to charge. A lithium pack that is emptied so over a winter may not wake again.",
	Tell: "Key off, meter on DC volts, measure the wake lead against the reducer's input negative: it must be 0 V. Then measure the output: it must fall to 0 V " +
		"within seconds after the key is turned off. For the current clip the meter, on its 10 A range, from one end of the reducer's fuse to the other and " +
		"draw the fuse: 0.00 A is asleep, 0.03 to 0.06 A awake. Nothing is switched on meanwhile, and the leads go back to the volt sockets afterwards.",
	Blind: "It is silent on a cart without a key on the sheet or with a key that is bridged, about a lead that is fed backwards through a lamp or coil, and about a reducer without a wake lead, which can only be switched at its input. Hazard lamps, a tracker or a fridge may be meant to " +
		"live with the key off: waive it with that reason. A timer or a wake output of the pack counts as live if a contact on the sheet holds it.",
	Bad:      "red.WAKE is on key.BAT",
	Good:     "red.WAKE is on key.IGN",
	Wrong:    Example{Of: wokenByKey, But: []string{"wire k3", "wire k3 key.BAT red.WAKE gauge=18AWG insulation=105C length=2m"}},
	Right:    Example{Of: wokenByKey},
	Basis:    Basis{"wake leads go to the switched side of the key: what sleeps costs nothing", Practice},
	Remedy:   "move the wake lead to the switched side of the key, behind a fuse that the lead carries",
	Explains: []string{"stand-by-drain"},
	Run:      runWakeOnHotSide,
}

func runWakeOnHotSide(p *Pass) {
	rest := p.parked()
	if rest == nil || !p.keyDecides(rest) || p.unsound() {
		return
	}
	told := map[model.PartID]bool{}
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if !takesPower(l) || len(l.Element.Fed) == 0 || told[l.Part.ID] || !rest.On(l) {
			continue
		}
		lead := model.TerminalRef{Part: l.Part.ID, Name: l.Element.Fed[0]}
		if !p.isHeldLive(p.Net.Node(lead), rest) {
			continue
		}
		told[l.Part.ID] = true
		f := Finding{
			Message: fmt.Sprintf("%s is fed with the key off: %s never sleeps", lead, l.Part.ID),
			State:   rest.State.Name, Subjects: []Subject{OfPart(l.Part.ID), OfTerminal(lead)},
			Fixes: p.toSwitchedSide(p.Net.Node(lead)),
		}
		if idle, ok := p.idle(l.Part, rest); ok {
			f.Message += " and takes " + smallAmps(idle) + " with nothing on"
			f.Figure = Figure{What: "current of " + string(l.Part.ID) + " awake", Value: unit.A(idle).Any()}
		}
		p.report(f)
	}
}

// idle is what a part takes in amperes by its loads that act in a state.
func (p *Pass) idle(part *model.Part, in *network.Solution) (amperes float64, ok bool) {
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if l.Part != part || !l.Is(model.LoadElement) || !in.On(l) {
			continue
		}
		if v, known := p.Net.Figure(part, l.Element.Amps); known {
			amperes, ok = amperes+v, true
		}
	}
	return amperes, ok
}

// wokenByKey is a reducer that sleeps with the key off.
const wokenByKey = `
part pack lithium-pack-16
part fu4 fuse-cartridge fuse-rating=10A
part key key-switch
part red reducer-isolated
wire r1 pack.POS fu4.in gauge=12AWG insulation=105C length=100mm
wire r2 fu4.out red.IN+ gauge=12AWG insulation=105C length=800mm
wire r3 red.IN- pack.NEG gauge=12AWG insulation=105C length=800mm
wire k2 fu4.out key.BAT gauge=16AWG insulation=105C length=2m
wire k3 key.IGN red.WAKE gauge=18AWG insulation=105C length=2m
stack fu4.out r2 k2
at pack.POS cover=fitted
at fu4.in cover=fitted
`
