package diagram

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	_ "example.com/lugbook/model/fixedseed"
)

func TestACutGoesWhereFewJoinsAre(t *testing.T) {
	// Two rings of five, joined once, given in turn: the only cut of one join is between them.
	c := cutting{}
	for i := range 10 {
		c.sizes = append(c.sizes, 7)
		c.joins = append(c.joins, [2]int{i, (i + 2) % 10})
	}
	c.joins = append(c.joins, [2]int{0, 1})
	of := c.cut(2)
	for i := range 10 {
		require.Equal(t, of[i%2], of[i])
	}
	require.NotEqual(t, of[0], of[1])
}

func TestACutOfAChainIsEven(t *testing.T) {
	c := cutting{}
	for i := range 12 {
		c.sizes = append(c.sizes, 10)
		if i > 0 {
			c.joins = append(c.joins, [2]int{i - 1, i})
		}
	}
	of := c.cut(3)
	counts, cut := map[int]int{}, 0
	for i, s := range of {
		counts[s]++
		if i > 0 && of[i-1] != s {
			cut++
		}
	}
	require.Equal(t, map[int]int{0: 4, 1: 4, 2: 4}, counts)
	require.Equal(t, 2, cut)
}

// TestACutLosesNothing cuts any things: every one is in a share, as many shares as asked for
// are used, and mending never cuts more than growing did.
func TestACutLosesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 25).Draw(t, "things")
		c := cutting{sizes: rapid.SliceOfN(rapid.IntRange(1, 300), n, n).Draw(t, "sizes")}
		thing := rapid.IntRange(0, n-1)
		for range rapid.IntRange(0, 2*n).Draw(t, "joins") {
			if a, b := thing.Draw(t, "from"), thing.Draw(t, "to"); a != b {
				c.joins = append(c.joins, [2]int{a, b})
			}
		}
		shares := rapid.IntRange(1, n).Draw(t, "shares")
		of := c.cut(shares)
		used := map[int]bool{}
		for _, s := range of {
			require.True(t, s >= 0 && s < shares)
			used[s] = true
		}
		require.Len(t, used, shares)

		grown := c.grow(shares, 0)
		before := c.cutJoins(grown)
		c.mend(grown, shares)
		require.LessOrEqual(t, c.cutJoins(grown), before)
	})
}
