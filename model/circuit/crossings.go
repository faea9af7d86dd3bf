package circuit

import "slices"

// pass is an edge's part in a loop: with (+1) or against (-1) the loop's direction.
type pass struct {
	loop int
	sign float64
}

// crossings keeps, for each edge, the loops that it is part of, in their order.
type crossings struct {
	starts []int // by edge: where its passes start in sorted; one more for the end
	added  []crossing
	sorted []pass
}

type crossing struct {
	edge int
	pass
}

// clear makes ready for a number of edges.
func (c *crossings) clear(edges int) {
	c.starts = slices.Grow(c.starts[:0], edges+1)[:edges+1]
	clear(c.starts)
	c.added = c.added[:0]
}

// add notes that an edge is part of a loop. Loops come in their order.
func (c *crossings) add(edge, loop int, sign float64) {
	c.added = append(c.added, crossing{edge, pass{loop, sign}})
	c.starts[edge]++
}

// sort puts what was added in the order of the edges.
func (c *crossings) sort() {
	end := 0
	for k, count := range c.starts {
		end += count
		c.starts[k] = end
	}
	c.sorted = slices.Grow(c.sorted[:0], len(c.added))[:len(c.added)]
	for _, x := range slices.Backward(c.added) {
		c.starts[x.edge]--
		c.sorted[c.starts[x.edge]] = x.pass
	}
}

func (c *crossings) of(edge int) []pass { return c.sorted[c.starts[edge]:c.starts[edge+1]] }

// branches keeps, for each node, the tree edges on it.
type branches struct {
	first, last []int // by node: places in list, or -1
	list        []branch
}

type branch struct {
	edge int
	next int // place in list, or -1
}

func newBranches(nodes int) branches {
	ends := make([]int, 2*nodes)
	return branches{first: ends[:nodes], last: ends[nodes:]}
}

// clear forgets the edges of some nodes.
func (b *branches) clear(nodes []Node) {
	b.list = b.list[:0]
	for _, n := range nodes {
		b.first[n], b.last[n] = -1, -1
	}
}

// add puts an edge at the end of a node's.
func (b *branches) add(n Node, edge int) {
	at := len(b.list)
	b.list = append(b.list, branch{edge, -1})
	if b.first[n] < 0 {
		b.first[n] = at
	} else {
		b.list[b.last[n]].next = at
	}
	b.last[n] = at
}
