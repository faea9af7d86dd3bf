package circuit

import "slices"

// pass is an element's part in a loop: with (+1) or against (-1) the loop's direction.
type pass struct {
	loop int
	sign float64
}

// crossings keeps, for each element, the loops that it is part of, in their order.
type crossings struct {
	starts []int // by element: where its passes start in sorted; one more for the end
	added  []crossing
	sorted []pass
}

type crossing struct {
	e Element
	pass
}

func (c *crossings) clear() {
	clear(c.starts)
	c.added = c.added[:0]
}

// add notes that an element is part of a loop. Loops come in their order.
func (c *crossings) add(e Element, loop int, sign float64) {
	c.added = append(c.added, crossing{e, pass{loop, sign}})
	c.starts[e]++
}

// sort puts what was added in the order of the elements.
func (c *crossings) sort() {
	end := 0
	for e, count := range c.starts {
		end += count
		c.starts[e] = end
	}
	c.sorted = slices.Grow(c.sorted[:0], len(c.added))[:len(c.added)]
	for _, x := range slices.Backward(c.added) {
		c.starts[x.e]--
		c.sorted[c.starts[x.e]] = x.pass
	}
}

func (c *crossings) of(e Element) []pass { return c.sorted[c.starts[e]:c.starts[e+1]] }

// branches keeps, for each node, the tree elements on it.
type branches struct {
	first, last []int // by node: places in list, or -1
	list        []branch
}

type branch struct {
	e    Element
	next int // place in list, or -1
}

func newBranches(nodes int) branches {
	return branches{first: make([]int, nodes), last: make([]int, nodes)}
}

func (b *branches) clear() {
	b.list = b.list[:0]
	for n := range b.first {
		b.first[n], b.last[n] = -1, -1
	}
}

// add puts an element at the end of a node's.
func (b *branches) add(n Node, e Element) {
	at := len(b.list)
	b.list = append(b.list, branch{e, -1})
	if b.first[n] < 0 {
		b.first[n] = at
	} else {
		b.list[b.last[n]].next = at
	}
	b.last[n] = at
}
