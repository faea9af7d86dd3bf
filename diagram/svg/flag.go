package svg

import (
	"fmt"

	"example.com/lugbook/diagram/scene"
)

// flag draws the end of a wire that has no part, and its text.
func (d *painter) flag(f scene.Flag) {
	d.group("f-"+f.ID, "flag", f.ID+" "+f.Text)
	x, y := centre(f.Port.At)
	d.mark(f.Kind, f.Port.Side, x, y)
	at := scene.Point{X: f.Rect.X, Y: f.Rect.Y}
	if f.Port.At == at {
		at.X++
	}
	d.write(at, "", scene.Clean(f.Text))
	d.close("g")
}

// mark draws the mark of a flag that the wire meets on a side: an arrow head along
// the wire, a cross, a cap, or a question mark.
func (d *painter) mark(kind scene.FlagKind, side scene.Side, x, y int) {
	dx, dy := side.Step()
	switch kind {
	case scene.OffPage:
		d.empty("path", attr{"class", "s"}, attr{"d", fmt.Sprintf("M%d %dL%d %dL%d %dz",
			x-dx*4, y-dy*4, x+dx*4+dy*4, y+dy*4+dx*4, x+dx*4-dy*4, y+dy*4-dx*4)})
	case scene.Cut:
		d.empty("path", attr{"d", fmt.Sprintf("M%d %dl8 8m0 -8l-8 8", x-4, y-4)})
	case scene.Capped:
		d.empty("rect", attr{"class", "s"}, attr{"x", x - 3}, attr{"y", y - 4}, attr{"width", 6}, attr{"height", 8})
	case scene.Untraced:
		d.line(x-cellW/2, y, "b", "?")
	}
}
