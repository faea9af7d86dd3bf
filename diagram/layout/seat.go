package layout

import (
	"slices"

	"example.com/lugbook/diagram/layout/geom"
	"example.com/lugbook/diagram/layout/place"
)

// bench is a row of ports that stay side by side on a box that stays where it is.
type bench struct {
	ports    []int // from the left or the top
	sides    Sides
	face     int
	side     Side
	anchor   int // where one of its ports was; -1 for none
	anchorAt int // which of its ports that is
	start    int
}

// seating finds spots for the ports of one box.
type seating struct {
	box      *Box
	options  Options
	old      map[string]place.Spot
	benches  []bench
	fixed    [4][]int // offsets of ports that cannot choose
	w, h     int
	prefers  func(port int) Side
	spots    []place.Spot
	vacant   []string // ids of ports that are gone
	previous *BoxAt
}

// seat gives every port of box i a spot. A port that was there keeps its spot unless it has to make room for one of
// its group or comes to lie in the head; a new one takes the spot of one that is gone from the same place in the
// list, else a free one, on the side of the box it is wired to if it can. The size is what that takes; it is never
// less than before. boxes are the places of before by id.
func (e *extension) seat(i int, old *BoxAt, boxes map[string]*BoxAt) ([]place.Spot, Point) {
	b := &e.g.Boxes[i]
	s := &seating{box: b, options: e.o, old: map[string]place.Spot{}, previous: old, spots: make([]place.Spot, len(b.Ports)),
		w: max(b.W, old.Rect.W), h: max(b.H, old.Rect.H),
		prefers: func(port int) Side { return e.partnerSide(i, port, old.Rect, boxes) }}
	for _, p := range old.Ports {
		s.old[p.ID] = spotOf(old.Rect, p)
		if _, stays := e.x.port[i][p.ID]; !stays {
			s.vacant = append(s.vacant, p.ID)
		}
	}
	for k, p := range b.Ports {
		if p.Offset >= 0 {
			s.spots[k] = place.Spot{Side: p.Sides.First(), Offset: p.Offset}
			s.fixed[s.spots[k].Side] = append(s.fixed[s.spots[k].Side], p.Offset)
		}
	}
	s.gather()
	if !s.facesKept() {
		s.unseatFaces()
	}
	for side := range geom.Side(4) {
		s.pushApart(side)
	}
	s.joinAll()
	if !s.facesKept() {
		s.unseatFaces()
		s.joinAll()
	}
	return s.spots, s.settle()
}

func (s *seating) joinAll() {
	for k := range s.benches {
		if s.benches[k].anchor < 0 {
			s.join(&s.benches[k])
		}
	}
}

func spotOf(r Rect, p PortAt) place.Spot {
	if p.Side.Horizontal() {
		return place.Spot{Side: p.Side, Offset: p.At.Y - r.Y}
	}
	return place.Spot{Side: p.Side, Offset: p.At.X - r.X}
}

// partnerSide is the side of box i that looks to the other end of the first wire on the port.
func (e *extension) partnerSide(i, port int, r Rect, boxes map[string]*BoxAt) Side {
	for _, w := range e.x.wires {
		mine, other := w.From, w.To
		if other.Box == i && other.Port == port {
			mine, other = other, mine
		}
		if mine.Box != i || mine.Port != port {
			continue
		}
		if at := boxes[e.g.Boxes[other.Box].ID]; at != nil && 2*at.Rect.X+at.Rect.W < 2*r.X+r.W {
			return West
		}
		return East
	}
	return East
}

// gather makes the benches of the ports that can choose, each anchored to where its first known port was.
func (s *seating) gather() {
	at := map[string]int{}
	for k, p := range s.box.Ports {
		if p.Offset >= 0 {
			continue
		}
		j, seen := at[p.Group]
		if !seen || p.Group == "" {
			j = len(s.benches)
			at[p.Group] = j
			s.benches = append(s.benches, bench{sides: p.Sides & AnySide, face: p.Face, anchor: -1})
		}
		q := &s.benches[j]
		q.ports = append(q.ports, k)
		if common := q.sides & p.Sides; common != 0 {
			q.sides = common
		}
	}
	for j := range s.benches {
		s.hold(&s.benches[j])
	}
}

