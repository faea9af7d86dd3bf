package planar

import (
	"cmp"
	"slices"
)

// none stands for a missing edge.
const none = -1

// interval is a run of return edges, from the lowest to the highest; none when empty.
type interval struct{ low, high int }

var noInterval = interval{none, none}

func (i interval) empty() bool { return i.low == none && i.high == none }

// conflict holds return edges that must lie on different sides.
type conflict struct{ left, right interval }

// leftRight tests planarity (de Fraysseix and Rosenstiehl; as written down by Brandes, "The left-right planarity
// test"). Edges are named by half-edges: 2e runs from u to v of edge e, 2e+1 back.
type leftRight struct {
	edges              []edge
	at                 [][]int // per vertex, half-edges leaving it
	height, parent     []int   // per vertex
	out                [][]int // per vertex, half-edges oriented away from it
	low, low2, nesting []int   // per half-edge
	ref, side, lowEdge []int
	bottom             []int
	done               []bool // per edge
	stack              []conflict
	first              []int // per vertex, a half-edge of its rotation
	after, before      []int // the next half-edge around its vertex, clockwise, and the last one
	leftAt, rightAt    []int // per vertex
}

// embed gives the clockwise neighbour of every half-edge around its vertex in a plane drawing of a simple graph; ok is
// false when there is none.
func embed(n int, edges []edge) (after []int, ok bool) {
	if n > 2 && len(edges) > 3*n-6 {
		return nil, false
	}
	l := newLeftRight(n, edges)
	var roots []int
	for v := range n {
		if l.height[v] < 0 {
			l.height[v] = 0
			roots = append(roots, v)
			l.orient(v)
		}
	}
	for v := range l.out {
		l.sortOut(v)
	}
	for _, v := range roots {
		if !l.test(v) {
			return nil, false
		}
	}
	for v := range l.out {
		for _, h := range l.out[v] {
			l.nesting[h] *= l.sign(h)
		}
		l.sortOut(v)
		last := none
		for _, h := range l.out[v] {
			l.putAfter(v, h, last)
			last = h
		}
	}
	for _, v := range roots {
		l.turn(v)
	}
	return l.after, true
}

func newLeftRight(n int, edges []edge) *leftRight {
	fill := func(n int) []int { return slices.Repeat([]int{none}, n) }
	m := 2 * len(edges)
	l := &leftRight{edges: edges, at: make([][]int, n), height: fill(n), parent: fill(n), out: make([][]int, n),
		low: make([]int, m), low2: make([]int, m), nesting: make([]int, m), ref: fill(m), side: make([]int, m),
		lowEdge: fill(m), bottom: make([]int, m), done: make([]bool, len(edges)), first: fill(n), after: fill(m),
		before: fill(m), leftAt: fill(n), rightAt: fill(n)}
	for i := range l.side {
		l.side[i] = 1
	}
	for i, e := range edges {
		l.at[e.u] = append(l.at[e.u], 2*i)
		l.at[e.v] = append(l.at[e.v], 2*i+1)
	}
	return l
}

// from and to are the ends of a half-edge.
func (l *leftRight) from(h int) int { return l.to(h ^ 1) }

func (l *leftRight) to(h int) int {
	if h&1 == 0 {
		return l.edges[h/2].v
	}
	return l.edges[h/2].u
}

func (l *leftRight) sortOut(v int) {
	slices.SortStableFunc(l.out[v], func(a, b int) int { return cmp.Compare(l.nesting[a], l.nesting[b]) })
}

// orient directs the edges by depth-first search and finds how far up each one returns.
func (l *leftRight) orient(v int) {
	e := l.parent[v]
	for _, h := range l.at[v] {
		if l.done[h/2] {
			continue
		}
		l.done[h/2] = true
		l.out[v] = append(l.out[v], h)
		l.low[h], l.low2[h] = l.height[v], l.height[v]
		if w := l.to(h); l.height[w] < 0 {
			l.parent[w], l.height[w] = h, l.height[v]+1
			l.orient(w)
		} else {
			l.low[h] = l.height[w]
		}
		l.nesting[h] = 2 * l.low[h]
		if l.low2[h] < l.height[v] {
			l.nesting[h]++
		}
		if e == none {
			continue
		}
		switch {
		case l.low[h] < l.low[e]:
			l.low2[e], l.low[e] = min(l.low[e], l.low2[h]), l.low[h]
		case l.low[h] > l.low[e]:
			l.low2[e] = min(l.low2[e], l.low[h])
		default:
			l.low2[e] = min(l.low2[e], l.low2[h])
		}
	}
}

// test decides below v whether the return edges can be parted into left and right ones.
func (l *leftRight) test(v int) bool {
	e := l.parent[v]
	for i, h := range l.out[v] {
		l.bottom[h] = len(l.stack)
		if w := l.to(h); l.parent[w] == h {
			if !l.test(w) {
				return false
			}
		} else {
			l.lowEdge[h] = h
			l.stack = append(l.stack, conflict{noInterval, interval{h, h}})
		}
		if l.low[h] >= l.height[v] {
			continue
		}
		if i == 0 {
			l.lowEdge[e] = l.lowEdge[h]
		} else if !l.constrain(h, e) {
			return false
		}
	}
	if e != none {
		l.trim(e)
	}
	return true
}

