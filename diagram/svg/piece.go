package svg

import (
	"fmt"

	"example.com/lugbook/diagram/scene"
)

// pieces draws what stands by itself: frames first, then the rest.
func (d *painter) pieces() {
	if len(d.page.Pieces) == 0 {
		return
	}
	d.open("g", attr{"class", "pieces"})
	for _, p := range d.page.Pieces {
		if p.Kind == scene.Frame {
			d.empty("rect", append(frame(p.Rect, "card"), attr{"rx", 4})...)
		}
	}
	for _, p := range d.page.Pieces {
		d.piece(p)
	}
	d.close("g")
}

// Measures of things on a stud, in units.
const (
	boltW = 6
	nutW  = 30
)

// lugHeights are the heights of lugs by their thickness.
var lugHeights = [4]int{4, 4, 7, 10}

func (d *painter) piece(p scene.Piece) {
	top, left := p.Rect.Y*cellH, p.Rect.X*cellW
	width := p.Rect.W * cellW
	middle := left + width/2
	switch p.Kind {
	case scene.Words:
		class := ""
		if p.Strong {
			class = "b"
		}
		d.write(scene.Point{X: p.Rect.X, Y: p.Rect.Y}, class, p.Text)
	case scene.Rule:
		d.empty("path", attr{"class", "rule"}, attr{"d", fmt.Sprintf("M%d %dh%d", left, top+cellH/2, width)})
	case scene.Tip:
		d.empty("rect", attr{"class", "bolt"}, attr{"x", middle - boltW/2}, attr{"y", top + cellH/2}, attr{"width", boltW}, attr{"height", cellH / 2}, attr{"rx", 2})
	case scene.Nut:
		d.bolt(middle, top)
		d.empty("rect", attr{"class", "nut"}, attr{"x", middle - nutW/2}, attr{"y", top + 2}, attr{"width", nutW}, attr{"height", cellH - 5}, attr{"rx", 2})
		d.empty("path", attr{"class", "br"}, attr{"d", fmt.Sprintf("M%d %dv%dM%d %dv%d", middle-nutW/5, top+2, cellH-5, middle+nutW/5, top+2, cellH-5)})
	case scene.Lug:
		d.lug(p, left, top, width)
	case scene.Seat:
		d.bolt(middle, top-cellH/2)
		d.empty("rect", attr{"class", "seatface"}, attr{"x", left}, attr{"y", top + 4}, attr{"width", width}, attr{"height", cellH - 6}, attr{"rx", 1})
	}
}

// bolt draws a row's height of the stud itself.
func (d *painter) bolt(middle, top int) {
	d.empty("rect", attr{"class", "bolt"}, attr{"x", middle - boltW/2}, attr{"y", top}, attr{"width", boltW}, attr{"height", cellH})
}

// lug draws a lug from the side: its plate on the stud, and to the right the barrel with
// its wire in the colour of the insulation.
func (d *painter) lug(p scene.Piece, left, top, width int) {
	h := lugHeights[min(max(p.Thick, 0), 3)]
	y := top + (cellH-h)/2
	body, stripe := paints(p.Colour)
	d.open("g", attr{"class", "lug"})
	d.text("title", p.Title)
	d.bolt(left+width/2, top)
	wire := fmt.Sprintf("M%d %dh%d", left+width*2/3, top+cellH/2, width/3)
	d.open("g", attr{"class", "wire " + weightClasses[lugWeights[min(max(p.Thick, 0), 3)]]})
	d.strokes(scene.Control, body, stripe, wire)
	d.close("g")
	d.empty("rect", attr{"class", "plateside"}, attr{"x", left}, attr{"y", y}, attr{"width", width * 3 / 4}, attr{"height", h}, attr{"rx", 1})
	d.close("g")
}

var lugWeights = [4]scene.Weight{scene.Control, scene.Control, scene.Power, scene.Traction}
