package route

import (
	"slices"

	"example.com/lugbook/diagram/layout/geom"
)

// redrawAround draws all wires that have lost their ways, or are new, through free cells or, where these lead far round,
// by sharing some for a while. It reports whether all found one.
func (l *Live) redrawAround(before [][]int32, fresh []int) bool {
	lost := l.byDistance(func(w int) bool { return l.missing(w) && (before[w] != nil || slices.Contains(fresh, w)) })
	tight := false
	for _, w := range lost {
		if !l.redraw(w, before[w]) {
			return false
		}
		tight = tight || l.conflicted(w)
	}
	l.pressure = livePressure
	return !tight || l.negotiate(liveRounds, liveRounds/3) == len(l.byDistance(l.missing))
}

// redraw draws a wire that was ripped.
func (l *Live) redraw(w int, old []int32) bool {
	q, ok := l.s.newGoal(l.p, w, livePressure)
	if !ok {
		return false
	}
	if len(old) > longWire && l.salvage(w, old, terms{pressure: livePressure}) {
		return true
	}
	q.greed = greedFor(q.origin, q.dest)
	q.limit = l.farthest(&q)
	cells, ok := l.s.route(q)
	if ok {
		l.take(w, cells)
	}
	return ok
}

// farthest is the cost beyond which no way is looked for: a wire that has to go so far round is better left where it was.
func (l *Live) farthest(q *goal) int {
	return 4*l.s.bound(q, q.origin, q.out) + livePressure*10
}

// greedFor is how far the search for a way between two places may be from the cheapest.
func greedFor(a, b geom.Point) int {
	if d := a.Sub(b); geom.Abs(d.X)+geom.Abs(d.Y) > longWire {
		return 16
	}
	return 0
}
