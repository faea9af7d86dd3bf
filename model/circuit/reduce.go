package circuit

import (
	"slices"
	"sync"
)

// edge is a conducting element, or what stands for several: from a to b, whose voltage is
// ohms times its current plus volts.
type edge struct {
	a, b    Node
	ohms    float64
	volts   float64
	current float64
	e       Element // or one of those that it stands for
	fixed   int     // place in the fixed part of a mesh, or -1
	gone    bool    // it is part of another edge
}

// reduction takes from a network, one by one, the nodes that only one or two others are
// joined to, and makes one edge of those that run side by side. Most of a cart goes that
// way, and what is left is small. Resistances only add and divide, so nothing is
// lost to rounding.
type reduction struct {
	edges   []edge
	steps   []step
	nodes   []Node  // that it works on, in order
	at      [][]int // by node: the edges on it; some may be gone
	seen    []int   // by node: the edge that leads there, from the node at hand
	queue   []Node
	queued  []bool
	removed []bool // by node
	kept    []bool // by node: not to be removed
	room    []int  // that at is cut from
}

// spareReductions are those that nothing needs any more, for their room.
var spareReductions = sync.Pool{New: func() any { return new(reduction) }}

// spare gives the room of a reduction back.
func (r *reduction) spare() { spareReductions.Put(r) }

type stepKind uint8

const (
	leafStep stepKind = iota
	chainStep
	besideStep
	ringStep
)

// step is one move of a reduction. A leaf n hangs on one edge; a chain leads by one from p
// to n and by another from n to q; side by side are one and another; a ring is an edge
// whose ends are one node.
type step struct {
	kind         stepKind
	n, p, q      Node
	one, another int     // edges
	with, along  float64 // +1 if one, another count in the direction of the step
	sum          float64 // edges that are side by side: ohms of both
	into         int     // edge that stands for both
	due          float64 // current that leaves n, while solving
}

// newReduction makes room for edges on some of all nodes, of which ends says how many of the ends
// of edges can be on each.
func newReduction(nodes []Node, ends []int, kept []bool) *reduction {
	r := spareReductions.Get().(*reduction)
	r.nodes, r.kept = nodes, kept
	r.queue = slices.Grow(r.queue[:0], 2*len(nodes))
	r.at, r.seen = sized(r.at, len(ends)), sized(r.seen, len(ends))
	r.queued, r.removed = sized(r.queued, len(ends)), sized(r.removed, len(ends))
	sum := 0
	for _, n := range nodes {
		sum += ends[n]
	}
	r.room = slices.Grow(r.room[:0], 2*sum+2*len(nodes))
	room := r.room
	for _, n := range nodes {
		most := 2*ends[n] + 2 // with edges that stand for others
		r.at[n], room = room[:0:most], room[:most][most:]
		r.seen[n] = -1
	}
	r.edges, r.steps = slices.Grow(r.edges[:0], sum), slices.Grow(r.steps[:0], sum/2+len(nodes))
	return r
}

// sized is a list of so many zeros, in the room of another.
func sized[T any](list []T, n int) []T {
	list = slices.Grow(list[:0], n)[:n]
	clear(list)
	return list
}

// begin forgets all edges.
func (r *reduction) begin() {
	r.edges, r.steps, r.queue = r.edges[:0], r.steps[:0], r.queue[:0]
	for _, n := range r.nodes {
		r.at[n], r.removed[n] = r.at[n][:0], false
	}
}

func (r *reduction) join(e edge) int {
	id := len(r.edges)
	r.edges = append(r.edges, e)
	r.at[e.a] = append(r.at[e.a], id)
	if e.a != e.b {
		r.at[e.b] = append(r.at[e.b], id)
	}
	return id
}

// run reduces as far as it goes.
func (r *reduction) run() error {
	for _, n := range r.nodes {
		r.enqueue(n)
	}
	for i := 0; i < len(r.queue); i++ {
		n := r.queue[i]
		r.queued[n] = false
		if err := r.simplify(n); err != nil {
			return err
		}
		switch around := r.at[n]; {
		case r.kept[n]:
		case len(around) == 1:
			r.takeLeaf(n, around[0])
		case len(around) == 2:
			r.takeChain(n, around[0], around[1])
		}
	}
	return nil
}

func (r *reduction) enqueue(n Node) {
	if !r.queued[n] && !r.removed[n] {
		r.queued[n] = true
		r.queue = append(r.queue, n)
	}
}

