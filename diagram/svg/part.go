package svg

import (
	"fmt"
	"strings"

	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/symbol"
	"example.com/lugbook/model/clean"
)

// centre is the middle of a cell in units.
func centre(p scene.Point) (x, y int) { return p.X*cellW + cellW/2, p.Y*cellH + cellH/2 }

// frame is a rectangle along the middles of the outer cells.
func frame(r scene.Rect, class string) []attr {
	x, y := centre(scene.Point{X: r.X, Y: r.Y})
	return []attr{{"class", class}, {"x", x}, {"y", y}, {"width", (r.W - 1) * cellW}, {"height", (r.H - 1) * cellH}}
}

func (d *painter) zones() {
	titles := d.page.ZoneTitles()
	for _, z := range d.page.Zones {
		name := z.Name
		if name == "" {
			name = z.ID
		}
		d.group("z-"+z.ID, "zone", name)
		d.empty("rect", append(frame(z.Rect, "z"), attr{"rx", 6})...)
		for _, t := range titles {
			if t.Zone == z.ID {
				d.plate(t.At, scene.Width(t.Text), 0)
				d.write(t.At, "", t.Text)
			}
		}
		d.close("g")
	}
}

// changeClasses are the classes of things by what became of them.
var changeClasses = [...]string{
	scene.NoChange: "", scene.Kept: " kept", scene.Removed: " removed", scene.Added: " added", scene.Changed: " changed", scene.Moved: " moved",
}

var writingClasses = [...]string{scene.Head: "b", scene.MarkSign: "m", scene.PartName: "n", scene.PortName: "", scene.SeatNo: "seat", scene.WorkWord: "i"}

// box draws a part: frame, writing, brackets of studs, symbol.
func (d *painter) box(b scene.Box) {
	title := b.Title
	if title == "" {
		title = strings.TrimSpace(b.ID + " " + b.Name)
	}
	d.group("p-"+b.ID, "part"+changeClasses[b.Change], title, attr{"data-part", clean.Line(b.ID)})
	d.empty("rect", append(frame(b.Rect, "f"), attr{"rx", 2})...)
	inside := scene.Inside(b)
	for _, w := range inside.Writings {
		switch {
		case w.Role == scene.WorkWord && b.Works.Active:
			d.badge(w)
			continue
		case b.Rect.OnFrame(w.At):
			d.plate(w.At, scene.Width(w.Text), 0)
		}
		d.write(w.At, writingClasses[w.Role], w.Text)
	}
	for _, br := range inside.Brackets {
		d.bracket(br, inside)
	}
	if s, ok := symbol.Lookup(b.Symbol); ok && inside.Symbol.W > 0 {
		d.symbol(s, inside.Symbol)
	}
	d.close("g")
}

// badge writes the word of a part that departs from rest light on dark.
func (d *painter) badge(w scene.Writing) {
	d.empty("rect", attr{"class", "badge"}, attr{"x", w.At.X*cellW + 2}, attr{"y", w.At.Y * cellH}, attr{"width", scene.Width(w.Text)*cellW - 4}, attr{"height", cellH}, attr{"rx", 3})
	d.write(w.At, "o", w.Text)
}

// bracket draws the line that ties the positions of a stud together, with ticks
// towards the positions; the name stands at its back.
func (d *painter) bracket(br scene.Bracket, inside scene.Layout) {
	var path strings.Builder
	fromX, fromY := centre(br.From)
	toX, toY := centre(br.To)
	dx, dy := br.Side.Step()
	if br.Embedded {
		for _, w := range inside.Writings {
			if w.Role == scene.PortName && w.At.Y == br.From.Y && w.At.X > br.From.X && w.At.X < br.To.X {
				fmt.Fprintf(&path, "M%d %dH%dM%d %dH%d", fromX, fromY, w.At.X*cellW, (w.At.X+scene.Width(w.Text))*cellW, toY, toX)
			}
		}
	} else {
		fmt.Fprintf(&path, "M%d %dL%d %d", fromX, fromY, toX, toY)
	}
	for _, a := range br.Arms {
		x, y := centre(a)
		fmt.Fprintf(&path, "M%d %dl%d %d", x, y, dx*cellW/2, dy*cellH/2)
	}
	d.empty("path", attr{"class", "br"}, attr{"d", path.String()})
}

// terminals draws the ports of a part over the ends of the wires: full where a wire
// ends, open where none does.
func (d *painter) terminals(b scene.Box, ends map[scene.Point]bool) {
	d.open("g", attr{"data-part", clean.Line(b.ID)})
	for _, p := range b.Ports {
		x, y := centre(p.At)
		title := b.ID + "." + p.Terminal()
		if p.Seat > 0 {
			title += fmt.Sprintf(", position %d", p.Seat)
		}
		class := "p"
		if ends[p.At] {
			class = "p on"
		}
		d.open("circle", attr{"class", class}, attr{"cx", x}, attr{"cy", y}, attr{"r", 3}, attr{"data-terminal", clean.Line(p.Terminal())})
		d.text("title", clean.Line(title))
		d.close("circle")
	}
	d.close("g")
}

// wireEnds collects the cells where wires end.
func (d *painter) wireEnds() map[scene.Point]bool {
	ends := map[scene.Point]bool{}
	for _, w := range d.page.Wires {
		if len(w.Path) > 0 {
			ends[w.Path[0]], ends[w.Path[len(w.Path)-1]] = true, true
		}
	}
	return ends
}
