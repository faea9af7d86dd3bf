package board

import (
	"slices"

	"example.com/lugbook/diagram/scene"
)

// Trim takes blank columns and rows from the edges of a page. The page shares nothing with
// the one that was given.
func Trim(p scene.Page) scene.Page {
	least, most := extent(&p)
	if most.X < least.X {
		return p
	}
	move := func(at scene.Point) scene.Point { return at.Add(-least.X, -least.Y) }
	shift := func(r *scene.Rect) { r.X, r.Y = r.X-least.X, r.Y-least.Y }
	p.W, p.H = most.X-least.X+1, most.Y-least.Y+1
	p.Zones, p.Boxes, p.Flags = slices.Clone(p.Zones), slices.Clone(p.Boxes), slices.Clone(p.Flags)
	p.Wires, p.Pieces = slices.Clone(p.Wires), slices.Clone(p.Pieces)
	for i := range p.Zones {
		shift(&p.Zones[i].Rect)
	}
	for i := range p.Boxes {
		b := &p.Boxes[i]
		shift(&b.Rect)
		b.Ports = slices.Clone(b.Ports)
		for k := range b.Ports {
			b.Ports[k].At = move(b.Ports[k].At)
		}
	}
	for i := range p.Flags {
		shift(&p.Flags[i].Rect)
		p.Flags[i].Port.At = move(p.Flags[i].Port.At)
	}
	for i := range p.Wires {
		w := &p.Wires[i]
		w.Label.At = move(w.Label.At)
		w.Path = slices.Clone(w.Path)
		for k := range w.Path {
			w.Path[k] = move(w.Path[k])
		}
	}
	for i := range p.Pieces {
		shift(&p.Pieces[i].Rect)
	}
	return p
}

// extent is the first and the last column and row that anything takes.
func extent(p *scene.Page) (least, most scene.Point) {
	least = scene.Point{X: p.W, Y: p.H}
	most = scene.Point{X: -1, Y: -1}
	take := func(at scene.Point) {
		least = scene.Point{X: min(least.X, at.X), Y: min(least.Y, at.Y)}
		most = scene.Point{X: max(most.X, at.X), Y: max(most.Y, at.Y)}
	}
	area := func(r scene.Rect) {
		take(scene.Point{X: r.X, Y: r.Y})
		take(scene.Point{X: r.Right(), Y: r.Bottom()})
	}
	for _, z := range p.Zones {
		area(z.Rect)
	}
	for _, b := range p.Boxes {
		area(b.Rect)
	}
	for _, f := range p.Flags {
		area(f.Rect)
	}
	for _, piece := range p.Pieces {
		area(piece.Rect)
	}
	for _, w := range p.Wires {
		for _, at := range w.Path {
			take(at)
		}
		if w.Label.Text != "" {
			area(scene.Rect{X: w.Label.At.X, Y: w.Label.At.Y, W: scene.Width(w.Label.Text), H: 1})
		}
	}
	return least, most
}
