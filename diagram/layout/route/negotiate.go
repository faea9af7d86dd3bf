package route

import "example.com/lugbook/diagram/layout/geom"

// pressure bounds of the negotiation.
const (
	pressureStart = 4
	pressureMax   = 500
	lessonStart   = 4
	lessonStep    = 2 // more after every insertion that did not end all conflicts
	lessonMax     = 2000
	hasty         = 1 // patience while room can be made instead
)

// missing tells whether a wire has no route.
func (r *router) missing(w int) bool { return r.cells[w] == nil }

// negotiate routes every missing wire and then lets wires that share slots move apart, for at most the given rounds, and
// no longer than the given patience: rounds in which fewer than one wire in ten comes free. It returns the number of wires that still share a slot or have no route. Wires
// that never shared one stay as they are.
func (r *router) negotiate(rounds, patience int) int {
	pressure := max(r.pressure, pressureStart)
	for _, w := range r.byDistance(r.missing) {
		if old := r.along(r.p.Paths[w]); !r.salvage(w, old, terms{pressure: pressure}) {
			r.draw(w, pressure)
		}
	}
	troubled := r.byDistance(r.conflicted)
	for round, least, idle := 1, len(troubled), 0; round <= rounds && len(troubled) > 0 && idle < patience; round++ {
		r.remember(troubled)
		again := round%4 == 0
		for _, w := range troubled {
			if again && len(r.cells[w]) < longWire {
				r.redrawShared(w, pressure)
			} else {
				r.mend(w, pressure)
			}
		}
		pressure = min(pressure+pressure/2+1, pressureMax)
		troubled = r.byDistance(r.conflicted)
		idle++
		if 10*len(troubled) <= 9*least {
			least, idle = len(troubled), 0
		}
	}
	r.pressure = pressure / 8
	return len(troubled) + len(r.byDistance(r.missing))
}

// redrawShared draws a wire anew at the given pressure.
func (r *router) redrawShared(w, pressure int) {
	if old := r.rip(w); !r.draw(w, pressure) {
		r.take(w, old)
	}
}

// remember raises the price of the slots in conflict.
func (r *router) remember(troubled []int) {
	for _, w := range troubled {
		q := r.goalOf(w)
		r.visit(&q, r.cells[w], func(c int32, axis int, _ bool) {
			if !r.g.private(c, q.from, q.to) && r.g.cell[c].use[axis] > 1 && r.g.cell[c].past[axis] < lessonMax {
				r.g.cell[c].past[axis] += uint16(r.lesson)
			}
		})
	}
}

// descend rips single wires and routes them again by free slots, keeping what is strictly cheaper. Pre: no conflict.
// Post: no conflict, and the sum of all costs has not grown.
//
// After its first attempt a wire is tried again only where another wire has given up cells that a cheaper way could
// lead through: all else only became dearer.
func (r *router) descend(passes int) {
	var freed []geom.Rect             // around what the wires that improved ran through before
	seen := make([]int, len(r.cells)) // per wire the length of freed at its last attempt
	for pass := range passes {
		changed := false
		for _, w := range r.byExcess() {
			before := r.cost(w)
			if pass > 0 && !r.couldGain(w, before, freed[seen[w]:]) {
				continue
			}
			if len(r.cells[w]) >= longWire {
				r.descendLong(w)
				continue
			}
			old := r.rip(w)
			better := r.drawWithin(w, 0, before-1)
			if better && r.cost(w) >= before {
				r.rip(w)
				better = false
			}
			if better {
				changed = true
				freed = append(freed, r.around(old))
			} else {
				r.take(w, old)
			}
			seen[w] = len(freed)
		}
		if !changed {
			return
		}
	}
}

// descendLong draws a wire anew stretch by stretch, keeping what is strictly cheaper.
func (r *router) descendLong(w int) {
	for at := 0; at < len(r.cells[w]); at += mendReach {
		before, old := r.cost(w), r.cells[w]
		r.rip(w)
		cells, ok := r.rejoin(w, old, cellRun{at, at}, terms{})
		if !ok {
			cells = old
		}
		r.take(w, cells)
		if ok && r.cost(w) >= before {
			r.rip(w)
			r.take(w, old)
		}
	}
}

// couldGain tells whether any way of wire w through one of the rectangles could cost less than its own.
func (r *router) couldGain(w, cost int, through []geom.Rect) bool {
	q := r.goalOf(w)
	least := r.s.bound(&q, q.origin, q.out)
	direct := geom.Around([]geom.Point{q.origin, q.dest})
	for _, f := range through {
		across := max(0, f.X-direct.Right(), direct.X-f.Right())
		up := max(0, f.Y-direct.Bottom(), direct.Y-f.Bottom())
		if least+2*(across*r.p.Costs.Col+up*r.p.Costs.Row) < cost {
			return true
		}
	}
	return false
}

// around is the smallest rectangle that holds the cells.
func (r *router) around(cells []int32) geom.Rect {
	points := make([]geom.Point, len(cells))
	for i, c := range cells {
		points[i] = r.g.point(c)
	}
	return geom.Around(points)
}

// byExcess lists the routed wires, those first that cost most beyond their shortest way.
func (r *router) byExcess() []int {
	excess := make([]int, len(r.cells))
	list := r.byDistance(func(w int) bool { return !r.missing(w) })
	for _, w := range list {
		q := r.goalOf(w)
		excess[w] = r.cost(w) - r.s.bound(&q, q.origin, q.out)
	}
	sortDown(list, excess)
	return list
}
