package network

import "example.com/lugbook/model"

// Live lists, by node, what is joined to the positive side of a source through what is
// closed in this state: wires, contacts, fuses, resistances and conducting diodes.
func (s *Solution) Live() []bool {
	var from []Node
	for _, f := range s.n.Feeds() {
		if s.On(f.Link) {
			from = append(from, f.At)
		}
	}
	return s.joinedTo(from, s.n.Returns())
}

// LiveFrom is Live of one feed alone: nothing if it gives nothing in this state.
func (s *Solution) LiveFrom(f *Feed, returns []bool) []bool {
	if !s.On(f.Link) {
		return make([]bool, s.n.Size())
	}
	return s.joinedTo([]Node{f.At}, returns)
}

// Stored lists, by node, what is joined in this state to the capacitor of a drive: its
// charge may stay there long after everything is off.
func (s *Solution) Stored() []bool {
	var from []Node
	for i := range s.n.links {
		if l := &s.n.links[i]; l.Is(model.CapacitorElement) && l.Def.Family == model.Drive {
			from = append(from, l.A)
		}
	}
	return s.joinedTo(from, s.n.Returns())
}

// joinedTo marks what is joined to some nodes through what is closed in this state, the
// return side left out.
func (s *Solution) joinedTo(from []Node, returns []bool) []bool {
	var starts []Node
	for _, at := range from {
		if !returns[at] {
			starts = append(starts, at)
		}
	}
	reach := s.n.Walk(starts, func(l *Link, at Node) bool { return !returns[l.Other(at)] && s.passes(l, at) })
	marks := make([]bool, s.n.Size())
	for _, at := range reach.Order {
		marks[at] = true
	}
	return marks
}

func (s *Solution) passes(l *Link, from Node) bool {
	switch {
	case l.Kind == OutputLink:
		return false
	case l.IsMetal(), l.Is(model.ResistanceElement):
		return true
	case l.Is(model.FuseElement), l.Is(model.ContactElement):
		return s.On(l)
	}
	return l.Is(model.DiodeElement) && l.A == from && s.On(l)
}
