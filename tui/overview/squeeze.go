package overview

import (
	"cmp"
	"slices"

	"example.com/lugbook/diagram/scene"
)

// Small is a page made smaller.
type Small struct {
	Page scene.Page
	// Columns and Rows say where a column and a row of the large page went: its own place, or
	// that of the next one that is left. They have one entry more than the large page has
	// columns and rows.
	Columns, Rows []int
}

// Squeeze leaves out the columns and rows that show nothing but lines running on straight,
// blanks, and what the form does not write.
func Squeeze(p *scene.Page, f Form) Small {
	s := squeezer{page: f.strip(p), columns: make([]bool, p.W), rows: make([]bool, p.H)}
	s.zones()
	s.boxes()
	s.flags()
	s.wires()
	s.apart()
	for i := range s.page.Boxes {
		s.widen(i, f)
	}
	return s.small()
}

// squeezer marks the columns and rows of a page that have to stay.
type squeezer struct {
	page          scene.Page
	columns, rows []bool
}

func (s *squeezer) cell(p scene.Point) { s.column(p.X); s.row(p.Y) }

func (s *squeezer) column(x int) { mark(s.columns, x) }

func (s *squeezer) row(y int) { mark(s.rows, y) }

func mark(line []bool, at int) {
	if at >= 0 && at < len(line) {
		line[at] = true
	}
}

func (s *squeezer) rect(r scene.Rect) {
	s.cell(scene.Point{X: r.X, Y: r.Y})
	s.cell(scene.Point{X: r.Right(), Y: r.Bottom()})
}

func (s *squeezer) zones() {
	for _, z := range s.page.Zones {
		s.rect(z.Rect)
	}
}

// boxes keeps frames, terminals, a blank column on either side of a box, and a row before
// terminals in its upper and lower frame.
func (s *squeezer) boxes() {
	for _, b := range s.page.Boxes {
		s.rect(b.Rect)
		s.column(b.Rect.X - 1)
		s.column(b.Rect.Right() + 1)
		for _, p := range b.Ports {
			s.cell(p.At)
			dx, dy := p.Side.Step()
			s.cell(p.At.Add(dx, dy))
		}
	}
}

func (s *squeezer) flags() {
	for _, f := range s.page.Flags {
		for x := f.Rect.X; x <= f.Rect.Right(); x++ {
			s.cell(scene.Point{X: x, Y: f.Rect.Y})
		}
		dx, dy := f.Port.Side.Step()
		s.cell(f.Port.At.Add(dx, dy))
	}
}

func (s *squeezer) wires() {
	for _, w := range s.page.Wires {
		for _, p := range w.Path {
			s.cell(p)
		}
	}
}

// run is a straight piece of a wire: its row or column, and where in it.
type run struct{ line, from, to int }

// apart keeps a cell between runs that follow each other in one row or column, which would
// else look like one.
func (s *squeezer) apart() {
	var level, upright []run
	for _, w := range s.page.Wires {
		for i := 1; i < len(w.Path); i++ {
			if a, b := w.Path[i-1], w.Path[i]; a.Y == b.Y {
				level = append(level, run{a.Y, min(a.X, b.X), max(a.X, b.X)})
			} else {
				upright = append(upright, run{a.X, min(a.Y, b.Y), max(a.Y, b.Y)})
			}
		}
	}
	part(level, s.columns)
	part(upright, s.rows)
}

func part(runs []run, keep []bool) {
	slices.SortFunc(runs, func(a, b run) int {
		return cmp.Or(cmp.Compare(a.line, b.line), cmp.Compare(a.from, b.from), cmp.Compare(a.to, b.to))
	})
	for i := 1; i < len(runs); i++ {
		a, b := runs[i-1], runs[i]
		if a.line == b.line && b.from-a.to > 1 && !slices.Contains(keep[a.to+1:b.from], true) {
			keep[a.to+1] = true
		}
	}
}

