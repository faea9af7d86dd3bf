package place

import "example.com/lugbook/diagram/layout/geom"

// beside tells whether the rectangle around a leg has a cell in common with r.
func (l *leg) beside(r *geom.Rect) bool {
	return int(l.high[0]) >= r.X && int(l.low[0]) <= r.X+r.W && int(l.high[1]) >= r.Y && int(l.low[1]) <= r.Y+r.H
}

// hits tells whether a leg of wire w runs through box b on r, if the wire does not end there.
func (s *state) hits(w int, l *leg, b int, r *geom.Rect) bool {
	if wire := &s.p.Wires[w]; !l.beside(r) || wire.From.Box == b || wire.To.Box == b {
		return false
	}
	return cuts(l.a, l.b, r)
}

// recount works out all costs afresh.
func (s *state) recount() {
	s.tiles.clear()
	s.cost = 0
	for b := range s.bodies {
		s.agreed[b], s.room[b], s.standing[b] = s.bodies[b].rect, s.bodies[b].roomOf(), s.bodies[b].placed
		s.through[b] = 0
		if s.standing[b] {
			put(s.tiles.boxes, s.tiles.over(s.room[b]), b)
		}
	}
	for w := range s.courses {
		s.courses[w], s.crossed[w], s.hit[w] = s.courseOf(w), 0, 0
		s.cost += s.courses[w].cost
		s.enter(w)
		s.cost += s.crossed[w]*s.p.Rules.Cross + s.hit[w]*s.p.Rules.Hit
	}
	s.bounds = s.boundsOf()
	s.size = s.sizeOf(s.bounds)
}

// enter puts the course of wire w onto the tiles and counts what it meets there.
func (s *state) enter(w int) {
	c := &s.courses[w]
	for k := range c.n {
		s.meet(w, &c.legs[k], 1)
	}
	for k := range c.n {
		put(s.tiles.legs, s.tiles.along(&c.legs[k]), w<<legBits|k)
	}
}

// leave takes the course of wire w off the tiles and no longer counts what it meets.
func (s *state) leave(w int) {
	c := &s.courses[w]
	for k := range c.n {
		drop(s.tiles.legs, s.tiles.along(&c.legs[k]), w<<legBits|k)
	}
	for k := range c.n {
		s.meet(w, &c.legs[k], -1)
	}
}

// leg finds a leg by its number on the tiles.
func (s *state) leg(at int32) (w int, l *leg) {
	w = int(at) >> legBits
	return w, &s.courses[w].legs[at&(1<<legBits-1)]
}

// meet counts the crossings of a leg with those on its tiles, and the boxes it runs through, by times.
func (s *state) meet(w int, l *leg, times int) {
	s.stamp++
	for _, at := range s.tiles.along(l) {
		for _, id := range s.tiles.legs[at] {
			if s.met[id] == s.stamp {
				continue
			}
			s.met[id] = s.stamp
			if v, k := s.leg(id); l.near(k) && crosses(l, k) {
				s.crossed[w] += times
				s.crossed[v] += times
			}
		}
		for _, b := range s.tiles.boxes[at] {
			if s.passed[b] == s.stamp {
				continue
			}
			s.passed[b] = s.stamp
			if s.hits(w, l, int(b), &s.agreed[b]) {
				s.hit[w] += times
				s.through[b] += times
			}
		}
	}
}

// stand counts the legs that run through box b as it is agreed on, by times.
func (s *state) stand(b, times int) {
	s.stamp++
	for _, at := range s.tiles.over(s.agreed[b]) {
		for _, id := range s.tiles.legs[at] {
			if s.met[id] == s.stamp {
				continue
			}
			s.met[id] = s.stamp
			if v, l := s.leg(id); s.hits(v, l, b, &s.agreed[b]) {
				s.hit[v] += times
				s.through[b] += times
			}
		}
	}
}
