package route

import "example.com/lugbook/diagram/layout/geom"

// search finds cheapest paths on a grid. A state is a cell and the direction in which it was entered.
type search struct {
	g      *grid
	costs  Costs
	states []state
	round  uint32
	open   queue
	bends  [36]int32 // least price of the bends to the goal, by direction and by the signs of the way there
	// exceeded tells whether the last search ended at its limit.
	exceeded bool
}

// state is what is known of a cell and a direction: the least cost so far, and in one number the search this is from
// and the direction in which the cell before was entered.
type state struct {
	dist int32
	mark uint32
}

// stay marks a state reached by turning in place, on the last cell of a wire.
const stay = 4

// lastRound is the number of searches after which all marks are wiped.
const lastRound = 1<<24 - 1

func newSearch(g *grid, costs Costs) *search {
	return &search{g: g, costs: costs, states: make([]state, g.w*g.h*4)}
}

// reuse makes the search ready for another grid.
func (s *search) reuse(g *grid) {
	s.g = g
	if n := g.w * g.h * 4; n > len(s.states) {
		s.states = make([]state, n)
	}
}

// goal describes one search.
type goal struct {
	from, to     int // terminals; to is -1 for a mere cell
	start, end   int32
	out, in      geom.Side // directions of the first and of the last step
	anyIn        bool      // the last step may go any way
	origin, dest geom.Point
	label        int // straight line wanted first
	pressure     int // price of a taken slot; 0 forbids it
	limit        int // give up beyond this cost; 0 for never
	greed        int // eighths by which the length still to go counts more: faster, but not the very cheapest way
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
	whole := s.g.whole()
	restore := s.g.unlock(q.from, q.to)
	defer s.g.lock(restore)
	s.priceBends(&q)
	for room := 12; ; room *= 3 {
		q.window = geom.Around([]geom.Point{q.origin, q.dest}).Grow(room, room, room, room)
		if cells, ok := s.within(&q); ok {
			return cells, true
		}
		if q.window.Union(whole) == q.window || q.limit > 0 && s.exceeded {
			return nil, false
		}
	}
}

// bound is a lower bound of the cost from a place on a wire's way to its end.
func (s *search) bound(q *goal, at geom.Point, d geom.Side) int {
	return geom.Abs(at.X-q.dest.X)*s.costs.Col + geom.Abs(at.Y-q.dest.Y)*s.costs.Row +
		s.costs.Bend*geom.MinBends(at, d, q.dest, q.in)
}

// priceBends fills in the table of bends for a goal.
func (s *search) priceBends(q *goal) {
	for k := range s.bends {
		at, d := geom.Point{X: k/3%3 - 1, Y: k%3 - 1}, geom.Side(k/9)
		least := geom.MinBends(at, d, geom.Point{}, q.in)
		for in := geom.Side(0); q.anyIn && in < 4; in++ {
			least = min(least, geom.MinBends(at, d, geom.Point{}, in))
		}
		s.bends[k] = int32(s.costs.Bend * least)
	}
}

// ahead is bound by the table.
func (s *search) ahead(q *goal, x, y int, d geom.Side) int {
	x, y = x-q.dest.X, y-q.dest.Y
	k := int(d)*9 + 4
	length := 0
	switch {
	case x > 0:
		k, length = k+3, x*s.costs.Col
	case x < 0:
		k, length = k-3, -x*s.costs.Col
	}
	switch {
	case y > 0:
		k, length = k+1, length+y*s.costs.Row
	case y < 0:
		k, length = k-1, length-y*s.costs.Row
	}
	return length + length*q.greed>>3 + int(s.bends[k])
}

// nextRound makes all states unknown.
func (s *search) nextRound() {
	if s.round++; s.round > lastRound {
		clear(s.states)
		s.round = 1
	}
}

// within searches the window. Pre: the cells of both terminals are unlocked, the bends priced.
func (s *search) within(q *goal) ([]int32, bool) {
	s.nextRound()
	s.open.reset()
	price := s.slot(q, q.start, axisOf(q.out))
	if price < 0 {
		return nil, false
	}
	frontier := frontier{search: s, q: q, base: s.ahead(q, q.origin.X, q.origin.Y, q.out),
		left: max(q.window.X, s.g.x0), right: min(q.window.Right(), s.g.x0+s.g.w-1),
		top: max(q.window.Y, s.g.y0), bottom: min(q.window.Bottom(), s.g.y0+s.g.h-1)}
	frontier.relax(q.start, q.origin.X, q.origin.Y, q.out, price, 0)
	for {
		key, item, ok := s.open.pop()
		if !ok || q.limit > 0 && key+frontier.base > q.limit {
			s.exceeded = ok
			return nil, false
		}
		if s.states[item.state].dist < item.cost {
			continue // a better way was found since
		}
		c, d := item.state>>2, geom.Side(item.state&3)
		if c == q.end && (d == q.in || q.anyIn) {
			return s.trace(q, item.state), true
		}
		frontier.expand(c, int(item.x), int(item.y), d, int(item.cost))
	}
}

