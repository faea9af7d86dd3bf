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
		if l := &s.redo[k]; l.active {
			if sum += s.meets(s.redoAt[k], l, touched, limit-sum); sum > limit {
				return 0, false
			}
		}
	}
	for _, b := range touched {
		sum += s.p.Rules.Hit * s.newlyThrough(b)
	}
	return sum, sum <= limit
}

// redraw makes the new stand-ins of all wires of the touched boxes. It returns by how much they themselves cost more,
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
			l := s.lineOf(w)
			sum += l.cost - s.lines[w].cost - r.Cross*s.crossed[w] - r.Hit*s.hit[w]
			s.redo = append(s.redo, l)
			s.redoAt = append(s.redoAt, w)
		}
	}
	return sum
}

// among prices what the changed stand-ins meet among themselves now, and gives back what redraw took off twice.
func (s *state) among(touched []int) int {
	crossings, hits := 0, 0
	for k, w := range s.redoAt {
		l, old := &s.redo[k], &s.lines[w]
		for j, v := range s.redoAt[:k] {
			if m := &s.redo[j]; l.near(m) && crosses(l, m) {
				crossings++
			}
			if m := &s.lines[v]; old.near(m) && crosses(old, m) {
				crossings++
			}
		}
		for _, b := range touched {
			if s.standing[b] && s.hits(w, old, b, &s.agreed[b]) {
				hits++
			}
		}
	}
	return s.p.Rules.Cross*crossings + s.p.Rules.Hit*hits
}

// meets prices what one new stand-in crosses of those that stay, and the boxes it runs through. It stops counting
// beyond the limit.
func (s *state) meets(w int, l *line, touched []int, limit int) int {
	s.stamp++
	r := &s.p.Rules
	sum := 0
	for _, b := range touched {
		if s.hits(w, l, b, &s.bodies[b].rect) {
			sum += r.Hit
		}
	}
	for _, at := range s.tiles.along(l) {
		for _, v := range s.tiles.lines[at] {
			if s.met[v] == s.stamp {
				continue
			}
			s.met[v] = s.stamp
			if k := &s.lines[v]; l.near(k) && s.seen[v] != s.mark && crosses(l, k) {
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

// newlyThrough counts the stand-ins that stay and run through a touched box where it is now.
func (s *state) newlyThrough(b int) int {
	s.stamp++
	n, r := 0, &s.bodies[b].rect
	for _, at := range s.tiles.over(*r) {
		for _, v := range s.tiles.lines[at] {
			if s.met[v] == s.stamp {
				continue
			}
			s.met[v] = s.stamp
			if s.seen[v] != s.mark && s.hits(int(v), &s.lines[v], b, r) {
				n++
			}
		}
	}
	return n
}

// commit makes the change last priced the agreed state.
func (s *state) commit(touched []int, delta int) {
	for _, w := range s.redoAt {
		if s.lines[w].active {
			s.leave(w)
		}
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
		s.lines[w] = s.redo[k]
		if s.lines[w].active {
			s.enter(w)
		}
	}
	size := s.sizeOf(s.newBounds)
	s.cost += delta - (size - s.size)
	s.size, s.bounds = size, s.newBounds
}
