package ink

import (
	"cmp"
	"slices"
	"strings"

	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/symbol"
)

// centre is the middle of a cell.
func centre(p scene.Point) (x, y int) { return p.X*CellW + CellW/2, p.Y*CellH + CellH/2 }

// frame is a rectangle along the middles of the outer cells.
func frame(r scene.Rect, pen Pen, round int) Mark {
	x, y := centre(scene.Point{X: r.X, Y: r.Y})
	return Mark{Shape: Rect, Pen: pen, At: Point{x, y}, W: (r.W - 1) * CellW, H: (r.H - 1) * CellH, R: round}
}

// letters writes a text into cells; none if it is blank. Blanks at its ends are left out.
func letters(at scene.Point, pen Pen, text string) []Mark {
	trimmed := strings.TrimLeft(text, " ")
	at.X += scene.Width(text) - scene.Width(trimmed)
	if trimmed = strings.TrimRight(trimmed, " "); trimmed == "" {
		return nil
	}
	return []Mark{written(at.X*CellW, at.Y*CellH+CellH/2, pen, trimmed)}
}

// written is a text that begins at a place in units and fills a cell with each letter.
func written(x, middle int, pen Pen, text string) Mark {
	return Mark{Shape: Letters, Pen: pen, At: Point{x, middle}, Text: text, Cells: scene.Width(text)}
}

// plate covers the lines behind a text of n cells.
func plate(at scene.Point, n int) Mark {
	return Mark{Shape: Rect, Pen: penPaper, At: Point{at.X * CellW, at.Y*CellH + 2}, W: n * CellW, H: CellH - 4}
}

func (s *setter) zones() {
	titles := s.page.ZoneTitles()
	for _, z := range s.page.Zones {
		g := Group{Kind: ZoneGroup, ID: z.ID, Title: named(z.Name, z.ID), Marks: []Mark{frame(z.Rect, penZone, 12)}}
		for _, t := range titles {
			if t.Zone == z.ID {
				g.Marks = append(g.Marks, plate(t.At, scene.Width(t.Text)))
				g.Marks = append(g.Marks, letters(t.At, penItalic, t.Text)...)
			}
		}
		s.add(g)
	}
}

func named(name, id string) string {
	if name == "" {
		return id
	}
	return name
}

var writingPens = [...]Pen{scene.Head: penBold, scene.MarkSign: penAlarm, scene.PartName: penSoft, scene.PortName: penText, scene.SeatNo: penText, scene.WorkWord: penBold}

// part draws a box: frame, writing, brackets of studs, symbol, and the terminals over
// the ends of the wires.
func (s *setter) part(b scene.Box) {
	g := Group{Kind: PartGroup, ID: b.ID, Title: b.Title}
	if g.Title == "" {
		g.Title = strings.TrimSpace(b.ID + " " + b.Name)
	}
	inside := scene.Inside(b)
	g.Marks = framed(b, inside)
	for _, w := range inside.Writings {
		pen := writingPens[w.Role]
		if w.Role == scene.WorkWord && b.Works.Active {
			g.Marks = append(g.Marks, badge(w))
			pen = penInvert
		}
		g.Marks = append(g.Marks, letters(w.At, pen, w.Text)...)
	}
	for _, br := range inside.Brackets {
		g.Marks = append(g.Marks, bracket(br, inside))
	}
	if drawing, ok := symbol.Of(b); ok && inside.Symbol.W > 0 {
		g.Marks = append(g.Marks, symbolMarks(drawing, b, inside)...)
	}
	g.Marks = append(g.Marks, s.terminals(b)...)
	g.Marks = append(g.Marks, cornerSigns(b)...)
	s.add(g)
}

