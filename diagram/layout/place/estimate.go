package place

import (
	"math"

	"example.com/lugbook/diagram/layout/geom"
)

// lineOf makes the stand-in of a wire and prices it: length, the fewest bends its ends allow, and the want of room
// for a label.
func (s *state) lineOf(w int) line {
	wire, r := &s.p.Wires[w], &s.p.Rules
	a, b := &s.bodies[wire.From.Box], &s.bodies[wire.To.Box]
	if !a.placed || !b.placed {
		return line{low: [2]int32{math.MaxInt32, math.MaxInt32}, high: [2]int32{math.MinInt32, math.MinInt32}}
	}
	from, to := a.spots[wire.From.Port], b.spots[wire.To.Port]
	l := line{active: true}
	l.a = from.On(a.rect).Add(from.Side.Step().Times(2))
	l.b = to.On(b.rect).Add(to.Side.Step().Times(2))
	l.low = [2]int32{int32(min(l.a.X, l.b.X)), int32(min(l.a.Y, l.b.Y))}
	l.high = [2]int32{int32(max(l.a.X, l.b.X)), int32(max(l.a.Y, l.b.Y))}
	dx, dy := geom.Abs(l.a.X-l.b.X), geom.Abs(l.a.Y-l.b.Y)
	l.cost = r.Col*dx + r.Row*dy + r.Bend*geom.MinBends(l.a, from.Side, l.b, to.Side.Opposite())
	if wire.Room > 0 && dx+3 < wire.Room {
		l.cost += 2 * (wire.Room - dx - 3)
	}
	if back := a.rect.Right() + 1 - b.rect.X; wire.Onward && back > 0 && wire.From.Box != wire.To.Box {
		l.cost += r.Back + r.Col*back
	}
	return l
}

// near tells whether the rectangles around two stand-ins have a cell in common. It is small so that it is inlined:
// nearly all pairs end here.
func (l *line) near(k *line) bool {
	return k.high[0] >= l.low[0] && l.high[0] >= k.low[0] && k.high[1] >= l.low[1] && l.high[1] >= k.low[1]
}

// beside tells whether the rectangle around a stand-in has a cell in common with r.
func (l *line) beside(r *geom.Rect) bool {
	return int(l.high[0]) >= r.X && int(l.low[0]) <= r.X+r.W && int(l.high[1]) >= r.Y && int(l.low[1]) <= r.Y+r.H
}

// crosses tells whether two stand-ins that are near cross strictly inside both.
func crosses(k, l *line) bool {
	return turn(k.a, k.b, l.a)*turn(k.a, k.b, l.b) < 0 && turn(l.a, l.b, k.a)*turn(l.a, l.b, k.b) < 0
}

// turn is the sign of the turn from ab to ac.
func turn(a, b, c geom.Point) int {
	v := (b.X-a.X)*(c.Y-a.Y) - (b.Y-a.Y)*(c.X-a.X)
	switch {
	case v > 0:
		return 1
	case v < 0:
		return -1
	}
	return 0
}

// hits tells whether a stand-in that is beside a box runs through it, if it does not end there.
func (s *state) hits(w int, l *line, b int) bool {
	r := &s.bodies[b].rect
	if wire := &s.p.Wires[w]; wire.From.Box == b || wire.To.Box == b {
		return false
	}
	nw := turn(l.a, l.b, geom.Point{X: r.X, Y: r.Y})
	ne := turn(l.a, l.b, geom.Point{X: r.X + r.W, Y: r.Y})
	sw := turn(l.a, l.b, geom.Point{X: r.X, Y: r.Y + r.H})
	se := turn(l.a, l.b, geom.Point{X: r.X + r.W, Y: r.Y + r.H})
	return nw != ne || ne != sw || sw != se || nw == 0
}

