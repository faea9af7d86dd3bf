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
}

type flowEdge struct {
	to    int
	room  float64
	limit []*Link // what sets the capacity
}

func newFlow(vertices int) *flow { return &flow{out: make([][]int, vertices+1)} }

// expect makes room for the edges of so many links.
func (f *flow) expect(links int) {
	const each = 4 // there and back, each with its reverse
	f.edges, f.base = slices.Grow(f.edges, each*links), slices.Grow(f.base, each*links)
}

// feed lets the source give at most amps to a vertex.
func (f *flow) feed(to int, amps float64, limits []*Link) { f.add(0, to+1, amps, limits) }

func (f *flow) edge(from, to int, amps float64, by *Link) {
	var limit []*Link
	if by != nil {
		limit = []*Link{by}
	}
	f.add(from+1, to+1, amps, limit)
}

func (f *flow) add(from, to int, amps float64, limits []*Link) {
	f.out[from] = append(f.out[from], len(f.edges))
	f.out[to] = append(f.out[to], len(f.edges)+1)
	f.edges = append(f.edges, flowEdge{to: to, room: amps, limit: limits}, flowEdge{to: from})
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
		via, room := f.shortest(sink, without+1)
		if room == 0 {
			return Exposure{Amps: total, Limits: f.cut(via, without+1)}
		}
		if math.IsInf(room, 1) {
			return Exposure{Amps: room}
		}
		for at := sink; at != 0; at = f.edges[via[at]^1].to {
			f.edges[via[at]].room -= room
			f.edges[via[at]^1].room += room
		}
		total += room
	}
}

// shortest finds a way with room from the source to the sink by the fewest edges
// (Edmonds and Karp, 1972), not passing the vertex without unless it is 0. via holds the edge into each vertex that was reached, -1
// elsewhere.
func (f *flow) shortest(sink, without int) (via []int, room float64) {
	via = make([]int, len(f.out))
	for i := range via {
		via[i] = -1
	}
	reach := make([]float64, len(f.out))
	reach[0] = math.Inf(1)
	for queue := []int{0}; len(queue) > 0; queue = queue[1:] {
		at := queue[0]
		for _, e := range f.out[at] {
			edge := &f.edges[e]
			if edge.room <= 0 || edge.to == 0 || edge.to == without || via[edge.to] >= 0 {
				continue
			}
			via[edge.to], reach[edge.to] = e, min(reach[at], edge.room)
			if edge.to == sink {
				return via, reach[sink]
			}
			queue = append(queue, edge.to)
		}
	}
	return via, 0
}

// cut lists what limits the flow: full edges from the reached vertices to the others.
func (f *flow) cut(via []int, without int) []*Link {
	reached := func(v int) bool { return v == 0 || via[v] >= 0 }
	var limits []*Link
	seen := map[*Link]bool{}
	for e := 0; e < len(f.edges); e += 2 {
		if to := f.edges[e].to; !reached(f.edges[e+1].to) || reached(to) || to == without || f.base[e] == 0 {
			continue
		}
		for _, l := range f.edges[e].limit {
			if !seen[l] {
				seen[l] = true
				limits = append(limits, l)
			}
		}
	}
	return limits
}
