package route

import (
	"slices"

	"example.com/lugbook/diagram/layout/geom"
)

// Label is where the text of a wire stands.
type Label struct {
	// Index of the text among the wire's labels.
	Index int
	// At is the cell of the first character.
	At geom.Point
	// Vertical means the text stands beside an upright run; else it replaces cells of a level one.
	Vertical bool
	// OK is false when no text found room.
	OK bool
}

// labeller places labels on a legal drawing.
type labeller struct {
	*router
	text map[geom.Point]int32 // wire + 1 whose label stands on a cell or keeps it free
	area geom.Rect            // where labels may stand
}

// labelReach is how far labels may stand out to the sides of a drawing.
const labelReach = 12

// keptLabels keeps the labels that a problem came with where they may still stand, and finds places for the others.
func (r *router) keptLabels() []Label {
	l := newLabeller(r, r.p.labelArea())
	labels := make([]Label, len(r.p.Wires))
	var loose []int
	for w := range labels {
		if w < len(r.p.Placed) && l.keep(w, r.p.Placed[w]) {
			labels[w] = r.p.Placed[w]
		} else {
			loose = append(loose, w)
		}
	}
	l.place(loose, labels)
	l.improve(labels)
	return labels
}

// improve gives wires better texts where there is room for them, until there is none.
func (l *labeller) improve(labels []Label) {
	for changed := true; changed; {
		changed = false
		for w, old := range labels {
			if old.OK && old.Index == 0 || l.missing(w) || len(l.p.Wires[w].Labels) == 0 {
				continue
			}
			l.drop(w, old)
			better := Label{}
			for _, find := range [2]func(int) Label{l.inline, l.beside} {
				if next := find(w); next.OK && (!better.OK || next.Index < better.Index) {
					l.drop(w, better)
					better = next
				} else {
					l.drop(w, next)
				}
			}
			if better.OK && (!old.OK || better.Index < old.Index) {
				labels[w], changed = better, true
				continue
			}
			l.drop(w, better)
			l.keep(w, old)
		}
	}
}

func newLabeller(r *router, area geom.Rect) *labeller {
	return &labeller{router: r, text: map[geom.Point]int32{}, area: area}
}

// labelArea is where labels may stand: the drawing, and beside it as far as the page reaches on both sides.
func (p *Problem) labelArea() geom.Rect {
	e := p.Extent()
	reach := labelReach
	if p.MaxWidth > 0 {
		reach = max(0, min(reach, (p.MaxWidth-1-e.W)/2))
	}
	e = e.Grow(reach, 0, reach, 0)
	if p.Anchored && e.X < 0 {
		e = e.Grow(e.X, 0, 0, 0)
	}
	return e
}

// labels finds a place for one text of every wire that has any: the first text that fits into a straight level run
// of the wire, nearest to where it comes from; failing all, the first that fits beside an upright run. Post: no label
// covers or borders sideways on anything but its own wire.
func (r *router) labels() []Label {
	l := newLabeller(r, r.p.labelArea())
	out := make([]Label, len(r.p.Wires))
	all := make([]int, len(out))
	for w := range all {
		all[w] = w
	}
	l.place(all, out)
	l.improve(out)
	return out
}

// place finds places for the labels of wires that have none.
func (l *labeller) place(wires []int, out []Label) {
	var beside []int
	for _, w := range wires {
		if l.missing(w) || len(l.p.Wires[w].Labels) == 0 {
			continue
		}
		out[w] = l.inline(w)
		if !out[w].OK {
			beside = append(beside, w)
		}
	}
	for _, w := range beside {
		out[w] = l.beside(w)
	}
}

// reserved is the run of cells that a label stands on or keeps free at its ends.
func (w Wire) reserved(label Label) (from, to, y int) {
	from, to, y = label.At.X, label.At.X+w.Labels[label.Index]-1, label.At.Y
	if label.Vertical {
		return from - 1, to + 1, y
	}
	return from - 1, to + 1, y
}

// keep marks a label that stands already. It reports false, and marks nothing, if it may not stand there any more.
func (l *labeller) keep(w int, label Label) bool {
	wire := l.p.Wires[w]
	if !label.OK || label.Index >= len(wire.Labels) || l.missing(w) {
		return false
	}
	from, to, y := wire.reserved(label)
	if !label.Vertical {
		for _, p := range l.pieces(w) {
			if p.y == y && p.lo <= from && p.hi >= to {
				l.mark(w, from, to, y)
				return true
			}
		}
		return false
	}
	q := l.goalOf(w)
	for i, c := range l.cells[w] {
		at := l.g.point(c)
		if at.Y != y || at.X != from && at.X != to || l.levelTouched(q, l.cells[w], i) || l.g.private(c, q.from, q.to) {
			continue
		}
		if at.X == from && l.free(from+1, to, y) {
			l.mark(w, from+1, to, y)
			return true
		}
		if at.X == to && l.free(from, to-1, y) {
			l.mark(w, from, to-1, y)
			return true
		}
	}
	return false
}

// drop takes away the marks of a label.
func (l *labeller) drop(w int, label Label) {
	if !label.OK {
		return
	}
	from, to, y := l.p.Wires[w].reserved(label)
	for x := from; x <= to; x++ {
		if p := (geom.Point{X: x, Y: y}); l.text[p] == int32(w+1) {
			delete(l.text, p)
		}
	}
}

