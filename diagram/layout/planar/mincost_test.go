package planar

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// TestCoordinatesAreTheBest holds the linear program against a trial of all values.
func TestCoordinatesAreTheBest(t *testing.T) {
	const n, most = 4, 6
	rapid.Check(t, func(t *rapid.T) {
		c := coordinates{weight: make([]int, n)}
		type pull struct{ a, b, weight int }
		var pulls []pull
		for b := 1; b < n; b++ {
			for a := range b {
				if d := rapid.IntRange(-1, 2).Draw(t, "gap"); d >= 0 {
					c.apart(a, b, d)
					w := rapid.IntRange(0, 5).Draw(t, "weight")
					c.draw(a, b, w)
					pulls = append(pulls, pull{a, b, w})
				}
			}
		}
		price := func(x []int) int {
			sum := 0
			for _, p := range pulls {
				sum += p.weight * (x[p.b] - x[p.a])
			}
			return sum
		}
		x, ok := c.solve()
		require.True(t, ok)
		for _, g := range c.gaps {
			require.GreaterOrEqual(t, x[g.b]-x[g.a], g.d)
		}
		try := make([]int, n)
		for k := range (most + 1) * (most + 1) * (most + 1) * (most + 1) {
			for i := range try {
				try[i] = k % (most + 1)
				k /= most + 1
			}
			keeps := true
			for _, g := range c.gaps {
				keeps = keeps && try[g.b]-try[g.a] >= g.d
			}
			if keeps {
				require.LessOrEqual(t, price(x), price(try))
			}
		}
	})
}

func TestContradictoryDistancesAreFound(t *testing.T) {
	c := coordinates{weight: make([]int, 2)}
	c.apart(0, 1, 1)
	c.apart(1, 0, 0)
	_, ok := c.solve()
	require.False(t, ok)
}

func TestFlowThatCannotBeSentIsReported(t *testing.T) {
	n := newNetwork(2)
	n.supply[0], n.supply[1] = 3, -3
	n.arc(0, 1, 2, 1)
	require.False(t, n.solve())
}
