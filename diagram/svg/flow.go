package svg

import (
	"fmt"

	"example.com/lugbook/diagram/scene"
)

// energyClasses are the classes of wires by what a state does to them.
var energyClasses = [...]string{scene.NotShown: "", scene.Unjudged: " unjudged", scene.Dead: " dead", scene.Return: " return", scene.Live: " live"}

// glow lays a broad band under a live wire, below all lines.
func (d *painter) glow(e scene.Energy, path string) {
	if e == scene.Live {
		d.empty("path", attr{"class", "h"}, attr{"d", path})
	}
}

// flows draws what the wires do in the state that is shown: figures, and arrows or the
// signs of what is not judged.
func (d *painter) flows() {
	for _, w := range d.page.Wires {
		f := w.Flow
		if text := scene.Clean(f.Note.Text); text != "" {
			air := 0
			if !f.Note.Vertical {
				air = 2
			}
			d.plate(f.Note.At, scene.Width(text), air)
			d.write(f.Note.At, "i", text)
		}
		for _, a := range f.Arrows {
			x, y := centre(a.At)
			if f.Energy == scene.Unjudged {
				d.unjudged(a.At)
				continue
			}
			d.arrow(x, y, a.Way)
		}
	}
}

// arrow draws an arrow head that points a way, on a casing that sets it off from the line.
func (d *painter) arrow(x, y int, way scene.Side) {
	dx, dy := way.Step()
	d.empty("path", attr{"class", "a"}, attr{"d", fmt.Sprintf("M%d %dL%d %dL%d %dz",
		x+dx*6, y+dy*6, x-dx*5-dy*5, y-dy*5-dx*5, x-dx*5+dy*5, y-dy*5+dx*5)})
}

// unjudged writes the sign of a wire of which nothing is known.
func (d *painter) unjudged(at scene.Point) {
	d.plate(at, 1, 0)
	d.write(at, "m", "?")
}
