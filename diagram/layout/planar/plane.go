package planar

// plane is a graph drawn in the plane up to bending: crossings are vertices of their own, in which four segments
// meet. Segment s is the pair of half-edges 2s and 2s+1. The face of a half-edge lies on its left.
type plane struct {
	org        []int // vertex a half-edge leaves
	next, prev []int // along the face
	face       []int // numbers of faces, see label
	owner      []int // edge that a segment is part of, none for a free one
	out        []int // a half-edge leaving a vertex, none for a lone one
	first      []int // half-edge with which an edge begins at its u, none for an edge not drawn
	pairs      []int // free segments
	spare      []int // free crossings
	real       int   // vertices below are vertices of the graph
	faces      []int // a half-edge of each face
	weight     []int // per edge: how many wires it stands for
	cost       int   // of all crossings: the product of the weights
}

// newPlane is the plane of a graph without its edges. weight is nil when each counts once.
func newPlane(n int, edges []edge, weight []int) *plane {
	p := &plane{real: n, out: make([]int, n), first: make([]int, len(edges)), weight: weight}
	for i := range p.out {
		p.out[i] = none
	}
	for i := range p.first {
		p.first[i] = none
	}
	return p
}

// copyFrom makes p equal to q without new memory where there is some.
func (p *plane) copyFrom(q *plane) {
	p.org, p.next, p.prev = append(p.org[:0], q.org...), append(p.next[:0], q.next...), append(p.prev[:0], q.prev...)
	p.face, p.owner, p.out = append(p.face[:0], q.face...), append(p.owner[:0], q.owner...), append(p.out[:0], q.out...)
	p.first, p.pairs, p.spare = append(p.first[:0], q.first...), append(p.pairs[:0], q.pairs...), append(p.spare[:0], q.spare...)
	p.faces, p.real, p.weight, p.cost = append(p.faces[:0], q.faces...), q.real, q.weight, q.cost
}

func (p *plane) clone() *plane {
	q := &plane{}
	q.copyFrom(p)
	return q
}

func (p *plane) link(a, b int) { p.next[a], p.prev[b] = b, a }

// dest is the vertex a half-edge runs to.
func (p *plane) dest(h int) int { return p.org[h^1] }

// crossing tells whether a vertex is a crossing.
func (p *plane) crossing(v int) bool { return v >= p.real }

// around is the next half-edge clockwise that leaves the same vertex.
func (p *plane) around(h int) int { return p.next[h^1] }

// degree counts the half-edges that leave v.
func (p *plane) degree(v int) int {
	n := 0
	for h := p.out[v]; h != none; {
		n++
		if h = p.around(h); h == p.out[v] {
			break
		}
	}
	return n
}

// straight is the half-edge that goes on across a crossing to which h runs.
func (p *plane) straight(h int) int { return p.around(p.next[h]) }

func (p *plane) newPair(owner, u, v int) int {
	if k := len(p.pairs); k > 0 {
		s := p.pairs[k-1]
		p.pairs = p.pairs[:k-1]
		p.owner[s], p.org[2*s], p.org[2*s+1] = owner, u, v
		return 2 * s
	}
	p.owner = append(p.owner, owner)
	p.org, p.next, p.prev, p.face = append(p.org, u, v), append(p.next, 0, 0), append(p.prev, 0, 0), append(p.face, 0, 0)
	return len(p.org) - 2
}

func (p *plane) freePair(h int) {
	p.owner[h/2] = none
	p.pairs = append(p.pairs, h/2)
}

// weigh is the weight of an edge.
func (p *plane) weigh(e int) int {
	if p.weight == nil {
		return 1
	}
	return p.weight[e]
}

// crossings counts the crossings.
func (p *plane) crossings() int { return len(p.out) - p.real - len(p.spare) }

func (p *plane) newCrossing() int {
	if k := len(p.spare); k > 0 {
		d := p.spare[k-1]
		p.spare = p.spare[:k-1]
		return d
	}
	p.out = append(p.out, none)
	return len(p.out) - 1
}

// join draws a segment from u to v, from the corner after the half-edge a, which runs to u, to the one after b, which
// runs to v; none for a vertex without segments. Pre: both corners are in one face. It returns the half-edge u-v.
func (p *plane) join(owner, u, a, v, b int) int {
	var fromA, fromB int
	if a != none {
		fromA = p.next[a]
	}
	if b != none {
		fromB = p.next[b]
	}
	h := p.newPair(owner, u, v)
	t := h ^ 1
	if a != none {
		p.link(a, h)
		p.link(t, fromA)
	} else {
		p.link(t, h)
		p.out[u] = h
	}
	if b != none {
		p.link(h, fromB)
		p.link(b, t)
	} else {
		p.link(h, t)
		p.out[v] = t
	}
	return h
}

// split puts vertex d on the half-edge h and returns the half-edge from d on. h then ends at d.
func (p *plane) split(h, d int) int {
	k, y := h^1, p.dest(h)
	n := p.newPair(p.owner[h/2], d, y)
	m := n ^ 1
	if p.next[h] == k {
		p.link(n, m)
	} else {
		p.link(n, p.next[h])
		p.link(p.prev[k], m)
	}
	p.link(h, n)
	p.link(m, k)
	p.org[k], p.out[d] = d, n
	if p.out[y] == k {
		p.out[y] = m
	}
	if p.first[p.owner[h/2]] == k {
		p.first[p.owner[h/2]] = m
	}
	return n
}

// unsplit undoes split for a vertex d with two segments left.
func (p *plane) unsplit(d int) {
	n := p.out[d]
	m := n ^ 1
	k := p.around(n)
	h, y := k^1, p.org[m]
	if p.next[n] == m {
		p.link(h, k)
	} else {
		p.link(h, p.next[n])
		p.link(p.prev[m], k)
	}
	p.org[k] = y
	if p.out[y] == m {
		p.out[y] = k
	}
	if p.first[p.owner[n/2]] == m {
		p.first[p.owner[n/2]] = k
	}
	p.freePair(n)
	p.out[d] = none
}

// unlink takes a segment out.
func (p *plane) unlink(h int) {
	t := h ^ 1
	for _, x := range [2]int{h, t} {
		before, after := p.prev[x], p.next[x^1]
		v := p.org[x]
		if before == x^1 {
			p.out[v] = none
			continue
		}
		p.link(before, after)
		p.out[v] = after
	}
	p.freePair(h)
}

// erase takes an edge out with all its crossings.
func (p *plane) erase(e int) {
	var segments, crossed []int
	for h := p.first[e]; ; h = p.straight(h) {
		segments = append(segments, h)
		if !p.crossing(p.dest(h)) {
			break
		}
		crossed = append(crossed, p.dest(h))
	}
	for _, h := range segments {
		p.unlink(h)
	}
	for _, d := range crossed {
		p.cost -= p.weigh(e) * p.weigh(p.owner[p.out[d]/2])
		p.unsplit(d)
		p.spare = append(p.spare, d)
	}
	p.first[e] = none
}

// label numbers the faces.
func (p *plane) label() {
	p.faces = p.faces[:0]
	for h := range p.face {
		p.face[h] = none
	}
	for h := range p.face {
		if p.owner[h/2] == none || p.face[h] != none {
			continue
		}
		for g := h; p.face[g] == none; g = p.next[g] {
			p.face[g] = len(p.faces)
		}
		p.faces = append(p.faces, h)
	}
}