// recount works out all costs afresh.
func (s *state) recount() {
	s.cost = 0
	m := len(s.lines)
	for w := range s.lines {
		s.lines[w] = s.lineOf(w)
		s.cost += s.lines[w].cost
	}
	for w := range s.lines {
		l := &s.lines[w]
		for v := w + 1; v < m; v++ {
			c := l.near(&s.lines[v]) && crosses(l, &s.lines[v])
			s.cross[w*m+v], s.cross[v*m+w] = c, c
			if c {
				s.cost += s.p.Rules.Cross
			}
		}
		for b := range s.bodies {
			c := s.bodies[b].placed && l.beside(&s.bodies[b].rect) && s.hits(w, l, b)
			s.hit[b*m+w] = c
			if c {
				s.cost += s.p.Rules.Hit
			}
		}
	}
	s.size = s.extent()
}

// delta prices the present places of the touched boxes against the last agreed ones. What would change is kept in
// redo, redoAt, flips and hitFlips until commit.
func (s *state) delta(touched []int) int {
	s.mark++
	s.redo, s.redoAt, s.flips, s.hitFlips = s.redo[:0], s.redoAt[:0], s.flips[:0], s.hitFlips[:0]
	sum := 0
	for _, i := range touched {
		for _, w := range s.bodies[i].wires {
			if s.seen[w] == s.mark {
				continue
			}
			s.seen[w] = s.mark
			l := s.lineOf(w)
			sum += l.cost - s.lines[w].cost
			s.redo = append(s.redo, l)
			s.redoAt = append(s.redoAt, w)
		}
	}
	for k := range s.redoAt {
		if s.redo[k].active {
			sum += s.deltaLine(k)
		}
	}
	for _, b := range touched {
		for w := range s.lines {
			if l := &s.lines[w]; (l.beside(&s.bodies[b].rect) || s.hit[b*len(s.lines)+w]) && s.seen[w] != s.mark {
				sum += s.hitFlip(w, l, b)
			}
		}
	}
	return sum
}

// deltaLine prices the crossings and hits of the k-th changed wire.
func (s *state) deltaLine(k int) int {
	m, w, l, sum := len(s.lines), s.redoAt[k], &s.redo[k], 0
	row := s.cross[w*m : w*m+m]
	for v := range s.lines {
		if is := l.near(&s.lines[v]) && crosses(l, &s.lines[v]); is != row[v] && s.seen[v] != s.mark {
			sum += s.flip(is, w*m+v)
		}
	}
	for j := k + 1; j < len(s.redoAt); j++ {
		v := s.redoAt[j]
		if is := l.near(&s.redo[j]) && crosses(l, &s.redo[j]); is != row[v] {
			sum += s.flip(is, w*m+v)
		}
	}
	for b := range s.bodies {
		if (l.beside(&s.bodies[b].rect) || s.hit[b*m+w]) && s.bodies[b].placed {
			sum += s.hitFlip(w, l, b)
		}
	}
	return sum
}

// hitFlip notes whether a wire runs through a box from now on, or no longer, and prices the change.
func (s *state) hitFlip(w int, l *line, b int) int {
	at := b*len(s.lines) + w
	is := l.beside(&s.bodies[b].rect) && s.hits(w, l, b)
	if is == s.hit[at] {
		return 0
	}
	s.hitFlips = append(s.hitFlips, at)
	if is {
		return s.p.Rules.Hit
	}
	return -s.p.Rules.Hit
}

// flip notes that two wires cross from now on, or no longer, and prices it.
func (s *state) flip(is bool, at int) int {
	s.flips = append(s.flips, at)
	if is {
		return s.p.Rules.Cross
	}
	return -s.p.Rules.Cross
}

// commit makes the change last priced the agreed state.
func (s *state) commit(delta, size int) {
	m := len(s.lines)
	for k, w := range s.redoAt {
		s.lines[w] = s.redo[k]
	}
	for _, at := range s.flips {
		w, v := at/m, at%m
		s.cross[w*m+v] = !s.cross[w*m+v]
		s.cross[v*m+w] = s.cross[w*m+v]
	}
	for _, at := range s.hitFlips {
		s.hit[at] = !s.hit[at]
	}
	s.cost += delta
	s.size = size
}
