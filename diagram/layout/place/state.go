package place

import (
	"slices"

	"example.com/lugbook/diagram/layout/geom"
)

// body is a box in its present place.
type body struct {
	rect    geom.Rect
	placed  bool
	halo    [4]int // room kept free on each side
	slots   []slot
	facings geom.Sides // where face 1 may sit
	ordered bool       // slots of faces keep their order
	lead    [4]int
	spots   []Spot
	wires   []int
}

// state is a placement in the making. Bodies and zones are as proposed; the rest is what was last agreed on, until
// commit.
type state struct {
	p      *Problem
	bodies []body
	zones  []geom.Rect
	floor  []geom.Rect // per zone a rectangle that its frame covers at least; nil for none
	member [][]int     // boxes per zone
	pins   bool        // some box is pinned

	tiles    *tiles
	agreed   []geom.Rect // per box
	room     []geom.Rect // per box, halos included
	standing []bool      // boxes that have been agreed on
	through  []int       // per box, the stand-ins that run through it
	courses  []course    // per wire
	crossed  []int       // per wire, the stand-ins it crosses
	hit      []int       // per wire, the boxes it runs through
	bounds   geom.Rect   // around everything
	cost     int         // of wires, crossings and hits
	size     int         // price of the bounds

	mark      int // of the proposal at hand
	moving    []int
	seen      []int
	stamp     int // of the search at hand
	met       []int
	passed    []int
	redo      []course // new stand-ins
	redoAt    []int    // of these wires
	newBounds geom.Rect
}

func newState(p *Problem) *state {
	n, m := len(p.Boxes), len(p.Wires)
	s := &state{p: p, bodies: make([]body, n), zones: make([]geom.Rect, len(p.Titles)), member: make([][]int, len(p.Titles)),
		tiles: newTiles(n), agreed: make([]geom.Rect, n), room: make([]geom.Rect, n), standing: make([]bool, n),
		through: make([]int, n), moving: make([]int, n), passed: make([]int, n), courses: make([]course, m),
		crossed: make([]int, m), hit: make([]int, m), seen: make([]int, m), met: make([]int, m<<legBits)}
	for i := range p.Boxes {
		b := &p.Boxes[i]
		s.bodies[i].slots, s.bodies[i].facings, s.bodies[i].ordered = newSlots(b), Facings(b), b.Ordered
		s.bodies[i].spots = make([]Spot, len(b.Ports))
		s.arrange(i)
		if b.Zone >= 0 {
			s.member[b.Zone] = append(s.member[b.Zone], i)
		}
		s.pins = s.pins || b.Pin != nil
	}
	for w, wire := range p.Wires {
		for _, end := range [2]Ref{wire.From, wire.To} {
			b := &s.bodies[end.Box]
			if !slices.Contains(b.wires, w) {
				b.wires = append(b.wires, w)
			}
		}
	}
	return s
}

// arrange brings spots, size and halo of a box up to date with its slots.
func (s *state) arrange(i int) {
	b, r := &s.bodies[i], &s.p.Rules
	b.rect.W, b.rect.H = arrange(&s.p.Boxes[i], b.slots, b.lead, r, b.spots)
	b.halo = r.halo(b.spots)
}

// halo is the room a box keeps on each side: half the least gap, and tracks for the wires of its ports.
func (r Rules) halo(spots []Spot) [4]int {
	var ports, halo [4]int
	for _, spot := range spots {
		ports[spot.Side]++
	}
	for side, n := range ports {
		gap := r.GapY
		if geom.Side(side).Horizontal() {
			gap = r.GapX
		}
		halo[side] = (gap+1)/2 + (n*r.Tracks+9)/10
	}
	return halo
}

// boundsOf is the rectangle around everything proposed.
func (s *state) boundsOf() geom.Rect {
	var out geom.Rect
	first := true
	add := func(r geom.Rect) {
		if first {
			out, first = r, false
			return
		}
		out = out.Union(r)
	}
	for i := range s.bodies {
		if s.bodies[i].placed {
			add(s.bodies[i].rect)
		}
	}
	for _, z := range s.zones {
		if z.W > 0 {
			add(z)
		}
	}
	return out
}

// boundsAfter is the rectangle around everything when only the touched boxes have moved.
func (s *state) boundsAfter(touched []int) geom.Rect {
	if len(s.zones) > 0 || s.bounds == (geom.Rect{}) {
		return s.boundsOf()
	}
	out := s.bounds
	for _, i := range touched {
		r := s.agreed[i]
		if s.standing[i] && (r.X == out.X || r.Y == out.Y || r.Right() == out.Right() || r.Bottom() == out.Bottom()) {
			return s.boundsOf()
		}
	}
	for _, i := range touched {
		out = out.Union(s.bodies[i].rect)
	}
	return out
}

// sizeOf prices the rectangle around everything.
func (s *state) sizeOf(bounds geom.Rect) int {
	r := &s.p.Rules
	if r.MaxWidth > 0 { // the page's width is there anyway
		return r.Size * r.Row * bounds.H
	}
	return r.Size * (r.Col*bounds.W + r.Row*bounds.H)
}

// result copies the state out.
func (s *state) result() Placement {
	out := Placement{Cost: s.cost + s.size}
	for i := range s.bodies {
		out.Boxes = append(out.Boxes, s.bodies[i].rect)
		out.Spots = append(out.Spots, slices.Clone(s.bodies[i].spots))
	}
	out.Zones = slices.Clone(s.zones)
	return out
}
