package route

import (
	"slices"

	"example.com/lugbook/diagram/layout/geom"
)

// fixLabels works on the wires whose labels found no place: other wires are led round the straightest run, or the
// wire is drawn anew, or columns are inserted. Wires given up are left out. Post: still legal; no more labels lack a
// place than before.
func (r *router) fixLabels(e Effort, labels []Label, fix fixing) []Label {
	for range fix.tries {
		w := lacking(r.p.Wires, labels, fix.given)
		if w < 0 {
			break
		}
		texts := r.p.Wires[w].Labels
		if better, ok := r.relabel(w, labels, texts[len(texts)-1], 0); ok {
			labels = better
			continue
		}
		fix.given[w] = true
		if fix.rooted[w] {
			continue
		}
		before := r.snapshot()
		if !r.makeRoom(w) {
			continue
		}
		r.legalise(e)
		if len(r.dropConflicts()) > 0 {
			r.restore(before)
			continue
		}
		labels = r.labels()
	}
	return labels
}

// fixing says how labels are to be found places: the number of attempts, the wires that are given up, and those for
// which the drawing is not pulled apart.
type fixing struct {
	tries         int
	given, rooted []bool
}

// lacking is the first wire whose labels found no place and which has not been given up, or -1.
func lacking(wires []Wire, labels []Label, given []bool) int {
	for w, l := range labels {
		if len(wires[w].Labels) > 0 && !l.OK && !given[w] {
			return w
		}
	}
	return -1
}

// spellOut gives wires that have a short text the full one where other wires can be led round at little cost.
func (r *router) spellOut(labels []Label, most int) []Label {
	for w := range labels {
		if most == 0 {
			break
		}
		if l := labels[w]; !l.OK || l.Index == 0 {
			continue
		}
		most--
		if better, ok := r.relabel(w, labels, r.p.Wires[w].Labels[0], spellPrice); ok {
			labels = better
		}
	}
	return labels
}

// spellPrice is what the full text of a wire may cost.
const spellPrice = 30

// shortness counts what labels leave out: the places by which their texts are from the best ones, and more for none.
func shortness(wires []Wire, labels []Label) int {
	n := 0
	for w, l := range labels {
		switch {
		case l.OK:
			n += l.Index
		case len(wires[w].Labels) > 0:
			n += 10 * len(wires[w].Labels)
		}
	}
	return n
}

// keepOff is the price of crossing a place that a label needs, and of bending before it.
const keepOff = 120

// relabel tries to give wire w a place for a label of a length with no more room than there is. What that costs must
// stay below limit; 0 is any price.
func (r *router) relabel(w int, labels []Label, need, limit int) ([]Label, bool) {
	bad := shortness(r.p.Wires, labels)
	clearRun := func() []saved { return r.clear(w, r.bestRun(w, need+2)) }
	clearBeside := func() []saved { return r.clear(w, r.bestBeside(w, need+1)) }
	redraw := func() []saved { return r.redraw(w, need+2) }
	both := func() []saved {
		old := redraw()
		return append(r.clear(w, r.bestRun(w, need+2)), old...)
	}
	for _, attempt := range [4]func() []saved{clearRun, clearBeside, redraw, both} {
		old := attempt()
		if len(old) == 0 {
			continue
		}
		if limit == 0 || r.dearer(old) < limit {
			if better := r.labels(); shortness(r.p.Wires, better) < bad {
				return better, true
			}
		}
		r.putBack(old)
	}
	return nil, false
}

// putBack gives wires their old ways.
func (r *router) putBack(old []saved) {
	for _, k := range old {
		r.rip(k.wire)
	}
	for _, k := range old {
		r.take(k.wire, k.cells)
	}
}

// dearer is by how much the ways of wires cost more than their old ones.
func (r *router) dearer(old []saved) int {
	after := 0
	now := make([]saved, len(old))
	for i, k := range old {
		after += r.cost(k.wire)
		now[i] = saved{wire: k.wire, cells: r.cells[k.wire]}
	}
	r.putBack(old)
	for _, k := range old {
		after -= r.cost(k.wire)
	}
	r.putBack(now)
	return after
}

