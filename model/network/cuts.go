package network

// cuts tells which links alone join what is on either side of them: the bridges of a graph
// (Tarjan, "A note on finding the bridges of a graph", 1974).
type cuts struct {
	by     func(*Link) bool
	groups *Groups
	first  []int  // by node: its number in the order of the walk
	last   []int  // by node: the number of the last node that the walk reached through it
	beyond []Node // by link: the end from which on nothing else leads back; None if something does
}

// cutsOf walks over all links of some kind.
func (n *Network) cutsOf(by func(*Link) bool) *cuts {
	c := &cuts{by: by, groups: n.Joined(by), first: make([]int, n.Size()), last: make([]int, n.Size()), beyond: make([]Node, len(n.links))}
	for i := range c.beyond {
		c.beyond[i] = None
	}
	w := cutWalk{n: n, cuts: c, low: make([]int, n.Size())}
	for at := range n.points {
		if c.first[at] == 0 {
			w.from(Node(at))
		}
	}
	return c
}

// cutWalk goes depth first, without recursion.
type cutWalk struct {
	*cuts
	n     *Network
	low   []int // by node: the least number that is reached from it and beyond by one link back
	count int
	stack []cutStep
}

// cutStep is a node on the way, with the link that led there and the next to look at.
type cutStep struct {
	at   Node
	via  int
	next int
}

func (w *cutWalk) enter(at Node, via int) {
	w.count++
	w.first[at], w.low[at] = w.count, w.count
	w.stack = append(w.stack, cutStep{at: at, via: via})
}

func (w *cutWalk) from(start Node) {
	w.enter(start, -1)
	for len(w.stack) > 0 {
		top := &w.stack[len(w.stack)-1]
		if links := w.n.at[top.at]; top.next < len(links) {
			i := links[top.next]
			top.next++
			l := &w.n.links[i]
			if i == top.via || l.A == l.B || !w.by(l) {
				continue
			}
			if to := l.Other(top.at); w.first[to] == 0 {
				w.enter(to, i)
			} else {
				w.low[top.at] = min(w.low[top.at], w.first[to])
			}
			continue
		}
		w.leave()
	}
}

// leave takes the last node off the way.
func (w *cutWalk) leave() {
	top := w.stack[len(w.stack)-1]
	w.stack = w.stack[:len(w.stack)-1]
	w.last[top.at] = w.count
	if top.via < 0 {
		return
	}
	before := w.stack[len(w.stack)-1].at
	w.low[before] = min(w.low[before], w.low[top.at])
	if w.low[top.at] > w.first[before] {
		w.beyond[top.via] = top.at
	}
}

// cut is the side of a link that alone joins its ends; false if something else joins them.
func (c *cuts) cut(l *Link) (side cutSide, ok bool) {
	beyond := c.beyond[l.index]
	if beyond == None {
		return cutSide{}, false
	}
	return cutSide{c, c.first[beyond], c.last[beyond]}, true
}

// cutSide is what is on one side of a link.
type cutSide struct {
	c        *cuts
	from, to int
}

// has reports whether a node is on that side.
func (s cutSide) has(at Node) bool { return s.c.first[at] >= s.from && s.c.first[at] <= s.to }
