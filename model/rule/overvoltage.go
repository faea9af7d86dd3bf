package rule

import (
	"fmt"
	"math"

	"example.com/lugbook/model"
	"example.com/lugbook/model/basis"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/unit"
)

var overVoltage = Rule{
	ID: "over-voltage", Title: "A device gets more voltage than it stands",
	Family: Voltage, Severity: Danger,
	About: "Compares the highest voltage of the source that each load, coil and converter is fed from, at full charge, with what the " +
		"device stands, or if that is not known its nominal voltage with that of the source. One and a half times the " +
		"nominal voltage is a danger, less is a fault; if a typical figure of the library decides, it is a caution. A coil may " +
		"have 25 % more than its nominal voltage, and more if a driver of the controller holds it. A device that lies across no source is judged by what it finds in the solved states, through a diode, a coil or another load.",
	Why: "A lamp or coil takes current in proportion to its voltage, so its power, all of it heat, grows with the square: a 12 V lamp on 51 V takes eighteen times its " +
		"power and burns out in a flash, a radio smokes. A coil one class too low on the pack, 36 V on 48 V, takes twice its power, and cooks slowly until its " +
		"turns short. Capacitors in controllers and reducers have an end voltage that must not be passed even for a moment, and the moment comes at the end of each charge.",
	Tell: "Unplug the device, measure volts DC at the cart's end of its plug, switched on, and compare with its label before it goes back. For what " +
		"hangs on the pack take the voltage at the end of charge and not that at rest: 58.4 V for 16 lithium cells, 58.8 V for a 48 V lead string.",
	Blind: "It takes for the source the highest one that contacts can join the device to. Where the device has no figure on its label, or only the library's typical one, it " +
		"is a caution: read the label. Spikes of braking and of switched coils are above what it compares, and two equal devices in series are not taken as sharing the voltage.",
	Bad:  "a 12 V headlight is fed from the 48 V fuse",
	Good: "the headlight is fed from the reducer's fuse block",
	Wrong: Example{Of: packAndReducer, But: []string{"wire a3", "wire a3 fu4.out lt.+ gauge=16AWG insulation=105C length=1m",
		"wire a4", "wire a4 lt.- pack.NEG gauge=16AWG insulation=105C length=1m",
		"+", "stack pack.NEG r3 a4", "+", "stack fu4.out r2 a3"}},
	Right:  Example{Of: packAndReducer},
	Basis:  Basis{"power goes with the square of the voltage: a 12 V lamp on 51 V takes eighteen times its power", Physics},
	Remedy: "feed it from the reducer's output, or fit one made for the pack voltage",
	Run:    runOverVoltage,
}

func runOverVoltage(p *Pass) {
	for _, fed := range p.fedDevices() {
		stands := p.Net.KnownFigure(fed.link.Part, fed.link.Element.MaxVolts)
		nominal := p.Net.KnownFigure(fed.link.Part, fed.link.Element.Volts)
		grossly := p.limit(basis.GrossVoltage)
		gross := nominal.OK && !p.chopped(fed.link) && fed.nominal.OK && fed.nominal.Value >= grossly*nominal.Value ||
			stands.OK && fed.full.OK && fed.full.Value >= grossly*stands.Value
		hot := fed.link.Is(model.CoilElement) && nominal.OK && fed.nominal.Value > p.limit(basis.CoilVoltage)*nominal.Value && !p.chopped(fed.link)
		if !gross && !hot && (!stands.OK || !fed.full.OK || fed.full.Value <= stands.Value) {
			continue
		}
		f := Finding{
			Message:  fmt.Sprintf("%s gets %s from %s%s", fed.link.Part.ID, volts(fed.highest()), fed.by.Link.Part.ID, fed.atFullCharge()),
			Figure:   Figure{What: "voltage at " + string(fed.link.Part.ID), Value: unit.V(fed.highest()).Any()},
			Subjects: []Subject{OfPart(fed.link.Part.ID), OfPart(fed.by.Link.Part.ID)},
		}
		if stands.OK {
			f.Message += fmt.Sprintf(" and stands %s", volts(stands.Value))
			f.Figure.Limit, f.Figure.Decides = unit.V(stands.Value).Any(), "what it stands"
		} else {
			f.Message += fmt.Sprintf(" and is made for %s", volts(nominal.Value))
			f.Figure.Limit, f.Figure.Decides = unit.V(nominal.Value).Any(), "what it is made for"
		}
		f.Message += fed.misplaced(nominal)
		switch {
		case !gross && stands.IsTypical():
			f.Severity = Caution
			f.Message += unconfirmed
		case !gross:
			f.Severity = Fault
		}
		p.report(f)
	}
	p.judgeSeen()
}

// misplaced says in words what a device of another class is and where it hangs; nothing if its
// class is that of its source.
func (f fedDevice) misplaced(made network.Known) string {
	if !made.OK || !f.nominal.OK || math.Abs(f.nominal.Value/made.Value-1) < sameClass {
		return ""
	}
	what := fmt.Sprintf("a %s device", volts(made.Value))
	if f.link.Is(model.CoilElement) {
		what = fmt.Sprintf("a %s coil", volts(made.Value))
	}
	if f.by.String != nil && f.by.Whole {
		return ": " + what + " across the pack"
	}
	return ": " + what + " on " + volts(f.nominal.Value)
}

// sameClass is how far two nominal voltages of one class lie apart at most: 51.2 V and 48 V do
// by 7 %, the next class by a third.
const sameClass = 0.15

// chopped reports whether the return of a coil goes to a driver of the controller, which
// may hold it at less than the full voltage.
func (p *Pass) chopped(l *network.Link) bool {
	if !l.Is(model.CoilElement) {
		return false
	}
	metal := p.metal()
	for _, at := range metal.Members(metal.Of(l.B)) {
		ref := p.Net.Point(at).At
		if d, t := p.Net.DefinitionOf(ref), p.Net.TerminalDef(ref); t != nil && d.Family == model.Drive && t.Pole == "" {
			return true
		}
	}
	return false
}

// atFullCharge says so if the highest voltage is that at the end of a charge.
func (f fedDevice) atFullCharge() string {
	if f.by.String != nil && f.full.OK && f.full.Value > f.nominal.Value {
		return " at full charge"
	}
	return ""
}

// highest is the largest voltage that is known of the source.
func (f fedDevice) highest() float64 { return max(f.full.Value, f.nominal.Value) }

// fedDevice is a load, coil or converter with the source that can feed it.
type fedDevice struct {
	link          *network.Link
	by            *network.Feed
	nominal, full network.Known
}