// simplify leaves at most one edge from a node to any other.
func (r *reduction) simplify(n Node) error {
	kept := r.at[n][:0]
	for _, id := range r.at[n] {
		e := &r.edges[id]
		if e.gone {
			continue
		}
		far := r.far(id, n)
		if far == n {
			if e.ohms == 0 {
				return &Singular{Node: n, Element: e.e}
			}
			e.gone = true
			r.steps = append(r.steps, step{kind: ringStep, one: id})
			continue
		}
		if first := r.seen[far]; first >= 0 {
			into, err := r.beside(kept[first], id)
			if err != nil {
				return err
			}
			kept[first] = into
			r.enqueue(far)
			continue
		}
		r.seen[far] = len(kept)
		kept = append(kept, id)
	}
	for _, id := range kept {
		r.seen[r.far(id, n)] = -1
	}
	r.at[n] = kept
	return nil
}

// beside makes one edge of two between the same nodes. Its node a has it in its list by
// the place of the first; its node b gets it too.
func (r *reduction) beside(one, another int) (int, error) {
	x, y := &r.edges[one], &r.edges[another]
	sum := x.ohms + y.ohms
	if sum == 0 {
		return 0, &Singular{Node: r.edges[max(one, another)].a, Element: max(x.e, y.e)}
	}
	s := step{kind: besideStep, one: one, another: another, along: 1, sum: sum, into: len(r.edges)}
	if x.a != y.a {
		s.along = -1
	}
	x.gone, y.gone = true, true
	both := edge{a: x.a, b: x.b, ohms: x.ohms * (y.ohms / sum), e: max(x.e, y.e)}
	r.steps = append(r.steps, s)
	return r.join(both), nil
}

func (r *reduction) far(id int, n Node) Node {
	if r.edges[id].a == n {
		return r.edges[id].b
	}
	return r.edges[id].a
}

// direction is +1 if an edge counts away from a node.
func (r *reduction) direction(id int, from Node) float64 {
	if r.edges[id].a == from {
		return 1
	}
	return -1
}

func (r *reduction) takeLeaf(n Node, id int) {
	p := r.far(id, n)
	r.steps = append(r.steps, step{kind: leafStep, n: n, p: p, one: id, with: r.direction(id, n)})
	r.edges[id].gone, r.removed[n] = true, true
	r.enqueue(p)
}

// takeChain takes a node between two edges. What leaves the node comes by the edge of the
// lower resistance, so that a small current through the other is not the difference of two large ones.
func (r *reduction) takeChain(n Node, one, another int) {
	if r.edges[one].ohms > r.edges[another].ohms {
		one, another = another, one
	}
	p, q := r.far(one, n), r.far(another, n)
	r.steps = append(r.steps, step{
		kind: chainStep, n: n, p: p, q: q, one: one, another: another,
		with: r.direction(one, p), along: r.direction(another, n), into: len(r.edges),
	})
	x, y := &r.edges[one], &r.edges[another]
	x.gone, y.gone, r.removed[n] = true, true, true
	r.join(edge{a: p, b: q, ohms: x.ohms + y.ohms, e: max(x.e, y.e)})
	r.enqueue(p)
	r.enqueue(q)
}

// gather moves the currents that leave the nodes, and the voltages of the edges, to what
// is left of the network.
func (r *reduction) gather(due []float64) {
	for i := range r.steps {
		s := &r.steps[i]
		one, another := &r.edges[s.one], &r.edges[s.another]
		switch s.kind {
		case leafStep:
			s.due = due[s.n]
			due[s.p] += s.due
		case chainStep:
			s.due = due[s.n]
			due[s.p] += s.due
			r.edges[s.into].volts = s.with*one.volts + s.along*another.volts + one.ohms*s.due
		case besideStep:
			r.edges[s.into].volts = one.volts*(another.ohms/s.sum) + s.along*another.volts*(one.ohms/s.sum)
		}
	}
}

// spread gives the nodes and edges that were taken away their voltages and currents back.
func (r *reduction) spread(volts []float64) {
	for i := len(r.steps) - 1; i >= 0; i-- {
		s := &r.steps[i]
		one, another := &r.edges[s.one], &r.edges[s.another]
		switch s.kind {
		case leafStep:
			one.current = -s.with * s.due
			volts[s.n] = volts[s.p] - one.ohms*s.due + s.with*one.volts
		case chainStep:
			through := r.edges[s.into].current
			one.current, another.current = s.with*(through+s.due), s.along*through
			volts[s.n] = volts[s.q] + another.ohms*through + s.along*another.volts
		case besideStep:
			through, round := r.edges[s.into].current, (s.along*another.volts-one.volts)/s.sum
			one.current = through*(another.ohms/s.sum) + round
			another.current = s.along * (through*(one.ohms/s.sum) - round)
		case ringStep:
			one.current = -one.volts / one.ohms
		}
	}
}
