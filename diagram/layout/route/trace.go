package route

import (
	"slices"

	"example.com/lugbook/diagram/layout/geom"
)

// Trace is the way that a wire from a terminal to a cell would take: its corners, nil if there is none. A cell on which
// a terminal sits stands for that terminal.
func (l *Live) Trace(from int, to geom.Point) []geom.Point {
	target := slices.IndexFunc(l.p.Terminals, func(t Terminal) bool { return t.At == to })
	if target == from || !l.g.inside(to) {
		return nil
	}
	wire := Wire{From: from, To: from}
	if target >= 0 {
		wire.To = target
	}
	var path []geom.Point
	p := l.begin(edit{regions: l.stubs(wire), apply: func() { l.counted(wire, 1) }, undo: func() { l.counted(wire, -1) }})
	if target >= 0 {
		path = l.traceGoal(l.between(from, target))
	} else {
		path = l.traceGoal(l.toward(from, to))
	}
	l.rollback(p)
	return path
}

// between is the search from a terminal to another.
func (l *Live) between(from, to int) goal {
	b := l.p.Terminals[to]
	q := l.toward(from, b.At.Add(b.Side.Step()))
	q.to, q.in, q.anyIn = to, b.Side.Opposite(), false
	return q
}

// toward is the search from a terminal to a cell.
func (l *Live) toward(from int, to geom.Point) goal {
	a := l.p.Terminals[from]
	return goal{from: from, to: -1, out: a.Side, origin: a.At.Add(a.Side.Step()), dest: to, anyIn: true}
}

// traceGoal is the cheapest path of a search, the cells of its terminals included.
func (l *Live) traceGoal(q goal) []geom.Point {
	if !l.g.inside(q.origin) || !l.g.inside(q.dest) {
		return nil
	}
	q.start, q.end = l.g.index(q.origin), l.g.index(q.dest)
	q.greed = 16
	q.limit = l.farthest(&q)
	if l.g.cell[q.end].static&blocked != 0 {
		return nil
	}
	cells, ok := l.s.route(q)
	if !ok {
		return nil
	}
	path := []geom.Point{l.p.Terminals[q.from].At}
	for _, c := range cells {
		path = append(path, l.g.point(c))
	}
	if q.to >= 0 {
		path = append(path, l.p.Terminals[q.to].At)
	}
	return corners(path)
}
