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

// line is the straight stand-in of a wire: from two cells before the one terminal to two cells before the other.
type line struct {
	a, b      geom.Point
	cost      int
	active    bool     // both boxes are placed
	low, high [2]int32 // its columns (0) and rows (1); none while it is not active, so that it meets nothing
}

// state is a placement in the making.
type state struct {
	p        *Problem
	bodies   []body
	lines    []line
	cross    []bool // per pair of wires, square
	hit      []bool // per box and wire
	zones    []geom.Rect
	floor    []geom.Rect // per zone a rectangle that its frame covers at least; nil for none
	member   [][]int     // boxes per zone
	cost     int         // of wires and crossings
	size     int         // price of the drawing's extent
	seen     []int       // per wire, mark of the last move that touched it
	mark     int
	old      []backup
	redo     []line
	redoAt   []int
	flips    []int
	hitFlips []int
	zonesB   []geom.Rect
}

func newState(p *Problem) *state {
	s := &state{p: p, bodies: make([]body, len(p.Boxes)), lines: make([]line, len(p.Wires)),
		cross: make([]bool, len(p.Wires)*len(p.Wires)), hit: make([]bool, len(p.Boxes)*len(p.Wires)), zones: make([]geom.Rect, len(p.Titles)),
		member: make([][]int, len(p.Titles)), seen: make([]int, len(p.Wires))}
	for i := range p.Boxes {
		b := &p.Boxes[i]
		s.bodies[i].slots, s.bodies[i].facings, s.bodies[i].ordered = newSlots(b), Facings(b), b.Ordered
		s.bodies[i].spots = make([]Spot, len(b.Ports))
		s.arrange(i)
		if b.Zone >= 0 {
			s.member[b.Zone] = append(s.member[b.Zone], i)
		}
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

// apart tells whether two boxes keep their distance.
func (s *state) apart(a, b *body) bool {
	return b.rect.X-a.rect.Right() >= a.halo[geom.East]+b.halo[geom.West] ||
		a.rect.X-b.rect.Right() >= b.halo[geom.East]+a.halo[geom.West] ||
		b.rect.Y-a.rect.Bottom() >= a.halo[geom.South]+b.halo[geom.North] ||
		a.rect.Y-b.rect.Bottom() >= b.halo[geom.South]+a.halo[geom.North]
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

// fits tells whether box i is on the page and clear of all other boxes and foreign zones, and its own zone clear of
// them too. It brings the frame of its zone up to date.
func (s *state) fits(i int) bool {
	b := &s.bodies[i]
	pinned := s.p.Boxes[i].Pin != nil
	page := b.rect
	zone := s.p.Boxes[i].Zone
	if zone >= 0 {
		s.zones[zone], _ = s.zoneRect(zone)
		page = page.Union(s.zones[zone])
	}
	if !pinned && (!s.onPage(page) || !s.reachable(b)) {
		return false
	}
	for j := range s.bodies {
		if j != i && s.bodies[j].placed && !s.apart(b, &s.bodies[j]) {
			return false
		}
	}
	return s.zoneClear(zone, b.rect)
}

// zoneClear tells whether the frame of a zone, or a box without one, is clear of all frames and boxes that it does
// not hold.
func (s *state) zoneClear(zone int, rect geom.Rect) bool {
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
	return s.floor == nil && !s.anyPin() || r.X >= low && r.Y >= low
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

func (s *state) anyPin() bool {
	for i := range s.p.Boxes {
		if s.p.Boxes[i].Pin != nil {
			return true
		}
	}
	return false
}

// extent is the price of the rectangle around everything placed.
func (s *state) extent() int {
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
	r := s.p.Rules
	if r.MaxWidth > 0 { // the page's width is there anyway
		return r.Size * r.Row * out.H
	}
	return r.Size * (r.Col*out.W + r.Row*out.H)
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
