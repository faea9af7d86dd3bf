package route

import (
	"slices"

	"example.com/lugbook/diagram/layout/geom"
)

// Effort says how hard to try. More of it never makes a drawing less legal.
type Effort struct {
	// Rounds of negotiation before room is made.
	Rounds int
	// Patient spends all rounds before room is made: for drawings whose boxes had better stay where they are.
	Patient bool
	// Inserts is the number of rows and columns that may be inserted one by one.
	Inserts int
	// Passes of re-routing single wires once all is legal.
	Passes int
	// KeepLabels leaves the labels that the problem came with where they stand, if they may.
	KeepLabels bool
	// Compact pushes the drawing together after that, and Polish moves boxes.
	Compact Compaction
	Polish  Polishing
}

// Result is what Solve could not put into the paths.
type Result struct {
	// Left are the wires without a route. There are some only where pins or the page width forbid to make room.
	Left []int
	// Labels holds one place per wire.
	Labels []Label
}

// Solve routes all wires and places their labels. Pre: boxes do not overlap. Post: no two wires share a slot, no wire
// touches a box but at its terminals, and the paths given that were legal are kept unless they were in the way.
func Solve(p *Problem, e Effort) Result {
	r := newRouter(p)
	came := make([][]geom.Point, len(p.Paths))
	for w, path := range p.Paths {
		came[w] = slices.Clone(path)
	}
	if missing := r.byDistance(r.missing); 2*len(missing) < len(p.Wires) {
		for _, w := range missing {
			if !r.salvage(w, r.along(p.Paths[w]), terms{}) {
				r.draw(w, 0)
			}
		}
	}
	r.legalise(e)
	left := r.dropConflicts()
	r.descend(e.Passes)
	if len(left) == 0 {
		r.refine(e)
	}
	r.shortenStubs()
	labels := r.finish(e, len(left) == 0, came)
	r.store()
	return Result{Left: left, Labels: labels}
}

// shortenStubs gives back the cells of stubs that are longer than what their wires use, unless a wire should lose its
// way by that.
func (r *router) shortenStubs() {
	before := r.snapshot()
	r.p.longer = nil
	r.p.longer = r.p.stubsDrawn()
	if slices.Equal(before.longer, r.p.longer) {
		return
	}
	r.rebuild()
	for w := range r.cells {
		if r.missing(w) && len(before.Paths[w]) > 0 {
			r.restore(before)
			return
		}
	}
}

// finish places the labels, in a drawing whose wires came with the given paths. Where labels are kept, no room is made
// for those of wires that had a path, and wires whose paths are as they were get none if they had none.
func (r *router) finish(e Effort, legal bool, came [][]geom.Point) []Label {
	fix := fixing{tries: e.Inserts, given: make([]bool, len(r.cells)), rooted: make([]bool, len(r.cells))}
	var labels []Label
	if e.KeepLabels {
		labels = r.keptLabels()
		for w, path := range came {
			fix.rooted[w] = len(path) > 0
			fix.given[w] = fix.rooted[w] && w < len(r.p.Placed) && !r.p.Placed[w].OK && slices.Equal(path, r.p.Paths[w])
		}
	} else {
		labels = r.labels()
	}
	if legal {
		labels = r.fixLabels(e, labels, fix)
		if !e.KeepLabels {
			labels = r.spellOut(labels, e.Inserts)
		}
	}
	r.shortenStubs()
	r.p.Placed = labels
	labels = r.keptLabels() // the same as whoever takes up the drawing finds
	r.p.Placed = nil
	return labels
}

// refine improves a legal drawing.
func (r *router) refine(e Effort) {
	r.compact(e.Compact)
	if e.Polish.Tries > 0 {
		r.polish(e.Polish)
		r.descend(e.Passes)
		r.compact(e.Compact)
	}
}

// legalise negotiates and makes room until no slot is shared, or nothing more can be moved, or it does not help.
func (r *router) legalise(e Effort) {
	patience := hasty
	if e.Patient {
		patience = e.Rounds
	}
	bad := r.negotiate(e.Rounds, patience)
	least, idle := bad, 0
	for i := 0; bad > 0 && i < e.Inserts && idle < idleInserts; i++ {
		if !r.widen(r.stuck(), idle%2 == 1) {
			break
		}
		r.lesson += lessonStep
		bad = r.negotiate(e.Rounds, patience)
		idle++
		if bad < least {
			least, idle = bad, 0
		}
	}
	for step := 0; bad > 0; step++ {
		bad = r.negotiate(e.Rounds, e.Rounds)
		if bad == 0 || step == spreads || !r.spread() {
			break
		}
	}
}

// spreads is how often the whole drawing may be pulled apart; idleInserts is how many insertions without any gain end
// the attempt to make room bit by bit.
const (
	spreads     = 2
	idleInserts = 12
)

// stuck lists the wires without a route, then those in conflict.
func (r *router) stuck() []int {
	missing := r.byDistance(r.missing)
	return append(missing, r.byDistance(func(w int) bool { return !r.missing(w) && r.conflicted(w) })...)
}

// spread opens two rows before every box and two columns where the page allows, drops all routes, and lets wires of
// one terminal part later. It reports whether anything could be moved.
func (r *router) spread() bool {
	moved := false
	for axis := range 2 {
		seen := map[int]bool{}
		for b := range r.p.Boxes {
			line := r.p.Boxes[b].Y
			if axis == upright {
				line = r.p.Boxes[b].X
			}
			if !seen[line] && r.p.insert(axis, line, 2) {
				moved = true
				seen[line+2] = true
			}
		}
	}
	for w := range r.p.Paths {
		r.p.Paths[w] = nil
	}
	for t, k := range r.p.wiresPer() {
		if k > 1 {
			r.p.lengthen(t)
		}
	}
	r.rebuild()
	return moved
}

// dropConflicts removes wires until no slot is shared, puts back those that find a free way, and returns the rest.
func (r *router) dropConflicts() []int {
	var dropped []int
	for w := range r.cells {
		if !r.missing(w) && r.conflicted(w) {
			r.rip(w)
		}
		if r.missing(w) {
			dropped = append(dropped, w)
		}
	}
	var left []int
	for _, w := range dropped {
		if !r.draw(w, 0) {
			left = append(left, w)
		}
	}
	return left
}

// Cost sums the length, bend and crossing prices of all paths; crossings are counted once per wire.
func (p *Problem) Cost() int {
	r := newRouter(&Problem{Boxes: p.Boxes, Pinned: p.Pinned, Terminals: p.Terminals, Wires: p.Wires, Zones: p.Zones,
		Paths: append([][]geom.Point(nil), p.Paths...), MaxWidth: p.MaxWidth, Costs: p.Costs, longer: p.longer})
	sum := 0
	for w := range r.cells {
		if r.missing(w) {
			sum += 10000
			continue
		}
		sum += r.cost(w)
	}
	return sum
}
