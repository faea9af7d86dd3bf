package route

import "example.com/lugbook/diagram/layout/geom"

// mendReach is the number of cells on both sides of a conflict that are drawn anew.
const mendReach = 24

// longWire is the number of cells from which on a wire is a long one: no time is spent on its very cheapest way, but it
// is drawn stretch by stretch.
const longWire = 160

// mend draws the stretches of a wire anew on which it shares slots, at the given pressure. The rest stays.
func (r *router) mend(w, pressure int) {
	for at := 0; ; {
		first, last := r.shares(w, at)
		if first < 0 {
			return
		}
		if last-first+2*mendReach > len(r.cells[w])*3/4 || !r.mendStretch(w, first, last, pressure) {
			r.redrawShared(w, pressure)
			return
		}
		at = last + mendReach
	}
}

// shares finds the first run of cells from one on in which a wire shares slots, with all that lie near. It returns -1
// for none.
func (r *router) shares(w, from int) (first, last int) {
	q := r.goalOf(w)
	first, last = -1, -1
	at, before := -1, int32(-1)
	r.visit(&q, r.cells[w], func(c int32, axis int, _ bool) {
		if c != before {
			at, before = at+1, c
		}
		if at < from || r.g.cell[c].use[axis] < 2 || r.g.private(c, q.from, q.to) {
			return
		}
		if first < 0 {
			first, last = at, at
		} else if at-last < mendReach {
			last = at
		}
	})
	return first, last
}

// mendStretch draws a wire anew around the given cells. It reports false, and changes nothing, if the new way cannot be
// joined to the rest.
func (r *router) mendStretch(w, first, last, pressure int) bool {
	old := r.rip(w)
	cells, ok := r.rejoin(w, old, cellRun{first, last}, terms{pressure: pressure})
	if !ok {
		cells = old
	}
	r.take(w, cells)
	return ok
}

// cellRun is a run of the cells of a wire, by their numbers.
type cellRun struct{ first, last int }

// terms are the price of a taken slot, 0 for none at any, and what a new way may cost beyond the least, 0 for all.
type terms struct{ pressure, spare int }

// rejoin finds a new way for a wire that is ripped, which leaves its old one only around the given cells; where these
// are near an end, as far as the terminal, wherever that is now.
func (r *router) rejoin(w int, old []int32, at cellRun, on terms) ([]int32, bool) {
	q := r.goalOf(w)
	a, b := at.first-mendReach, at.last+mendReach
	sub, head, tail := q, q, q
	sub.pressure = on.pressure
	var before, after []int32
	if a > 0 {
		before = old[:a]
		sub.start, sub.origin, sub.label = old[a], r.g.point(old[a]), 0
		sub.out = r.direction(old[a-1], old[a])
		head.in = sub.out
	}
	if b+1 < len(old) {
		after = old[b+1:]
		sub.end, sub.dest = old[b], r.g.point(old[b])
		sub.in = r.direction(old[b], old[b+1])
		tail.out = sub.in
	}
	if on.spare > 0 {
		sub.limit = r.s.bound(&sub, sub.origin, sub.out) + on.spare
	}
	r.enter(w, &head, before, 1)
	r.enter(w, &tail, after, 1)
	cells, ok := r.s.route(sub)
	r.enter(w, &head, before, -1)
	r.enter(w, &tail, after, -1)
	if !ok {
		return nil, false
	}
	return r.joined(before, cells, after)
}

// direction is the way from a cell to the next.
func (r *router) direction(a, b int32) geom.Side {
	d := geom.North
	for r.g.step[d] != b-a {
		d++
	}
	return d
}

// enter adds by, 1 or -1, to the use of the slots of a stretch of a wire.
func (r *router) enter(w int, q *goal, cells []int32, by int) {
	if len(cells) == 0 {
		return
	}
	r.visit(q, cells, func(c int32, axis int, turn bool) {
		if r.g.private(c, q.from, q.to) {
			return
		}
		r.g.tell(c, axis, turn, uint8(by))
		others := int(r.g.cell[c].use[axis])
		if by < 0 {
			others--
			r.g.who[axis][c] ^= int32(w + 1)
		}
		if others > 0 {
			r.shared[w] += by
		}
		if others == 1 {
			r.shared[r.g.who[axis][c]-1] += by
		}
		if by > 0 {
			r.g.who[axis][c] ^= int32(w + 1)
		}
		r.g.cell[c].use[axis] = uint8(int(r.g.cell[c].use[axis]) + by)
	})
}

// joined puts three stretches together and cuts off the loops where the middle one meets the others. It reports false
// if that would bend the wire on a frame.
func (r *router) joined(head, middle, tail []int32) ([]int32, bool) {
	at := make(map[int32]int, len(middle))
	for i, c := range middle {
		at[c] = i
	}
	ok := true
	for i, c := range head {
		if k, met := at[c]; met {
			ok = ok && r.g.cell[c].static&frame == 0
			head, middle = head[:i], middle[k:]
			break
		}
	}
	for i := len(tail) - 1; i >= 0; i-- {
		k, met := at[tail[i]]
		if k -= len(at) - len(middle); met && k >= 0 {
			ok = ok && r.g.cell[tail[i]].static&frame == 0
			middle, tail = middle[:k+1], tail[i+1:]
			break
		}
	}
	out := make([]int32, 0, len(head)+len(middle)+len(tail))
	return append(append(append(out, head...), middle...), tail...), ok
}

// salvage draws a ripped wire that can still take most of its old way anew where it cannot. It reports false if too
// little is left.
func (r *router) salvage(w int, old []int32, on terms) bool {
	q, ok := r.s.newGoal(r.p, w, on.pressure)
	if !ok {
		return false
	}
	first, last := r.broken(&q, old, on.pressure == 0)
	if 4*(last-first+2*mendReach) > 3*len(old) {
		return false
	}
	cells, ok := r.rejoin(w, old, cellRun{first, last}, on)
	if ok {
		r.take(w, cells)
	}
	return ok
}

// broken is the stretch of an old way that a wire can no longer take, or, if so asked, not without sharing; all of it if nothing is left to join.
func (r *router) broken(q *goal, old []int32, hard bool) (first, last int) {
	n := len(old)
	if n == 0 {
		return 0, 0
	}
	first, last = n, -1
	if old[0] != q.start {
		first, last = 0, 0
	}
	if old[n-1] != q.end {
		first, last = min(first, n-1), n-1
	}
	at, before := -1, int32(-1)
	r.visit(q, old, func(c int32, axis int, turn bool) {
		if c != before {
			at, before = at+1, c
		}
		if !r.g.allows(c, axis, q.from, q.to) || hard && !r.s.free(q, c, axis) || turn && r.g.cell[c].static&frame != 0 {
			first, last = min(first, at), max(last, at)
		}
	})
	if last < 0 || first > n-1 {
		return 0, n
	}
	return first, last
}