// framed is the frame of a part by what became of it: added ones heavy, removed ones
// dotted, changed ones doubled, moved ones in long dashes.
func framed(b scene.Box, inside scene.Layout) []Mark {
	outline := Mark{Pen: framePens[b.Change], Path: open(b.Rect, inside)}
	if b.Change != scene.Changed {
		return []Mark{outline}
	}
	inner := frame(b.Rect, penInner, 0)
	inner.At, inner.W, inner.H = Point{inner.At.X + 6, inner.At.Y + 6}, inner.W-12, inner.H-12
	marks := []Mark{outline, inner}
	for _, w := range inside.Writings {
		if b.Rect.OnFrame(w.At) {
			marks = append(marks, plate(w.At, scene.Width(w.Text)))
		}
	}
	return marks
}

// open is the outline of a part, open where writing stands in it: from the lower right
// corner round by the left.
func open(r scene.Rect, inside scene.Layout) []Step {
	left, top := centre(scene.Point{X: r.X, Y: r.Y})
	right, bottom := centre(scene.Point{X: r.Right(), Y: r.Bottom()})
	path := []Step{move(right, bottom)}
	lower := frameGaps(inside, r.Bottom(), left, right)
	for i := len(lower) - 1; i >= 0; i-- {
		path = append(path, draw(lower[i].To, bottom), move(lower[i].From, bottom))
	}
	path = append(path, draw(left, bottom), draw(left, top))
	for _, g := range frameGaps(inside, r.Y, left, right) {
		path = append(path, draw(g.From, top), move(g.To, top))
	}
	return append(path, draw(right, top), draw(right, bottom))
}

// frameGaps are the pieces of a frame line that writing takes, from left to right; one
// for writing that follows on.
func frameGaps(inside scene.Layout, row, left, right int) []gap {
	var gaps []gap
	for _, w := range inside.Writings {
		if w.At.Y != row {
			continue
		}
		from, to := max(w.At.X*CellW, left), min((w.At.X+scene.Width(w.Text))*CellW, right)
		if n := len(gaps); n > 0 && gaps[n-1].To == from {
			gaps[n-1].To = to
		} else {
			gaps = append(gaps, gap{From: from, To: to})
		}
	}
	slices.SortFunc(gaps, func(a, b gap) int { return cmp.Compare(a.From, b.From) })
	return gaps
}

// badge is the ground of the word of a part that departs from rest, light on dark.
func badge(w scene.Writing) Mark {
	return Mark{Shape: Rect, Pen: penSolid, At: Point{w.At.X*CellW + 4, w.At.Y * CellH}, W: scene.Width(w.Text)*CellW - 8, H: CellH, R: 6}
}

// bracket draws the line that ties the positions of a stud together, with ticks
// towards the positions; the name stands at its back.
func bracket(br scene.Bracket, inside scene.Layout) Mark {
	var path []Step
	fromX, fromY := centre(br.From)
	toX, toY := centre(br.To)
	dx, dy := br.Side.Step()
	if br.Embedded {
		for _, w := range inside.Writings {
			if w.Role == scene.PortName && w.At.Y == br.From.Y && w.At.X > br.From.X && w.At.X < br.To.X {
				path = append(path, straight(fromX, fromY, w.At.X*CellW, fromY)...)
				path = append(path, straight((w.At.X+scene.Width(w.Text))*CellW, toY, toX, toY)...)
			}
		}
	} else {
		path = straight(fromX, fromY, toX, toY)
	}
	for _, a := range br.Arms {
		x, y := centre(a)
		path = append(path, straight(x, y, x+dx*CellW/2, y+dy*CellH/2)...)
	}
	return Mark{Pen: penBracket, Path: path}
}

// dotRadius is that of a terminal.
const dotRadius = 6

// terminals draws the ports of a part: full where a wire ends, open where none does.
func (s *setter) terminals(b scene.Box) []Mark {
	full := Mark{Shape: Dots, Pen: penSolid, R: dotRadius}
	var marks []Mark
	for _, p := range b.Ports {
		x, y := centre(p.At)
		if s.ends[p.At] {
			full.Dots = append(full.Dots, Point{x, y})
		} else {
			marks = append(marks, Mark{Shape: Circle, Pen: penOpen, At: Point{x, y}, R: dotRadius})
		}
	}
	if len(full.Dots) > 0 {
		marks = append(marks, full)
	}
	return marks
}
