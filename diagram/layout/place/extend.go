package place

import "example.com/lugbook/diagram/layout/geom"

// Kept is a box that stays as it was drawn.
type Kept struct {
	Rect  geom.Rect
	Spots []Spot
}

// Extend places the boxes that are not kept (nil) beside those that are, each on its cheapest free spot near the boxes
// it is wired to. zones are the frames so far; they may grow. A NoRoomError names the box that found no spot.
func Extend(p *Problem, kept []*Kept, zones []geom.Rect) (Placement, error) {
	s := newState(p)
	s.floor = zones
	for i, k := range kept {
		if k == nil {
			continue
		}
		b := &s.bodies[i]
		b.rect, b.placed = k.Rect, true
		copy(b.spots, k.Spots)
		b.halo = p.Rules.halo(b.spots)
	}
	if err := s.first(); err != nil {
		return Placement{}, err
	}
	return s.result(), nil
}

// Alone is a box with its ports as it would be placed first, at the corner.
func Alone(p *Problem, box int) Kept {
	b := p.Boxes[box]
	out := Kept{Spots: make([]Spot, len(b.Ports))}
	out.Rect.W, out.Rect.H = arrange(&b, newSlots(&b), [4]int{}, &p.Rules, out.Spots)
	return out
}

// beside puts a box on the cheapest spot near the boxes that stay, with its groups of ports on the sides that suit
// best there. It tries the surroundings of the boxes it is wired to, then its zone's, then the page.
func (s *state) beside(i int) bool {
	b := &s.bodies[i]
	for _, area := range s.areas(i) {
		if !s.settleIn(i, area) {
			continue
		}
		for k := range b.slots {
			s.turnIfBetter(i, k)
		}
		return true
	}
	return false
}

// areas lists where the top-left corner of a new box is looked for.
func (s *state) areas(i int) []geom.Rect {
	b := &s.bodies[i]
	var out []geom.Rect
	if r, ok := s.partners(i); ok {
		out = append(out, geom.Rect{X: r.X + r.W/2 - b.rect.W/2, Y: r.Y + r.H/2 - b.rect.H/2}.
			Grow(b.rect.W+24, b.rect.H+8, b.rect.W+24, b.rect.H+8))
	}
	page := s.searchArea(i, border)
	if zone := s.p.Boxes[i].Zone; zone >= 0 && s.zones[zone].W > 0 {
		return append(out, s.zones[zone].Grow(b.rect.W+8, b.rect.H+6, 8, 6))
	}
	return append(out, page, geom.Rect{X: page.X, Y: page.Bottom()})
}

// partners is the rectangle around the placed boxes that box i is wired to.
func (s *state) partners(i int) (geom.Rect, bool) {
	var out geom.Rect
	found := false
	for _, w := range s.bodies[i].wires {
		other := s.p.Wires[w].From.Box
		if other == i {
			other = s.p.Wires[w].To.Box
		}
		switch o := &s.bodies[other]; {
		case other == i || !o.placed:
		case !found:
			out, found = o.rect, true
		default:
			out = out.Union(o.rect)
		}
	}
	return out, found
}

// turnIfBetter sends a group of ports to the side across if it may sit there, fits and costs less.
func (s *state) turnIfBetter(i, k int) {
	b := &s.bodies[i]
	side, rect := b.slots[k].side, b.rect
	if !b.turn(k, side.Opposite()) {
		return
	}
	s.arrange(i)
	touched := []int{i}
	if s.fit(touched) {
		if delta, ok := s.price(touched, -1); ok {
			s.commit(touched, delta)
			return
		}
	}
	b.turn(k, side)
	s.arrange(i)
	b.rect = rect
	s.fit(touched)
}
