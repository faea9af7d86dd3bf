package svg

import (
	"fmt"
	"slices"
	"strings"

	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/model/clean"
)

var weightClasses = [...]string{scene.Control: "control", scene.Power: "power", scene.Traction: "traction", scene.Mains: "mains", scene.Trunk: "trunk"}

// wires draws the wires, each cut where it passes under another.
func (d *painter) wires() {
	under := map[string][]scene.Point{}
	for _, c := range d.page.Crossings() {
		under[c.Under] = append(under[c.Under], c.At)
	}
	for _, w := range d.page.Wires {
		d.glow(w.Flow.Energy, wirePath(w.Path, under[w.ID]))
	}
	for _, w := range d.page.Wires {
		title := w.Title
		if title == "" {
			title = fmt.Sprintf("%s: %s to %s", w.ID, w.From, w.To)
		}
		class := "wire " + weightClasses[w.Weight] + changeClasses[w.Change] + energyClasses[w.Flow.Energy]
		if w.Flow.Carries() {
			class += " carries"
		}
		d.group("w-"+w.ID, class, title, attr{"data-wire", clean.Line(w.ID)},
			attr{"data-from", clean.Line(w.From)}, attr{"data-to", clean.Line(w.To)})
		body, stripe := paints(w.Colour)
		d.strokes(w.Weight, body, stripe, wirePath(w.Path, under[w.ID]))
		d.close("g")
	}
}

// strokes lays the strokes of a wire on each other: casing, body, stripe; for mains
// a line of the page's colour that splits the body in two.
func (d *painter) strokes(weight scene.Weight, body, stripe, path string) {
	d.empty("path", attr{"class", "k"}, attr{"d", path})
	d.empty("path", attr{"class", "c " + body}, attr{"d", path})
	if stripe != "" {
		d.empty("path", attr{"class", "c t " + stripe}, attr{"d", path})
	}
	if weight == scene.Mains {
		d.empty("path", attr{"class", "v"}, attr{"d", path})
	}
}

// bend is the radius of a wire's bends in units. Half a column: two bends fit into
// one column.
const bend = cellW / 2

// wirePath is the path of a wire along the middles of its cells, its bends rounded
// and one column left out at each cut.
func wirePath(corners []scene.Point, cuts []scene.Point) string {
	var path strings.Builder
	for i, at := range corners {
		x, y := centre(at)
		if i == 0 {
			fmt.Fprintf(&path, "M%d %d", x, y)
			continue
		}
		before := corners[i-1]
		if before.Y == at.Y {
			level(&path, before, at, cuts)
		}
		dx, dy := direction(before, at)
		if i == len(corners)-1 {
			fmt.Fprintf(&path, "L%d %d", x, y)
			continue
		}
		nextX, nextY := direction(at, corners[i+1])
		fmt.Fprintf(&path, "L%d %dQ%d %d %d %d", x-dx*bend, y-dy*bend, x, y, x+nextX*bend, y+nextY*bend)
	}
	return path.String()
}

// level draws a level run up to its last cut and skips the cuts.
func level(path *strings.Builder, from, to scene.Point, cuts []scene.Point) {
	dx, _ := direction(from, to)
	var on []int
	for _, c := range cuts {
		if c.Y == from.Y && c.X > min(from.X, to.X) && c.X < max(from.X, to.X) {
			on = append(on, c.X*dx)
		}
	}
	slices.Sort(on)
	for _, c := range on {
		x, y := centre(scene.Point{X: c * dx, Y: from.Y})
		fmt.Fprintf(path, "H%dM%d %d", x-dx*cellW/2, x+dx*cellW/2, y)
	}
}

func direction(from, to scene.Point) (dx, dy int) {
	return min(1, max(-1, to.X-from.X)), min(1, max(-1, to.Y-from.Y))
}

// labels writes the labels of the wires on plates that interrupt the lines.
func (d *painter) labels() {
	for _, w := range d.page.Wires {
		if w.Label.Text == "" {
			continue
		}
		text := scene.Clean(w.Label.Text)
		air := 0
		if !w.Label.Vertical {
			air = 2
		}
		d.plate(w.Label.At, scene.Width(text), air)
		d.write(w.Label.At, "", text)
	}
}
