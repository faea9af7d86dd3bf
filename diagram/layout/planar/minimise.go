package planar

import (
	"slices"
	"sync"
)

// Effort says how hard to try.
type Effort struct {
	// Starts is the number of independent searches for few crossings, Steps the number of changes each one tries.
	Starts, Steps int
	// Shapes is the number of drawings made of what they found, of which the best is taken.
	Shapes int
	// Folds is the number of further drawings made of each of them with some wires turned back.
	Folds int
}

// planarise draws a connected graph without loops, of which no single vertex parts off another, across as few edges
// as the effort finds. A crossing of edges that stand for several wires
// counts as often as these cross. It returns all drawings with that number of crossings, one for each start that came to it. The
// result does not depend on the number of processors.
func planarise(n int, edges []edge, weight []int, e Effort) []*plane {
	if p, ok := straightPlane(n, edges, weight); ok {
		return []*plane{p}
	}
	found := make([]*plane, max(e.Starts, 1))
	var wait sync.WaitGroup
	for i := range found {
		wait.Go(func() { found[i] = search(n, edges, weight, uint64(i+1), e.Steps) })
	}
	wait.Wait()
	least := found[0].cost
	for _, p := range found {
		least = min(least, p.cost)
	}
	return slices.DeleteFunc(found, func(p *plane) bool { return p.cost > least })
}

// straightPlane draws a graph without crossings, if that is possible.
func straightPlane(n int, edges []edge, weight []int) (*plane, bool) {
	all := make([]int, len(edges))
	for e := range all {
		all[e] = e
	}
	taken, twins := simple(edges, all)
	after, ok := embed(n, pick(edges, taken))
	if !ok {
		return nil, false
	}
	p := fromRotation(n, edges, weight, taken, after)
	p.addAll(edges, twins, 0)
	return p, true
}

// addAll draws more edges, one by one, in the order given.
func (p *plane) addAll(edges []edge, more []int, seed uint64) *inserter {
	s := newInserter(p, edges, seed)
	for _, e := range more {
		s.insert(e, none)
	}
	return s
}

// skeleton draws edges in the order given as long as there is a plane drawing of them all, and returns the others.
func skeleton(n int, edges []edge, weight, order []int) (p *plane, left []int) {
	tried, left := simple(edges, order)
	var taken []int
	var drawn []edge
	for _, e := range tried {
		if _, ok := embed(n, append(drawn, edges[e])); ok {
			taken, drawn = append(taken, e), append(drawn, edges[e])
		} else {
			left = append(left, e)
		}
	}
	after, _ := embed(n, drawn)
	return fromRotation(n, edges, weight, taken, after), left
}

// simple parts a list of edges into the first of each pair of vertices and the others.
func simple(edges []edge, list []int) (taken, twins []int) {
	seen := map[edge]bool{}
	for _, e := range list {
		key := edge{min(edges[e].u, edges[e].v), max(edges[e].u, edges[e].v)}
		if seen[key] {
			twins = append(twins, e)
			continue
		}
		seen[key] = true
		taken = append(taken, e)
	}
	return taken, twins
}

func pick(edges []edge, list []int) []edge {
	out := make([]edge, len(list))
	for i, e := range list {
		out[i] = edges[e]
	}
	return out
}

// fromRotation builds the plane of some edges, given the clockwise order of their half-edges around the vertices.
func fromRotation(n int, edges []edge, weight, taken, after []int) *plane {
	p := newPlane(n, edges, weight)
	for _, e := range taken {
		h := p.newPair(e, edges[e].u, edges[e].v)
		p.first[e], p.out[edges[e].u], p.out[edges[e].v] = h, h, h^1
	}
	for h, next := range after {
		p.link(h^1, next)
	}
	return p
}

