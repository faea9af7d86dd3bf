package planar

import (
	"slices"

	"example.com/lugbook/diagram/layout/geom"
)

// Prices of lengths: of a cell of wire, of a cell of a step between two parallel runs of a wire, which goes away when it
// comes to nothing, and of a column or row of the drawing.
const (
	cellPrice = 2
	stepPrice = 14
	sizePrice = 4
)

// clearance is the least distance of a wire to a box beside it, where it is not less already.
const clearance = 2

// tidy pushes a drawing together, columns and rows in turn, until that changes nothing or the rounds are over.
func (s *sketch) tidy(boxes []Box, r Rules, rounds int) {
	across := measures{gap: r.GapX, otherGap: r.GapY, pitch: r.Span}
	down := measures{gap: r.GapY, otherGap: r.GapX, pitch: r.Pitch}
	for i, b := range boxes {
		across.first, across.last = append(across.first, r.Span/2), append(across.last, r.Span/2)
		down.first, down.last = append(down.first, b.Head), append(down.last, min(1, s.boxes[i].H))
	}
	idle := 0
	for round := 0; round < 2*rounds && idle < 2; round++ {
		m := across
		if round%2 == 0 {
			m = down
			s.transpose()
		}
		idle++
		if s.squeeze(m) {
			idle = 0
		}
		if round%2 == 0 {
			s.transpose()
		}
	}
}

// transpose mirrors a drawing so that rows become columns.
func (s *sketch) transpose() {
	for i, b := range s.boxes {
		s.boxes[i] = geom.Rect{X: b.Y, Y: b.X, W: b.H, H: b.W}
	}
	for _, w := range s.wires {
		for k, p := range w {
			w[k] = geom.Point{X: p.Y, Y: p.X}
		}
	}
	for i := range s.ends {
		for k := range s.ends[i] {
			s.ends[i][k].side = 3 - s.ends[i][k].side // north and west, east and south
		}
	}
}

// measures are the distances along the axis that is being pushed together: of boxes on it and on the other one, and
// of wires on a side of a box from each other and, per box, from its ends.
type measures struct {
	gap, otherGap, pitch int
	first, last          []int
}

// squeezer finds new columns for the boxes and the upright runs of wires. All keep their order in every row, so that
// nothing crosses that did not before (Lengauer, "Combinatorial Algorithms for Integrated Circuit Layout", 1990).
// The first variables are the boxes.
type squeezer struct {
	*sketch
	coordinates
	m      measures
	bodies []body // per variable
	runs   [][]int
	known  map[[2]int]int // the gap between two variables
}

// body is a box or a run: its present column, width and rows.
type body struct {
	x, width, low, high int
	wire, corner        int // of a run; wire is none for a box
}

// squeeze moves boxes and runs to the columns that make the wires shortest. It reports whether anything changed.
func (s *sketch) squeeze(m measures) bool {
	q := &squeezer{sketch: s, m: m, known: map[[2]int]int{}}
	for _, b := range s.boxes {
		q.add(body{x: b.X, width: b.W, low: b.Y, high: b.Bottom(), wire: none})
	}
	for w := range s.wires {
		q.addRuns(w)
	}
	q.ports()
	q.order()
	q.clearCorners()
	for w := range s.wires {
		q.price(w)
	}
	start := make([]int, len(q.bodies))
	for v, b := range q.bodies {
		start[v] = b.x
	}
	x := q.bounded(start)
	changed := false
	for v := range q.bodies {
		changed = changed || x[v]-x[0] != start[v]-start[0]
	}
	q.apply(x)
	return changed
}

func (q *squeezer) add(b body) int {
	q.bodies = append(q.bodies, b)
	return q.variable()
}

// addRuns adds the upright runs of a wire, without the cells on the borders of boxes.
func (q *squeezer) addRuns(w int) {
	path := q.wires[w]
	runs := make([]int, len(path)-1)
	for i := range runs {
		runs[i] = none
		a, b := path[i], path[i+1]
		if a.X != b.X {
			continue
		}
		step := 1
		if a.Y > b.Y {
			step = -1
		}
		if i == 0 {
			a.Y += step
		}
		if i+2 == len(path) {
			b.Y -= step
		}
		runs[i] = q.add(body{x: a.X, low: min(a.Y, b.Y), high: max(a.Y, b.Y), wire: w, corner: i})
	}
	q.runs = append(q.runs, runs)
}

// ports keeps wires on the sides of their boxes, in their order, those of a group at their distance, and those that run
// through a box in one line.
func (q *squeezer) ports() {
	type seat struct {
		run int
		end End
	}
	sides := make([][2][]seat, len(q.boxes))
	for w, path := range q.wires {
		for k, run := range [2]int{q.runs[w][0], q.runs[w][len(path)-2]} {
			if run == none {
				continue
			}
			e := q.ends[w][k]
			q.apart(e.Box, run, q.m.first[e.Box])
			q.apart(run, e.Box, q.m.last[e.Box]-q.boxes[e.Box].W)
			at := 0
			if e.side == geom.South {
				at = 1
			}
			sides[e.Box][at] = append(sides[e.Box][at], seat{run, e.End})
		}
	}
	for b, both := range sides {
		for _, list := range both {
			slices.SortFunc(list, func(a, b seat) int { return q.bodies[a.run].x - q.bodies[b.run].x })
			for i := 0; i+1 < len(list); i++ {
				u, v := list[i], list[i+1]
				d := min(q.m.pitch, q.bodies[v.run].x-q.bodies[u.run].x)
				q.apart(u.run, v.run, d)
				if u.end.beside(v.end) {
					q.apart(v.run, u.run, -d)
				}
			}
		}
		if q.paired[b] && len(both[0]) == 1 && len(both[1]) == 1 {
			q.apart(both[0][0].run, both[1][0].run, 0)
			q.apart(both[1][0].run, both[0][0].run, 0)
		}
	}
}

