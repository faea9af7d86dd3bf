package protect

import (
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/conductor"
	"example.com/lugbook/model/network"
)

// IsHungLead reports whether a wire is the lead of a resistor or diode that hangs on a
// stud: not longer than what 33 CFR 183.455(b) leaves without a device, or not measured,
// which measured tells. Practice leaves a short one to something else than a fuse (common
// practice, no source).
func IsHungLead(n *network.Network, l *network.Link) (hung, measured bool) {
	support := func(at network.Node) bool {
		d := n.DefinitionOf(n.Point(at).At)
		return d != nil && d.Family == model.Support
	}
	if !support(l.A) && !support(l.B) {
		return false, false
	}
	metres, known := n.Length(l.Wire)
	return !known || metres <= conductor.AtSource.Within.Metres(), known
}

// IsMotorLead reports whether a wire lies in the motor's loop behind a controller, which
// limits its current: practice leaves it to that (common practice, no source).
func IsMotorLead(n *network.Network, l *network.Link) bool {
	loop := func(at network.Node) bool {
		ref := n.Point(at).At
		d, t := n.DefinitionOf(ref), n.TerminalDef(ref)
		return t != nil && d.Family == model.Drive && t.Serves == model.Traction && t.Pole == ""
	}
	return (loop(l.A) || loop(l.B)) && hasController(n)
}

// hasController tells a controller from other parts of the drive by its capacitor.
func hasController(n *network.Network) bool {
	return slices.ContainsFunc(n.Links(), func(l network.Link) bool {
		return l.Is(model.CapacitorElement) && l.Def.Family == model.Drive
	})
}
