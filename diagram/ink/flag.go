package ink

import "example.com/lugbook/diagram/scene"

// flag draws the end of a wire that has no part, and its text.
func (s *setter) flag(f scene.Flag) {
	x, y := centre(f.Port.At)
	at := scene.Point{X: f.Rect.X, Y: f.Rect.Y}
	if f.Port.At == at {
		at.X++
	}
	text := scene.Clean(f.Text)
	s.add(Group{Kind: FlagGroup, ID: f.ID, Title: f.ID + " " + text, Marks: append(flagMark(f.Kind, f.Port.Side, x, y), letters(at, penText, text)...)})
}

// flagMark is the mark of a flag that the wire meets on a side: an arrow head along the
// wire, a cross, a cap, or a question mark.
func flagMark(kind scene.FlagKind, side scene.Side, x, y int) []Mark {
	dx, dy := side.Step()
	switch kind {
	case scene.OffPage:
		path := straight(x-dx*8, y-dy*8, x+dx*8+dy*8, y+dy*8+dx*8, x+dx*8-dy*8, y+dy*8-dx*8)
		return []Mark{{Pen: penSolid, Path: append(path, closed())}}
	case scene.Cut:
		return []Mark{{Pen: penEnd, Path: append(straight(x-8, y-8, x+8, y+8), straight(x+8, y-8, x-8, y+8)...)}}
	case scene.Capped:
		return []Mark{{Shape: Rect, Pen: penSolid, At: Point{x - 6, y - 8}, W: 12, H: 16}}
	default:
		return []Mark{written(x-CellW/2, y, penBold, "?")}
	}
}
