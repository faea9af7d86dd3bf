package route

import (
	"sort"

	"example.com/lugbook/diagram/layout/geom"
)

// router holds the state of one problem while its wires are drawn.
type router struct {
	p        *Problem
	g        *grid
	s        *search
	pressure int       // with which the next negotiation begins
	lesson   int       // what one round in conflict adds to the price of a slot
	shared   []int     // per wire the number of its slots that others have as well
	cells    [][]int32 // per wire the cells it runs through, terminals' own cells left out; nil when not routed
}

func newRouter(p *Problem) *router {
	r := &router{p: p, lesson: lessonStart, cells: make([][]int32, len(p.Wires)), shared: make([]int, len(p.Wires))}
	if p.Paths == nil {
		p.Paths = make([][]geom.Point, len(p.Wires))
	}
	if p.longer == nil {
		p.longer = p.stubsDrawn()
	}
	r.rebuild()
	return r
}

// rebuild makes the grid anew and puts back every path that is still legal. Post: no slot is taken twice by wires
// taken over from Paths.
func (r *router) rebuild() { r.rebuildSharing(false) }

// rebuildSharing is rebuild that also keeps paths which share slots, if so asked.
func (r *router) rebuildSharing(shared bool) {
	r.g = newGrid(r.p)
	if r.s == nil {
		r.s = newSearch(r.g, r.p.Costs)
	}
	r.s.reuse(r.g)
	clear(r.shared)
	for w := range r.p.Wires {
		r.cells[w] = nil
		if cells, ok := r.adopt(w, shared); ok {
			r.take(w, cells)
		}
	}
}

// adopt turns the path of a wire into cells, if it still joins its terminals and nothing is in its way, or, if so asked,
// nothing but other wires.
func (r *router) adopt(w int, shared bool) ([]int32, bool) {
	path := r.p.Paths[w]
	q, ok := r.s.newGoal(r.p, w, 0)
	if !ok || len(path) < 2 {
		return nil, false
	}
	a, b := r.p.Terminals[q.from], r.p.Terminals[q.to]
	if path[0] != a.At || path[len(path)-1] != b.At {
		return nil, false
	}
	first, ok1 := geom.Toward(path[0], path[1])
	last, ok2 := geom.Toward(path[len(path)-2], path[len(path)-1])
	cells := r.along(path)
	if !ok1 || !ok2 || first != q.out || last != q.in || cells == nil {
		return nil, false
	}
	legal := len(cells) > 0
	r.visit(&q, cells, func(c int32, axis int, turn bool) {
		if !shared && !r.s.free(&q, c, axis) || !r.g.allows(c, axis, q.from, q.to) || (turn && r.g.cell[c].static&frame != 0) {
			legal = false
		}
	})
	return cells, legal
}

// along lists the cells of a path without those of its ends; nil if it is oblique or leaves the grid.
func (r *router) along(path []geom.Point) []int32 {
	var cells []int32
	for i := 0; i+1 < len(path); i++ {
		d, straight := geom.Toward(path[i], path[i+1])
		if !straight {
			return nil
		}
		for at := path[i]; at != path[i+1]; {
			at = at.Add(d.Step())
			if at == path[len(path)-1] {
				break
			}
			if !r.g.inside(at) {
				return nil
			}
			cells = append(cells, r.g.index(at))
		}
	}
	return cells
}

// visit calls f for every slot that a path takes.
func (r *router) visit(q *goal, cells []int32, f func(c int32, axis int, turn bool)) {
	in := axisOf(q.out)
	for i, c := range cells {
		out := axisOf(q.in)
		if i+1 < len(cells) {
			out = upright
			if d := cells[i+1] - c; d == 1 || d == -1 {
				out = level
			}
		}
		f(c, in, in != out)
		if in != out {
			f(c, out, true)
		}
		in = out
	}
}

func (r *router) goalOf(w int) goal {
	q, _ := r.s.newGoal(r.p, w, 0)
	return q
}

// take enters the cells of a wire into the slots.
func (r *router) take(w int, cells []int32) {
	q := r.goalOf(w)
	r.cells[w] = cells
	r.enter(w, &q, cells, 1)
}

// rip takes a wire out of the slots and returns its cells.
func (r *router) rip(w int) []int32 {
	q := r.goalOf(w)
	cells := r.cells[w]
	r.enter(w, &q, cells, -1)
	r.cells[w] = nil
	return cells
}

// draw routes one wire at the given pressure, 0 for by free slots only.
func (r *router) draw(w, pressure int) bool { return r.drawWithin(w, pressure, 0) }

