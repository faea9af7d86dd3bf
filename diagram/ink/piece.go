package ink

import "example.com/lugbook/diagram/scene"

// pieces draws what stands by itself: frames first, then the rest.
func (s *setter) pieces() {
	for _, p := range s.page.Pieces {
		if p.Kind == scene.Frame {
			s.add(Group{Kind: PieceGroup, Marks: []Mark{frame(p.Rect, penCard, 8)}})
		}
	}
	for _, p := range s.page.Pieces {
		if marks := pieceMarks(p); len(marks) > 0 {
			s.add(Group{Kind: PieceGroup, Title: p.Title, Marks: marks})
		}
	}
}

// Measures of things on a stud, in units.
const (
	boltW = 12
	nutW  = 60
)

// lugHeights are the heights of lugs by their thickness, and lugWeights the weights of
// their wires.
var (
	lugHeights = [4]int{8, 8, 14, 20}
	lugWeights = [4]scene.Weight{scene.Control, scene.Control, scene.Power, scene.Traction}
)

func pieceMarks(p scene.Piece) []Mark {
	top, left, width := p.Rect.Y*CellH, p.Rect.X*CellW, p.Rect.W*CellW
	middle := left + width/2
	switch p.Kind {
	case scene.Words:
		pen := penText
		if p.Strong {
			pen = penBold
		}
		return letters(scene.Point{X: p.Rect.X, Y: p.Rect.Y}, pen, p.Text)
	case scene.Rule:
		return []Mark{{Pen: penRule, Path: straight(left, top+CellH/2, left+width, top+CellH/2)}}
	case scene.Tip:
		return []Mark{{Shape: Rect, Pen: penMetal, At: Point{middle - boltW/2, top + CellH/2}, W: boltW, H: CellH / 2, R: 4}}
	case scene.Nut:
		nut := Mark{Shape: Rect, Pen: penMetal, At: Point{middle - nutW/2, top + 4}, W: nutW, H: CellH - 10, R: 4}
		edges := append(straight(middle-nutW/5, top+4, middle-nutW/5, top+CellH-6), straight(middle+nutW/5, top+4, middle+nutW/5, top+CellH-6)...)
		return []Mark{bolt(middle, top), nut, {Pen: penBracket, Path: edges}}
	case scene.Lug:
		return lug(p, left, top, width)
	case scene.Seat:
		face := Mark{Shape: Rect, Pen: penSeat, At: Point{left, top + 8}, W: width, H: CellH - 12, R: 2}
		return []Mark{bolt(middle, top-CellH/2), face}
	default:
		return nil
	}
}

// bolt is a row's height of the stud itself.
func bolt(middle, top int) Mark {
	return Mark{Shape: Rect, Pen: penMetal, At: Point{middle - boltW/2, top}, W: boltW, H: CellH}
}

// lug draws a lug from the side: its plate on the stud, and to the right the barrel with
// its wire in the colour of the insulation.
func lug(p scene.Piece, left, top, width int) []Mark {
	thick := min(max(p.Thick, 0), 3)
	h := lugHeights[thick]
	body, stripe := Insulation(p.Colour)
	marks := []Mark{bolt(left+width/2, top)}
	wire := straight(left+width*2/3, top+CellH/2, left+width, top+CellH/2)
	marks = append(marks, strokes(scene.Wire{Weight: lugWeights[thick]}, body, stripe, wire)...)
	return append(marks, Mark{Shape: Rect, Pen: penMetal, At: Point{left, top + (CellH-h)/2}, W: width * 3 / 4, H: h, R: 2})
}
