package layouttest

import (
	"fmt"

	"example.com/lugbook/diagram/layout"
)

// Classic is a graph whose crossing number is known.
type Classic struct {
	Name  string
	Boxes int
	Edges [][2]int
	// Crossings is the least number of crossings of any drawing, proved.
	Crossings int
	// Source says who proved it.
	Source string
}

// Classics lists graphs with their proved crossing numbers. The numbers and names of the proofs are from memory.
func Classics() []Classic {
	var out []Classic
	for n := 5; n <= 10; n++ {
		out = append(out, newClassic(fmt.Sprint("K", n), complete(n), completeCrossings(n), "Guy 1972 (to n = 10)"))
	}
	for _, mn := range [][2]int{{3, 3}, {3, 4}, {4, 4}, {4, 5}, {5, 5}, {6, 6}} {
		m, n := mn[0], mn[1]
		out = append(out, newClassic(fmt.Sprintf("K%d,%d", m, n), bipartite(m, n), bipartiteCrossings(m, n),
			"Kleitman 1970 (smaller side to 6)"))
	}
	out = append(out,
		newClassic("Petersen", generalPetersen(5, 2), 2, "Exoo, Harary and Kabell 1981"),
		newClassic("Heawood", chorded(14, 5, -5), 3, "smallest cubic graphs by crossing number, Pegg and Exoo 2009"),
		newClassic("Möbius-Kantor", generalPetersen(8, 3), 4, "Fiorini 1986"),
		newClassic("Pappus", chorded(18, 5, 7, -7, 7, -7, -5), 5, "Pegg and Exoo 2009"),
		newClassic("Desargues", generalPetersen(10, 3), 6, "Pegg and Exoo 2009"),
		newClassic("Nauru", generalPetersen(12, 5), 8, "Pegg and Exoo 2009"),
		newClassic("Q4", cube(4), 8, "Dean and Richter 1995, as C4 x C4"))
	for _, mn := range [][2]int{{3, 3}, {3, 5}, {4, 4}, {5, 5}} {
		m, n := mn[0], mn[1]
		out = append(out, newClassic(fmt.Sprintf("C%d x C%d", m, n), torus(m, n), (m-2)*n, torusSources[m]))
	}
	return out
}

var torusSources = map[int]string{3: "Ringeisen and Beineke 1978", 4: "Dean and Richter 1995", 5: "Klešč, Richter and Stobert 1996"}

func newClassic(name string, edges [][2]int, crossings int, source string) Classic {
	c := Classic{Name: name, Edges: edges, Crossings: crossings, Source: source}
	for _, e := range edges {
		c.Boxes = max(c.Boxes, e[0]+1, e[1]+1)
	}
	return c
}

// Graph gives every end of an edge a terminal of its own that may sit anywhere on its box.
func (c Classic) Graph() layout.Graph {
	var g layout.Graph
	for i := range c.Boxes {
		g.Boxes = append(g.Boxes, layout.Box{ID: fmt.Sprint("n", i)})
	}
	for i, e := range c.Edges {
		g.Wires = append(g.Wires, layout.Wire{ID: fmt.Sprint("e", i), From: freeEnd(&g.Boxes[e[0]]), To: freeEnd(&g.Boxes[e[1]])})
	}
	for i := range g.Boxes {
		ends := len(g.Boxes[i].Ports)
		g.Boxes[i].W, g.Boxes[i].H = max(6, 2*ends), max(4, 2*ends)
	}
	return g
}

func freeEnd(b *layout.Box) layout.PortRef {
	p := layout.Port{ID: fmt.Sprint("f", len(b.Ports)), Sides: layout.AnySide, Offset: -1}
	b.Ports = append(b.Ports, p)
	return layout.PortRef{Box: b.ID, Port: p.ID}
}

// completeCrossings is Guy's formula for complete graphs.
func completeCrossings(n int) int { return (n / 2) * ((n - 1) / 2) * ((n - 2) / 2) * ((n - 3) / 2) / 4 }

// bipartiteCrossings is Zarankiewicz's formula for complete bipartite graphs.
func bipartiteCrossings(m, n int) int { return (m / 2) * ((m - 1) / 2) * (n / 2) * ((n - 1) / 2) }

func complete(n int) [][2]int {
	var out [][2]int
	for i := range n {
		for j := i + 1; j < n; j++ {
			out = append(out, [2]int{i, j})
		}
	}
	return out
}

func bipartite(m, n int) [][2]int {
	var out [][2]int
	for i := range m {
		for j := range n {
			out = append(out, [2]int{i, m + j})
		}
	}
	return out
}

// generalPetersen is an outer ring, spokes, and an inner ring that steps by k.
func generalPetersen(n, k int) [][2]int {
	var out [][2]int
	for i := range n {
		out = append(out, [2]int{i, (i + 1) % n}, [2]int{i, n + i}, [2]int{n + i, n + (i+k)%n})
	}
	return out
}

// chorded is a ring with a chord at every node, given by how far it reaches (the notation of Lederberg, Coxeter and
// Frucht).
func chorded(n int, reach ...int) [][2]int {
	var out [][2]int
	for i := range n {
		out = append(out, [2]int{i, (i + 1) % n})
		if to := (i + reach[i%len(reach)] + n) % n; to > i {
			out = append(out, [2]int{i, to})
		}
	}
	return out
}

func cube(dimensions int) [][2]int {
	var out [][2]int
	for i := range 1 << dimensions {
		for bit := range dimensions {
			if j := i | 1<<bit; j != i {
				out = append(out, [2]int{i, j})
			}
		}
	}
	return out
}

// torus is the product of a ring of m and a ring of n.
func torus(m, n int) [][2]int {
	var out [][2]int
	for i := range m {
		for j := range n {
			out = append(out, [2]int{i*n + j, i*n + (j+1)%n}, [2]int{i*n + j, (i+1)%m*n + j})
		}
	}
	return out
}
