package route

import "example.com/lugbook/diagram/layout/geom"

// search finds cheapest paths on a grid. A state is a cell and the direction in which it was entered.
type search struct {
	g     *grid
	costs Costs
	dist  []int32
	stamp []uint32
	from  []uint8 // direction in which the cell before was entered; stay when the wire turned in place at its end
	round uint32
	open  queue
	// exceeded tells whether the last search ended at its limit.
	exceeded bool
}

func newSearch(g *grid, costs Costs) *search {
	n := g.w * g.h * 4
	return &search{g: g, costs: costs, dist: make([]int32, n), stamp: make([]uint32, n), from: make([]uint8, n)}
}

// goal describes one search.
type goal struct {
	from, to     int // terminals
	start, end   int32
	out, in      geom.Side // directions of the first and of the last step
	origin, dest geom.Point
	label        int // straight line wanted first
	pressure     int // price of a taken slot; 0 forbids it
	limit        int // give up beyond this cost; 0 for never
	window       geom.Rect
}

// newGoal sets up the search for a wire; ok is false when a terminal has no free cell before it.
func (s *search) newGoal(p *Problem, w, pressure int) (goal, bool) {
	wire := p.Wires[w]
	a, b := p.Terminals[wire.From], p.Terminals[wire.To]
	q := goal{from: wire.From, to: wire.To, out: a.Side, in: b.Side.Opposite(), pressure: pressure,
		origin: a.At.Add(a.Side.Step()), dest: b.At.Add(b.Side.Step())}
	if a.Side.Horizontal() {
		q.label = wire.labelRoom()
	}
	if !s.g.inside(q.origin) || !s.g.inside(q.dest) {
		return q, false
	}
	q.start, q.end = s.g.index(q.origin), s.g.index(q.dest)
	ok := s.g.allows(q.start, axisOf(q.out), q.from, q.to) && s.g.allows(q.end, axisOf(q.in), q.from, q.to)
	return q, ok
}

// route finds the cells of the cheapest path, first within a window around both ends, then in ever larger ones.
func (s *search) route(q goal) ([]int32, bool) {
	whole := geom.Rect{X: s.g.x0, Y: s.g.y0, W: s.g.w - 1, H: s.g.h - 1}
	for room := 12; ; room *= 3 {
		q.window = geom.Around([]geom.Point{q.origin, q.dest}).Grow(room, room, room, room)
		if cells, ok := s.within(q); ok {
			return cells, true
		}
		if q.window.Union(whole) == q.window || q.limit > 0 && s.exceeded {
			return nil, false
		}
	}
}

// bound is a lower bound of the cost from a state to the goal.
func (s *search) bound(q *goal, at geom.Point, d geom.Side) int {
	return geom.Abs(at.X-q.dest.X)*s.costs.Col + geom.Abs(at.Y-q.dest.Y)*s.costs.Row +
		s.costs.Bend*geom.MinBends(at, d, q.dest, q.in)
}

func (s *search) within(q goal) ([]int32, bool) {
	s.round++
	s.open.reset()
	price := s.slot(&q, q.start, axisOf(q.out))
	if price < 0 {
		return nil, false
	}
	base := s.bound(&q, q.origin, q.out)
	s.relax(&q, q.start, q.origin, q.out, price, 0, base)
	for {
		key, state, ok := s.open.pop()
		if !ok || q.limit > 0 && key+base > q.limit {
			s.exceeded = ok
			return nil, false
		}
		c, d := state>>2, geom.Side(state&3)
		at := s.g.point(c)
		cost := int(s.dist[state])
		if cost+s.bound(&q, at, d) < key+base {
			continue // a better way was found since
		}
		if c == q.end && d == q.in {
			return s.trace(q, state), true
		}
		s.expand(&q, c, at, d, cost, base)
	}
}

