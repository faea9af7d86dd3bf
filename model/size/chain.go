package size

import (
	"math"

	"example.com/lugbook/model/network"
)

// unknownMetres stands for a length that is not recorded: usual on a two-seat cart, from
// memory.
const unknownMetres = 1

// sameCurrent is how much the currents of two conductors in series may differ by
// computation, as a share.
const sameCurrent = 0.01

// chain is the conductors that carry a wire's own current one after the other, from
// where it comes together to where it divides again, or all the way round: the loop that
// its drop counts in.
type chain struct {
	wires   []*network.Link
	metres  float64
	unknown int // wires without a length
}

// chainOf follows the current of a wire both ways.
func (s *Survey) chainOf(in *network.Solution, l *network.Link) chain {
	var c chain
	s.add(&c, l)
	seen := map[*network.Link]bool{l: true}
	for _, from := range []network.Node{l.A, l.B} {
		for at, last := from, l; last != nil; {
			last = s.next(in, at, last, seen)
			if last != nil {
				seen[last] = true
				s.add(&c, last)
				at = last.Other(at)
			}
		}
	}
	return c
}

// circuitOf is the whole way of the greater part of a wire's current, from its source and
// back, with its length as that of the requirement's circuit; the wire's own chain if it
// cannot be followed.
func (s *Survey) circuitOf(in *network.Solution, l *network.Link, own chain, r *Requirement) chain {
	up, down := l.A, l.B
	if in.Current(l) < 0 {
		up, down = down, up
	}
	walk := way{s: s, in: in, seen: map[*network.Link]bool{l: true}, wires: []*network.Link{l}}
	home, ok := walk.back(down)
	if !ok || !walk.forth(up, home) {
		return own
	}
	var c chain
	for _, wire := range walk.wires {
		s.add(&c, wire)
	}
	if c.metres <= own.metres {
		return own
	}
	r.Circuit = c.metres
	return c
}

// next is the one link that carries away from a node what another brings there; nil if
// the current divides, or the walk has been there.
func (s *Survey) next(in *network.Solution, at network.Node, last *network.Link, seen map[*network.Link]bool) *network.Link {
	brought := toward(in, last, at)
	for _, l := range s.n.LinksAt(at) {
		if !seen[l] && math.Abs(toward(in, l, at)+brought) <= sameCurrent*math.Abs(brought) {
			return l
		}
	}
	return nil
}

// toward is the current that a link brings to a node.
func toward(in *network.Solution, l *network.Link, at network.Node) float64 {
	if l.B == at {
		return in.Current(l)
	}
	return -in.Current(l)
}

// add counts a link if it is a wire.
func (s *Survey) add(c *chain, l *network.Link) {
	if l.Wire == nil {
		return
	}
	metres, known := s.n.Length(l.Wire)
	if !known {
		metres = unknownMetres
		c.unknown++
	}
	c.wires = append(c.wires, l)
	c.metres += metres
}
