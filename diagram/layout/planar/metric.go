package planar

import "example.com/lugbook/diagram/layout/geom"

// Rules are the distances of a drawing, in cells.
type Rules struct {
	// GapX and GapY are the least distances of two boxes.
	GapX, GapY int
	// Pitch is the number of rows between neighbouring wires on the left or right of a box, Span the number of columns
	// between those above or below; the first of these is half a span from the edge.
	Pitch, Span int
	// ColumnCost and RowCost price a cell of wire level and upright when drawings are compared.
	ColumnCost, RowCost int
	// MaxWidth is the number of columns a drawing should have at most; 0 for any.
	MaxWidth int
}

// Box is a box to be drawn. W and H are the least size; it grows to hold its wires.
type Box struct {
	W, H int
	// Head is the first row of its sides that a wire may take.
	Head int
}

// rim is a box of an ortho: per side the vertices from left to right or from top to bottom, its corners included.
type rim [4][]int

// ends is the number of wires on a side.
func (r *rim) ends(s geom.Side) int { return len(r[s]) - 2 }

// rims reads the boxes. Pre: the ortho is not cut yet.
func (o *ortho) rims() []rim {
	out := make([]rim, len(o.sides))
	for b, sides := range o.sides {
		if len(sides) == 0 {
			continue
		}
		begin := 0
		for o.dir[sides[begin]] != geom.East || o.dir[sides[(begin+len(sides)-1)%len(sides)]] != geom.North {
			begin++
		}
		for i := range sides {
			h := sides[(begin+i)%len(sides)]
			side := left(o.dir[h], 1) // clockwise, so the box is on the right
			if len(out[b][side]) == 0 {
				out[b][side] = append(out[b][side], o.org[h])
			}
			out[b][side] = append(out[b][side], o.dest(h))
		}
		reverse(out[b][geom.South])
		reverse(out[b][geom.West])
	}
	return out
}

func reverse(list []int) {
	for i, k := 0, len(list)-1; i < k; i, k = i+1, k-1 {
		list[i], list[k] = list[k], list[i]
	}
}

// trail is the wire of an edge: its vertices from u to v, and the directions from each to the next.
type trail struct {
	at  []int
	dir []geom.Side
}

// trails reads the wires. Pre: the ortho is not cut yet.
func (o *ortho) trails(p *plane) []trail {
	out := make([]trail, len(p.first))
	for e, h := range p.first {
		t := &out[e]
		t.at = append(t.at, o.at[h])
		for {
			for x := o.start[h]; ; x = o.next[x] {
				t.at, t.dir = append(t.at, o.dest(x)), append(t.dir, o.dir[x])
				if o.dest(x) == o.at[h^1] {
					break
				}
			}
			if !p.crossing(p.dest(h)) {
				break
			}
			h = p.straight(h)
		}
	}
	return out
}

// groups is a partition that grows together.
type groups []int

func newGroups(n int) groups {
	g := make(groups, n)
	for i := range g {
		g[i] = i
	}
	return g
}

func (g groups) find(i int) int {
	for g[i] != i {
		g[i] = g[g[i]]
		i = g[i]
	}
	return i
}

func (g groups) join(a, b int) { g[g.find(b)] = g.find(a) }

// scaling finds the coordinates of a cut ortho.
type scaling struct {
	o     *ortho
	lines [2]groups // vertices in one column, in one row
	axes  [2]coordinates
}

// scale gives every vertex a cell. Pre: all faces but the outermost are rectangles.
func (o *ortho) scale(rims []rim, boxes []Box, r Rules, wires []trail) []geom.Point {
	s := &scaling{o: o, lines: [2]groups{newGroups(o.vertices), newGroups(o.vertices)}}
	for h := 0; h < len(o.org); h += 2 {
		if o.dir[h].Horizontal() {
			s.lines[1].join(o.org[h], o.dest(h))
		} else {
			s.lines[0].join(o.org[h], o.dest(h))
		}
	}
	for axis := range 2 {
		s.axes[axis].weight = make([]int, o.vertices)
	}
	for h := range o.org {
		switch o.dir[h] {
		case geom.East:
			s.apart(0, o.org[h], o.dest(h), max(r.GapX, clearance))
		case geom.South:
			s.apart(1, o.org[h], o.dest(h), max(r.GapY, clearance))
		}
	}
	for b := range rims {
		if len(rims[b][0]) > 0 {
			s.box(&rims[b], boxes[b], r)
		}
	}
	for _, wire := range wires {
		for i, dir := range wire.dir {
			s.draw(wire.at[i], wire.at[i+1], dir)
		}
	}
	x, okX := s.axes[0].solve()
	y, okY := s.axes[1].solve()
	if !okX || !okY {
		return nil
	}
	at := make([]geom.Point, o.vertices)
	for v := range at {
		at[v] = geom.Point{X: x[s.lines[0].find(v)], Y: y[s.lines[1].find(v)]}
	}
	return at
}

func (s *scaling) apart(axis, a, b, d int) {
	s.axes[axis].apart(s.lines[axis].find(a), s.lines[axis].find(b), d)
}

// draw prices the line from one vertex to the next.
func (s *scaling) draw(a, b int, dir geom.Side) {
	axis := 0
	if !dir.Horizontal() {
		axis = 1
	}
	if dir == geom.West || dir == geom.North {
		a, b = b, a
	}
	s.axes[axis].draw(s.lines[axis].find(a), s.lines[axis].find(b), 1)
}

// box keeps a box large enough for its least size inside, with room on every side to lead its wires to it.
func (s *scaling) box(r *rim, b Box, rules Rules) {
	w, h := b.size(r, rules)
	for side, list := range r {
		along := geom.Side(side)
		axis, pitch, low, high, size := 0, rules.Span, geom.West, geom.East, w
		if along.Horizontal() {
			axis, pitch, low, high, size = 1, rules.Pitch, geom.North, geom.South, h
		}
		before, after := lead(r.ends(low)), lead(r.ends(high))
		last := len(list) - 1
		s.apart(axis, list[0], list[last], before+size+after)
		s.axes[axis].draw(s.lines[axis].find(list[0]), s.lines[axis].find(list[last]), 1)
		if last == 1 {
			continue
		}
		s.apart(axis, list[0], list[1], before+1)
		s.apart(axis, list[last-1], list[last], after+1)
		for i := 1; i+1 < last; i++ {
			s.apart(axis, list[i], list[i+1], pitch)
		}
	}
}

// lead is the depth of the room in which n wires are led to a side of a box.
func lead(n int) int {
	if n == 0 {
		return 0
	}
	return n + 1
}

// size is the least size of a box that holds its wires.
func (b Box) size(r *rim, rules Rules) (w, h int) {
	n := max(r.ends(geom.North), r.ends(geom.South))
	m := max(r.ends(geom.West), r.ends(geom.East))
	w, h = b.W, b.H
	if n > 0 {
		w = max(w, (n-1)*rules.Span+rules.Span/2*2)
	}
	if m > 0 {
		h = max(h, b.Head+(m-1)*rules.Pitch+1)
	}
	return w, h
}
