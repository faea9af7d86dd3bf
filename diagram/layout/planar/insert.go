package planar

import "example.com/lugbook/diagram/layout/chance"

// inserter lays edges into a plane.
type inserter struct {
	*plane
	edges []edge
	at    [][]int
	rnd   chance.Source
	dist  []int   // per face
	via   []int   // per face, the half-edge across which it was reached
	queue [][]int // faces by distance, as far as they may still count
	sum   []int   // per face
	goal  []int   // per face, a half-edge that runs to the goal, none elsewhere
	way   []int
}

func newInserter(p *plane, edges []edge, seed uint64) *inserter {
	return &inserter{plane: p, edges: edges, at: incident(p.real, edges), rnd: chance.New(seed)}
}

// reset makes room for the present faces.
func (s *inserter) reset() {
	for len(s.dist) < len(s.faces) {
		s.dist, s.via, s.goal = append(s.dist, 0), append(s.via, 0), append(s.goal, 0)
	}
	for f := range s.faces {
		s.dist[f] = none
	}
	for d := range s.queue {
		s.queue[d] = s.queue[d][:0]
	}
}

// reached puts a face at a distance, come to across a half-edge, unless it is as near already.
func (s *inserter) reached(f, d, via int) {
	if s.dist[f] != none && s.dist[f] <= d {
		return
	}
	s.dist[f], s.via[f] = d, via
	for len(s.queue) <= d {
		s.queue = append(s.queue, nil)
	}
	s.queue[d] = append(s.queue[d], f)
}

// reach puts the faces around a vertex at distance 0.
func (s *inserter) reach(v int) {
	start := s.out[v]
	for range s.rnd.Below(4) {
		start = s.around(start)
	}
	for h := start; ; {
		s.reached(s.face[h^1], 0, none)
		if h = s.around(h); h == start {
			return
		}
	}
}

// flood finds what is to be crossed from the faces at distance 0 to all others, or until it comes to a goal, which it
// returns; none when there is none.
func (s *inserter) flood(goals bool) int {
	for d := 0; d < len(s.queue); d++ {
		for i := 0; i < len(s.queue[d]); i++ {
			f := s.queue[d][i]
			if s.dist[f] < d {
				continue
			}
			if goals && s.goal[f] != none {
				return f
			}
			start := s.faces[f]
			for h := start; ; {
				s.reached(s.face[h^1], d+s.weigh(s.owner[h/2]), h)
				if h = s.next[h]; h == start {
					break
				}
			}
		}
	}
	return none
}

// insert draws edge e across as few others as the present faces allow. A lone end is put into the face given.
func (s *inserter) insert(e, face int) {
	s.label()
	s.reset()
	u, v := s.edges[e].u, s.edges[e].v
	if s.out[v] == none {
		u, v = v, u
	}
	for f := range s.faces {
		s.goal[f] = none
	}
	if s.out[v] != none {
		for h, start := s.out[v], s.out[v]; ; {
			if f := s.face[h^1]; s.goal[f] == none || s.rnd.Below(2) == 0 {
				s.goal[f] = h ^ 1
			}
			if h = s.around(h); h == start {
				break
			}
		}
	}
	switch {
	case s.out[v] == none: // the first edge of all
	case s.out[u] == none:
		s.reached(face, 0, none)
	default:
		s.reach(u)
	}
	s.draw(e, u, v, s.flood(true))
}

// draw lays edge e from u to v through the faces that led to the last one.
func (s *inserter) draw(e, u, v, last int) {
	s.way = s.way[:0]
	b, f := none, last
	if last != none {
		b = s.goal[last]
		for s.via[f] != none {
			s.way = append(s.way, s.via[f])
			f = s.face[s.via[f]]
		}
	}
	a := none
	if s.out[u] != none {
		a = s.cornerIn(u, f)
	}
	from, begin := u, none
	for i := len(s.way) - 1; i >= 0; i-- {
		h := s.way[i]
		d := s.newCrossing()
		s.cost += s.weigh(e) * s.weigh(s.owner[h/2])
		n := s.split(h, d)
		if a == h {
			a = n
		}
		g := s.join(e, from, a, d, h)
		if begin == none {
			begin = g
		}
		from, a = d, n^1
	}
	g := s.join(e, from, a, v, b)
	if begin == none {
		begin = g
	}
	if u == s.edges[e].u {
		s.first[e] = begin
	} else {
		s.first[e] = g ^ 1
	}
}

// cornerIn is a half-edge that runs to v in face f.
func (s *inserter) cornerIn(v, f int) int {
	h := s.out[v]
	for s.face[h^1] != f {
		h = s.around(h)
	}
	return h ^ 1
}

// lift takes all edges of a vertex out.
func (s *inserter) lift(v int) {
	for _, e := range s.at[v] {
		if s.first[e] != none {
			s.erase(e)
		}
	}
}

// settle puts a lone vertex into the face from which its edges cross the fewest others, and draws them.
func (s *inserter) settle(v int) {
	s.label()
	for len(s.sum) < len(s.faces) {
		s.sum = append(s.sum, 0)
	}
	clear(s.sum[:len(s.faces)])
	for _, e := range s.at[v] {
		w := s.edges[e].other(v)
		if s.out[w] == none {
			continue
		}
		s.reset()
		s.reach(w)
		s.flood(false)
		for f := range s.faces {
			s.sum[f] += s.dist[f] * s.weigh(e)
		}
	}
	best, ties := 0, 1
	for f := 1; f < len(s.faces); f++ {
		switch {
		case s.sum[f] < s.sum[best]:
			best, ties = f, 1
		case s.sum[f] == s.sum[best]:
			if ties++; s.rnd.Below(ties) == 0 {
				best = f
			}
		}
	}
	order := append([]int(nil), s.at[v]...)
	s.shuffle(order)
	for _, e := range order {
		s.insert(e, best)
	}
}

func (s *inserter) shuffle(list []int) {
	for i := len(list) - 1; i > 0; i-- {
		k := s.rnd.Below(i + 1)
		list[i], list[k] = list[k], list[i]
	}
}