// bestRun is the level run of w, as long as needed, that fewest other wires cross; nil if there is none.
func (r *router) bestRun(w, need int) []int32 {
	q := r.goalOf(w)
	cells := r.cells[w]
	var best []int32
	least := 0
	for i := 0; i+need <= len(cells); i++ {
		crossed := 0
		for k := i; k < i+need && crossed >= 0; k++ {
			c := cells[k]
			if !r.levelThrough(q, cells, k) || r.g.cell[c].static&frame != 0 || r.g.private(c, q.from, q.to) {
				crossed = -1
				break
			}
			crossed += int(r.g.cell[c].use[upright])
		}
		if crossed >= 0 && (best == nil || crossed < least) {
			best, least = cells[i:i+need], crossed
		}
	}
	return best
}

// bestBeside is the row of cells beside an upright run of w in which fewest other wires run; nil if there is none.
func (r *router) bestBeside(w, need int) []int32 {
	q := r.goalOf(w)
	var best []int32
	least := 0
	for i, c := range r.cells[w] {
		if r.levelTouched(q, r.cells[w], i) || r.g.private(c, q.from, q.to) {
			continue
		}
		for _, d := range [2]geom.Side{geom.East, geom.West} {
			var row []int32
			taken := 0
			at := r.g.point(c)
			for len(row) < need {
				at = at.Add(d.Step())
				n := r.g.index(at)
				if !r.g.inside(at) || r.g.cell[n].static&(blocked|frame) != 0 || r.g.owner[n] != 0 {
					break
				}
				row = append(row, n)
				taken += int(r.g.cell[n].use[level] + r.g.cell[n].use[upright])
			}
			if len(row) == need && (best == nil || taken < least) {
				best, least = row, taken
			}
		}
	}
	return best
}

// clear leads all wires but w round the cells of a row. It returns the old paths of what it changed, nothing if no
// wire runs there or one of them finds no other way.
func (r *router) clear(w int, row []int32) []saved {
	if len(row) == 0 {
		return nil
	}
	var old []saved
	for v, cells := range r.cells {
		if v != w && meets(cells, row) {
			old = append(old, saved{wire: v, cells: r.rip(v)})
		}
	}
	extra := make([]uint8, len(row))
	for k, c := range row {
		extra[k], r.g.cell[c].extra = r.g.cell[c].extra, keepOff
	}
	r.g.lock(row)
	ok := r.redrawAll(old)
	for k, c := range row {
		r.g.cell[c].extra = extra[k]
	}
	r.g.lock(row)
	if !ok {
		return nil
	}
	return old
}

// redrawAll routes ripped wires by free slots, or puts all of them back.
func (r *router) redrawAll(old []saved) bool {
	for i, k := range old {
		if r.draw(k.wire, 0) {
			continue
		}
		for _, done := range old[:i] {
			r.rip(done.wire)
		}
		for _, k := range old {
			r.take(k.wire, k.cells)
		}
		return false
	}
	return true
}

func meets(cells, run []int32) bool {
	for _, c := range cells {
		if c >= min(run[0], run[len(run)-1]) && c <= max(run[0], run[len(run)-1]) {
			return true
		}
	}
	return false
}

// redraw routes w again with a high price on bending before the run that its label needs.
func (r *router) redraw(w, need int) []saved {
	old := []saved{{wire: w, cells: r.rip(w)}}
	q, _ := r.s.newGoal(r.p, w, 0)
	q.label = need + 1
	price := r.s.costs.Label
	r.s.costs.Label = keepOff
	cells, ok := r.s.route(q)
	r.s.costs.Label = price
	if !ok {
		cells = old[0].cells
	}
	r.take(w, cells)
	return old
}

// snapshot and restore keep a whole problem aside, for insertions that do not pay.
func (r *router) snapshot() *Problem {
	r.store()
	kept := *r.p
	kept.longer = slices.Clone(r.p.longer)
	kept.Boxes = append([]geom.Rect(nil), r.p.Boxes...)
	kept.Terminals = append([]Terminal(nil), r.p.Terminals...)
	kept.Zones = append([]Zone(nil), r.p.Zones...)
	kept.Paths = make([][]geom.Point, len(r.p.Paths))
	for w, path := range r.p.Paths {
		kept.Paths[w] = append([]geom.Point(nil), path...)
	}
	return &kept
}

func (r *router) restore(kept *Problem) {
	r.p.Boxes, r.p.Terminals, r.p.Zones, r.p.Paths = kept.Boxes, kept.Terminals, kept.Zones, kept.Paths
	r.p.longer = kept.longer
	r.rebuild()
}
