package route

import (
	"slices"

	"example.com/lugbook/diagram/layout/geom"
)

// Live is a routed drawing that is open for small changes. The grid stays between them, and what a change does not
// touch stays as it is, labels included.
type Live struct {
	mover
	labels *labeller
	placed []Label
}

// liveRounds is the number of rounds in which wires may part after a change.
const liveRounds = 12

// livePressure is the price of a taken slot at which wires are drawn after a change.
const livePressure = 60

// liveMargin is the free room that the grid has around boxes that are moved.
const liveMargin = 24

// NewLive opens a problem whose wires have their paths and labels. A path or label that is not legal is dropped.
func NewLive(p *Problem, labels []Label) *Live {
	p.reach = p.Extent().Grow(liveMargin, liveMargin, liveMargin, liveMargin)
	l := &Live{mover: *newMover(newRouter(p)), placed: slices.Clone(labels)}
	l.write()
	return l
}

// write marks all labels anew on a new grid.
func (l *Live) write() {
	l.labels = newLabeller(l.router, l.g.whole())
	for w := range l.placed {
		if !l.labels.keep(w, l.placed[w]) {
			l.placed[w] = Label{}
		}
	}
}

// Labels are the places of the labels, one per wire. They belong to the drawing: copy what is to be changed.
func (l *Live) Labels() []Label { return l.placed }

// Problem is the drawing as it stands. It is not to be changed.
func (l *Live) Problem() *Problem { return l.p }

// edit is a change of a problem.
type edit struct {
	wires       []int       // drawn anew in any case
	regions     []geom.Rect // where other wires may now be forbidden
	apply, undo func()
}

// Move shifts a box, and gives a zone, -1 for none, a new frame. Its own wires, and those that it gets in the way of,
// are drawn anew. It reports false, and changes nothing, when a wire would lose its way.
func (l *Live) Move(box int, by geom.Point, zone int, around geom.Rect) bool {
	target := l.p.Boxes[box].Moved(by)
	if zone >= 0 {
		target = target.Union(around)
	}
	if !l.reachFor(target) {
		return false
	}
	e := edit{wires: l.wires[box]}
	var old geom.Rect
	e.regions = append(e.regions, l.region(box), l.region(box).Moved(by))
	if zone >= 0 {
		old = l.p.Zones[zone].Rect
		if old != around {
			e.regions = append(append(e.regions, edges(old)...), edges(around)...)
		}
	}
	frame := func(r geom.Rect) {
		if zone >= 0 {
			l.p.Zones[zone].Rect = r
		}
	}
	e.apply = func() { l.shift(box, by); frame(around) }
	e.undo = func() { l.shift(box, by.Times(-1)); frame(old) }
	return l.do(e)
}

// edges are the four edges of a frame, with the cells beside them.
func edges(r geom.Rect) []geom.Rect {
	return []geom.Rect{geom.Rect{X: r.X, Y: r.Y, W: r.W}.Grow(1, 1, 1, 1), geom.Rect{X: r.X, Y: r.Bottom(), W: r.W}.Grow(1, 1, 1, 1),
		geom.Rect{X: r.X, Y: r.Y, H: r.H}.Grow(1, 1, 1, 1), geom.Rect{X: r.Right(), Y: r.Y, H: r.H}.Grow(1, 1, 1, 1)}
}

// reachFor makes the grid large enough for a box or frame at r. It reports false if a wire lost its way by that.
func (l *Live) reachFor(r geom.Rect) bool {
	need := r.Grow(margin, margin, margin, margin)
	if whole := l.g.whole(); whole.Union(need) == whole || l.p.reach.Union(need) == l.p.reach {
		return true
	}
	l.p.reach = l.p.reach.Union(r.Grow(liveMargin, liveMargin, liveMargin, liveMargin))
	before := len(l.byDistance(l.missing))
	l.rebuild()
	l.count = l.p.wiresPer()
	l.write()
	return len(l.byDistance(l.missing)) == before
}

