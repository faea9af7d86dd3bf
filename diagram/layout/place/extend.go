package place

import "example.com/lugbook/diagram/layout/geom"

// Kept is a box that stays as it was drawn.
type Kept struct {
	Rect  geom.Rect
	Spots []Spot
}

// Extend places the boxes that are not kept (nil) beside those that are, each on its cheapest free spot. zones are
// the frames so far; they may grow. A NoRoomError names the box that found no spot.
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