// drawWithin is draw that gives up beyond a cost; 0 for never.
func (r *router) drawWithin(w, pressure, limit int) bool {
	q, ok := r.s.newGoal(r.p, w, pressure)
	if !ok {
		return false
	}
	q.limit = limit
	cells, ok := r.s.route(q)
	if ok {
		r.take(w, cells)
	}
	return ok
}

// conflicted tells whether a wire shares a slot.
func (r *router) conflicted(w int) bool { return r.shared[w] > 0 }

// conflict finds the first slot that a wire shares.
func (r *router) conflict(w int) (cell int32, axis int, found bool) {
	q := r.goalOf(w)
	r.visit(&q, r.cells[w], func(c int32, a int, _ bool) {
		if !found && !r.g.private(c, q.from, q.to) && r.g.cell[c].use[a] > 1 {
			cell, axis, found = c, a, true
		}
	})
	return cell, axis, found
}

// cost is what a wire's path costs among the other wires, by the same prices as the search.
func (r *router) cost(w int) int {
	q := r.goalOf(w)
	sum, last := 0, int32(-1)
	if straight := q.origin.Y == q.dest.Y; straight && q.label > len(r.cells[w]) && q.label > 0 {
		sum = 2 * r.p.Costs.Col * (q.label - len(r.cells[w])) // a straight wire too short for its best label
	}
	r.visit(&q, r.cells[w], func(c int32, axis int, turn bool) {
		if turn && c == last {
			sum += r.p.Costs.Bend + r.labelFine(&q, c, axis)
			return
		}
		last = c
		if axis == level {
			sum += r.p.Costs.Col
		} else {
			sum += r.p.Costs.Row + int(r.g.apron[c])
		}
		sum += int(r.g.cell[c].extra)
		if r.g.cell[c].static&frame != 0 {
			sum += r.p.Costs.Frame
		}
		if r.g.private(c, q.from, q.to) {
			sum += r.p.Costs.Shared
		} else if !turn {
			sum += r.company(c, axis)
		}
	})
	return sum
}

// company is the price of the other wires that a wire meets as it runs straight through a cell.
func (r *router) company(c int32, axis int) int {
	cell := &r.g.cell[c]
	sum := r.p.Costs.Beside * int(cell.beside[axis])
	if cell.use[1-axis] == 0 {
		return sum
	}
	sum += r.p.Costs.Cross * int(cell.use[1-axis])
	if cell.turns[level]+cell.turns[upright] > 0 || r.g.owner[c] != 0 {
		sum += r.p.Costs.Hidden
	}
	return sum
}

// labelFine is the price of bending before there is room for a label.
func (r *router) labelFine(q *goal, c int32, axis int) int {
	at := r.g.point(c)
	first := q.label > 0 && at.Y == q.origin.Y && axis == upright
	if first && geom.Abs(at.X-q.origin.X) < q.label-1 {
		return r.p.Costs.Label
	}
	return 0
}

// store writes the cells of all wires into the problem's paths; a wire without a route gets none.
func (r *router) store() {
	for w := range r.cells {
		r.p.Paths[w] = r.path(w)
	}
}

// path is a wire's corners from terminal to terminal; nil for a wire without a route.
func (r *router) path(w int) []geom.Point {
	if r.missing(w) {
		return nil
	}
	wire := r.p.Wires[w]
	path := []geom.Point{r.p.Terminals[wire.From].At}
	for _, c := range r.cells[w] {
		path = append(path, r.g.point(c))
	}
	return corners(append(path, r.p.Terminals[wire.To].At))
}

// corners drops the points of a path at which it does not turn.
func corners(path []geom.Point) []geom.Point {
	out := path[:1:1]
	for i := 1; i+1 < len(path); i++ {
		a, _ := geom.Toward(path[i-1], path[i])
		b, _ := geom.Toward(path[i], path[i+1])
		if a != b {
			out = append(out, path[i])
		}
	}
	return append(out, path[len(path)-1])
}

// byDistance lists the wires that f accepts, those with near ends first.
func (r *router) byDistance(f func(w int) bool) []int {
	var out []int
	for w := range r.p.Wires {
		if f(w) {
			out = append(out, w)
		}
	}
	length := func(w int) int {
		d := r.p.Terminals[r.p.Wires[w].From].At.Sub(r.p.Terminals[r.p.Wires[w].To].At)
		return geom.Abs(d.X) + geom.Abs(d.Y)
	}
	sort.SliceStable(out, func(i, j int) bool { return length(out[i]) < length(out[j]) })
	return out
}
