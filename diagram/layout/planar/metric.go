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
	// Level is a box whose wires end on its left and right only.
	Level bool
}

// rim is a box of an ortho: per side the vertices from left to right or from top to bottom, its corners included.
type rim [4][]int

// ends are the vertices on a side where wires end.
func (r *rim) ends(s geom.Side) []int { return r[s][1 : len(r[s])-1] }

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
func (o *ortho) trails(p *plane, wires int) []trail {
	out := make([]trail, wires)
	for e := range out {
		t, h := &out[e], p.first[e]
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
func (o *ortho) scale(rooms []room, r Rules, wires []trail) []geom.Point {
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
	for i := range rooms {
		s.room(&rooms[i], r)
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

// room keeps the room of a box large enough for its least size, and for its wires to be led to it on every side.
func (s *scaling) room(m *room, rules Rules) {
	for side, list := range m.rim {
		along := geom.Side(side)
		axis, pitch, low, high, size := 0, rules.Span, geom.West, geom.East, m.w
		if along.Horizontal() {
			axis, pitch, low, high, size = 1, rules.Pitch, geom.North, geom.South, m.h
		}
		before, after := m.lead[low], m.lead[high]
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
