package network

// blocks are the parts of a walk that hang together by rings: current that enters a
// ring can go through each of its links to each of its nodes. A block is named by one of
// the nodes through whose Via the walk entered it.
type blocks struct{ root []Node }

// blocks finds the rings that links close beside the way of a walk (the blocks of a
// graph: two links are in one if a ring passes both).
func (n *Network) blocks(r *Reach) *blocks {
	b := &blocks{root: make([]Node, n.Size())}
	depth := make([]int, n.Size())
	for i := range b.root {
		b.root[i] = Node(i)
	}
	for _, at := range r.Order {
		if via := r.Via(at); via != nil {
			depth[at] = depth[via.Other(at)] + 1
		}
	}
	for _, at := range r.Order {
		for _, l := range n.LinksAt(at) {
			if l.Conducts() && at == l.A && r.Has(l.B) && r.Via(l.A) != l && r.Via(l.B) != l {
				b.close(r, depth, l.A, l.B)
			}
		}
	}
	return b
}

// close merges the ways of two nodes up to where they meet.
func (b *blocks) close(r *Reach, depth []int, x, y Node) {
	last := None
	for x != y {
		if depth[x] < depth[y] {
			x, y = y, x
		}
		if last != None {
			b.root[b.of(x)] = b.of(last)
		}
		last = x
		if r.Via(x) == nil {
			return
		}
		x = r.Via(x).Other(x)
	}
}

// of is the block of the link by which a walk came to a node.
func (b *blocks) of(at Node) Node {
	for b.root[at] != at {
		b.root[at] = b.root[b.root[at]]
		at = b.root[at]
	}
	return at
}

// share sets the mark of each block that holds a marked node.
func (b *blocks) share(r *Reach, marks []bool) {
	for _, at := range r.Order {
		if marks[at] && r.Via(at) != nil {
			marks[b.of(at)] = true
		}
	}
}

// deeper is the end of a link that is farther along a walk.
func (r *Reach) deeper(l *Link) Node {
	if r.Via(l.B) == l || r.Via(l.A) != l && r.Via(l.B) != nil {
		return l.B
	}
	return l.A
}
