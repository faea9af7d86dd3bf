package network

import (
	"math"
	"slices"
)

// flow is a directed network with capacities and one source, vertex 0; the vertices
// of the caller follow, in which nodes are merged, and then a spare one.
type flow struct {
	vertex func(Node) int
	edges  []flowEdge // an edge and its reverse stand side by side
	from   []Node     // by edge: where it begins; None at the source
	out    [][]int
	base   []float64 // capacities before any flow

	divided int   // the vertex that is in two parts, of which the spare one is the second
	whole   []int // the edges from it while it was one

	via   []int // by vertex: the edge that led there in the last search, or -1
	reach []float64
	queue []int
}

type flowEdge struct {
	to    int
	room  float64
	by    *Link   // what sets the capacity
	limit []*Link // the same of a feed
}

// newFlow is a network of the vertices that nodes are merged into.
func newFlow(merged *Groups) *flow {
	n := merged.Count() + 2
	return &flow{vertex: merged.Of, out: make([][]int, n), via: make([]int, n), reach: make([]float64, n)}
}

// spare is the spare vertex, as the caller counts.
func (f *flow) spare() int { return len(f.out) - 2 }

// feed lets the source give at most amps to a node.
func (f *flow) feed(to Node, amps float64, limits []*Link) {
	f.add(None, to, amps, flowEdge{limit: limits})
}

func (f *flow) edge(from, to Node, amps float64, by *Link) { f.add(from, to, amps, flowEdge{by: by}) }

func (f *flow) add(from, to Node, amps float64, e flowEdge) {
	start, end := 0, f.vertex(to)+1
	if from != None {
		start = f.vertex(from) + 1
	}
	f.out[start] = append(f.out[start], len(f.edges))
	f.out[end] = append(f.out[end], len(f.edges)+1)
	e.to, e.room = end, amps
	f.edges = append(f.edges, e, flowEdge{to: start})
	f.from = append(f.from, from, to)
	f.base = append(f.base, amps, 0)
}

// divide moves what is on one side of a vertex into the spare one.
func (f *flow) divide(vertex int, side cutSide) {
	f.divided = vertex + 1
	f.whole = append(f.whole[:0], f.out[f.divided]...)
	spare := len(f.out) - 1
	first, second := f.out[f.divided][:0], f.out[spare][:0]
	for _, e := range f.whole {
		if side.has(f.from[e]) {
			second = append(second, e)
			f.edges[e^1].to = spare
		} else {
			first = append(first, e)
		}
	}
	f.out[f.divided], f.out[spare] = first, second
}

// unite takes back what divide did.
func (f *flow) unite() {
	spare := len(f.out) - 1
	for _, e := range f.out[spare] {
		f.edges[e^1].to = f.divided
	}
	f.out[f.divided], f.out[spare] = append(f.out[f.divided][:0], f.whole...), f.out[spare][:0]
}

// nowhere is no vertex.
const nowhere = -1

// maximum is the most that the source can send to a vertex without passing another,
// with the links of the smallest cut nearest to the source.
func (f *flow) maximum(vertex, without int) Exposure {
	for i := range f.edges {
		f.edges[i].room = f.base[i]
	}
	sink, total := vertex+1, 0.0
	for {
		room := f.shortest(sink, without+1)
		if room == 0 {
			return Exposure{Amps: total, Limits: f.cut(without + 1)}
		}
		if math.IsInf(room, 1) {
			return Exposure{Amps: room}
		}
		for at := sink; at != 0; at = f.edges[f.via[at]^1].to {
			f.edges[f.via[at]].room -= room
			f.edges[f.via[at]^1].room += room
		}
		total += room
	}
}

// shortest finds a way with room from the source to the sink by the fewest edges
// (Edmonds and Karp, 1972), not passing the vertex without unless it is 0.
func (f *flow) shortest(sink, without int) (room float64) {
	for i := range f.via {
		f.via[i] = -1
	}
	f.reach[0] = math.Inf(1)
	f.queue = append(f.queue[:0], 0)
	for i := 0; i < len(f.queue); i++ {
		at := f.queue[i]
		for _, e := range f.out[at] {
			edge := &f.edges[e]
			if edge.room <= 0 || edge.to == 0 || edge.to == without || f.via[edge.to] >= 0 {
				continue
			}
			f.via[edge.to], f.reach[edge.to] = e, min(f.reach[at], edge.room)
			if edge.to == sink {
				return f.reach[sink]
			}
			f.queue = append(f.queue, edge.to)
		}
	}
	return 0
}

// cut lists what limits the flow: full edges from the vertices that the last search reached
// to the others.
func (f *flow) cut(without int) []*Link {
	reached := func(v int) bool { return v == 0 || f.via[v] >= 0 }
	var limits []*Link
	note := func(l *Link) {
		if !slices.Contains(limits, l) {
			limits = append(limits, l)
		}
	}
	for e := 0; e < len(f.edges); e += 2 {
		edge := &f.edges[e]
		if !reached(f.edges[e+1].to) || reached(edge.to) || edge.to == without || f.base[e] == 0 {
			continue
		}
		if edge.by != nil {
			note(edge.by)
		}
		for _, l := range edge.limit {
			note(l)
		}
	}
	return limits
}
