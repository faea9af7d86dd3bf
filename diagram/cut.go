package diagram

import (
	"cmp"
	"slices"
)

// cutting is a set of things to be cut into shares: their sizes, and which two are joined,
// as often as they are.
type cutting struct {
	sizes []int
	joins [][2]int

	near [][]int // joined things of each, as often as they are
}

// mostHubs is the number of things that a cut is begun from in turn.
const mostHubs = 8

// cut tells for each thing the share that it goes to: about equally large shares, grown one
// after the other from things with many joins, then mended while fewer joins need be cut.
// The best of several beginnings is taken.
func (c *cutting) cut(shares int) []int {
	c.near = make([][]int, len(c.sizes))
	for _, j := range c.joins {
		c.near[j[0]] = append(c.near[j[0]], j[1])
		c.near[j[1]] = append(c.near[j[1]], j[0])
	}
	hubs := make([]int, len(c.sizes))
	for i := range hubs {
		hubs[i] = i
	}
	slices.SortStableFunc(hubs, func(a, b int) int { return len(c.near[b]) - len(c.near[a]) })
	var best []int
	least := 0
	for _, hub := range hubs[:min(mostHubs, len(hubs))] {
		of := c.grow(shares, hub)
		c.mend(of, shares)
		if price := c.price(of, shares); best == nil || price < least {
			best, least = of, price
		}
	}
	return best
}

// joinPrice weighs a cut join against a share that is larger than the others, in per cent of
// its size.
const joinPrice = 20

// price is what speaks against a cut: joins between shares, and the largest share's size.
func (c *cutting) price(of []int, shares int) int {
	filled, total := make([]int, shares), 0
	for i, s := range of {
		filled[s] += c.sizes[i]
		total += c.sizes[i]
	}
	return joinPrice*c.cutJoins(of) + 100*slices.Max(filled)*shares/max(total, 1)
}

// cutJoins counts the joins between shares.
func (c *cutting) cutJoins(of []int) int {
	n := 0
	for _, j := range c.joins {
		if of[j[0]] != of[j[1]] {
			n++
		}
	}
	return n
}

// grow fills one share after the other. Each begins at a hub, the first at the given one, and
// takes what it has most joins with and the rest fewest.
func (c *cutting) grow(shares, hub int) []int {
	of := make([]int, len(c.sizes))
	left, total := len(of), 0
	for i := range of {
		of[i] = shares - 1
		total += c.sizes[i]
	}
	free := func(i int) bool { return of[i] == shares-1 }
	for s := range shares - 1 {
		goal, filled := total/(shares-s), 0
		for next := hub; next >= 0 && left > shares-1-s; next = c.next(of, s, free) {
			if filled > 0 && filled+c.sizes[next]/2 > goal {
				break
			}
			of[next] = s
			left--
			filled += c.sizes[next]
		}
		total -= filled
		hub = c.next(of, -1, free)
	}
	return of
}

// next is the free thing with the most joins to a share and, of equals, the fewest to other
// free things; for no share the one with the most of those. It is -1 if nothing is free.
func (c *cutting) next(of []int, share int, free func(int) bool) int {
	best, most, fewest := -1, 0, 0
	for i := range of {
		if !free(i) {
			continue
		}
		in, out := 0, 0
		for _, n := range c.near[i] {
			switch {
			case of[n] == share:
				in++
			case free(n):
				out++
			}
		}
		if share < 0 {
			in, out = out, 0
		}
		if best < 0 || cmp.Or(most-in, out-fewest) < 0 {
			best, most, fewest = i, in, out
		}
	}
	return best
}

// slack is how much larger than the mean a share may become by mending, in per cent.
const slack = 15

// mend moves single things to other shares, or changes two for each other, while fewer
// joins are cut by it and no share grows too large or empty.
func (c *cutting) mend(of []int, shares int) {
	filled, count := make([]int, shares), make([]int, shares)
	total := 0
	for i, s := range of {
		filled[s] += c.sizes[i]
		count[s]++
		total += c.sizes[i]
	}
	most := total * (100 + slack) / (100 * shares)
	shift := func(i, to int) {
		filled[of[i]] -= c.sizes[i]
		count[of[i]]--
		of[i] = to
		filled[to] += c.sizes[i]
		count[to]++
	}
	for {
		table := c.table(of, shares)
		m := table.bestMove(of, func(i, to int) bool { return filled[to]+c.sizes[i] <= most && count[of[i]] > 1 })
		if m.gain == 0 {
			m = c.bestChange(of, table, func(i, k int) bool {
				more := c.sizes[k] - c.sizes[i]
				return max(filled[of[i]]+more, filled[of[k]]-more) <= most
			})
		}
		if m.gain == 0 {
			return
		}
		if m.other >= 0 {
			shift(m.other, of[m.thing])
		}
		shift(m.thing, m.to)
	}
}

// move takes a thing to another share, and another one to where that was.
type move struct{ thing, to, other, gain int }

// joinTable counts the joins of each thing to each share.
type joinTable [][]int

func (c *cutting) table(of []int, shares int) joinTable {
	t := make(joinTable, len(of))
	for i := range t {
		t[i] = make([]int, shares)
		for _, n := range c.near[i] {
			t[i][of[n]]++
		}
	}
	return t
}

// bestMove is the move of one thing that saves most joins.
func (t joinTable) bestMove(of []int, may func(i, to int) bool) move {
	best := move{other: -1}
	for i := range t {
		for to := range t[i] {
			if gain := t[i][to] - t[i][of[i]]; gain > best.gain && may(i, to) {
				best = move{i, to, -1, gain}
			}
		}
	}
	return best
}

// bestChange is the change of two things that saves most joins.
func (c *cutting) bestChange(of []int, t joinTable, may func(i, k int) bool) move {
	best := move{other: -1}
	for k := range t {
		for i := range k {
			a, b := of[i], of[k]
			gain := t[i][b] - t[i][a] + t[k][a] - t[k][b]
			if a == b || gain <= best.gain {
				continue
			}
			for _, n := range c.near[i] {
				if n == k {
					gain -= 2
				}
			}
			if gain > best.gain && may(i, k) {
				best = move{i, b, k, gain}
			}
		}
	}
	return best
}
