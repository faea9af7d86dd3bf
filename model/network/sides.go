package network

// Side says to which terminal of a source a node can be joined.
type Side int

// The sides of a source.
const (
	Neither Side = iota
	Plus
	Minus
	Both // by contacts in different positions
)

// Sides tells for each node whether it can be joined to the positive or to the
// negative terminal of one source, with every fuse good and every contact that can
// close taken as closed.
type Sides struct{ plus, minus *Reach }

// SidesOf traces from the terminals of a source. Neither trace enters the other
// terminal's own metal, crosses a load or a winding, or passes a source.
func (n *Network) SidesOf(plus, minus Node) Sides {
	firm := n.known.firm
	trace := func(from, stop Node) *Reach {
		return n.Walk([]Node{from}, func(l *Link, at Node) bool {
			return !firm.Same(l.Other(at), stop) && l.traced
		})
	}
	return Sides{plus: trace(plus, minus), minus: trace(minus, plus)}
}

// Of is the side of a node.
func (s Sides) Of(at Node) Side {
	switch plus, minus := s.plus.Has(at), s.minus.Has(at); {
	case plus && minus:
		return Both
	case plus:
		return Plus
	case minus:
		return Minus
	}
	return Neither
}

// Across compares the side of two nodes, the first of which should be positive: it is
// Plus if they are on the right sides, Minus if they are swapped, and Neither or Both
// if tracing cannot tell.
func (s Sides) Across(first, second Node) Side {
	a, b := s.Of(first), s.Of(second)
	switch {
	case a == Plus && b == Minus:
		return Plus
	case a == Minus && b == Plus:
		return Minus
	case a == Both || b == Both:
		return Both
	}
	return Neither
}
