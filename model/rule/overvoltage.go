package rule

import (
	"fmt"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

var overVoltage = Rule{
	ID: "over-voltage", Title: "A device gets more voltage than it stands",
	Family: Voltage, Severity: Danger,
	About: "Compares the highest voltage of the source that each load, coil and converter is fed from, at full charge, with what the " +
		"device stands, or if that is not known its nominal voltage with that of the source. One and a half times the " +
		"nominal voltage is a danger, less is a fault; if a typical figure of the library decides, it is a caution. A coil may " +
		"have 25 % more than its nominal voltage, and more if a driver of the controller holds it.",
	Bad:    "a 12 V lamp is fed from the key switch of a 48 V cart",
	Good:   "a 12 V lamp is fed from the reducer's output",
	Basis:  Basis{"power goes with the square of the voltage: a 12 V lamp on 51 V takes eighteen times its power", Physics},
	Remedy: "feed it from the reducer's output, or fit one made for the pack voltage",
	Run:    runOverVoltage,
}

// grossly is the ratio of voltages from which a device burns rather than wears. Our
// choice: it parts 12, 36, 48 and 72 V devices only where they differ by a class or more.
const grossly = 1.5

func runOverVoltage(p *Pass) {
	for _, fed := range p.fedDevices() {
		stands := p.Net.KnownFigure(fed.link.Part, fed.link.Element.MaxVolts)
		nominal := p.Net.KnownFigure(fed.link.Part, fed.link.Element.Volts)
		gross := nominal.OK && !p.chopped(fed.link) && fed.nominal.OK && fed.nominal.Value >= grossly*nominal.Value ||
			stands.OK && fed.full.OK && fed.full.Value >= grossly*stands.Value
		hot := fed.link.Is(model.CoilElement) && nominal.OK && fed.nominal.Value > coilTolerance*nominal.Value && !p.chopped(fed.link)
		if !gross && !hot && (!stands.OK || !fed.full.OK || fed.full.Value <= stands.Value) {
			continue
		}
		f := Finding{
			Message:  fmt.Sprintf("%s gets %s from %s", fed.link.Part.ID, volts(fed.highest()), fed.by.Link.Part.ID),
			Subjects: []Subject{OfPart(fed.link.Part.ID), OfPart(fed.by.Link.Part.ID)},
		}
		if stands.OK {
			f.Message += fmt.Sprintf(" and stands %s", volts(stands.Value))
		} else {
			f.Message += fmt.Sprintf(" and is made for %s", volts(nominal.Value))
		}
		switch {
		case !gross && stands.IsTypical():
			f.Severity = Caution
			f.Message += unconfirmed
		case !gross:
			f.Severity = Fault
		}
		p.report(f)
	}
}

// coilTolerance is how far above its nominal voltage a coil may be fed for long: 51.2 V on a
// 48 V coil is 7 %, the next class down is off by a third. Our choice.
const coilTolerance = 1.25

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

// highest is the largest voltage that is known of the source.
func (f fedDevice) highest() float64 { return max(f.full.Value, f.nominal.Value) }

// fedDevice is a load, coil or converter with the source that can feed it.
type fedDevice struct {
	link          *network.Link
	by            *network.Feed
	nominal, full network.Known
}
