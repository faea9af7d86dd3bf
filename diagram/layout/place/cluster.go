package place

import "slices"

// clusters parts the boxes into groups of at most the given number that are wired to each other more than to others:
// again and again the two are joined of which one has the greatest share of its outgoing wires to the other. Ties go
// to the lower index.
func (s *state) clusters(most int) [][]int {
	c := newClustering(s)
	for {
		a, b, found := c.closest(most)
		if !found {
			break
		}
		c.join(a, b)
	}
	var out [][]int
	for a := range c.members {
		if len(c.members[a]) > 0 {
			slices.Sort(c.members[a])
			out = append(out, c.members[a])
		}
	}
	return out
}

// clustering is a partition in the making.
type clustering struct {
	members [][]int
	links   [][]link // per group, what it is wired to
	out     []int    // per group, its wires to others
}

// link is a group at the other end of some wires.
type link struct{ to, wires int }

func newClustering(s *state) *clustering {
	n := len(s.bodies)
	c := &clustering{members: make([][]int, n), links: make([][]link, n), out: make([]int, n)}
	for i := range n {
		c.members[i] = []int{i}
	}
	for _, w := range s.p.Wires {
		if a, b := w.From.Box, w.To.Box; a != b {
			c.add(a, b, 1)
			c.add(b, a, 1)
		}
	}
	return c
}

// add counts wires from a to b.
func (c *clustering) add(a, b, wires int) {
	c.out[a] += wires
	if k := slices.IndexFunc(c.links[a], func(l link) bool { return l.to == b }); k >= 0 {
		c.links[a][k].wires += wires
		return
	}
	c.links[a] = append(c.links[a], link{b, wires})
}

// closest finds the two groups to be joined next.
func (c *clustering) closest(most int) (a, b int, found bool) {
	best := 0
	for i := range c.links {
		for _, l := range c.links[i] {
			if l.to <= i || len(c.members[i])+len(c.members[l.to]) > most {
				continue
			}
			if share := l.wires * 10000 / min(c.out[i], c.out[l.to]); share > best {
				a, b, best, found = i, l.to, share, true
			}
		}
	}
	return a, b, found
}

// join puts group b into group a.
func (c *clustering) join(a, b int) {
	c.members[a] = append(c.members[a], c.members[b]...)
	c.members[b] = nil
	for _, l := range c.links[b] {
		at := slices.IndexFunc(c.links[l.to], func(k link) bool { return k.to == b })
		c.links[l.to] = slices.Delete(c.links[l.to], at, at+1)
		c.out[l.to] -= l.wires
		if l.to != a {
			c.add(a, l.to, l.wires)
			c.add(l.to, a, l.wires)
		}
	}
	c.links[b], c.out[b] = nil, 0
}