// Connect adds a wire. It reports false, and changes nothing, when it finds no way.
func (l *Live) Connect(wire Wire) bool {
	w := len(l.p.Wires)
	e := edit{wires: []int{w}, regions: l.stubs(wire)}
	e.apply = func() {
		l.p.Wires = append(l.p.Wires, wire)
		l.p.Paths = append(l.p.Paths, nil)
		l.cells = append(l.cells, nil)
		l.shared = append(l.shared, 0)
		l.placed = append(l.placed, Label{})
		l.attach(w)
		l.counted(wire, 1)
	}
	e.undo = func() {
		l.detach(w)
		l.p.Wires, l.p.Paths, l.placed = l.p.Wires[:w], l.p.Paths[:w], l.placed[:w]
		l.cells, l.shared = l.cells[:w], l.shared[:w]
		l.counted(wire, -1)
	}
	return l.do(e)
}

func (l *Live) counted(wire Wire, by int) {
	l.count[wire.From] += by
	if wire.To != wire.From {
		l.count[wire.To] += by
	}
}

// detach forgets a wire at the boxes of its ends.
func (l *Live) detach(w int) {
	for _, t := range l.p.Wires[w].ends() {
		b := l.p.Terminals[t].Box
		l.wires[b] = slices.DeleteFunc(l.wires[b], func(v int) bool { return v == w })
	}
}

// stubs are the cells that the terminals of a wire reserve, with one more wire than now.
func (l *Live) stubs(wire Wire) []geom.Rect {
	var out []geom.Rect
	for _, t := range wire.ends() {
		at, side := l.p.Terminals[t].At, l.p.Terminals[t].Side
		reach := max(l.p.stubLength(t, l.count[t]+1), wire.labelRoom())
		out = append(out, geom.Around([]geom.Point{at, at.Add(side.Step().Times(reach))}))
	}
	return out
}

// Disconnect removes a wire; those after it are numbered one lower. Wires that shared a terminal with it may be drawn
// anew; it reports false if one of them found no way.
func (l *Live) Disconnect(w int) bool {
	wire := l.p.Wires[w]
	regions := l.stubs(wire)
	l.labels.drop(w, l.placed[w])
	if !l.missing(w) {
		l.rip(w)
	}
	for v := w + 1; v < len(l.cells); v++ {
		l.renumber(v)
	}
	l.detach(w)
	for b := range l.wires {
		for k, v := range l.wires[b] {
			if v > w {
				l.wires[b][k]--
			}
		}
	}
	l.p.Wires, l.p.Paths = slices.Delete(l.p.Wires, w, w+1), slices.Delete(l.p.Paths, w, w+1)
	l.cells, l.placed = slices.Delete(l.cells, w, w+1), slices.Delete(l.placed, w, w+1)
	l.shared = slices.Delete(l.shared, w, w+1)
	return l.do(edit{regions: regions, apply: func() { l.counted(wire, -1) }, undo: func() { l.counted(wire, 1) }})
}

// renumber enters wire w into the cells as the one before it.
func (l *Live) renumber(w int) {
	was, is := int32(w+1), int32(w)
	if !l.missing(w) {
		q := l.goalOf(w)
		l.visit(&q, l.cells[w], func(c int32, axis int, _ bool) {
			if !l.g.private(c, q.from, q.to) {
				l.g.who[axis][c] ^= was ^ is
			}
		})
	}
	if !l.placed[w].OK {
		return
	}
	from, to, y := l.p.Wires[w].reserved(l.placed[w])
	for x := from; x <= to; x++ {
		if p := (geom.Point{X: x, Y: y}); l.labels.text[p] == was {
			l.labels.text[p] = is
		}
	}
}

// do carries out an edit and draws what it touches. It reports false, and leaves all as it was, if a wire that had a
// way finds none.
func (l *Live) do(e edit) bool {
	p := l.begin(e)
	if l.redrawAround(p.before, e.wires) {
		l.settleLabels(p)
		return true
	}
	l.rollback(p)
	return false
}

