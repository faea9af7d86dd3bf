package network

import (
	"math"
	"slices"
)

// flow is a directed network with capacities and one source, vertex 0; the vertices
// of the caller follow.
type flow struct {
	edges []flowEdge // an edge and its reverse stand side by side
	out   [][]int
	base  []float64 // capacities before any flow

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

func newFlow(vertices int) *flow {
	f := &flow{}
	f.clear(vertices)
	return f
}

// clear makes ready for so many vertices.
func (f *flow) clear(vertices int) {
	f.edges, f.base = f.edges[:0], f.base[:0]
	f.out = slices.Grow(f.out[:0], vertices+1)[:vertices+1]
	for i := range f.out {
		f.out[i] = f.out[i][:0]
	}
	f.via = slices.Grow(f.via[:0], vertices+1)[:vertices+1]
	f.reach = slices.Grow(f.reach[:0], vertices+1)[:vertices+1]
}

// feed lets the source give at most amps to a vertex.
func (f *flow) feed(to int, amps float64, limits []*Link) {
	f.add(0, to+1, amps, flowEdge{limit: limits})
}

func (f *flow) edge(from, to int, amps float64, by *Link) {
	f.add(from+1, to+1, amps, flowEdge{by: by})
}

func (f *flow) add(from, to int, amps float64, e flowEdge) {
	f.out[from] = append(f.out[from], len(f.edges))
	f.out[to] = append(f.out[to], len(f.edges)+1)
	e.to, e.room = to, amps
	f.edges = append(f.edges, e, flowEdge{to: from})
	f.base = append(f.base, amps, 0)
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
