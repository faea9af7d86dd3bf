package place

import (
	"math"

	"example.com/lugbook/diagram/layout/geom"
)

// mostLegs is the number of legs of a course that goes around both of its boxes. A leg is numbered by its wire, shifted
// by legBits, and its place in the course.
const (
	mostLegs = 5
	legBits  = 3
)

// course is the stand-in of a wire: straight from two cells before the one terminal to two cells before the other, but
// around the boxes that these belong to.
type course struct {
	legs [mostLegs]leg
	n    int // none while a box is not placed
	cost int
}

// leg is a straight part of a course, and its columns and rows.
type leg struct {
	a, b      geom.Point
	low, high [2]int32
}

func newLeg(a, b geom.Point) leg {
	return leg{a, b, [2]int32{int32(min(a.X, b.X)), int32(min(a.Y, b.Y))}, [2]int32{int32(max(a.X, b.X)), int32(max(a.Y, b.Y))}}
}

// near tells whether the rectangles around two legs have a cell in common. It is small so that it is inlined: most
// pairs end here.
func (l *leg) near(k *leg) bool {
	return k.high[0] >= l.low[0] && l.high[0] >= k.low[0] && k.high[1] >= l.low[1] && l.high[1] >= k.low[1]
}

// crosses tells whether two legs that are near cross strictly inside both.
func crosses(k, l *leg) bool {
	return parts(k, l) && parts(l, k)
}

// parts tells whether the ends of l lie strictly on both sides of k.
func parts(k, l *leg) bool {
	x, y := k.b.X-k.a.X, k.b.Y-k.a.Y
	u := x*(l.a.Y-k.a.Y) - y*(l.a.X-k.a.X)
	v := x*(l.b.Y-k.a.Y) - y*(l.b.X-k.a.X)
	return u < 0 && v > 0 || u > 0 && v < 0
}

// cuts tells whether the way from a to b meets the rectangle.
func cuts(a, b geom.Point, r *geom.Rect) bool {
	if max(a.X, b.X) < r.X || min(a.X, b.X) > r.X+r.W || max(a.Y, b.Y) < r.Y || min(a.Y, b.Y) > r.Y+r.H {
		return false
	}
	x, y := b.X-a.X, b.Y-a.Y
	side := func(px, py int) int { return x*(py-a.Y) - y*(px-a.X) }
	nw, ne := side(r.X, r.Y), side(r.X+r.W, r.Y)
	sw, se := side(r.X, r.Y+r.H), side(r.X+r.W, r.Y+r.H)
	return !(nw > 0 && ne > 0 && sw > 0 && se > 0 || nw < 0 && ne < 0 && sw < 0 && se < 0)
}

// end is where a course begins or ends: its box, the spot there and the cell two before it.
type end struct {
	rect  *geom.Rect
	spot  Spot
	start geom.Point
}

func (b *body) end(port int) end {
	s := b.spots[port]
	return end{&b.rect, s, s.On(b.rect).Add(s.Side.Step().Times(2))}
}

// corners are the points by which a course gets from its start around its own box to a goal: none, one or two, nearest
// to the start first. The farther a terminal is from the corner the wider the turn, so that wires of one side do not
// cross there.
func (e *end) corners(goal geom.Point, r *Rules) (out [2]geom.Point, n int) {
	if !cuts(e.start, goal, e.rect) {
		return out, 0
	}
	best := 0
	for way := range 2 {
		first, second := e.around(way, r)
		length := between(e.start, first)
		k := 1
		if cuts(first, goal, e.rect) {
			k = 2
			length += between(first, second) + between(second, goal)
		} else {
			length += between(first, goal)
		}
		if k == 2 && cuts(second, goal, e.rect) {
			length = math.MaxInt // the other way is the one
		}
		if n == 0 || length < best {
			out, n, best = [2]geom.Point{first, second}, k, length
		}
	}
	return out, n
}

// widest is the number of tracks that a turn around a box takes at most.
const widest = 12

// around gives the two corners of a box that a wire passes on one of the two ways around it.
func (e *end) around(way int, r *Rules) (first, second geom.Point) {
	step := e.spot.Side.Step()
	length, pitch := e.rect.W, r.Span
	if e.spot.Side.Horizontal() {
		length, pitch = e.rect.H, r.Pitch
	}
	far := e.spot.Offset
	if way == 1 {
		far = length - far
	}
	room := 2 + min(far/pitch, widest)
	box := e.rect.Grow(room, room, room, room)
	lowX, highX, lowY, highY := box.X, box.Right(), box.Y, box.Bottom()
	if e.spot.Side.Horizontal() {
		y := lowY
		if way == 1 {
			y = highY
		}
		if step.X > 0 {
			return geom.Point{X: highX, Y: y}, geom.Point{X: lowX, Y: y}
		}
		return geom.Point{X: lowX, Y: y}, geom.Point{X: highX, Y: y}
	}
	x := lowX
	if way == 1 {
		x = highX
	}
	if step.Y > 0 {
		return geom.Point{X: x, Y: highY}, geom.Point{X: x, Y: lowY}
	}
	return geom.Point{X: x, Y: lowY}, geom.Point{X: x, Y: highY}
}

// between is the number of steps from a to b.
func between(a, b geom.Point) int { return geom.Abs(a.X-b.X) + geom.Abs(a.Y-b.Y) }

// courseOf makes the stand-in of a wire and prices it: length, the fewest bends its ends allow, the want of room for a
// label, and an onward wire that goes back.
func (s *state) courseOf(w int) course {
	var c course
	wire, r := &s.p.Wires[w], &s.p.Rules
	a, b := &s.bodies[wire.From.Box], &s.bodies[wire.To.Box]
	if !a.placed || !b.placed {
		return c
	}
	from, to := a.end(wire.From.Port), b.end(wire.To.Port)
	c.draw(&from, &to, r)
	for k := range c.n {
		l := &c.legs[k]
		c.cost += r.Col*int(l.high[0]-l.low[0]) + r.Row*int(l.high[1]-l.low[1])
	}
	c.cost += r.Bend * geom.MinBends(from.start, from.spot.Side, to.start, to.spot.Side.Opposite())
	if dx := geom.Abs(from.start.X - to.start.X); wire.Room > 0 && dx+3 < wire.Room {
		c.cost += 4 + 2*(wire.Room-dx-3)
	}
	if back := a.rect.Right() + 1 - b.rect.X; wire.Onward && back > 0 && wire.From.Box != wire.To.Box {
		c.cost += r.Back + r.Col*back
	}
	return c
}

// draw makes the legs.
func (c *course) draw(from, to *end, r *Rules) {
	there, n := from.corners(to.start, r)
	back, m := to.corners(last(from.start, there, n), r)
	for range 2 {
		if m == 0 {
			break
		}
		there, n = from.corners(last(to.start, back, m), r)
		back, m = to.corners(last(from.start, there, n), r)
	}
	at := from.start
	for _, p := range there[:n] {
		c.add(at, p)
		at = p
	}
	for k := m - 1; k >= 0; k-- {
		c.add(at, back[k])
		at = back[k]
	}
	c.add(at, to.start)
}

// last is the last of n corners, or the start if there is none.
func last(start geom.Point, corners [2]geom.Point, n int) geom.Point {
	if n == 0 {
		return start
	}
	return corners[n-1]
}

func (c *course) add(a, b geom.Point) {
	c.legs[c.n] = newLeg(a, b)
	c.n++
}
