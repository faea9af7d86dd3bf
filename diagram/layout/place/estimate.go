package place

import (
	"math"

	"example.com/lugbook/diagram/layout/geom"
)

// line is the straight stand-in of a wire: from two cells before the one terminal to two cells before the other.
type line struct {
	a, b      geom.Point
	cost      int
	active    bool     // both boxes are placed
	low, high [2]int32 // its columns (0) and rows (1); none while it is not active, so that it meets nothing
}

// lineOf makes the stand-in of a wire and prices it: length, the fewest bends its ends allow, the want of room for a
// label, and an onward wire that goes back.
func (s *state) lineOf(w int) line {
	wire, r := &s.p.Wires[w], &s.p.Rules
	a, b := &s.bodies[wire.From.Box], &s.bodies[wire.To.Box]
	if !a.placed || !b.placed {
		return line{low: [2]int32{math.MaxInt32, math.MaxInt32}, high: [2]int32{math.MinInt32, math.MinInt32}}
	}
	from, to := a.spots[wire.From.Port], b.spots[wire.To.Port]
	l := line{active: true}
	l.a = from.On(a.rect).Add(from.Side.Step().Times(2))
	l.b = to.On(b.rect).Add(to.Side.Step().Times(2))
	l.low = [2]int32{int32(min(l.a.X, l.b.X)), int32(min(l.a.Y, l.b.Y))}
	l.high = [2]int32{int32(max(l.a.X, l.b.X)), int32(max(l.a.Y, l.b.Y))}
	dx, dy := geom.Abs(l.a.X-l.b.X), geom.Abs(l.a.Y-l.b.Y)
	l.cost = r.Col*dx + r.Row*dy + r.Bend*geom.MinBends(l.a, from.Side, l.b, to.Side.Opposite())
	if wire.Room > 0 && dx+3 < wire.Room {
		l.cost += 2 * (wire.Room - dx - 3)
	}
	if back := a.rect.Right() + 1 - b.rect.X; wire.Onward && back > 0 && wire.From.Box != wire.To.Box {
		l.cost += r.Back + r.Col*back
	}
	return l
}

// near tells whether the rectangles around two stand-ins have a cell in common. It is small so that it is inlined:
// most pairs end here.
func (l *line) near(k *line) bool {
	return k.high[0] >= l.low[0] && l.high[0] >= k.low[0] && k.high[1] >= l.low[1] && l.high[1] >= k.low[1]
}

// beside tells whether the rectangle around a stand-in has a cell in common with r.
func (l *line) beside(r *geom.Rect) bool {
	return int(l.high[0]) >= r.X && int(l.low[0]) <= r.X+r.W && int(l.high[1]) >= r.Y && int(l.low[1]) <= r.Y+r.H
}

// crosses tells whether two stand-ins that are near cross strictly inside both.
func crosses(k, l *line) bool {
	return parts(k, l) && parts(l, k)
}

// parts tells whether the ends of l lie strictly on both sides of k.
func parts(k, l *line) bool {
	x, y := k.b.X-k.a.X, k.b.Y-k.a.Y
	u := x*(l.a.Y-k.a.Y) - y*(l.a.X-k.a.X)
	v := x*(l.b.Y-k.a.Y) - y*(l.b.X-k.a.X)
	return u < 0 && v > 0 || u > 0 && v < 0
}

// turn is the sign of the turn from ab to ac.
func turn(a, b, c geom.Point) int {
	v := (b.X-a.X)*(c.Y-a.Y) - (b.Y-a.Y)*(c.X-a.X)
	switch {
	case v > 0:
		return 1
	case v < 0:
		return -1
	}
	return 0
}

// hits tells whether the stand-in of wire w runs through box b on r, if the wire does not end there.
func (s *state) hits(w int, l *line, b int, r *geom.Rect) bool {
	if wire := &s.p.Wires[w]; !l.beside(r) || wire.From.Box == b || wire.To.Box == b {
		return false
	}
	nw := turn(l.a, l.b, geom.Point{X: r.X, Y: r.Y})
	ne := turn(l.a, l.b, geom.Point{X: r.X + r.W, Y: r.Y})
	sw := turn(l.a, l.b, geom.Point{X: r.X, Y: r.Y + r.H})
	se := turn(l.a, l.b, geom.Point{X: r.X + r.W, Y: r.Y + r.H})
	return nw != ne || ne != sw || sw != se || nw == 0
}

// recount works out all costs afresh.
func (s *state) recount() {
	s.tiles.clear()
	s.cost = 0
	for b := range s.bodies {
		s.agreed[b], s.room[b], s.standing[b] = s.bodies[b].rect, s.bodies[b].roomOf(), s.bodies[b].placed
		s.through[b] = 0
		if s.standing[b] {
			put(s.tiles.boxes, s.tiles.over(s.room[b]), b)
		}
	}
	for w := range s.lines {
		s.lines[w], s.crossed[w], s.hit[w] = s.lineOf(w), 0, 0
		s.cost += s.lines[w].cost
		if s.lines[w].active {
			s.mark++
			s.cost += s.enter(w)
		}
	}
	s.bounds = s.boundsOf()
	s.size = s.sizeOf(s.bounds)
}

// enter puts the stand-in of wire w onto the tiles, counts what it meets there, and returns what that costs.
func (s *state) enter(w int) int {
	path := s.tiles.along(&s.lines[w])
	before := s.crossed[w]*s.p.Rules.Cross + s.hit[w]*s.p.Rules.Hit
	s.meet(w, path, 1)
	put(s.tiles.lines, path, w)
	return s.crossed[w]*s.p.Rules.Cross + s.hit[w]*s.p.Rules.Hit - before
}

// leave takes the stand-in of wire w off the tiles and no longer counts what it meets.
func (s *state) leave(w int) {
	path := s.tiles.along(&s.lines[w])
	drop(s.tiles.lines, path, w)
	s.meet(w, path, -1)
}

// meet counts the crossings of a stand-in with those on its tiles, and the boxes it runs through, by times.
func (s *state) meet(w int, path []int32, times int) {
	s.stamp++
	l := &s.lines[w]
	for _, at := range path {
		for _, v := range s.tiles.lines[at] {
			if s.met[v] == s.stamp {
				continue
			}
			s.met[v] = s.stamp
			if k := &s.lines[v]; l.near(k) && crosses(l, k) {
				s.crossed[w] += times
				s.crossed[v] += times
			}
		}
		for _, b := range s.tiles.boxes[at] {
			if s.passed[b] == s.stamp {
				continue
			}
			s.passed[b] = s.stamp
			if s.hits(w, l, int(b), &s.agreed[b]) {
				s.hit[w] += times
				s.through[b] += times
			}
		}
	}
}

// stand counts the stand-ins that run through box b as it is agreed on, by times.
func (s *state) stand(b, times int) {
	s.stamp++
	for _, at := range s.tiles.over(s.agreed[b]) {
		for _, v := range s.tiles.lines[at] {
			if s.met[v] == s.stamp {
				continue
			}
			s.met[v] = s.stamp
			if s.hits(int(v), &s.lines[v], b, &s.agreed[b]) {
				s.hit[v] += times
				s.through[b] += times
			}
		}
	}
}
