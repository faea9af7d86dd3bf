package planar

import "example.com/lugbook/diagram/layout/geom"

// ortho is a drawing of level and upright lines without lengths. It has a vertex for every crossing, bend, corner of a
// box, and place where a wire meets a box. Half-edges come in pairs as in plane, with their face on their left.
type ortho struct {
	org, next []int
	turn      []int // quarter turns to the left from a half-edge to the next
	dir       []geom.Side
	vertices  int
	at, start []int   // per half-edge of the plane: the vertex and the half-edge with which it begins here
	sides     [][]int // per box: the half-edges around it, on the outside, clockwise
}

// unset is the direction of a half-edge that has none yet.
const unset = geom.Side(255)

func (o *ortho) vertex() int {
	o.vertices++
	return o.vertices - 1
}

func (o *ortho) pair(u, v int) int {
	o.org, o.next, o.turn = append(o.org, u, v), append(o.next, none, none), append(o.turn, 0, 0)
	o.dir = append(o.dir, unset, unset)
	return len(o.org) - 2
}

func (o *ortho) dest(h int) int { return o.org[h^1] }

func (o *ortho) follow(h, next, turn int) { o.next[h], o.turn[h] = next, turn }

// left is the direction after t quarter turns to the left.
func left(d geom.Side, t int) geom.Side { return geom.Side((int(d) - t + 4*4) % 4) }

// newOrtho draws a plane with at least one segment in the shape given; its first line runs in the direction given.
func newOrtho(p *plane, s *shape, first geom.Side) *ortho {
	o := &ortho{at: make([]int, len(p.org)), start: make([]int, len(p.org)), sides: make([][]int, p.real)}
	for d := p.real; d < len(p.out); d++ {
		if p.out[d] == none {
			continue
		}
		v, h := o.vertex(), p.out[d]
		for range 4 {
			o.at[h] = v
			h = p.around(h)
		}
	}
	for h := range p.org {
		if p.owner[h/2] != none && !p.crossing(p.org[h]) {
			o.at[h] = o.vertex()
		}
	}
	end := make([]int, len(p.org))
	for h := 0; h < len(p.org); h += 2 {
		if p.owner[h/2] != none {
			o.start[h], end[h] = o.chain(o.at[h], o.at[h+1], max(s.bends[h], -s.bends[h]), sign(s.bends[h]))
			o.start[h+1], end[h+1] = end[h]^1, o.start[h]^1
		}
	}
	o.boxes(p, s, end)
	o.direct(first)
	return o
}

func sign(v int) int {
	switch {
	case v > 0:
		return 1
	case v < 0:
		return -1
	}
	return 0
}

// chain draws a line from u to v with bends that all turn the same way, and returns its first and last half-edge.
func (o *ortho) chain(u, v, bends, turn int) (first, last int) {
	for i := range bends + 1 {
		w := v
		if i < bends {
			w = o.vertex()
		}
		h := o.pair(u, w)
		if i == 0 {
			first = h
		} else {
			o.follow(last, h, turn)
			o.follow(h^1, last^1, -turn)
		}
		u, last = w, h
	}
	return first, last
}

// boxes draws the boxes, and joins the wires at them and at crossings.
func (o *ortho) boxes(p *plane, s *shape, end []int) {
	inside, coming := make([]int, len(p.org)), make([]int, len(p.org)) // by the wire that leaves
	for v, begin := range p.out {
		if begin == none {
			continue
		}
		for g := begin; ; {
			h := p.prev[g]
			if p.crossing(v) {
				o.follow(end[h], o.start[g], 1)
			} else {
				first, last := o.chain(o.at[h^1], o.at[g], s.corners[h], -1)
				o.follow(end[h], first, 1)
				o.follow(last, o.start[g], 1)
				inside[g], coming[h^1] = last^1, first^1
				for x := first; ; x = o.next[x] {
					o.sides[v] = append(o.sides[v], x)
					if x == last {
						break
					}
				}
			}
			if g = p.around(g); g == begin {
				break
			}
		}
		for g := begin; !p.crossing(v); {
			o.follow(coming[g], inside[g], 0)
			if g = p.around(g); g == begin {
				break
			}
		}
	}
}