// search improves one start by taking edges and stars out and putting them back. A step that saves nothing but costs
// nothing is kept too, so that it does not stay on one spot.
func search(n int, edges []edge, weight []int, seed uint64, steps int) *plane {
	s := newInserter(newPlane(n, edges, weight), edges, seed)
	order := make([]int, len(edges))
	for e := range order {
		order[e] = e
	}
	s.shuffle(order)
	slices.SortStableFunc(order, func(a, b int) int { return s.weigh(b) - s.weigh(a) })
	p, left := skeleton(n, edges, weight, order)
	s.plane = p
	for _, e := range left {
		s.insert(e, none)
	}
	least, back, best := fewest(n, edges), p.clone(), p.clone()
	for range steps {
		if best.cost <= least {
			break
		}
		back.copyFrom(p)
		s.change()
		if p.cost > back.cost {
			p.copyFrom(back)
		}
		if p.cost < best.cost {
			best.copyFrom(p)
		}
	}
	return best
}

// change takes some edges or stars out and puts them back.
func (s *inserter) change() {
	switch r := s.rnd.Below(100); {
	case r < 45:
		v := s.rnd.Below(s.real)
		s.lift(v)
		s.settle(v)
	case r < 70:
		s.again(s.bad(1))
	case r < 90:
		s.again(s.bad(2 + s.rnd.Below(4)))
	default:
		s.twoStars()
	}
}

// bad picks edges, such as are crossed if some draws find one.
func (s *inserter) bad(n int) []int {
	var out []int
	for range n {
		e := s.rnd.Below(len(s.edges))
		for range 8 {
			if s.crossing(s.dest(s.first[e])) {
				break
			}
			e = s.rnd.Below(len(s.edges))
		}
		out = append(out, e)
	}
	return out
}

// again takes edges out, as long as the rest hangs together, and draws them anew.
func (s *inserter) again(list []int) {
	var taken []int
	for _, e := range list {
		if s.first[e] == none || !s.spared(e) {
			continue
		}
		s.erase(e)
		taken = append(taken, e)
	}
	s.shuffle(taken)
	for _, e := range taken {
		s.insert(e, none)
	}
}

// spared tells whether the ends of edge e hang together by the other edges drawn.
func (s *inserter) spared(e int) bool {
	goal := s.edges[e].v
	seen := make([]bool, s.real)
	seen[s.edges[e].u] = true
	for stack := []int{s.edges[e].u}; len(stack) > 0; {
		v := stack[len(stack)-1]
		stack = stack[:len(stack)-1]
		for _, f := range s.at[v] {
			if w := s.edges[f].other(v); f != e && s.first[f] != none && !seen[w] {
				if w == goal {
					return true
				}
				seen[w] = true
				stack = append(stack, w)
			}
		}
	}
	return false
}

// twoStars lifts one vertex, then draws the edges of a neighbour anew before it is put back.
func (s *inserter) twoStars() {
	v := s.rnd.Below(s.real)
	w := s.edges[s.at[v][s.rnd.Below(len(s.at[v]))]].other(v)
	s.lift(v)
	var rest []int
	for _, e := range s.at[w] {
		if s.first[e] != none {
			rest = append(rest, e)
		}
	}
	s.again(rest)
	s.settle(v)
}

// fewest is a lower bound of crossings: what Euler's formula leaves no room for, given the shortest cycle.
func fewest(n int, edges []edge) int {
	girth := shortestCycle(n, edges)
	if girth < 3 {
		return 0
	}
	return max(0, len(edges)-(n-2)*girth/(girth-2))
}

// shortestCycle is the length of the shortest cycle, 0 for a graph without any.
func shortestCycle(n int, edges []edge) int {
	at, best := incident(n, edges), 0
	for s := range n {
		dist, by := make([]int, n), make([]int, n)
		for v := range dist {
			dist[v] = none
		}
		dist[s], by[s] = 0, none
		for queue := []int{s}; len(queue) > 0; queue = queue[1:] {
			v := queue[0]
			for _, e := range at[v] {
				w := edges[e].other(v)
				switch {
				case e == by[v]:
				case dist[w] == none:
					dist[w], by[w] = dist[v]+1, e
					queue = append(queue, w)
				case best == 0 || dist[v]+dist[w]+1 < best:
					best = dist[v] + dist[w] + 1
				}
			}
		}
	}
	return best
}