// expand tries the cells ahead, to the right and to the left.
func (s *search) expand(q *goal, c int32, at geom.Point, d geom.Side, cost, base int) {
	for _, turn := range [3]geom.Side{0, 1, 3} {
		leave := (d + turn) & 3
		paid := cost
		if turn != 0 {
			corner := s.corner(q, c, at, d, leave)
			if corner < 0 {
				continue
			}
			paid += corner
			if c == q.end && leave == q.in {
				s.relaxEnd(q, c, at, d, paid, base)
			}
		}
		next := at.Add(leave.Step())
		if !q.window.Contains(next) || !s.g.inside(next) {
			continue
		}
		n := c + s.g.step[leave]
		price := s.enter(q, n, leave)
		if price < 0 {
			continue
		}
		s.relax(q, n, next, leave, paid+price, uint8(d), base)
	}
}

// slot is the price of taking a slot, negative if that is not allowed.
func (s *search) slot(q *goal, c int32, axis int) int {
	if !s.g.allows(c, axis, q.from, q.to) {
		return -1
	}
	if s.g.private(c, q.from, q.to) {
		return 0
	}
	taken := int(s.g.use[axis][c])
	if q.pressure == 0 {
		if taken > 0 {
			return -1
		}
		return 0
	}
	if taken > 0 {
		return taken*q.pressure + int(s.g.past[axis][c])
	}
	return int(s.g.past[axis][c]) / 2
}

// corner is the price of turning in c, negative if that is not allowed.
func (s *search) corner(q *goal, c int32, at geom.Point, d, leave geom.Side) int {
	if s.g.static[c]&frame != 0 {
		return -1
	}
	price := s.slot(q, c, axisOf(leave))
	if price < 0 {
		return -1
	}
	price += s.costs.Bend
	if q.label > 0 && d == q.out && at.Y == q.origin.Y && geom.Abs(at.X-q.origin.X) < q.label-1 {
		price += s.costs.Label
	}
	return price
}

// enter is the price of moving into c, negative if that is not allowed.
func (s *search) enter(q *goal, c int32, d geom.Side) int {
	axis := axisOf(d)
	price := s.slot(q, c, axis)
	if price < 0 {
		return -1
	}
	price += int(s.g.extra[c])
	if axis == level {
		price += s.costs.Col
	} else {
		price += s.costs.Row + int(s.g.apron[c])
	}
	if s.g.static[c]&frame != 0 {
		price += s.costs.Frame
	}
	if !s.g.private(c, q.from, q.to) {
		price += s.costs.Cross * int(s.g.use[1-axis][c])
	} else {
		price += s.costs.Shared
	}
	return price
}

func (s *search) relax(q *goal, c int32, at geom.Point, d geom.Side, cost int, from uint8, base int) {
	state := c<<2 | int32(d)
	if s.stamp[state] == s.round && int(s.dist[state]) <= cost {
		return
	}
	s.stamp[state], s.dist[state], s.from[state] = s.round, int32(cost), from
	s.open.push(max(cost+s.bound(q, at, d)-base, 0), state)
}

// stay marks a state reached by turning in place, on the last cell of a wire.
const stay = 4

func (s *search) relaxEnd(q *goal, c int32, at geom.Point, d geom.Side, cost, base int) {
	s.relax(q, c, at, q.in, cost, uint8(d)|stay, base)
}

// trace walks back from the last state and returns the cells from start to end.
func (s *search) trace(q goal, state int32) []int32 {
	var cells []int32
	for {
		c, d, from := state>>2, state&3, s.from[state]
		if from&stay != 0 {
			state = c<<2 | int32(from&3)
			continue
		}
		cells = append(cells, c)
		if c == q.start && d == int32(q.out) {
			break
		}
		state = (c-s.g.step[d])<<2 | int32(from)
	}
	for i, j := 0, len(cells)-1; i < j; i, j = i+1, j-1 {
		cells[i], cells[j] = cells[j], cells[i]
	}
	return cells
}