// piece is a run of a wire's own cells from column lo to hi, given in the order of the path.
type piece struct {
	y, lo, hi   int
	east        bool
	first, last int // numbers of its cells on the path
}

// pieces lists the runs without bend, crossing or frame, along the path.
func (r *router) pieces(w int) []piece {
	q := r.goalOf(w)
	cells := r.cells[w]
	var out []piece
	open := false
	for i, c := range cells {
		plain := r.g.cell[c].use[upright] == 0 && r.g.cell[c].static&frame == 0 && !r.g.private(c, q.from, q.to)
		plain = plain && r.levelThrough(q, cells, i)
		if !plain {
			open = false
			continue
		}
		at := r.g.point(c)
		if !open {
			open = true
			out = append(out, piece{y: at.Y, lo: at.X, hi: at.X, east: true, first: i, last: i})
			continue
		}
		last := &out[len(out)-1]
		last.east, last.last = at.X > last.lo, i
		last.lo, last.hi = min(last.lo, at.X), max(last.hi, at.X)
	}
	return out
}

// levelThrough tells whether the path passes its i-th cell level, without turning there.
func (r *router) levelThrough(q goal, cells []int32, i int) bool {
	in, out := q.out.Horizontal(), q.in.Horizontal()
	if i > 0 {
		d := cells[i] - cells[i-1]
		in = d == 1 || d == -1
	}
	if i+1 < len(cells) {
		d := cells[i+1] - cells[i]
		out = d == 1 || d == -1
	}
	return in && out
}

// inline finds a place in a level run: in the first along the path that has room, on a long wire in the one that lies
// nearest to either end, and there as near to that end as may be.
func (l *labeller) inline(w int) Label {
	pieces := l.pieces(w)
	n := len(l.cells[w])
	toEnd := func(piece) bool { return false }
	if l.long(w) {
		toEnd = func(p piece) bool { return n-1-p.last < p.first }
		slices.SortStableFunc(pieces, func(a, b piece) int { return min(a.first, n-1-a.last) - min(b.first, n-1-b.last) })
	}
	for index, length := range l.p.Wires[w].Labels {
		for _, end := range [2]int{labelEnds / 2, 1} { // rather short ends than a shorter text
			for _, p := range pieces {
				if p.hi-p.lo+1 < length+2*end {
					continue
				}
				at := geom.Point{X: p.lo + end, Y: p.y}
				if p.east == toEnd(p) {
					at.X = p.hi - end - length + 1
				}
				l.mark(w, at.X-1, at.X+length, at.Y)
				return Label{Index: index, At: at, OK: true}
			}
		}
	}
	return Label{}
}

// long tells whether a wire goes so far that a label half-way would not be seen from either end.
func (r *router) long(w int) bool {
	columns, rows := 0, 0
	for i := 1; i < len(r.cells[w]); i++ {
		if d := r.cells[w][i] - r.cells[w][i-1]; d == 1 || d == -1 {
			columns++
		} else {
			rows++
		}
	}
	return columns > farColumns || rows > farRows
}

// A wire is long beyond so many columns or rows of way; no source.
const (
	farColumns = 60
	farRows    = 25
)

func (l *labeller) mark(w, from, to, y int) {
	for x := from; x <= to; x++ {
		l.text[geom.Point{X: x, Y: y}] = int32(w + 1)
	}
}

// levelTouched tells whether the path comes into or leaves its i-th cell level.
func (r *router) levelTouched(q goal, cells []int32, i int) bool {
	touched := false
	if i > 0 {
		d := cells[i] - cells[i-1]
		touched = d == 1 || d == -1
	} else {
		touched = q.out.Horizontal()
	}
	if i+1 < len(cells) {
		d := cells[i+1] - cells[i]
		return touched || d == 1 || d == -1
	}
	return touched || q.in.Horizontal()
}

// free tells whether nothing at all is drawn from column from to column to.
func (l *labeller) free(from, to, y int) bool {
	for x := from; x <= to; x++ {
		p := geom.Point{X: x, Y: y}
		if !l.area.Contains(p) || l.text[p] != 0 {
			return false
		}
		if !l.g.inside(p) {
			continue // nothing but labels is drawn there
		}
		c := l.g.index(p)
		if l.g.owner[c] != 0 || l.g.cell[c].static&(blocked|frame) != 0 ||
			l.g.cell[c].use[level] > 0 || l.g.cell[c].use[upright] > 0 {
			return false
		}
	}
	return true
}

// makeRoom inserts columns for the label of wire w: into its longest plain level run, or beside its first upright
// one. It reports whether the page has them.
func (r *router) makeRoom(w int) bool {
	labels := r.p.Wires[w].Labels
	need := labels[len(labels)-1]
	best := piece{lo: 1}
	for _, p := range r.pieces(w) {
		if p.hi-p.lo > best.hi-best.lo {
			best = p
		}
	}
	at, columns := best.hi, need+labelEnds-(best.hi-best.lo+1)
	if best.hi < best.lo {
		q := r.goalOf(w)
		at, columns = q.origin.X+1, need+2
	}
	r.store()
	if !r.p.insert(upright, at, max(columns, 1)) {
		return false
	}
	r.rebuild()
	return true
}