// frontier is a search within a window.
type frontier struct {
	*search
	q                        *goal
	base                     int // the bound at the start, from which keys count
	left, right, top, bottom int
}

// expand tries the cells ahead, to the right and to the left.
func (f *frontier) expand(c int32, x, y int, d geom.Side, cost int) {
	f.step(c, x, y, d, d, cost)
	if f.g.cell[c].static&frame != 0 {
		return
	}
	corner := f.slot(f.q, c, 1-axisOf(d))
	if corner < 0 {
		return
	}
	corner += cost + f.costs.Bend
	if c != f.q.start && f.g.cell[c-f.g.step[d]].use[1-axisOf(d)] > 0 {
		corner += f.costs.Hidden
	}
	if q := f.q; q.label > 0 && d == q.out && y == q.origin.Y && geom.Abs(x-q.origin.X) < q.label-1 {
		corner += f.costs.Label
	}
	for _, leave := range [2]geom.Side{(d + 1) & 3, (d + 3) & 3} {
		if c == f.q.end && leave == f.q.in {
			f.relax(c, x, y, leave, corner, uint32(d)|stay)
		}
		f.step(c, x, y, d, leave, corner)
	}
}

// step enters the next cell that way, if that is allowed.
func (f *frontier) step(c int32, x, y int, d, leave geom.Side, cost int) {
	switch leave {
	case geom.North:
		y--
	case geom.East:
		x++
	case geom.South:
		y++
	default:
		x--
	}
	if x < f.left || x > f.right || y < f.top || y > f.bottom {
		return
	}
	n := c + f.g.step[leave]
	axis := int(leave&1) ^ 1
	cell := &f.g.cell[n]
	price := int(cell.pass[axis])
	if price == noPass {
		return
	}
	switch taken := int(cell.use[axis]); {
	case f.q.pressure == 0:
		if taken > 0 {
			return
		}
	case taken > 0:
		price += taken*f.q.pressure + int(cell.past[axis])
	default:
		price += int(cell.past[axis]) / 2
	}
	price += f.costs.Beside * int(cell.beside[axis])
	if crossed := int(cell.use[1-axis]); crossed > 0 {
		price += f.costs.Cross * crossed
		if leave != d || cell.turns[1-axis] > 0 {
			price += f.costs.Hidden
		}
	}
	f.relax(n, x, y, leave, cost+price, uint32(d))
}

func (f *frontier) relax(c int32, x, y int, d geom.Side, cost int, from uint32) {
	at := c<<2 | int32(d)
	known := &f.states[at]
	if known.mark>>8 == f.round && int(known.dist) <= cost {
		return
	}
	known.mark, known.dist = f.round<<8|from, int32(cost)
	f.open.push(max(cost+f.ahead(f.q, x, y, d)-f.base, 0), queued{at, int32(cost), int16(x), int16(y)})
}

// slot is the price of taking a slot, negative if that is not allowed. Pre: the cells of both terminals are unlocked.
func (s *search) slot(q *goal, c int32, axis int) int {
	cell := &s.g.cell[c]
	if cell.pass[axis] == noPass {
		return -1
	}
	taken := int(cell.use[axis])
	if q.pressure == 0 {
		if taken > 0 {
			return -1
		}
		return 0
	}
	if taken > 0 {
		return taken*q.pressure + int(cell.past[axis])
	}
	return int(cell.past[axis]) / 2
}

// free tells whether a wire may take a slot that no other wire has.
func (s *search) free(q *goal, c int32, axis int) bool {
	return s.g.allows(c, axis, q.from, q.to) && (s.g.private(c, q.from, q.to) || s.g.cell[c].use[axis] == 0)
}

// trace walks back from the last state and returns the cells from start to end.
func (s *search) trace(q *goal, at int32) []int32 {
	var cells []int32
	for {
		c, d, from := at>>2, at&3, s.states[at].mark&7
		if from&stay != 0 {
			at = c<<2 | int32(from&3)
			continue
		}
		cells = append(cells, c)
		if c == q.start && d == int32(q.out) {
			break
		}
		at = (c-s.g.step[d])<<2 | int32(from)
	}
	for i, j := 0, len(cells)-1; i < j; i, j = i+1, j-1 {
		cells[i], cells[j] = cells[j], cells[i]
	}
	return cells
}
