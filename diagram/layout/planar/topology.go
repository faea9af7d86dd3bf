package planar

import "slices"

// topologies draws a connected graph without loops in the plane, in up to so many ways with as few crossings. Its
// blocks cross each other nowhere, so each is drawn by itself, and they are put together at the vertices they share.
func topologies(n int, edges []edge, weight []int, e Effort) []*plane {
	parts := blocks(n, edges)
	slices.Reverse(parts) // a block comes after the one it hangs on
	drawn, made := make([]*block, len(parts)), make([][]*plane, len(parts))
	ways := 1
	for i, part := range parts {
		drawn[i] = newBlock(n, edges, weight, part)
		made[i] = planarise(drawn[i].n, drawn[i].edges, drawn[i].weight, e)
		ways = max(ways, len(made[i]))
	}
	out := make([]*plane, min(ways, max(e.Shapes, 1)))
	for k := range out {
		out[k] = newPlane(n, edges, weight)
		for i, b := range drawn {
			out[k].graft(made[i][k%len(made[i])], b, edges)
		}
	}
	return out
}

// block is a part of a graph without its vertices of degree 2: these are left to chains of edges.
type block struct {
	n        int
	edges    []edge  // between vertices of the block
	vertices []int   // of the graph
	chains   [][]int // per edge, the edges of the graph it stands for, from u to v
	weight   []int   // per edge
}

func newBlock(n int, edges []edge, weight, part []int) *block {
	at := make(map[int][]int, len(part))
	var order []int
	for _, e := range part {
		for _, v := range [2]int{edges[e].u, edges[e].v} {
			if at[v] == nil {
				order = append(order, v)
			}
			at[v] = append(at[v], e)
		}
	}
	weigh := func(e int) int {
		if weight == nil {
			return 1
		}
		return weight[e]
	}
	b := &block{}
	index := make([]int, n)
	for i := range index {
		index[i] = none
	}
	keep := func(v int) {
		index[v] = len(b.vertices)
		b.vertices = append(b.vertices, v)
	}
	for _, v := range order {
		if len(at[v]) != 2 || weigh(at[v][0]) != 1 || weigh(at[v][1]) != 1 {
			keep(v)
		}
	}
	if len(b.vertices) < 2 { // a ring: any two of its vertices will do
		for _, v := range order[:2] {
			if index[v] == none {
				keep(v)
			}
		}
	}
	b.n = len(b.vertices)
	done := make(map[int]bool, len(part))
	for _, u := range b.vertices {
		for _, e := range at[u] {
			if done[e] {
				continue
			}
			chain, v := []int{e}, edges[e].other(u)
			done[e] = true
			for index[v] == none {
				f := at[v][0] + at[v][1] - chain[len(chain)-1]
				done[f] = true
				chain, v = append(chain, f), edges[f].other(v)
			}
			b.edges, b.chains = append(b.edges, edge{index[u], index[v]}), append(b.chains, chain)
			b.weight = append(b.weight, weigh(e))
		}
	}
	return b
}

// graft copies the drawing of a block into p, where at most one of its vertices is drawn already.
func (p *plane) graft(q *plane, b *block, edges []edge) {
	vertex := append([]int(nil), b.vertices...)
	for d := q.real; d < len(q.out); d++ {
		id := none
		if q.out[d] != none {
			id = p.newCrossing()
		}
		vertex = append(vertex, id)
	}
	half := make([]int, len(q.org))
	for s, owner := range q.owner {
		if owner != none {
			half[2*s] = p.newPair(b.chains[owner][0], vertex[q.org[2*s]], vertex[q.org[2*s+1]])
			half[2*s+1] = half[2*s] + 1
		}
	}
	for h, owner := range q.owner {
		if owner != none {
			p.link(half[2*h], half[q.next[2*h]])
			p.link(half[2*h+1], half[q.next[2*h+1]])
		}
	}
	shared, old := p.shared(b, edges)
	for v, h := range q.out {
		if h != none {
			p.out[vertex[v]] = half[h]
		}
	}
	p.string(q, b, half, edges)
	if shared != none {
		a, c := p.widest(old), p.widest(p.out[shared])
		fromA, fromC := p.next[a], p.next[c]
		p.link(a, fromC)
		p.link(c, fromA)
	}
}

// shared is the vertex of a block that is drawn already, and a half-edge that leaves it.
func (p *plane) shared(b *block, edges []edge) (v, h int) {
	for _, chain := range b.chains {
		for _, e := range chain {
			for _, v := range [2]int{edges[e].u, edges[e].v} {
				if p.out[v] != none {
					return v, p.out[v]
				}
			}
		}
	}
	return none, none
}

// string puts the vertices of the chains on the edges of a block, spread evenly between the crossings.
func (p *plane) string(q *plane, b *block, half []int, edges []edge) {
	for e, chain := range b.chains {
		var segments []int
		for h := q.first[e]; ; h = q.straight(h) {
			segments = append(segments, half[h])
			if !q.crossing(q.dest(h)) {
				break
			}
		}
		k, u, begin := 0, b.vertices[b.edges[e].u], segments[0]
		for i, h := range segments {
			p.owner[h/2] = chain[k]
			for k+1 < len(chain) && (k+1)*len(segments)/len(chain) <= i {
				v := edges[chain[k]].other(u)
				n := p.split(h, v)
				p.begin(chain[k], edges[chain[k]].u == u, begin, h)
				k, u, h, begin = k+1, v, n, n
				p.owner[n/2] = chain[k]
			}
			if i+1 == len(segments) {
				p.begin(chain[k], edges[chain[k]].u == u, begin, h)
			}
		}
	}
}

// begin notes where an edge begins, given its first and last half-edge seen from its u or, if not onward, its v.
func (p *plane) begin(e int, onward bool, first, last int) {
	if onward {
		p.first[e] = first
	} else {
		p.first[e] = last ^ 1
	}
}

// widest is the half-edge to the vertex that h leaves whose face has the most segments.
func (p *plane) widest(h int) int {
	best, most := h^1, 0
	for g := h; ; {
		n := 0
		for x := g ^ 1; ; {
			n++
			if x = p.next[x]; x == g^1 {
				break
			}
		}
		if n > most {
			best, most = g^1, n
		}
		if g = p.around(g); g == h {
			return best
		}
	}
}
