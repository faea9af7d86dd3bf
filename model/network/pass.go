package network

import "example.com/lugbook/model"

// limitingOhms is the resistance from which an element limits the current to what a
// control wire carries: 1 ohm passes 58.4 A of a full 16-cell pack. Below it, as in a
// shunt, a field winding or a bank of speed coils, an element counts as a conductor.
// Our choice.
const limitingOhms = 1

// classify works out once how current passes a link.
func (n *Network) classify(l *Link) {
	if l.Kind == WireLink {
		l.metres, l.measured = n.Length(l.Wire)
		l.perMetre, l.assumed = n.ohmsPerMetre(l)
		l.joints = [2]float64{n.joint(l.Wire, l.Wire.From), n.joint(l.Wire, l.Wire.To)}
	}
	metal, low := l.IsMetal(), n.lowOhmic(l)
	l.conducts = metal || l.closable() || low
	l.firm = metal || l.Is(model.FuseElement) || l.isolates() || low && l.Def.Family != model.Drive
	l.traced = l.firm || l.closable()
}

// IsMetal reports whether a link is plain metal: a wire or a join.
func (l *Link) IsMetal() bool { return l.Kind == WireLink || l.Is(model.JoinElement) }

// Conducts reports whether a link carries current freely once its contacts are
// closed: metal, a contact that can close, or a resistance too low to limit anything.
// Fuses are left out.
func (l *Link) Conducts() bool { return l.conducts }

// Firm reports whether a link holds two nodes at one potential in service whoever
// sits on the cart: metal, fuses, isolators and shunts.
func (l *Link) Firm() bool { return l.firm }

// closable reports whether a contact can close at all: something drives it, or it
// rests closed.
func (l *Link) closable() bool {
	if !l.Is(model.ContactElement) {
		return false
	}
	e := l.Element
	return len(e.ClosedIn)+len(e.Fed)+len(e.Blocked) > 0 || e.Coil != "" || e.Rest == model.RestClosed
}

// isolates reports whether a contact is closed as long as the cart is in service.
func (l *Link) isolates() bool {
	return l.closable() && (l.Def.Family == model.Protection || l.Def.Control != nil && l.Def.Control.Sets == model.Isolator)
}

func (n *Network) lowOhmic(l *Link) bool {
	if !l.Is(model.ResistanceElement) {
		return false
	}
	ohms, known := n.Figure(l.Part, l.Element.Ohms)
	return known && ohms < limitingOhms
}
