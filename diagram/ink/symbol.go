package ink

import (
	"slices"

	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/symbol"
)

// Units of the page in a unit of a symbol: small, middle and large. At the largest a
// symbol fills 7 x 3 cells.
var symbolScales = [...]int{4, 3, 2}

// letterSize is the size of letters in symbols, in units of the symbol.
const letterSize = 9

// Room that a symbol may take beyond its cells, in units: half a row is blank below it
// where the frame of its box comes next, and a little between rows of writing.
const (
	toFrame   = 14
	toWriting = 2
)

// symbolMarks draws a symbol as large as its room in a box allows.
func symbolMarks(s symbol.Symbol, b scene.Box, inside scene.Layout) []Mark {
	room := inside.Symbol
	if room.H == 1 {
		s = s.Flat()
	}
	top, bottom := room.Y*CellH-toWriting, (room.Y+room.H)*CellH+toWriting
	if room.Bottom()+1 == b.Rect.Bottom() && !writtenBelow(inside) {
		bottom += toFrame - toWriting
	}
	from, to := s.Extent()
	k := symbolScales[len(symbolScales)-1]
	for _, scale := range symbolScales {
		if (to.Y-from.Y)*scale <= bottom-top && symbol.W*scale <= room.W*CellW {
			k = scale
			break
		}
	}
	// The axis of most symbols is the middle of their field; what reaches beyond the room
	// from there is moved back into it.
	y := (top+bottom)/2 - symbol.H/2*k
	y = max(y, top-from.Y*k)
	y = min(y, bottom-to.Y*k)
	pen := scaled{k, room.X*CellW + (room.W*CellW-symbol.W*k)/2, y}
	var marks []Mark
	for _, stroke := range s.Strokes {
		marks = append(marks, pen.stroke(stroke))
	}
	return joined(marks)
}

// writtenBelow reports whether writing stands in the row under the room of the symbol,
// in columns of that room.
func writtenBelow(inside scene.Layout) bool {
	room := inside.Symbol
	return slices.ContainsFunc(inside.Writings, func(w scene.Writing) bool {
		return w.At.Y == room.Bottom()+1 && w.At.X <= room.Right() && w.At.X+scene.Width(w.Text) > room.X
	})
}

// scaled turns the units of a symbol into those of the page.
type scaled struct{ k, x, y int }

func (s scaled) at(p symbol.Point) Point { return Point{s.x + p.X*s.k, s.y + p.Y*s.k} }

func (s scaled) stroke(stroke symbol.Stroke) Mark {
	first := s.at(stroke.Points[0])
	switch stroke.Op {
	case symbol.Dashed:
		return Mark{Pen: penLink, Path: s.path(stroke, Draw)}
	case symbol.Outline:
		return Mark{Pen: penSymbol, Path: append(s.path(stroke, Draw), closed())}
	case symbol.Filled:
		return Mark{Pen: penSolid, Path: append(s.path(stroke, Draw), closed())}
	case symbol.Arcs:
		return Mark{Pen: penSymbol, Path: s.path(stroke, Half)}
	case symbol.Box, symbol.Bar:
		last := s.at(stroke.Points[1])
		path := straight(first.X, first.Y, last.X, first.Y, last.X, last.Y, first.X, last.Y)
		return Mark{Pen: solidIf(stroke.Op == symbol.Bar), Path: append(path, closed())}
	case symbol.Circle, symbol.Disc:
		return Mark{Shape: Circle, Pen: solidIf(stroke.Op == symbol.Disc), At: first, R: stroke.Radius * s.k}
	case symbol.Letters:
		return Mark{Shape: Letters, Pen: Pen{Fill: Ink, Size: letterSize * s.k}, At: first, Text: stroke.Text}
	default:
		return Mark{Pen: penSymbol, Path: s.path(stroke, Draw)}
	}
}

func solidIf(filled bool) Pen {
	if filled {
		return penSolid
	}
	return penSymbol
}

func (s scaled) path(stroke symbol.Stroke, op Op) []Step {
	var path []Step
	for i, p := range stroke.Points {
		if i == 0 {
			path = append(path, Step{Op: Move, To: s.at(p)})
		} else {
			path = append(path, Step{Op: op, To: s.at(p)})
		}
	}
	return path
}

// joined makes one mark of lines that follow each other with one pen.
func joined(marks []Mark) []Mark {
	var out []Mark
	for _, m := range marks {
		if last := len(out) - 1; last >= 0 && m.Shape == Line && out[last].Shape == Line && out[last].Pen == m.Pen {
			out[last].Path = append(out[last].Path, m.Path...)
			continue
		}
		out = append(out, m)
	}
	return out
}