// leastBox is the least width and height of a box.
const leastBox = 3

// widen keeps more columns, then more rows, of a box until its writing fits.
func (s *squeezer) widen(i int, f Form) {
	r := s.page.Boxes[i].Rect
	for !s.holds(i, f) {
		if x := slices.Index(s.columns[r.X:r.Right()], false); x >= 0 {
			s.columns[r.X+x] = true
		} else if y := slices.Index(s.rows[r.Y:r.Bottom()], false); y >= 0 {
			s.rows[r.Y+y] = true
		} else {
			return
		}
	}
}

// holds reports whether a box as it is squeezed has room for its writing.
func (s *squeezer) holds(i int, f Form) bool {
	b := s.page.Boxes[i]
	left, top := b.Rect.X, b.Rect.Y
	columns, rows := counts(s.columns[left:b.Rect.Right()+1]), counts(s.rows[top:b.Rect.Bottom()+1])
	at := func(p scene.Point) scene.Point { return scene.Point{X: columns[p.X-left], Y: rows[p.Y-top]} }
	corner := at(scene.Point{X: b.Rect.Right(), Y: b.Rect.Bottom()})
	b.Rect = scene.Rect{W: corner.X + 1, H: corner.Y + 1}
	b.Ports = slices.Clone(b.Ports)
	for k := range b.Ports {
		b.Ports[k].At = at(b.Ports[k].At)
	}
	inside := scene.Inside(b)
	head, name := 0, 0
	for _, w := range inside.Writings {
		switch w.Role {
		case scene.Head, scene.MarkSign:
			head += scene.Width(w.Text)
		case scene.PartName:
			name += scene.Width(w.Text)
		}
	}
	return b.Rect.W >= leastBox && b.Rect.H >= leastBox && len(inside.Lost) == 0 && head+2 <= b.Rect.W && (f >= Designated || name >= min(nameRoom, scene.Width(b.Name)))
}

// counts says for each column or row, and for the one after the last, how many before it
// are kept.
func counts(keep []bool) []int {
	out := make([]int, len(keep)+1)
	for i, kept := range keep {
		out[i+1] = out[i]
		if kept {
			out[i+1]++
		}
	}
	return out
}

// small is the page with the columns and rows that are kept.
func (s *squeezer) small() Small {
	out := Small{Page: s.page, Columns: counts(s.columns), Rows: counts(s.rows)}
	p := &out.Page
	p.W, p.H = out.Columns[len(s.columns)], out.Rows[len(s.rows)]
	for i := range p.Zones {
		p.Zones[i].Rect = out.Rect(p.Zones[i].Rect)
	}
	for i := range p.Boxes {
		b := &p.Boxes[i]
		b.Rect = out.Rect(b.Rect)
		for k := range b.Ports {
			b.Ports[k].At = out.Point(b.Ports[k].At)
		}
	}
	for i := range p.Flags {
		f := &p.Flags[i]
		f.Rect, f.Port.At = out.Rect(f.Rect), out.Point(f.Port.At)
	}
	for i := range p.Wires {
		for k := range p.Wires[i].Path {
			p.Wires[i].Path[k] = out.Point(p.Wires[i].Path[k])
		}
	}
	return out
}

// Point is where a cell of the large page went.
func (s *Small) Point(p scene.Point) scene.Point {
	return scene.Point{X: within(s.Columns, p.X), Y: within(s.Rows, p.Y)}
}

func within(line []int, at int) int { return line[max(0, min(at, len(line)-1))] }

// Rect is what a rectangle of the large page became.
func (s *Small) Rect(r scene.Rect) scene.Rect {
	a, b := s.Point(scene.Point{X: r.X, Y: r.Y}), s.Point(scene.Point{X: r.Right(), Y: r.Bottom()})
	return scene.Rect{X: a.X, Y: a.Y, W: b.X - a.X + 1, H: b.Y - a.Y + 1}
}
