package diagnose

import (
	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

// class is the group of suspects that a fault counts to when a complaint is weighed.
type class int

const (
	otherwise class = iota
	pedalSwitch
	directionSwitch
	keySwitch
	returnPath
	chainWire
	controlFuse
	coil
	pack
	mainPath
	mainContact
	motor
	controller
)

// classOfContact tells by what moves a contact.
func classOfContact(link *network.Link) class {
	switch {
	case link.Element.Coil != "":
		return mainContact
	case link.Def.Family == model.Drive:
		return controller
	case link.Def.Family == model.ChargeGear:
		return returnPath
	case link.Def.Control == nil:
		return otherwise
	}
	switch link.Def.Control.Sets {
	case model.Pedal:
		return pedalSwitch
	case model.Direction:
		return directionSwitch
	case model.Key, model.TowRun:
		return keySwitch
	case model.PluggedIn:
		return returnPath
	}
	return otherwise
}

// classOfWire tells by what a wire serves; a control wire on the low side is return path.
func (l *lister) classOfWire(link *network.Link) class {
	switch {
	case link.Wire.Serves == model.Traction:
		return mainPath
	case link.Wire.Serves != model.Controls:
		return otherwise
	case l.returns[link.A], l.returns[link.B]:
		return returnPath
	}
	return chainWire
}

// classOfFuse tells by the wires behind a fuse.
func (l *lister) classOfFuse(link *network.Link) class {
	for _, other := range append(l.n.LinksAt(link.A), l.n.LinksAt(link.B)...) {
		switch {
		case other.Kind != network.WireLink:
		case other.Wire.Serves == model.Traction:
			return mainPath
		case other.Wire.Serves == model.Controls:
			return controlFuse
		}
	}
	return otherwise
}
