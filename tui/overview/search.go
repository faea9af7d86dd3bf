package overview

import (
	"container/heap"

	"example.com/lugbook/diagram/scene"
)

// Prices of a line. A row is about two columns high.
const (
	columnPrice   = 1
	rowPrice      = 2
	bendPrice     = 4
	crossingPrice = 6
)

// sides lists the four ways.
var sides = [...]scene.Side{scene.North, scene.East, scene.South, scene.West}

// step is a cell of a line with the way that it was entered.
type step struct {
	at  scene.Point
	way scene.Side
}

// walk is a search for the cheapest way between two tokens.
type walk struct {
	*sketch
	from, to token
	a, b     int
	cost     []int32 // by step; 0 for one that was not reached
	back     []int32 // the step before, by step; itself for the first
	queue    frontier
}

// number is the place of a step in lists.
func (s *sketch) number(at step) int32 {
	return int32((at.at.Y*s.w+at.at.X)*len(sides) + int(at.way))
}

// numbered is the step with a number.
func (s *sketch) numbered(n int32) step {
	cell := int(n) / len(sides)
	return step{scene.Point{X: cell % s.w, Y: cell / s.w}, scene.Side(int(n) % len(sides))}
}

// search finds the cheapest way from a cell of the one token to a cell of the other; nil if
// there is none. It crosses lines at right angles, away from their corners and from tokens.
func (w *walk) search(q pair) []scene.Point {
	w.a, w.b, w.from, w.to = q.a, q.b, w.tokens[q.a], w.tokens[q.b]
	if w.from.w == 0 || w.to.w == 0 {
		return nil
	}
	clear(w.cost)
	w.queue = w.queue[:0]
	for x := range w.from.w {
		for _, way := range sides {
			end := x == 0 && way == scene.West || x == w.from.w-1 && way == scene.East
			if end || way == scene.North || way == scene.South {
				w.start(step{w.from.at.Add(x, 0), way})
			}
		}
	}
	for len(w.queue) > 0 {
		e := heap.Pop(&w.queue).(entry)
		s := w.numbered(e.step)
		if e.cost > w.cost[e.step] {
			continue
		}
		if w.arrived(s.at) {
			return w.path(e.step)
		}
		for _, way := range sides {
			w.try(s, e.cost, way)
		}
	}
	return nil
}

// start leaves the first token, at best in its middle.
func (w *walk) start(s step) {
	first := w.number(s)
	w.cost[first], w.back[first] = 1, first
	next := step{s.at.Add(s.way.Step()), s.way}
	if w.on(next.at) && w.use(next.at) == free {
		w.reach(first, next, 1+price(s.way)+int32(abs(s.at.X-w.from.middle().X)))
	}
}

func price(way scene.Side) int32 {
	if way == scene.East || way == scene.West {
		return columnPrice
	}
	return rowPrice
}

func (w *walk) reach(from int32, to step, cost int32) {
	n := w.number(to)
	if old := w.cost[n]; old != 0 && old <= cost {
		return
	}
	w.cost[n], w.back[n] = cost, from
	rest := columnPrice*max(0, w.to.at.X-to.at.X, to.at.X-w.to.at.X-w.to.w+1) + rowPrice*abs(to.at.Y-w.to.at.Y)
	heap.Push(&w.queue, entry{step: n, cost: cost, least: cost + int32(rest)})
}

// arrived reports whether a cell is one of the second token.
func (w *walk) arrived(p scene.Point) bool {
	return p.Y == w.to.at.Y && p.X >= w.to.at.X && p.X < w.to.at.X+w.to.w
}

// try goes on from a cell in some way.
func (w *walk) try(s step, cost int32, way scene.Side) {
	next := step{s.at.Add(way.Step()), way}
	if way == (s.way+2)%4 || !w.on(next.at) {
		return
	}
	cost += price(way)
	if way != s.way {
		if !w.mayTurn(s.at) {
			return
		}
		cost += bendPrice
	}
	level := way == scene.East || way == scene.West
	switch w.use(next.at) {
	case free:
	case levelRun, uprightRun:
		if level == (w.use(next.at) == levelRun) {
			return
		}
		cost += crossingPrice
	case blocked:
		if !w.arrived(next.at) || w.use(s.at) != free {
			return
		}
	default:
		return
	}
	w.reach(w.number(s), next, cost)
}

// mayTurn reports whether a line may turn in a cell: a free one that touches no token but its
// own and no other corner, so that nothing looks joined that is not.
func (w *walk) mayTurn(p scene.Point) bool {
	by := w.by[p.Y*w.w+p.X]
	if w.use(p) != free || by == several || by >= 0 && by != w.a && by != w.b {
		return false
	}
	for _, way := range sides {
		if n := p.Add(way.Step()); w.on(n) && w.use(n) == corner {
			return false
		}
	}
	return true
}

// path is the way that led to a step.
func (w *walk) path(n int32) []scene.Point {
	cells := []scene.Point{w.numbered(n).at}
	for w.back[n] != n {
		n = w.back[n]
		cells = append(cells, w.numbered(n).at)
	}
	return cells
}

// frontier is a queue of steps, the most promising first.
type frontier []entry

type entry struct{ step, cost, least int32 }

// Len, Less, Swap, Push and Pop make it a heap.
func (f frontier) Len() int { return len(f) }

// Less puts the more promising first; of equals that with the lower number.
func (f frontier) Less(i, j int) bool {
	return f[i].least < f[j].least || f[i].least == f[j].least && f[i].step < f[j].step
}

// Swap swaps two entries.
func (f frontier) Swap(i, j int) { f[i], f[j] = f[j], f[i] }

// Push adds an entry.
func (f *frontier) Push(e any) { *f = append(*f, e.(entry)) }

// Pop takes the last entry.
func (f *frontier) Pop() any {
	last := (*f)[len(*f)-1]
	*f = (*f)[:len(*f)-1]
	return last
}
