package planar

// End is where a wire ends.
type End struct {
	// Box is its index.
	Box int
	// Group is equal for ends that lie side by side on a box, 0 for none.
	Group int
	// Face is 1 or 2 for ends that lie on opposite sides of a box, whichever; 0 for an end that is free.
	Face int
}

// beside tells whether two ends of a box are of one group.
func (e End) beside(o End) bool { return e.Group > 0 && e.Group == o.Group }

// wiring is a connected graph whose boxes may be trees: a box with groups or faces has a vertex for each of them that
// the wires of the others must pass, tied to it by an edge that stands for all its wires.
type wiring struct {
	boxes  int
	n      int // vertices, the boxes first
	edges  []edge
	weight []int // of the edges; nil when all are wires
	wires  int   // edges below are wires
	ends   [][2]End
}

// newWiring makes the graph of some wires between boxes.
func newWiring(boxes int, ends [][2]End) *wiring {
	w := &wiring{boxes: boxes, n: boxes, wires: len(ends), ends: ends}
	at := make([][]*int, boxes) // per box, the ends of edges that are there
	of := make([][]End, boxes)
	w.edges = make([]edge, len(ends), 2*len(ends))
	for i, pair := range ends {
		w.edges[i] = edge{pair[0].Box, pair[1].Box}
		at[pair[0].Box] = append(at[pair[0].Box], &w.edges[i].u)
		at[pair[1].Box] = append(at[pair[1].Box], &w.edges[i].v)
		of[pair[0].Box], of[pair[1].Box] = append(of[pair[0].Box], pair[0]), append(of[pair[1].Box], pair[1])
	}
	var ties []edge
	var sizes []int
	for b := range boxes {
		center := map[int]int{} // per face, the vertex its wires pass
		for face := range 3 {
			center[face] = b
			if v, n := w.tie(b, b, at[b], func(i int) bool { return face > 0 && of[b][i].Face == face }, len(at[b])); n > 0 {
				center[face] = v
				ties, sizes = append(ties, edge{b, v}), append(sizes, n)
			}
		}
		for i, e := range of[b] {
			first := true
			for _, before := range of[b][:i] {
				first = first && before.Group != e.Group
			}
			if e.Group == 0 || !first {
				continue
			}
			hub := center[e.Face]
			all := 0
			for _, p := range at[b] {
				if *p == hub {
					all++
				}
			}
			if v, n := w.tie(b, hub, at[b], func(k int) bool { return of[b][k].Group == e.Group }, all); n > 0 {
				ties, sizes = append(ties, edge{hub, v}), append(sizes, n)
			}
		}
	}
	if len(ties) == 0 {
		return w
	}
	w.edges = append(w.edges, ties...)
	for i := range w.edges {
		if i < w.wires {
			w.weight = append(w.weight, 1)
		} else {
			w.weight = append(w.weight, sizes[i-w.wires])
		}
	}
	return w
}

// tie moves some of the ends at a hub of a box to a vertex of their own, unless they are fewer than two or all there
// are. It returns the vertex and the number of ends, 0 for none.
func (w *wiring) tie(box, hub int, at []*int, picked func(i int) bool, all int) (v, n int) {
	for i := range at {
		if picked(i) {
			n++
		}
	}
	if n < 2 || n == all {
		return 0, 0
	}
	v = w.n
	w.n++
	for i, p := range at {
		if picked(i) && *p == hub {
			*p = v
		}
	}
	return v, n
}

// gather draws the trees of boxes together into the boxes: the wires of what was a vertex of its own then lie side by
// side. It reports false when a tie is crossed.
func (p *plane) gather(w *wiring) bool {
	for e := len(w.edges) - 1; e >= w.wires; e-- { // a group's tie comes after that of its face
		s := p.first[e]
		if p.crossing(p.dest(s)) {
			return false
		}
		p.contract(s)
		p.first[e] = none
	}
	return true
}

// contract draws the vertex a segment runs to into the one it leaves.
func (p *plane) contract(s int) {
	u, v, t := p.org[s], p.dest(s), s^1
	for h := p.around(t); h != t; h = p.around(h) {
		p.org[h] = u
	}
	before, after := p.prev[s], p.next[s]
	p.out[u], p.out[v] = after, none
	if before == t { // u had no other segment
		p.link(p.prev[t], after)
	} else {
		last := p.prev[t]
		p.link(before, after)
		p.link(last, p.next[t])
	}
	p.freePair(s)
}

// between says what corners of a box may lie between two neighbouring ends.
type between int

const (
	someCorners between = iota // any number
	noCorner                   // the ends lie on one side
	twoCorners                 // the ends lie on opposite sides
	allCorners                 // the one gap of a box whose ends all lie on one side
)

// room is how many corners fit.
func (b between) room() int { return [4]int{4, 0, 2, 4}[b] }

// gaps says for every half-edge what corners may lie between its end and that of the next one of its face. Pre: the
// trees are gathered, and faces are labelled.
func (p *plane) gaps(w *wiring) []between {
	out := make([]between, len(p.org))
	size := make([]int, len(p.faces))
	for h := range p.org {
		if p.owner[h/2] != none {
			size[p.face[h]]++
		}
	}
	for v := range w.boxes {
		if p.out[v] == none {
			continue
		}
		open, loose, bound := none, false, true // loose: the open gap parts no group
		for g := p.out[v]; ; {
			h := p.prev[g]
			a, b := p.endOf(w, h^1), p.endOf(w, g)
			switch {
			case a.Face+b.Face == 3:
				out[h], bound = twoCorners, false
			case a.Face > 0 && a.Face == b.Face, a.beside(b):
				out[h] = noCorner
			default:
				bound = false
			}
			apart := !a.beside(b)
			if open == none || apart && !loose || apart == loose && size[p.face[h]] > size[p.face[open]] {
				open, loose = h, apart
			}
			if g = p.around(g); g == p.out[v] {
				break
			}
		}
		if bound {
			out[open] = allCorners
		}
	}
	return out
}

// endOf is the end of a wire from which a half-edge leaves a box.
func (p *plane) endOf(w *wiring, h int) End {
	e := p.owner[h/2]
	if p.first[e] == h {
		return w.ends[e][0]
	}
	return w.ends[e][1]
}