// pending is an edit under way: the ways of all wires before it, and the wires that it was not sure to leave alone.
type pending struct {
	edit
	before [][]int32
	shaken []int
}

// begin carries out an edit; the wires that cannot stay have no way then.
func (l *Live) begin(e edit) pending {
	p := pending{edit: e, before: slices.Clone(l.cells), shaken: l.shaken(e)}
	for _, w := range p.shaken {
		if !l.missing(w) {
			l.rip(w)
		}
	}
	e.apply()
	l.refresh(e.regions)
	for _, w := range p.shaken {
		if !slices.Contains(e.wires, w) && p.before[w] != nil && l.fits(w, p.before[w]) {
			l.take(w, p.before[w])
		}
	}
	l.saved = l.saved[:0]
	l.ripIllegal(e.regions)
	p.before = append(p.before, make([][]int32, len(l.cells)-len(p.before))...)
	return p
}

// rollback takes an edit back.
func (l *Live) rollback(p pending) {
	for w, cells := range l.cells {
		if cells != nil && (!same(cells, p.before[w]) || slices.Contains(p.shaken, w)) {
			l.rip(w)
		}
	}
	p.undo()
	l.refresh(p.regions)
	for w := range l.cells {
		if l.missing(w) && p.before[w] != nil {
			l.take(w, p.before[w])
		}
	}
}

func same(a, b []int32) bool { return len(a) == len(b) && (len(a) == 0 || &a[0] == &b[0]) }

// shaken lists the wires of an edit and those at terminals whose reserved cells may change.
func (l *Live) shaken(e edit) []int {
	out := slices.DeleteFunc(slices.Clone(e.wires), func(w int) bool { return w >= len(l.cells) })
	for t, terminal := range l.p.Terminals {
		end := terminal.At.Add(terminal.Side.Step().Times(l.p.stubLength(t, l.count[t]+1)))
		stub := geom.Around([]geom.Point{terminal.At, end})
		if l.count[t] == 0 || !slices.ContainsFunc(e.regions, stub.Overlaps) {
			continue
		}
		for _, w := range l.wires[terminal.Box] {
			if wire := l.p.Wires[w]; (wire.From == t || wire.To == t) && !slices.Contains(out, w) {
				out = append(out, w)
			}
		}
	}
	slices.Sort(out)
	return out
}

func (l *Live) refresh(regions []geom.Rect) {
	for _, r := range regions {
		l.g.refresh(l.p, l.count, r)
	}
}

// fits tells whether a wire may run through cells that were its own, and all are free.
func (l *Live) fits(w int, cells []int32) bool {
	q, ok := l.s.newGoal(l.p, w, 0)
	l.visit(&q, cells, func(c int32, axis int, turn bool) {
		ok = ok && l.s.free(&q, c, axis) && (!turn || l.g.cell[c].static&frame == 0)
	})
	return ok
}

// settleLabels takes over what has changed: the paths, and the labels that have lost their places.
func (l *Live) settleLabels(p pending) {
	loose := slices.Clone(p.shaken)
	lose := func(w int) {
		if !slices.Contains(loose, w) {
			loose = append(loose, w)
		}
	}
	for w, cells := range l.cells {
		if same(cells, p.before[w]) {
			continue
		}
		l.p.Paths[w] = l.path(w)
		lose(w)
		for _, c := range cells {
			if o := l.labels.text[l.g.point(c)]; o != 0 {
				lose(int(o - 1))
			}
		}
	}
	for _, r := range p.regions {
		l.g.each(r, func(c int32) {
			if o := l.labels.text[l.g.point(c)]; o != 0 {
				lose(int(o - 1))
			}
		})
	}
	slices.Sort(loose)
	for _, w := range loose {
		l.labels.drop(w, l.placed[w])
	}
	loose = slices.DeleteFunc(loose, func(w int) bool { return l.labels.keep(w, l.placed[w]) })
	for _, w := range loose {
		l.placed[w] = Label{}
	}
	l.labels.place(loose, l.placed)
}
