package place

// price prices the present places of the touched boxes against the agreed ones. It gives up, with false, as soon as
// that comes to more than the limit. What would change is kept until commit.
func (s *state) price(touched []int, limit int) (int, bool) {
	s.newBounds = s.boundsAfter(touched)
	sum := s.sizeOf(s.newBounds) - s.size + s.redraw(touched)
	if sum > limit {
		return 0, false
	}
	sum += s.among(touched)
	if sum > limit {
		return 0, false
	}
	for k := range s.redo {
		c := &s.redo[k]
		for n := range c.n {
			if sum += s.meets(s.redoAt[k], &c.legs[n], touched, limit-sum); sum > limit {
				return 0, false
			}
		}
	}
	for _, b := range touched {
		sum += s.p.Rules.Hit * s.newlyThrough(b)
	}
	return sum, sum <= limit
}

// redraw makes the new courses of all wires of the touched boxes. It returns by how much they themselves cost more,
// less all that the old ones met.
func (s *state) redraw(touched []int) int {
	s.mark++
	s.redo, s.redoAt = s.redo[:0], s.redoAt[:0]
	r := &s.p.Rules
	sum := 0
	for _, i := range touched {
		sum -= r.Hit * s.through[i]
		s.moving[i] = s.mark
		for _, w := range s.bodies[i].wires {
			if s.seen[w] == s.mark {
				continue
			}
			s.seen[w] = s.mark
			c := s.courseOf(w)
			sum += c.cost - s.courses[w].cost - r.Cross*s.crossed[w] - r.Hit*s.hit[w]
			s.redo = append(s.redo, c)
			s.redoAt = append(s.redoAt, w)
		}
	}
	return sum
}

// among prices what the changed courses meet among themselves now, and gives back what redraw took off twice.
func (s *state) among(touched []int) int {
	crossings, hits := 0, 0
	for k, w := range s.redoAt {
		c, old := &s.redo[k], &s.courses[w]
		for j, v := range s.redoAt[:k] {
			crossings += c.crossings(&s.redo[j]) + old.crossings(&s.courses[v])
		}
		for _, b := range touched {
			for n := range old.n {
				if s.standing[b] && s.hits(w, &old.legs[n], b, &s.agreed[b]) {
					hits++
				}
			}
		}
	}
	return s.p.Rules.Cross*crossings + s.p.Rules.Hit*hits
}

// crossings counts those of two courses.
func (c *course) crossings(d *course) int {
	n := 0
	for k := range c.n {
		for j := range d.n {
			if l, m := &c.legs[k], &d.legs[j]; l.near(m) && crosses(l, m) {
				n++
			}
		}
	}
	return n
}

// meets prices what a new leg of wire w crosses of those that stay, and the boxes it runs through. It stops counting
// beyond the limit.
func (s *state) meets(w int, l *leg, touched []int, limit int) int {
	s.stamp++
	r := &s.p.Rules
	sum := 0
	for _, b := range touched {
		if s.hits(w, l, b, &s.bodies[b].rect) {
			sum += r.Hit
		}
	}
	for _, at := range s.tiles.along(l) {
		for _, id := range s.tiles.legs[at] {
			if s.met[id] == s.stamp {
				continue
			}
			s.met[id] = s.stamp
			if v, k := s.leg(id); l.near(k) && s.seen[v] != s.mark && crosses(l, k) {
				sum += r.Cross
			}
		}
		for _, b := range s.tiles.boxes[at] {
			if s.passed[b] == s.stamp {
				continue
			}
			s.passed[b] = s.stamp
			if s.moving[b] != s.mark && s.hits(w, l, int(b), &s.agreed[b]) {
				sum += r.Hit
			}
		}
		if sum > limit {
			break
		}
	}
	return sum
}

// newlyThrough counts the legs that stay and run through a touched box where it is now.
func (s *state) newlyThrough(b int) int {
	s.stamp++
	n, r := 0, &s.bodies[b].rect
	for _, at := range s.tiles.over(*r) {
		for _, id := range s.tiles.legs[at] {
			if s.met[id] == s.stamp {
				continue
			}
			s.met[id] = s.stamp
			if v, l := s.leg(id); s.seen[v] != s.mark && s.hits(v, l, b, r) {
				n++
			}
		}
	}
	return n
}

// commit makes the change last priced the agreed state.
func (s *state) commit(touched []int, delta int) {
	for _, w := range s.redoAt {
		s.leave(w)
	}
	for _, b := range touched {
		if s.standing[b] {
			s.stand(b, -1)
			drop(s.tiles.boxes, s.tiles.over(s.room[b]), b)
		}
	}
	for _, b := range touched {
		s.agreed[b], s.room[b], s.standing[b] = s.bodies[b].rect, s.bodies[b].roomOf(), true
		s.stand(b, 1)
		put(s.tiles.boxes, s.tiles.over(s.room[b]), b)
	}
	for k, w := range s.redoAt {
		s.courses[w] = s.redo[k]
		s.enter(w)
	}
	size := s.sizeOf(s.newBounds)
	s.cost += delta - (size - s.size)
	s.size, s.bounds = size, s.newBounds
}
