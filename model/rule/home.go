package rule

import (
	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/state"
)

// leastVolts is the voltage in volts from which something counts as fed: more than what a meter
// or a leak leaves behind. Our choice.
const leastVolts = 1

// parked is the solution of the cart at rest; nil if it has none.
func (p *Pass) parked() *network.Solution {
	for _, s := range p.solved() {
		if s.state.Name == state.Parked {
			return s.solution
		}
	}
	return nil
}

// keyDecides reports whether a key switch of the sheet is fed in a state and nothing bridges it:
// what is live with the key off could be behind it.
func (p *Pass) keyDecides(in *network.Solution) bool {
	for i := range p.Net.Links() {
		if l := &p.Net.Links()[i]; isKeyContact(l) && p.isHeldLive(l.A, in) != p.isHeldLive(l.B, in) {
			return true
		}
	}
	return false
}

func isKeyContact(l *network.Link) bool {
	return l.Is(model.ContactElement) && l.Def.Control != nil && l.Def.Control.Sets == model.Key
}

// isHeldLive reports whether metal, fuses and contacts that are closed in a state join a node
// with the positive of a string; what comes back through a lamp or a coil does not count.
func (p *Pass) isHeldLive(at network.Node, in *network.Solution) bool {
	reach := p.Net.Walk([]network.Node{at}, func(l *network.Link, _ network.Node) bool {
		return l.Firm() || l.Is(model.ContactElement) && in.On(l)
	})
	for i := range p.sides() {
		if f := &p.sides()[i].feed; f.String != nil && reach.Has(f.At) {
			return true
		}
	}
	return false
}

// leads reports whether a link leads a supply on to what hangs on it: metal, fuses and contacts
// that can close, but no winding of a drive.
func leads(l *network.Link) bool {
	return l.Firm() || l.Conducts() && !(l.Is(model.ResistanceElement) && l.Def.Family == model.Drive)
}

// takesPower reports whether a link is what takes power for something other than driving: a
// load, a coil or the input of a reducer.
func takesPower(l *network.Link) bool {
	switch {
	case l.Is(model.LoadElement), l.Is(model.CoilElement), l.Is(model.ConverterElement):
		return l.Def.Family != model.Drive && l.Def.Family != model.Storage && l.Def.Family != model.ChargeGear
	}
	return false
}

// toSwitchedSide moves the one wire by which a terminal hangs on the hot side of the key switch
// to its switched side; none if it does not hang there by a wire of its own.
func (p *Pass) toSwitchedSide(at network.Node) []edit.Edit {
	_, high, ok := p.Net.Poles()
	if !ok {
		return nil
	}
	reach := p.Net.Walk([]network.Node{at}, func(l *network.Link, _ network.Node) bool { return l.Firm() })
	for i := range p.Net.Links() {
		contact := &p.Net.Links()[i]
		if !isKeyContact(contact) || reach.Has(contact.B) {
			continue
		}
		path := reach.Path(contact.A)
		if len(path) == 0 || path[len(path)-1].Kind != network.WireLink {
			continue
		}
		last := path[len(path)-1]
		hot, switched := p.Net.Point(contact.A).At, p.Net.Point(contact.B).At
		if p.joinedWithout(last, at, high) || !p.joinedWithout(last, contact.A, high) {
			continue
		}
		return []edit.Edit{edit.ReEnd{Sheet: p.Sheet.Name, ID: last.Wire.ID, Side: sideOf(last.Wire, hot), End: model.End{At: switched}, Seat: edit.Outermost}}
	}
	return nil
}

// joinedWithout reports whether metal and fuses join two nodes without one wire.
func (p *Pass) joinedWithout(wire *network.Link, a, b network.Node) bool {
	return p.Net.Walk([]network.Node{a}, func(l *network.Link, _ network.Node) bool { return l != wire && l.Firm() }).Has(b)
}

// wiresOf lists the wires of a way as subjects.
func wiresOf(way []*network.Link) []Subject {
	var subjects []Subject
	for _, l := range way {
		if l.Kind == network.WireLink {
			subjects = append(subjects, OfWire(l.Wire.ID))
		}
	}
	return subjects
}
