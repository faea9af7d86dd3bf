package planar

import (
	"testing"

	_ "example.com/lugbook/model/fixedseed"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// sound holds a plane to Euler's formula and to its own rules.
func sound(t require.TestingT, p *plane, edges []edge) {
	p.label()
	vertices, segments := 0, 0
	for v := range p.out {
		if p.out[v] == none {
			continue
		}
		vertices++
		for h, start := p.out[v], p.out[v]; ; {
			require.Equal(t, v, p.org[h])
			require.Equal(t, h, p.prev[p.next[h]])
			if h = p.around(h); h == start {
				break
			}
		}
		if p.crossing(v) {
			require.Equal(t, 4, p.degree(v))
		}
	}
	for _, owner := range p.owner {
		if owner != none {
			segments++
		}
	}
	require.Equal(t, 2, vertices-segments+len(p.faces), "Euler's formula")
	crossed := 0
	for e, ends := range edges {
		if p.first[e] == none {
			continue
		}
		h := p.first[e]
		require.Equal(t, ends.u, p.org[h])
		for ; p.crossing(p.dest(h)); h = p.straight(h) {
			require.Equal(t, e, p.owner[h/2])
			crossed++
		}
		require.Equal(t, ends.v, p.dest(h))
	}
	require.Equal(t, 2*p.crossings(), crossed)
}

func TestEulerHoldsAfterEveryInsertion(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n, edges := connected(t, 12)
		s := newInserter(newPlane(n, edges, nil), edges, 1)
		for e := range edges {
			s.insert(e, 0)
			sound(t, s.plane, edges)
		}
		for range 20 {
			s.again(s.bad(2))
			sound(t, s.plane, edges)
		}
	})
}

// grid is a lattice of a by b vertices.
func grid(a, b int) (n int, edges []edge) {
	for i := range a {
		for j := range b {
			if i > 0 {
				edges = append(edges, edge{(i-1)*b + j, i*b + j})
			}
			if j > 0 {
				edges = append(edges, edge{i*b + j - 1, i*b + j})
			}
		}
	}
	return a * b, edges
}

func wheel(n int) []edge {
	var out []edge
	for i := range n {
		out = append(out, edge{i, (i + 1) % n}, edge{i, n})
	}
	return out
}

// triangulation draws a maximal planar graph: each new vertex goes into a face of three edges.
func triangulation(t *rapid.T, n int) []edge {
	faces := [][3]int{{0, 1, 2}, {0, 2, 1}}
	edges := []edge{{0, 1}, {1, 2}, {0, 2}}
	for v := 3; v < n; v++ {
		i := rapid.IntRange(0, len(faces)-1).Draw(t, "face")
		f := faces[i]
		faces[i] = [3]int{f[0], f[1], v}
		faces = append(faces, [3]int{f[1], f[2], v}, [3]int{f[2], f[0], v})
		edges = append(edges, edge{f[0], v}, edge{f[1], v}, edge{f[2], v})
	}
	return edges
}

func TestPlanarGraphsAreDrawnWithoutCrossings(t *testing.T) {
	n, lattice := grid(7, 9)
	octahedron := []edge{{0, 1}, {1, 2}, {2, 3}, {3, 0}, {4, 0}, {4, 1}, {4, 2}, {4, 3}, {5, 0}, {5, 1}, {5, 2}, {5, 3}}
	for _, c := range []struct {
		name  string
		n     int
		edges []edge
	}{{"grid", n, lattice}, {"wheel", 9, wheel(8)}, {"K4", 4, complete(4)}, {"octahedron", 6, octahedron},
		{"ring", 5, []edge{{0, 1}, {1, 2}, {2, 3}, {3, 4}, {4, 0}}}, {"star", 5, []edge{{0, 1}, {0, 2}, {0, 3}, {0, 4}}},
		{"twins", 2, []edge{{0, 1}, {1, 0}, {0, 1}}}, {"prism", 12, generalisedPetersen(6, 1)}} {
		t.Run(c.name, func(t *testing.T) {
			for _, p := range topologies(c.n, c.edges, nil, Effort{}) {
				sound(t, p, c.edges)
				require.Zero(t, p.crossings())
			}
		})
	}
}

func TestTriangulationsAreFoundPlanarAndFull(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(5, 30).Draw(t, "n")
		edges := rapid.Permutation(triangulation(t, n)).Draw(t, "order")
		for i, e := range edges {
			if rapid.Bool().Draw(t, "turned") {
				edges[i] = edge{e.v, e.u}
			}
		}
		after, ok := embed(n, edges)
		require.True(t, ok)
		all := make([]int, len(edges))
		there := map[edge]bool{}
		for i, e := range edges {
			all[i] = i
			there[e], there[edge{e.v, e.u}] = true, true
		}
		sound(t, fromRotation(n, edges, nil, all, after), edges)
		u, v := rapid.IntRange(0, n-1).Draw(t, "u"), rapid.IntRange(0, n-1).Draw(t, "v")
		if more := (edge{u, v}); u != v && !there[more] {
			_, ok = embed(n, append(edges, more))
			require.False(t, ok, "a triangulation holds no further edge")
			few := append(edges[:0:0], edges[:len(edges)/2]...)
			for _, e := range complete(5) { // a part that is not planar, in a graph that is sparse enough
				few = append(few, edge{n + e.u, n + e.v})
			}
			_, ok = embed(n+5, few)
			require.False(t, ok)
		}
	})
}

func TestBlocksKeepTheirGraphTogether(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n, edges := connected(t, 14)
		for _, p := range topologies(n, edges, nil, Effort{Starts: 2, Steps: 10, Shapes: 2}) {
			sound(t, p, edges)
			for e := range edges {
				require.NotEqual(t, none, p.first[e])
			}
		}
	})
}

// connected draws a connected graph, with twins now and then.
func connected(t *rapid.T, most int) (n int, edges []edge) {
	n = rapid.IntRange(2, most).Draw(t, "n")
	for v := 1; v < n; v++ {
		edges = append(edges, edge{rapid.IntRange(0, v-1).Draw(t, "parent"), v})
	}
	for range rapid.IntRange(0, 2*n).Draw(t, "more") {
		u := rapid.IntRange(0, n-1).Draw(t, "u")
		if v := rapid.IntRange(0, n-1).Draw(t, "v"); v != u {
			edges = append(edges, edge{u, v})
		}
	}
	return n, edges
}
