package oracle

import (
	"example.com/lugbook/model"
	"example.com/lugbook/model/conductor"
	"example.com/lugbook/model/network"
)

// What practice leaves without a fuse of its own, so that the heat of these wires, or of
// shorts at these places, is not judged. Common practice, no source, where nothing else is
// said.

// isLeftOut lists the wires whose heat is not judged.
func (x *exam) isLeftOut(l *network.Link) bool {
	a, b := x.net.DefinitionOf(x.net.Point(l.A).At), x.net.DefinitionOf(x.net.Point(l.B).At)
	of := func(f model.Family) (either, both bool) {
		left, right := a != nil && a.Family == f, b != nil && b.Family == f
		return left || right, left && right
	}
	hung, _ := of(model.Support)                    // the leads of a resistor or diode that hangs on a stud
	_, jumper := of(model.Storage)                  // jumpers inside a string
	_, sense := of(model.Metering)                  // leads between a shunt and its meter
	motor := x.isMotorEnd(l.A) || x.isMotorEnd(l.B) // leads that the controller limits
	mains := l.Wire.Serves == model.Mains
	return hung && x.isShort(l) || jumper || sense || motor || mains
}

// isMotorEnd reports whether a terminal is a stud in the motor's loop.
func (x *exam) isMotorEnd(at network.Node) bool {
	d, t := x.net.DefinitionOf(x.net.Point(at).At), x.net.TerminalDef(x.net.Point(at).At)
	return t != nil && d.Family == model.Drive && t.Serves == model.Traction && t.Pole == ""
}

// isLeadIn reports whether a place is before the first device by its nature, so that no short
// is laid there: the post of a battery or pack, and the fuse's end of a lead of at most 7 in,
// or 40 in in a sheath, up to which a conductor needs no device (33 CFR 183.455(b)).
func (x *exam) isLeadIn(l *network.Link, at network.Node) bool {
	if d := x.net.DefinitionOf(x.net.Point(at).At); d != nil && d.Family == model.Storage {
		return true
	}
	if !x.isShort(l) {
		return false
	}
	for _, e := range x.net.LinksAt(at) {
		if e.Is(model.FuseElement) {
			return true
		}
	}
	return false
}

// isShort reports whether a wire is no longer than what needs no device; one that nobody
// measured counts as short.
func (x *exam) isShort(l *network.Link) bool {
	metres, known := x.net.Length(l.Wire)
	return !known || metres <= conductor.PlacementFor(l.Wire.Sheathed, false).Within.Metres()
}