// sorted lists the variables from left to right.
func (q *squeezer) sorted() []int {
	list := make([]int, len(q.bodies))
	for v := range list {
		list[v] = v
	}
	slices.SortStableFunc(list, func(a, b int) int { return q.bodies[a].x - q.bodies[b].x })
	return list
}

// order keeps what follows each other in a row in its order and at its distance.
func (q *squeezer) order() {
	last := map[int]int{}
	for _, v := range q.sorted() {
		b := q.bodies[v]
		for row := b.low; row <= b.high; row++ {
			if u, ok := last[row]; ok {
				q.keep(u, v, q.distance(u, v, row))
			}
			last[row] = v
		}
	}
}

// clearCorners keeps boxes apart that have fewer rows between them than they should.
func (q *squeezer) clearCorners() {
	last := map[int]int{}
	for _, v := range q.sorted() {
		b := q.bodies[v]
		if b.wire != none {
			continue
		}
		for row := b.low; row < b.high+q.m.otherGap; row++ {
			if u, ok := last[row]; ok && b.x > q.bodies[u].x+q.bodies[u].width {
				q.keep(u, v, q.m.gap)
			}
			last[row] = v
		}
	}
}

// distance is the least distance of two bodies that follow each other in a row.
func (q *squeezer) distance(u, v, row int) int {
	a, b := q.bodies[u], q.bodies[v]
	switch {
	case a.wire == none && b.wire == none:
		return q.m.gap
	case a.wire == none || b.wire == none:
		return clearance
	case a.wire == b.wire && q.step(a.wire, min(a.corner, b.corner), max(a.corner, b.corner), row):
		return 0
	}
	return 1
}

// step tells whether two runs of a wire are joined in the row and lead the same way.
func (q *squeezer) step(w, i, k, row int) bool {
	path := q.wires[w]
	return k == i+2 && path[k].Y == row && (path[i+1].Y > path[i].Y) == (path[k+1].Y > path[k].Y)
}

// keep holds v at a distance to the right of u, or as near as it is already.
func (q *squeezer) keep(u, v, distance int) {
	a, b := q.bodies[u], q.bodies[v]
	d := min(distance, b.x-a.x-a.width) + a.width
	at, seen := q.known[[2]int{u, v}]
	switch {
	case !seen:
		q.known[[2]int{u, v}] = len(q.gaps)
		q.apart(u, v, d)
	case q.gaps[at].d < d:
		q.gaps[at].d = d
	}
}

// price prices the level runs of a wire.
func (q *squeezer) price(w int) {
	path := q.wires[w]
	for i, run := range q.runs[w] {
		if run != none {
			continue
		}
		a, b := q.ends[w][0].Box, q.ends[w][1].Box
		price := cellPrice
		if i > 0 {
			a = q.runs[w][i-1]
		}
		if i+2 < len(path) {
			b = q.runs[w][i+1]
		}
		if i > 0 && i+2 < len(path) && q.step(w, i-1, i+1, path[i].Y) {
			price = stepPrice
		}
		if path[i].X > path[i+1].X {
			a, b = b, a
		}
		q.draw(a, b, price)
	}
}

// bounded solves the program with a price on the width of the whole.
func (q *squeezer) bounded(x []int) []int {
	low, high := q.variable(), q.variable()
	left, right := x[0], x[0]
	for v, b := range q.bodies {
		left, right = min(left, b.x), max(right, b.x+b.width)
		q.apart(low, v, 0)
		q.apart(v, high, b.width)
	}
	q.draw(low, high, sizePrice)
	return q.solveFrom(append(x, left, right))
}

// apply moves everything to its new column.
func (q *squeezer) apply(x []int) {
	for b := range q.boxes {
		q.boxes[b].X = x[b]
	}
	for w, path := range q.wires {
		last := len(path) - 1
		for i, run := range q.runs[w] {
			if run != none {
				path[i].X, path[i+1].X = x[run], x[run]
			}
		}
		if q.runs[w][0] == none {
			path[0].X = q.borderOf(q.ends[w][0])
		}
		if q.runs[w][last-1] == none {
			path[last].X = q.borderOf(q.ends[w][1])
		}
		q.wires[w] = clean(path)
	}
}

// borderOf is the column of the left or right border of a box.
func (q *squeezer) borderOf(e end) int {
	if e.side == geom.West {
		return q.boxes[e.Box].X
	}
	return q.boxes[e.Box].Right()
}
