package route

import (
	"fmt"
	"slices"
	"testing"

	"example.com/lugbook/diagram/layout/chance"
	"example.com/lugbook/diagram/layout/geom"
	"github.com/stretchr/testify/require"
)

// channel is a row of terminals above another; nets join one of each.
type channel struct {
	columns     int
	top, bottom []int // per net its columns
}

// randomChannel makes a channel without constraint cycles: where two nets have terminals in one column, the upper one has
// to run above the lower one, and no chain of such demands comes back to where it began.
func randomChannel(seed uint64) channel {
	rnd := chance.New(seed)
	c := channel{columns: 8 + rnd.Below(25)}
	n := 3 + rnd.Below(c.columns/2)
	free := func(used []int) int {
		for {
			if x := rnd.Below(c.columns); !slices.Contains(used, x) {
				return x
			}
		}
	}
	for range n {
		c.top = append(c.top, free(c.top))
		c.bottom = append(c.bottom, free(c.bottom))
		if c.cyclic() {
			c.top, c.bottom = c.top[:len(c.top)-1], c.bottom[:len(c.bottom)-1]
		}
	}
	return c
}

// cyclic follows the demands from every net. Each net is above at most one other, so that a chain of more steps than
// there are nets goes round.
func (c *channel) cyclic() bool {
	for start := range c.top {
		at := start
		for range len(c.top) + 1 {
			if at = slices.Index(c.bottom, c.top[at]); at < 0 {
				break
			}
			if c.top[at] == c.bottom[at] {
				at = -1 // a straight net demands nothing
				break
			}
		}
		if at >= 0 && c.top[start] != c.bottom[start] {
			return true
		}
	}
	return false
}

// density is the greatest number of nets over one place between two columns, or turning in one: no routing has fewer
// tracks (Hashimoto and Stevens, 1971, from memory).
func (c *channel) density() int {
	most := 0
	for x := range c.columns {
		n := 0
		for i := range c.top {
			if low, high := min(c.top[i], c.bottom[i]), max(c.top[i], c.bottom[i]); low <= x && x <= high && low < high {
				n++
			}
		}
		most = max(most, n)
	}
	return most
}

// problem is the channel between two boxes that may not move, with the given number of tracks. The row before the
// terminals of either side is no track: it belongs to them.
func (c *channel) problem(tracks int) *Problem {
	const pitch = 2
	b := newBuilder()
	width := pitch*c.columns + 2
	upper, lower := b.box(0, 0, width, 2), b.box(0, 2+tracks+3, width, 2)
	b.p.Pinned = []bool{true, true}
	b.p.Anchored, b.p.MaxWidth = true, width+1
	for i := range c.top {
		b.wire(b.terminal(upper, geom.South, 2+pitch*c.top[i]), b.terminal(lower, geom.North, 2+pitch*c.bottom[i]))
	}
	return &b.p
}

func TestChannelsAreRoutedInOneTrackMoreThanTheyMustHave(t *testing.T) {
	tight := 0
	const channels = 200
	for seed := range uint64(channels) {
		t.Run(fmt.Sprint(seed), func(t *testing.T) {
			c := randomChannel(seed)
			least := c.density()
			p := c.problem(least + 1)
			require.Empty(t, Solve(p, Effort{Rounds: 60}).Left, "%+v, density %d", c, least)
			requireSlots(t, p)
			if len(Solve(c.problem(least), Effort{Rounds: 60}).Left) == 0 {
				tight++
			}
		})
	}
	require.GreaterOrEqual(t, 10*tight, 9*channels, "nine channels in ten need no track beyond their density")
}
