package planar

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// classic is a graph whose crossing number is proved.
type classic struct {
	name   string
	n      int
	edges  []edge
	proved int
	source string
}

func complete(n int) []edge {
	var out []edge
	for v := range n {
		for u := range v {
			out = append(out, edge{u, v})
		}
	}
	return out
}

func bipartite(a, b int) []edge {
	var out []edge
	for u := range a {
		for v := range b {
			out = append(out, edge{u, a + v})
		}
	}
	return out
}

// generalisedPetersen is an outer cycle, an inner one of step k, and spokes.
func generalisedPetersen(n, k int) []edge {
	var out []edge
	for i := range n {
		out = append(out, edge{i, (i + 1) % n}, edge{i, n + i}, edge{n + i, n + (i+k)%n})
	}
	return out
}

// chorded is a cycle whose vertices have one chord each, by the steps given in turn (LCF notation).
func chorded(n int, steps ...int) []edge {
	var out []edge
	for i := range n {
		out = append(out, edge{i, (i + 1) % n})
		if j := ((i+steps[i%len(steps)])%n + n) % n; i < j {
			out = append(out, edge{i, j})
		}
	}
	return out
}

func torus(a, b int) []edge {
	var out []edge
	for i := range a {
		for j := range b {
			out = append(out, edge{i*b + j, (i+1)%a*b + j}, edge{i*b + j, i*b + (j+1)%b})
		}
	}
	return out
}

const (
	guy          = "Z(n), proved for n <= 12: Guy; Pan and Richter"
	zarankiewicz = "Zarankiewicz's formula, proved for min(m,n) <= 6: Kleitman"
	cycles       = "(m-2)n, proved for m <= 7; from memory"
	memory       = "from memory"
)

var classics = []classic{
	{"K5", 5, complete(5), 1, guy}, {"K6", 6, complete(6), 3, guy}, {"K7", 7, complete(7), 9, guy},
	{"K8", 8, complete(8), 18, guy}, {"K9", 9, complete(9), 36, guy}, {"K10", 10, complete(10), 60, guy},
	{"K3,3", 6, bipartite(3, 3), 1, zarankiewicz}, {"K3,4", 7, bipartite(3, 4), 2, zarankiewicz},
	{"K4,4", 8, bipartite(4, 4), 4, zarankiewicz}, {"K4,5", 9, bipartite(4, 5), 8, zarankiewicz},
	{"K5,5", 10, bipartite(5, 5), 16, zarankiewicz}, {"K6,6", 12, bipartite(6, 6), 36, zarankiewicz},
	{"Petersen", 10, generalisedPetersen(5, 2), 2, memory}, {"Heawood", 14, chorded(14, 5, -5), 3, memory},
	{"Moebius-Kantor", 16, generalisedPetersen(8, 3), 4, memory}, {"Pappus", 18, chorded(18, 5, 7, -7, 7, -7, -5), 5, memory},
	{"Desargues", 20, generalisedPetersen(10, 3), 6, memory}, {"Nauru", 24, generalisedPetersen(12, 5), 8, memory},
	{"Q4", 16, torus(4, 4), 8, memory}, {"C3xC3", 9, torus(3, 3), 3, cycles}, {"C3xC5", 15, torus(3, 5), 5, cycles},
	{"C5xC5", 25, torus(5, 5), 15, cycles},
}

func TestClassicsReachTheirCrossingNumbers(t *testing.T) {
	for _, c := range classics {
		t.Run(c.name, func(t *testing.T) {
			p := planarise(c.n, c.edges, nil, Effort{Starts: 8, Steps: 800})[0]
			sound(t, p, c.edges)
			require.Equal(t, c.proved, p.crossings(), c.source)
		})
	}
}
