package text

import "example.com/lugbook/diagram/scene"

// stackGlyphs are the letters of things on a stud, seen from the side: lugs by thickness.
type stackGlyphs struct {
	lug            [4]rune
	bolt, nut, tip rune
	seat           rune
}

var (
	unicodeStack = stackGlyphs{lug: [4]rune{'▂', '▂', '▄', '▆'}, bolt: '┃', nut: '▄', tip: '╻', seat: '█'}
	asciiStack   = stackGlyphs{lug: [4]rune{'-', '-', '=', '#'}, bolt: '|', nut: '%', tip: '|', seat: '^'}
)

// nutCells is the width of a nut.
const nutCells = 5

// pieces draws what stands by itself, frames first.
func (c canvas) pieces(p *scene.Page) {
	for _, piece := range p.Pieces {
		if piece.Kind == scene.Frame {
			c.rect(piece.Rect, &c.glyphs.frame, Cell{Role: CardFrame, Owner: piece.Of})
		}
	}
	for _, piece := range p.Pieces {
		c.piece(piece)
	}
}

func (c canvas) piece(p scene.Piece) {
	set := &unicodeStack
	if c.glyphs.ascii {
		set = &asciiStack
	}
	at := scene.Point{X: p.Rect.X, Y: p.Rect.Y}
	middle := p.Rect.W / 2
	like := Cell{Role: StackPart, Owner: p.Of, Colour: scene.Clean(p.Colour)}
	switch p.Kind {
	case scene.Words:
		like.Role = Writing
		if p.Strong {
			like.Role = StrongWriting
		}
		c.write(at, c.text(p.Text), like)
	case scene.Rule:
		like.Role, like.Rune = CardFrame, c.glyphs.rule
		c.fill(at, p.Rect.W, like)
	case scene.Tip:
		like.Rune = set.tip
		c.put(at.Add(middle, 0), like)
	case scene.Nut:
		like.Rune = set.nut
		c.fill(at.Add(middle-nutCells/2, 0), nutCells, like)
		like.Rune = set.bolt
		c.put(at.Add(middle, 0), like)
	case scene.Lug:
		like.Rune = set.lug[min(max(p.Thick, 0), 3)]
		c.fill(at, p.Rect.W, like)
		like.Rune = set.bolt
		c.put(at.Add(middle, 0), like)
	case scene.Seat:
		like.Rune = set.seat
		c.fill(at, p.Rect.W, like)
	}
}

// fill puts a cell n times from left to right.
func (c canvas) fill(at scene.Point, n int, like Cell) {
	for i := range n {
		c.put(at.Add(i, 0), like)
	}
}
