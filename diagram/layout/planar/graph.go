// Package planar draws graphs whose wires may end anywhere on a box, with few crossings.
//
// It works in three steps (topology, shape, metrics; Tamassia, "On embedding a graph in the grid with the minimum
// number of bends", SIAM J. Comput. 16, 1987). First the wires are laid in the plane one by one across as few others
// as can be, and wires and whole stars of wires are taken out and put back while that saves crossings (Clancy,
// Haythorpe and Newcombe, "An effective crossing minimisation heuristic based on star insertion", 2019). Then a
// minimum-cost flow gives every wire its bends and every box the sides on which its wires leave. Last, coordinates
// are found that keep this shape, and the drawing is pushed together.
//
// Everything is counted in steps and integers and drawn from fixed seeds: equal input gives equal output on every
// machine.
package planar

// edge joins two vertices, given by index.
type edge struct{ u, v int }

// other is the end of the edge that is not x.
func (e edge) other(x int) int { return e.u + e.v - x }

// incident lists for each of n vertices the edges that end there.
func incident(n int, edges []edge) [][]int {
	out := make([][]int, n)
	for i, e := range edges {
		out[e.u] = append(out[e.u], i)
		if e.v != e.u {
			out[e.v] = append(out[e.v], i)
		}
	}
	return out
}

// components numbers the connected parts of a graph in the order of their first vertices.
func components(n int, edges []edge) (of []int, count int) {
	at := incident(n, edges)
	of = make([]int, n)
	for i := range of {
		of[i] = -1
	}
	for s := range of {
		if of[s] >= 0 {
			continue
		}
		of[s] = count
		for stack := []int{s}; len(stack) > 0; {
			v := stack[len(stack)-1]
			stack = stack[:len(stack)-1]
			for _, e := range at[v] {
				if w := edges[e].other(v); of[w] < 0 {
					of[w] = count
					stack = append(stack, w)
				}
			}
		}
		count++
	}
	return of, count
}

// blocks splits the edges of a connected graph into its blocks: the largest parts that no single vertex parts
// (Hopcroft and Tarjan, 1973). Each block is a list of edges.
func blocks(n int, edges []edge) [][]int {
	b := &blockFinder{edges: edges, at: incident(n, edges), depth: make([]int, n), low: make([]int, n)}
	for v := range n {
		if b.depth[v] == 0 {
			b.depth[v] = 1
			b.visit(v, -1)
		}
	}
	return b.found
}

type blockFinder struct {
	edges      []edge
	at         [][]int
	depth, low []int // depth 0 is not yet seen
	stack      []int
	found      [][]int
}

func (b *blockFinder) visit(v, by int) {
	b.low[v] = b.depth[v]
	for _, e := range b.at[v] {
		w := b.edges[e].other(v)
		switch {
		case e == by:
		case b.depth[w] == 0:
			from := len(b.stack)
			b.stack = append(b.stack, e)
			b.depth[w] = b.depth[v] + 1
			b.visit(w, e)
			b.low[v] = min(b.low[v], b.low[w])
			if b.low[w] >= b.depth[v] {
				b.found = append(b.found, append([]int(nil), b.stack[from:]...))
				b.stack = b.stack[:from]
			}
		case b.depth[w] < b.depth[v]:
			b.stack = append(b.stack, e)
			b.low[v] = min(b.low[v], b.depth[w])
		}
	}
}
