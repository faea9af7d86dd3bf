package place

import (
	"math"

	"example.com/lugbook/diagram/layout/geom"
)

// first makes the starting placement. Pinned boxes come first; then zone by zone, the box that has most wires to
// placed ones goes to the cheapest free spot. A zone is finished before the next begins, so that frames cannot hem
// each other in. Post: all boxes are placed, and apart but for pinned ones. It fails only when a pinned box stands
// in the way on every side.
func (s *state) first() error {
	for i, b := range s.p.Boxes {
		if b.Pin != nil {
			s.bodies[i].rect.X, s.bodies[i].rect.Y = b.Pin.X, b.Pin.Y
			s.bodies[i].placed = true
		}
	}
	for z := range s.zones {
		s.zones[z] = geom.Rect{}
		if r, ok := s.zoneRect(z); ok {
			s.zones[z] = r
		}
	}
	if i := s.pinClash(); i >= 0 {
		return &NoRoomError{Box: i}
	}
	s.recount()
	for zone := -1; zone < len(s.zones); zone++ {
		below := border
		for {
			i, ok := s.nextOf(zone)
			if !ok {
				break
			}
			if !s.settle(i, below) && !s.startBelow(zone, i, &below) {
				return &NoRoomError{Box: i, Missing: s.missing(i)}
			}
		}
	}
	s.recount()
	return nil
}

// pinClash finds a pinned box that, grown to hold its ports, lies on another or in a foreign frame; -1 if there is none.
func (s *state) pinClash() int {
	for i, b := range s.p.Boxes {
		if b.Pin == nil {
			continue
		}
		for j := range s.bodies {
			if j != i && s.bodies[j].placed && s.bodies[i].rect.Overlaps(s.bodies[j].rect) {
				return i
			}
		}
		if !s.zoneClear(b.Zone, s.bodies[i].rect) {
			return i
		}
	}
	return -1
}

// nextOf picks the unplaced box of a zone with most wires to placed boxes, then with most wires.
func (s *state) nextOf(zone int) (int, bool) {
	best, bestKey := -1, -1
	for i := range s.bodies {
		if s.bodies[i].placed || s.p.Boxes[i].Zone != zone {
			continue
		}
		key := len(s.bodies[i].wires)
		for _, w := range s.bodies[i].wires {
			other := s.p.Wires[w].From.Box
			if other == i {
				other = s.p.Wires[w].To.Box
			}
			if s.bodies[other].placed {
				key += 1000
			}
		}
		if key > bestKey {
			best, bestKey = i, key
		}
	}
	return best, best >= 0
}

// startBelow begins a zone anew below all others, when it was hemmed in where it began. It reports false when that
// has been done already or some of its boxes have to stay.
func (s *state) startBelow(zone, box int, below *int) bool {
	if zone < 0 || *below > border || s.floor != nil {
		return false
	}
	for _, i := range s.member[zone] {
		if s.p.Boxes[i].Pin != nil {
			return false
		}
		s.bodies[i].placed = false
	}
	s.zones[zone] = geom.Rect{}
	s.recount()
	*below = s.lowest() + s.p.Rules.Frame.Gap + 1
	return s.missing(box) == 0
}

// lowest is the last row in use.
func (s *state) lowest() int {
	bottom := border
	for j := range s.bodies {
		if b := &s.bodies[j]; b.placed {
			bottom = max(bottom, b.rect.Bottom()+b.halo[geom.South])
		}
	}
	for _, z := range s.zones {
		bottom = max(bottom, z.Bottom())
	}
	return bottom
}

// spots is about the number of places tried for a box.
const spots = 1500

// settle puts a box on its cheapest free spot, in a zone that has no row above the given one.
func (s *state) settle(i, below int) bool {
	if s.floor != nil {
		return s.beside(i)
	}
	return s.settleIn(i, s.searchArea(i, below))
}

// settleIn puts a box with its top-left corner on the cheapest free spot of an area.
func (s *state) settleIn(i int, area geom.Rect) bool {
	b := &s.bodies[i]
	zone := s.p.Boxes[i].Zone
	var oldZone geom.Rect
	if zone >= 0 {
		oldZone = s.zones[zone]
	}
	step := 1
	for (area.W/(2*step)+1)*(area.H/step+1) > spots {
		step++
	}
	b.placed = true
	found, bestCost := false, math.MaxInt/2
	touched := []int{i}
	var best geom.Point
	for y := area.Y; y <= area.Bottom(); y += step {
		for x := area.X; x <= area.Right(); x += 2 * step {
			b.rect.X, b.rect.Y = x, y
			if !s.fit(touched) {
				continue
			}
			size := s.sizeOf(s.boundsAfter(touched)) - s.size
			if cost, ok := s.price(touched, bestCost-size-1); ok {
				found, best, bestCost = true, geom.Point{X: x, Y: y}, cost+size
			}
		}
	}
	if !found {
		b.placed = false
		if zone >= 0 {
			s.zones[zone] = oldZone
		}
		return false
	}
	b.rect.X, b.rect.Y = best.X, best.Y
	if zone >= 0 {
		s.zones[zone], _ = s.zoneRect(zone)
	}
	delta, _ := s.price(touched, math.MaxInt)
	s.commit(touched, delta)
	return true
}

// searchArea is where box i may have its top-left corner: the page, or a square about as large as all boxes need,
// and as far down as there is surely room.
func (s *state) searchArea(i, below int) geom.Rect {
	r := s.p.Rules
	total := 0
	for j := range s.bodies {
		b := &s.bodies[j]
		total += (b.rect.W + b.halo[geom.East] + b.halo[geom.West]) * (b.rect.H + b.halo[geom.North] + b.halo[geom.South])
	}
	f := r.Frame
	width := r.MaxWidth - 2*border
	if r.MaxWidth == 0 {
		width = root(total*2*r.Row/r.Col) + s.bodies[i].rect.W
	}
	left, top, bottom := border, below, max(below, s.lowest())
	if s.p.Boxes[i].Zone >= 0 {
		left, top = left+f.Side, top+f.Top
	}
	right := max(border+width-s.bodies[i].rect.W-(left-border), left)
	bottom += f.Gap + f.Bottom + f.Top + s.bodies[i].halo[geom.North] + 2
	return geom.Rect{X: left, Y: top, W: right - left, H: bottom - top}
}

// root is the whole part of the square root.
func root(n int) int {
	r := 0
	for (r+1)*(r+1) <= n {
		r++
	}
	return r
}

// missing is the number of columns by which box i is too wide for the page, 0 when that is not what is wrong.
func (s *state) missing(i int) int {
	width := s.p.Rules.MaxWidth
	if width == 0 {
		return 0
	}
	need := s.bodies[i].rect.W + 1 + 2*border
	if zone := s.p.Boxes[i].Zone; zone >= 0 {
		need = max(need+2*s.p.Rules.Frame.Side, s.p.Titles[zone]+4+2*border)
	}
	return max(need-width, 0)
}