// hold anchors a bench.
func (s *seating) hold(q *bench) {
	var known []int
	for _, k := range q.ports {
		if spot, ok := s.old[s.box.Ports[k].ID]; ok && q.sides.Has(spot.Side) {
			known = append(known, k)
		}
	}
	if len(known) == 0 {
		if id := s.vacated(q.ports[0]); id != "" && q.sides.Has(s.old[id].Side) {
			q.side, q.anchor = s.old[id].Side, s.old[id].Offset
			s.vacant = slices.DeleteFunc(s.vacant, func(v string) bool { return v == id })
		}
	} else {
		first := s.old[s.box.Ports[known[0]].ID]
		last := s.old[s.box.Ports[known[len(known)-1]].ID]
		if first.Side == last.Side && last.Offset < first.Offset {
			slices.Reverse(q.ports)
		}
		q.side, q.anchor, q.anchorAt = first.Side, first.Offset, slices.Index(q.ports, known[0])
	}
	q.start = q.anchor - q.anchorAt*s.pitch(q.side)
}

// vacated is the id of the port that was in the list where the new port k is now, if that one is gone; else "".
func (s *seating) vacated(k int) string {
	at := 0
	for j := k - 1; j >= 0; j-- {
		id := s.box.Ports[j].ID
		if before := slices.IndexFunc(s.previous.Ports, func(p PortAt) bool { return p.ID == id }); before >= 0 {
			at = before + 1
			break
		}
	}
	if at < len(s.previous.Ports) && slices.Contains(s.vacant, s.previous.Ports[at].ID) {
		return s.previous.Ports[at].ID
	}
	return ""
}

func (s *seating) pitch(side Side) int {
	if side.Horizontal() {
		return s.options.Pitch
	}
	return s.options.Span
}

// lowest is the first offset that a port may take on a side.
func (s *seating) lowest(side Side) int {
	switch {
	case !side.Horizontal():
		return s.options.Span / 2
	case s.box.H == 0:
		return 0
	case s.box.Head == 0:
		return s.options.Pitch
	}
	return s.box.Head
}

// on lists the anchored benches of a side in their order.
func (s *seating) on(side Side) []*bench {
	var out []*bench
	for k := range s.benches {
		if q := &s.benches[k]; q.anchor >= 0 && q.side == side {
			out = append(out, q)
		}
	}
	slices.SortStableFunc(out, func(a, b *bench) int { return a.anchor - b.anchor })
	return out
}

// pushApart moves the benches of a side down or right as far as they lack room.
func (s *seating) pushApart(side Side) {
	next := s.lowest(side)
	for _, q := range s.on(side) {
		q.start = place.FreeFrom(max(q.start, next), len(q.ports), s.pitch(side), s.fixed[side])
		next = q.start + len(q.ports)*s.pitch(side)
	}
}

// join seats a bench that was not there before: on the side it prefers or another where the box need not grow, else
// at the end of the side where it grows least.
func (s *seating) join(q *bench) {
	wish := s.prefers(q.ports[0])
	best, bestGrowth := -1, 0
	sides := s.faceSides(q)
	for _, side := range [5]Side{wish, East, West, South, North} {
		if !sides.Has(side) {
			continue
		}
		taken := slices.Clone(s.fixed[side])
		for _, other := range s.on(side) {
			for k := range other.ports {
				taken = append(taken, other.start+k*s.pitch(side))
			}
		}
		start := place.FreeFrom(s.faceStart(q, side), len(q.ports), s.pitch(side), taken)
		growth := max(0, s.needs(side, start+(len(q.ports)-1)*s.pitch(side))-s.length(side))
		if best < 0 || growth < bestGrowth {
			best, bestGrowth = start, growth
			q.side, q.start = side, start
		}
	}
	q.anchor = q.start
	s.stretch(q)
}

// length is how long a side is so far, needs how long a port at an offset makes it.
func (s *seating) length(side Side) int {
	if side.Horizontal() {
		return s.h
	}
	return s.w
}

func (s *seating) needs(side Side, last int) int {
	switch {
	case !side.Horizontal():
		return last + s.options.Span/2
	case s.box.H == 0 && last == 0:
		return 0
	}
	return last + 1
}

// stretch makes the box long enough for a bench.
func (s *seating) stretch(q *bench) {
	need := s.needs(q.side, q.start+(len(q.ports)-1)*s.pitch(q.side))
	if q.side.Horizontal() {
		s.h = max(s.h, need)
	} else {
		s.w = max(s.w, need)
	}
}

// settle writes the spots of the benches and returns the size of the box.
func (s *seating) settle() Point {
	for k := range s.benches {
		q := &s.benches[k]
		s.stretch(q)
		for n, port := range q.ports {
			s.spots[port] = place.Spot{Side: q.side, Offset: q.start + n*s.pitch(q.side)}
		}
	}
	return Point{X: s.w, Y: s.h}
}
