package place

import (
	"slices"

	"example.com/lugbook/diagram/layout/geom"
)

// roomOf is a box with its halos.
func (b *body) roomOf() geom.Rect {
	return b.rect.Grow(b.halo[geom.West], b.halo[geom.North], b.halo[geom.East], b.halo[geom.South])
}

// apart tells whether two boxes keep their distance.
func apart(a, b *body) bool {
	return b.rect.X-a.rect.Right() >= a.halo[geom.East]+b.halo[geom.West] ||
		a.rect.X-b.rect.Right() >= b.halo[geom.East]+a.halo[geom.West] ||
		b.rect.Y-a.rect.Bottom() >= a.halo[geom.South]+b.halo[geom.North] ||
		a.rect.Y-b.rect.Bottom() >= b.halo[geom.South]+a.halo[geom.North]
}

// fit tells whether the touched boxes are on the page and clear of all other boxes and foreign zones, and their own
// zones clear of them too. It brings the frames of their zones up to date.
func (s *state) fit(touched []int) bool {
	s.mark++
	for _, i := range touched {
		s.moving[i] = s.mark
	}
	for _, i := range touched {
		if !s.fits(i, touched) {
			return false
		}
	}
	return true
}

func (s *state) fits(i int, touched []int) bool {
	b := &s.bodies[i]
	page := b.rect
	zone := s.p.Boxes[i].Zone
	if zone >= 0 {
		s.zones[zone], _ = s.zoneRect(zone)
		page = page.Union(s.zones[zone])
	}
	if s.p.Boxes[i].Pin == nil && (!s.onPage(page) || !s.reachable(b)) {
		return false
	}
	for _, j := range touched {
		if j != i && !apart(b, &s.bodies[j]) {
			return false
		}
	}
	for _, at := range s.tiles.over(b.roomOf()) {
		for _, j := range s.tiles.boxes[at] {
			if s.moving[j] != s.mark && !apart(b, &s.bodies[j]) {
				return false
			}
		}
	}
	return s.zoneClear(zone, b.rect)
}

// zoneRect is the frame around the placed boxes of a zone; ok is false when there are none.
func (s *state) zoneRect(z int) (geom.Rect, bool) {
	var out geom.Rect
	found := false
	for _, i := range s.member[z] {
		if !s.bodies[i].placed {
			continue
		}
		if !found {
			out, found = s.bodies[i].rect, true
			continue
		}
		out = out.Union(s.bodies[i].rect)
	}
	if !found && s.floor != nil && s.floor[z].W > 0 {
		return s.floor[z], true
	}
	f := s.p.Rules.Frame
	out = out.Grow(f.Side, f.Top, f.Side, f.Bottom)
	out.W = max(out.W, s.p.Titles[z]+3)
	if s.floor != nil && s.floor[z].W > 0 {
		out = out.Union(s.floor[z])
	}
	return out, found
}

// zoneClear tells whether the frame of a zone, or a box without one, is clear of all frames and boxes that it does
// not hold.
func (s *state) zoneClear(zone int, rect geom.Rect) bool {
	if len(s.zones) == 0 {
		return true
	}
	gap := s.p.Rules.Frame.Gap
	if s.floor != nil {
		gap = 1 // frames drawn before may have been pushed together
	}
	own := rect
	if zone >= 0 {
		own = s.zones[zone]
	}
	own = own.Grow(gap, gap, gap, gap)
	for z, r := range s.zones {
		if z != zone && r.W > 0 && own.Overlaps(r) {
			return false
		}
	}
	if zone < 0 {
		return true
	}
	for j := range s.bodies {
		if s.bodies[j].placed && s.p.Boxes[j].Zone < 0 && own.Overlaps(s.bodies[j].rect) {
			return false
		}
	}
	return true
}

// border is the number of free columns kept on both sides of a new page, and the first row used.
const border = 2

// onPage tells whether r lies on the page. Beside boxes that are pinned or kept nothing can move to the right or down
// afterwards, so there are no columns or rows below 0.
func (s *state) onPage(r geom.Rect) bool {
	low := border
	if s.floor != nil {
		low = 0
	}
	width := s.p.Rules.MaxWidth
	if width > 0 && (r.X < low || r.Right() > width-1-low) {
		return false
	}
	return s.floor == nil && !s.pins || r.X >= low && r.Y >= low
}

// reachable tells whether the wires of a box's ports have their tracks between it and the edges of the page.
func (s *state) reachable(b *body) bool {
	width := s.p.Rules.MaxWidth
	if width == 0 || s.floor != nil {
		return true
	}
	most := max((width-b.rect.W)/2-border-s.p.Rules.Frame.Side-2, 0) // so that no box is kept off the page
	room := func(side geom.Side) int {
		used := slices.ContainsFunc(b.spots, func(s Spot) bool { return s.Side == side })
		if !used {
			return 0
		}
		return min(b.halo[side]+s.p.Rules.Edge, most)
	}
	return b.rect.X >= room(geom.West) && b.rect.Right()+room(geom.East) < width
}
