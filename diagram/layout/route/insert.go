package route

import (
	"slices"
	"sort"

	"example.com/lugbook/diagram/layout/geom"
)

func sortDown(list, key []int) {
	sort.SliceStable(list, func(i, j int) bool { return key[list[i]] > key[list[j]] })
}

// insert opens n empty rows before row at (axis level) or n empty columns before column at (axis upright). Boxes
// and zones that begin there or beyond move; what lies across keeps its place, a zone grows. Paths are stretched;
// one whose terminal did not move with it is no longer legal, and the next rebuild drops it. It reports false, and
// changes nothing, when a pinned box would move or the page is too narrow.
func (p *Problem) insert(axis, at, n int) bool {
	shift := func(v int) int {
		if v >= at {
			return v + n
		}
		return v
	}
	for i, b := range p.Boxes {
		low := b.Y
		if axis == upright {
			low = b.X
		}
		if low >= at && i < len(p.Pinned) && p.Pinned[i] {
			return false
		}
	}
	if axis == upright && p.MaxWidth > 0 && p.Extent().Right()+n >= p.MaxWidth {
		return false
	}
	zones := make([]Zone, len(p.Zones))
	for i, z := range p.Zones {
		zones[i] = Zone{Rect: stretch(z.Rect, axis, shift), Title: z.Title}
	}
	p.remap(func(q geom.Point) geom.Point {
		if axis == level {
			q.Y = shift(q.Y)
		} else {
			q.X = shift(q.X)
		}
		return q
	}, func(r geom.Rect) geom.Rect {
		if axis == level {
			r.Y = shift(r.Y)
		} else {
			r.X = shift(r.X)
		}
		return r
	}, zones)
	return true
}

func stretch(r geom.Rect, axis int, shift func(int) int) geom.Rect {
	if axis == level {
		y := shift(r.Y)
		return geom.Rect{X: r.X, Y: y, W: r.W, H: shift(r.Bottom()) - y}
	}
	x := shift(r.X)
	return geom.Rect{X: x, Y: r.Y, W: shift(r.Right()) - x, H: r.H}
}

// cut is a place where a row (axis level) or column (axis upright) may be inserted.
type cut struct{ axis, at int }

// widen makes room where wires are stuck: a row where two wires share a level slot, a
// column where they share an upright one, or, every other time, the other of the two; before a terminal that cannot be
// left, room on its side; before one whose wires crowd those of the next, a longer stub. It reports whether anything
// changed.
func (r *router) widen(stuck []int, other bool) bool {
	var cuts [][2]cut
	moved := false
	count := r.p.wiresPer()
	for _, w := range stuck {
		axis, at := r.trouble(w)
		if !r.missing(w) && r.crowded(w, at, count) {
			moved = true
			continue
		}
		c := [2]cut{{axis, at.Y}, {1 - axis, at.X}}
		if axis == upright {
			c[0].at, c[1].at = at.X, at.Y
		}
		if other {
			c[0], c[1] = c[1], c[0]
		}
		if !slices.ContainsFunc(cuts, func(o [2]cut) bool { return o[0] == c[0] }) {
			cuts = append(cuts, c)
		}
	}
	slices.SortStableFunc(cuts, func(a, b [2]cut) int { return b[0].at - a[0].at }) // far ones first: near ones stay valid
	r.store()
	for _, c := range cuts {
		moved = r.p.insert(c[0].axis, c[0].at, 1) || !moved && r.p.insert(c[1].axis, c[1].at, 1) || moved
	}
	if moved {
		r.rebuildSharing(true)
	}
	return moved
}

// crowded makes the stub of a terminal longer if its wire w is in conflict at a place right beside it.
func (r *router) crowded(w int, at geom.Point, count []int) bool {
	longer := false
	for _, t := range r.p.Wires[w].ends() {
		d := at.Sub(r.p.Terminals[t].At)
		if count[t] > 1 && geom.Abs(d.X)+geom.Abs(d.Y) <= r.p.stubLength(t, count[t])+2 {
			longer = r.p.lengthen(t) || longer
		}
	}
	return longer
}

// trouble finds where a wire is stuck and which way it lacks room.
func (r *router) trouble(w int) (axis int, at geom.Point) {
	if r.missing(w) {
		return r.stuckEnd(w)
	}
	c, axis, _ := r.conflict(w)
	return axis, r.g.point(c)
}

// stuckEnd picks the end of an unrouted wire that is closed in, and the cut that opens it.
func (r *router) stuckEnd(w int) (axis int, at geom.Point) {
	wire := r.p.Wires[w]
	t := r.p.Terminals[wire.To]
	if r.freeBefore(wire.From) < r.freeBefore(wire.To) {
		t = r.p.Terminals[wire.From]
	}
	at = t.At
	if t.Side == geom.East || t.Side == geom.South {
		at = at.Add(t.Side.Step())
	}
	if t.Side.Horizontal() {
		return upright, at
	}
	return level, at
}

// freeBefore counts the cells straight before a terminal that no box takes, up to 8.
func (r *router) freeBefore(t int) int {
	at := r.p.Terminals[t].At
	for n := range 8 {
		at = at.Add(r.p.Terminals[t].Side.Step())
		if !r.g.inside(at) || r.g.cell[r.g.index(at)].static&blocked != 0 {
			return n
		}
	}
	return 8
}

// Axis says whether rows or columns are meant.
type Axis int

// The two kinds of lines.
const (
	Rows    Axis = level
	Columns Axis = upright
)

// Open inserts n rows or columns before a line, as routing does where wires lack room: boxes that begin there or
// beyond move, zones that lie across grow. It reports false, and changes nothing, when a pinned box would move or the
// page is too narrow.
func (p *Problem) Open(axis Axis, before, n int) bool { return p.insert(int(axis), before, n) }
