package rule

import (
	"fmt"
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/unit"
)

var meterAlwaysOn = Rule{
	ID: "meter-always-on", Title: "A meter is fed with the key off",
	Family: Packs, Severity: Caution,
	About: "Looks at each meter and display on a cart with a key: is it fed with the cart parked? A meter that counts the current of a shunt must be, and is left out.",
	Why: "A panel voltmeter takes some ten milliamperes. That is nothing beside the motor and a great deal beside a pack at rest: a quarter of an ampere-hour a day, through a winter a third of a small pack, on top of " +
		"what the BMS takes. Nobody reads it with the key off. It also lights a lead to the dash for ever that only needs to be live while somebody sits there.",
	Tell: "Key off, look at the meter: it must be dark, and its plus must measure 0 V DC against pack negative.",
	Blind: "A meter that has a button of its own, or sleeps by itself, looks like one that does not. One that counts charge without a shunt on the sheet should be of a kind with sense leads. It is silent on a cart " +
		"without a key or with a key that is bridged, and leaves it to stand-by-drain to say how many days the pack lasts.",
	Bad:    "the voltmeter hangs on key.BAT",
	Good:   "the voltmeter hangs on key.IGN",
	Wrong:  Example{Of: keyAndMeter, But: []string{"wire v1", "wire v1 key.BAT vm.+ gauge=16AWG insulation=105C length=300mm"}},
	Right:  Example{Of: keyAndMeter},
	Basis:  Basis{"what nobody needs at rest is fed from the switched side of the key", Practice},
	Remedy: "move the meter's plus to the switched side of the key",
	Run:    runMeterAlwaysOn,
}

func runMeterAlwaysOn(p *Pass) {
	rest := p.parked()
	if rest == nil || !p.keyDecides(rest) || p.unsound() {
		return
	}
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if !l.Is(model.LoadElement) || l.Def.Family != model.Metering || counts(l.Def) || !p.wired(l.A) || !p.wired(l.B) {
			continue
		}
		if v, known := rest.Voltage(l.A, l.B); !known || v < leastVolts || !p.isHeldLive(l.A, rest) {
			continue
		}
		f := Finding{
			Message: fmt.Sprintf("%s is fed with the key off, though nobody reads it then", l.Part.ID),
			State:   rest.State.Name, Subjects: []Subject{OfPart(l.Part.ID), p.terminal(l.A)},
			Fixes: p.toSwitchedSide(l.A),
		}
		if takes, ok := p.Net.Figure(l.Part, l.Element.Amps); ok {
			f.Message += fmt.Sprintf(": %s, %s Ah a day", smallAmps(takes), number(hoursOfDay*takes))
			f.Figure = Figure{What: "current at rest", Value: unit.A(takes).Any()}
		}
		p.report(f)
	}
}

const hoursOfDay = 24

// counts reports whether a meter counts what passes a shunt: it has a pair of sense leads.
func counts(d *model.Definition) bool {
	return slices.ContainsFunc(d.Elements, func(e model.Element) bool { return e.Is == model.ResistanceElement })
}