func (l *leftRight) conflicting(i interval, h int) bool {
	return !i.empty() && l.low[i.high] > l.low[h]
}

func (l *leftRight) pop() conflict {
	top := l.stack[len(l.stack)-1]
	l.stack = l.stack[:len(l.stack)-1]
	return top
}

// constrain merges the return edges below h, which must be on one side, with those of its elder siblings.
func (l *leftRight) constrain(h, e int) bool {
	p := conflict{noInterval, noInterval}
	for {
		q := l.pop()
		if !q.left.empty() {
			q.left, q.right = q.right, q.left
		}
		if !q.left.empty() {
			return false
		}
		if l.low[q.right.low] > l.low[e] {
			if p.right.empty() {
				p.right = q.right
			} else {
				l.ref[p.right.low] = q.right.high
			}
			p.right.low = q.right.low
		} else {
			l.ref[q.right.low] = l.lowEdge[e]
		}
		if len(l.stack) == l.bottom[h] {
			break
		}
	}
	for len(l.stack) > 0 {
		top := l.stack[len(l.stack)-1]
		if !l.conflicting(top.left, h) && !l.conflicting(top.right, h) {
			break
		}
		q := l.pop()
		if l.conflicting(q.right, h) {
			q.left, q.right = q.right, q.left
		}
		if l.conflicting(q.right, h) {
			return false
		}
		if p.right.low != none {
			l.ref[p.right.low] = q.right.high
		}
		if q.right.low != none {
			p.right.low = q.right.low
		}
		if p.left.empty() {
			p.left = q.left
		} else {
			l.ref[p.left.low] = q.left.high
		}
		p.left.low = q.left.low
	}
	if !p.left.empty() || !p.right.empty() {
		l.stack = append(l.stack, p)
	}
	return true
}

func (l *leftRight) lowest(c conflict) int {
	switch {
	case c.left.empty():
		return l.low[c.right.low]
	case c.right.empty():
		return l.low[c.left.low]
	}
	return min(l.low[c.left.low], l.low[c.right.low])
}

// trim drops the return edges that end at the upper end of e.
func (l *leftRight) trim(e int) {
	u := l.from(e)
	for len(l.stack) > 0 && l.lowest(l.stack[len(l.stack)-1]) == l.height[u] {
		if p := l.pop(); p.left.low != none {
			l.side[p.left.low] = -1
		}
	}
	if len(l.stack) > 0 {
		p := &l.stack[len(l.stack)-1]
		l.shorten(&p.left, p.right.low, u)
		l.shorten(&p.right, p.left.low, u)
	}
	if l.low[e] < l.height[u] {
		top := l.stack[len(l.stack)-1]
		left, right := top.left.high, top.right.high
		if left != none && (right == none || l.low[left] > l.low[right]) {
			l.ref[e] = left
		} else {
			l.ref[e] = right
		}
	}
}

func (l *leftRight) shorten(i *interval, opposite, u int) {
	for i.high != none && l.to(i.high) == u {
		i.high = l.ref[i.high]
	}
	if i.high == none && i.low != none {
		l.ref[i.low] = opposite
		l.side[i.low] = -1
		i.low = none
	}
}

// sign resolves the side of h, which is given relative to other edges.
func (l *leftRight) sign(h int) int {
	if r := l.ref[h]; r != none {
		l.ref[h] = none
		l.side[h] *= l.sign(r)
	}
	return l.side[h]
}

// turn completes the rotations below v.
func (l *leftRight) turn(v int) {
	for _, h := range l.out[v] {
		w := l.to(h)
		switch {
		case l.parent[w] == h:
			l.putFirst(w, h^1)
			l.leftAt[v], l.rightAt[v] = h, h
			l.turn(w)
		case l.side[h] == 1:
			l.putAfter(w, h^1, l.rightAt[w])
		default:
			l.putBefore(w, h^1, l.leftAt[w])
			l.leftAt[w] = h ^ 1
		}
	}
}

// putAfter inserts a half-edge clockwise after another, or as the only one.
func (l *leftRight) putAfter(v, h, ref int) {
	if ref == none {
		l.first[v], l.after[h], l.before[h] = h, h, h
		return
	}
	next := l.after[ref]
	l.after[ref], l.before[h], l.after[h], l.before[next] = h, ref, next, h
}

func (l *leftRight) putBefore(v, h, ref int) {
	l.putAfter(v, h, l.before[ref])
	if ref == l.first[v] {
		l.first[v] = h
	}
}

func (l *leftRight) putFirst(v, h int) {
	if l.first[v] == none {
		l.putAfter(v, h, none)
		return
	}
	l.putBefore(v, h, l.first[v])
}
