package svg

import (
	"fmt"
	"strings"

	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/symbol"
)

// lowered is how far a symbol is moved down, in units of its own: the text above it
// reaches down to its room, while the frame below leaves half a row free.
const lowered = 2

// symbol draws a symbol into its room: in full size on three rows, in half size on one.
func (d *painter) symbol(s symbol.Symbol, room scene.Rect) {
	scale, class := 1, "y"
	if room.H >= 3 {
		scale, class = 2, "y big"
	}
	x := room.X*cellW + (room.W*cellW-symbol.W*scale)/2
	y := room.Y*cellH + (room.H*cellH-symbol.H*scale)/2 + lowered*scale
	transform := fmt.Sprintf("translate(%d %d)", x, y)
	if scale > 1 {
		transform += fmt.Sprintf(" scale(%d)", scale)
	}
	d.open("g", attr{"class", class}, attr{"transform", transform})
	for _, stroke := range s.Strokes {
		d.stroke(stroke)
	}
	d.close("g")
}

func (d *painter) stroke(s symbol.Stroke) {
	switch s.Op {
	case symbol.Line:
		d.empty("path", attr{"d", polyline(s.Points, "")})
	case symbol.Dashed:
		d.empty("path", attr{"class", "d"}, attr{"d", polyline(s.Points, "")})
	case symbol.Outline:
		d.empty("path", attr{"d", polyline(s.Points, "z")})
	case symbol.Filled:
		d.empty("path", attr{"class", "s"}, attr{"d", polyline(s.Points, "z")})
	case symbol.Box, symbol.Bar:
		a, b := s.Points[0], s.Points[1]
		d.empty("rect", fill(s.Op == symbol.Bar, attr{"x", a.X}, attr{"y", a.Y}, attr{"width", b.X - a.X}, attr{"height", b.Y - a.Y})...)
	case symbol.Circle, symbol.Disc:
		d.empty("circle", fill(s.Op == symbol.Disc, attr{"cx", s.Points[0].X}, attr{"cy", s.Points[0].Y}, attr{"r", s.Radius})...)
	case symbol.Path:
		d.empty("path", attr{"d", s.Text})
	case symbol.Letters:
		d.text("text", s.Text, attr{"x", s.Points[0].X}, attr{"y", s.Points[0].Y}, attr{"dy", ".35em"})
	}
}

// fill adds the class of filled strokes.
func fill(filled bool, attrs ...attr) []attr {
	if filled {
		attrs = append(attrs, attr{"class", "s"})
	}
	return attrs
}

func polyline(points []symbol.Point, end string) string {
	var path strings.Builder
	for i, p := range points {
		op := "L"
		if i == 0 {
			op = "M"
		}
		fmt.Fprintf(&path, "%s%d %d", op, p.X, p.Y)
	}
	return path.String() + end
}