// direct gives every half-edge its direction, beginning with the first.
func (o *ortho) direct(first geom.Side) {
	o.dir[0] = first
	for stack := []int{0}; len(stack) > 0; {
		h := stack[len(stack)-1]
		stack = stack[:len(stack)-1]
		for _, x := range [2]struct {
			half int
			dir  geom.Side
		}{{h ^ 1, o.dir[h].Opposite()}, {o.next[h], left(o.dir[h], o.turn[h])}} {
			if o.dir[x.half] == unset {
				o.dir[x.half] = x.dir
				stack = append(stack, x.half)
			}
		}
	}
}

// split puts a new vertex on h, straight, and returns the half-edge from it on.
func (o *ortho) split(h int) int {
	d := o.vertex()
	n := o.pair(d, o.dest(h))
	k, m := h^1, n^1
	o.follow(n, o.next[h], o.turn[h])
	o.follow(h, n, 0)
	x := k
	for o.next[x] != k { // the half-edge before k now runs to m
		x = o.next[x]
	}
	o.next[x] = m
	o.follow(m, k, 0)
	o.org[k] = d
	o.dir[n], o.dir[m] = o.dir[h], o.dir[k]
	return n
}

// dissect cuts all faces into rectangles: from every corner that bulges into a face its line is drawn on until it
// meets the first line that can be in front. Pre: the face of h is the outer one.
func (o *ortho) dissect(outer int) {
	halves := len(o.org)
	seen := make([]bool, halves)
	for h := outer; !seen[h]; h = o.next[h] {
		seen[h] = true
	}
	var todo []int
	for h := range halves {
		if seen[h] {
			continue
		}
		todo = append(todo, h)
		for g := h; !seen[g]; g = o.next[g] {
			seen[g] = true
		}
	}
	todo = append(todo, o.frame(outer))
	for len(todo) > 0 {
		h := todo[len(todo)-1]
		todo = todo[:len(todo)-1]
		if a, b, ok := o.cut(h); ok {
			todo = append(todo, a, b)
		}
	}
}

// cut parts the face of h in two at one of its bulging corners; ok is false when there is none.
func (o *ortho) cut(h int) (a, b int, ok bool) {
	x := h
	for o.turn[x] != -1 {
		if x = o.next[x]; x == h {
			return 0, 0, false
		}
	}
	sum, y := o.turn[x], o.next[x]
	for sum != 1 {
		sum += o.turn[y]
		y = o.next[y]
	}
	n := o.split(y)
	return o.bridge(x, y, n)
}

// bridge draws a line straight on from the end of x to the vertex between y and n.
func (o *ortho) bridge(x, y, n int) (a, b int, ok bool) {
	c := o.pair(o.dest(x), o.org[n])
	o.dir[c], o.dir[c+1] = o.dir[x], o.dir[x].Opposite()
	o.follow(c+1, o.next[x], 1)
	o.follow(x, c, 0)
	o.follow(y, c+1, 1)
	o.follow(c, n, 1)
	return c, c + 1, true
}

// frame draws a rectangle around everything and ties it to a corner from which the way out is clear: after it the
// turns of the outer face never come to more than before. The outer face is then one like the others.
func (o *ortho) frame(outer int) int {
	x, sum, most := outer, 0, 0
	for h := outer; ; {
		if sum >= most {
			x, most = h, sum
		}
		sum += o.turn[h]
		if h = o.next[h]; h == outer {
			break
		}
	}
	var walls [5]int
	first := o.vertex()
	from := first
	for i := range walls {
		to := first
		if i < 4 {
			to = o.vertex()
		}
		walls[i] = o.pair(from, to)
		o.dir[walls[i]] = left(o.dir[x], 1+i)
		o.dir[walls[i]+1] = o.dir[walls[i]].Opposite()
		from = to
	}
	for i, w := range walls {
		turn := 1
		if i == 4 {
			turn = 0
		}
		o.follow(w, walls[(i+1)%5], turn)
		o.follow(walls[(i+1)%5]+1, w+1, -turn)
	}
	_, b, _ := o.bridge(x, walls[4], walls[0])
	return b
}
