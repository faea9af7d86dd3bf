package route

import "example.com/lugbook/diagram/layout/geom"

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
	text []bool // cells that labels stand on or keep free beside them
}

// labels finds a place for one text of every wire that has any: the first text that fits into a straight level run
// of the wire, nearest to where it comes from; failing all, the first that fits beside an upright run. Post: no label
// covers or borders sideways on anything but its own wire.
func (r *router) labels() []Label {
	l := &labeller{router: r, text: make([]bool, len(r.g.static))}
	out := make([]Label, len(r.p.Wires))
	var beside []int
	for w := range r.p.Wires {
		if r.missing(w) || len(r.p.Wires[w].Labels) == 0 {
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
	return out
}

// piece is a run of a wire's own cells from column lo to hi, given in the order of the path.
type piece struct {
	y, lo, hi int
	east      bool
}

// pieces lists the runs without bend, crossing or frame, along the path.
func (r *router) pieces(w int) []piece {
	q := r.goalOf(w)
	cells := r.cells[w]
	var out []piece
	open := false
	for i, c := range cells {
		plain := r.g.use[upright][c] == 0 && r.g.static[c]&frame == 0 && !r.g.private(c, q.from, q.to)
		plain = plain && r.levelThrough(q, cells, i)
		if !plain {
			open = false
			continue
		}
		at := r.g.point(c)
		if !open {
			open = true
			out = append(out, piece{y: at.Y, lo: at.X, hi: at.X, east: true})
			continue
		}
		last := &out[len(out)-1]
		last.east = at.X > last.lo
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

func (l *labeller) inline(w int) Label {
	pieces := l.pieces(w)
	for index, length := range l.p.Wires[w].Labels {
		for _, p := range pieces {
			if p.hi-p.lo+1 < length+labelEnds {
				continue
			}
			at := geom.Point{X: p.lo + labelEnds/2, Y: p.y}
			if !p.east {
				at.X = p.hi - labelEnds/2 - length + 1
			}
			l.mark(at.X-1, at.X+length, at.Y)
			return Label{Index: index, At: at, OK: true}
		}
	}
	return Label{}
}

func (l *labeller) mark(from, to, y int) {
	for x := from; x <= to; x++ {
		if p := (geom.Point{X: x, Y: y}); l.g.inside(p) {
			l.text[l.g.index(p)] = true
		}
	}
}

func (l *labeller) beside(w int) Label {
	q := l.goalOf(w)
	for index, length := range l.p.Wires[w].Labels {
		for i, c := range l.cells[w] {
			if l.levelTouched(q, l.cells[w], i) || l.g.private(c, q.from, q.to) {
				continue
			}
			at := l.g.point(c)
			if l.free(at.X+1, at.X+length+1, at.Y) {
				l.mark(at.X+1, at.X+length+1, at.Y)
				return Label{Index: index, At: geom.Point{X: at.X + 1, Y: at.Y}, Vertical: true, OK: true}
			}
			if l.free(at.X-length-1, at.X-1, at.Y) {
				l.mark(at.X-length-1, at.X-1, at.Y)
				return Label{Index: index, At: geom.Point{X: at.X - length, Y: at.Y}, Vertical: true, OK: true}
			}
		}
	}
	return Label{}
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
		if !l.g.inside(p) {
			return false
		}
		c := l.g.index(p)
		if l.text[c] || l.g.owner[c] != 0 || l.g.static[c]&(blocked|frame) != 0 ||
			l.g.use[level][c] > 0 || l.g.use[upright][c] > 0 {
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
