package scene

import "fmt"

// Piece is a mark that stands by itself: writing of a list, a rule, the frame of a card, or
// a thing on a stud that is drawn from the side.
type Piece struct {
	Kind   PieceKind
	Rect   Rect   // the cells that it takes; of a frame the outer ones
	Text   string // of writing
	Strong bool   // writing that heads other writing
	Colour string // of a lug: its wire's insulation after IEC 60757
	Thick  int    // of a lug: 1 for control wires to 3 for main cables
	Title  string // long text for a painter that can show it on demand
	Of     Ref    // what it tells of, if that is one thing
	In     string // the box within whose frame it stands; empty for none. Nothing else is written there
}

// PieceKind is what a piece is.
type PieceKind uint8

// The kinds of piece. All but frames are one row high.
const (
	Words PieceKind = iota
	Rule            // a level line through the middle of its cells
	Frame
	Tip // end of a bolt above its nut
	Nut
	Lug
	Seat // the face of a terminal that the first lug touches
)

// Covers reports whether a piece takes a cell.
func (p Piece) Covers(c Point) bool {
	if p.Kind == Frame {
		return p.Rect.OnFrame(c)
	}
	return p.Rect.Contains(c)
}

// Write makes writing that starts in a cell. The text is cleaned.
func Write(at Point, text string) Piece {
	text = Clean(text)
	return Piece{Kind: Words, Text: text, Rect: Rect{X: at.X, Y: at.Y, W: Width(text), H: 1}}
}

// inside reports whether a cell lies within the frame of a box.
func (c *checker) inside(box string, at Point) bool {
	for _, b := range c.page.Boxes {
		if b.ID == box {
			return b.Rect.Contains(at) && !b.Rect.OnFrame(at)
		}
	}
	return false
}

// piece checks a piece and takes its cells.
func (c *checker) piece(i int, p Piece) {
	what := fmt.Sprintf("piece %d", i)
	if p.Text != "" {
		what = fmt.Sprintf("the writing %q", p.Text)
	}
	at := Point{p.Rect.X, p.Rect.Y}
	if !c.inPage(what, p.Rect) {
		return
	}
	switch {
	case p.Kind == Words && p.Rect.W != Width(p.Text), p.Kind != Frame && p.Rect.H != 1, p.Kind == Frame && min(p.Rect.W, p.Rect.H) < 3:
		c.fault(at, nil, "%s has not the size of its kind", what)
	case p.Kind == Words && p.Text != Clean(p.Text):
		c.fault(at, nil, "%s is not clean", what)
	}
	for cell := range rectCells(p.Rect) {
		if !p.Covers(cell) {
			continue
		}
		other := c.solid[cell]
		if p.In != "" && other == p.In && c.inside(p.In, cell) {
			continue
		}
		if runs := c.runs[cell]; other == "" && len(runs) > 0 {
			other = "wire " + runs[0].wire
		}
		if other == "" {
			other = c.frame[cell]
		}
		if other != "" {
			c.fault(cell, nil, "%s lies on %s", what, other)
			break
		}
	}
	for cell := range rectCells(p.Rect) {
		if p.Covers(cell) {
			c.solid[cell] = what
		}
	}
}
