package layout

import (
	"slices"

	"example.com/lugbook/diagram/layout/geom"
	"example.com/lugbook/diagram/layout/place"
	"example.com/lugbook/diagram/layout/planar"
	"example.com/lugbook/diagram/layout/route"
)

// layout places and routes a graph from nothing. One whose wires may end anywhere on their boxes is laid out for few
// crossings; tried on graphs of known crossing number the general way never came out more than a hundredth cheaper.
func layout(g *Graph, x *index, o Options) (Drawing, error) {
	if freeEnded(g, x) {
		if d, ok := o.planar(g, x); ok {
			return d, nil
		}
	}
	return general(g, x, o)
}

// crossFree is the price of a crossing where the topology was chosen for few: no bend or way pays for one.
const crossFree = 200

// smallFree is the number of boxes up to which a graph with free ends is laid out in both ways.
const smallFree = 24

// freeEnded tells whether nothing but the wires says where things go: no zones, no pins, no flags, no wire from a box to
// itself, and every port may sit anywhere on its box.
func freeEnded(g *Graph, x *index) bool {
	if len(g.Zones) > 0 || len(g.Wires) == 0 || pinned(g) {
		return false
	}
	for _, b := range g.Boxes {
		if b.H == 0 {
			return false
		}
		for _, p := range b.Ports {
			if p.Sides&AnySide != AnySide || p.Offset >= 0 || p.Group != "" || p.Face != 0 {
				return false
			}
		}
	}
	for _, w := range x.wires {
		if w.From.Box == w.To.Box {
			return false
		}
	}
	return true
}

// planar draws a graph with free ends; ok is false when the drawing does not fit the page or a label has no room.
func (o Options) planar(g *Graph, x *index) (d Drawing, ok bool) {
	w := o.work(g)
	effort := planar.Effort{Starts: 2, Steps: 100, Shapes: 2}
	if o.Effort == Full {
		effort = planar.Effort{Starts: 8, Steps: 1000, Shapes: max(min(32, 2000/len(g.Wires)), 1)}
	}
	q, ok := planar.Draw(planarProblem(g, x, o), effort)
	if !ok {
		return Drawing{}, false
	}
	o.cross = crossFree
	draft, ok := unfolded(g, x, &q, o)
	if !ok {
		return Drawing{}, false
	}
	again := draft.clone()
	best := routeDraft(g, x, draft, o, w.route)
	if w.tries > 0 {
		w.route.Polish = route.Polishing{Tries: w.tries}
		polished := routeDraft(g, x, &again, o, w.route)
		if polished.worse() < best.worse() || polished.worse() == best.worse() && polished.cost < best.cost {
			best = polished
		}
	}
	return *best.drawing, best.worse() == 0 && (o.MaxWidth == 0 || best.drawing.W <= o.MaxWidth)
}

func planarProblem(g *Graph, x *index, o Options) planar.Problem {
	p := planar.Problem{Rules: planar.Rules{GapX: o.GapX, GapY: o.GapY, Pitch: o.Pitch, Span: o.Span,
		ColumnCost: o.ColumnCost, RowCost: o.RowCost, MaxWidth: o.MaxWidth}}
	for i := range g.Boxes {
		p.Boxes = append(p.Boxes, planarBox(&g.Boxes[i], o))
	}
	for _, w := range x.wires {
		p.Wires = append(p.Wires, [2]planar.End{{Box: w.From.Box}, {Box: w.To.Box}})
	}
	return p
}

func planarBox(b *Box, o Options) planar.Box {
	head := b.Head
	if head == 0 {
		head = o.Pitch
	}
	return planar.Box{W: b.W, H: b.H, Head: head}
}

// unfolded writes a plane drawing into one of the graph. A port that has several wires sits where the first of them
// ends; the others are left to be routed. ok is false when a port without wires finds no place.
func unfolded(g *Graph, x *index, q *planar.Drawing, o Options) (d *Drawing, ok bool) {
	d = emptyDrawing(g)
	taken := make([][]bool, len(g.Boxes))
	for i := range d.Boxes {
		d.Boxes[i].Rect = q.Boxes[i]
		taken[i] = make([]bool, len(d.Boxes[i].Ports))
	}
	for i, w := range x.wires {
		path := slices.Clone(q.Wires[i])
		own := true
		for k, end := range [2]place.Ref{w.From, w.To} {
			if taken[end.Box][end.Port] {
				own = false
				continue
			}
			taken[end.Box][end.Port] = true
			b := &d.Boxes[end.Box]
			at := path[k*(len(path)-1)]
			b.Ports[end.Port].At, b.Ports[end.Port].Side = at, sideAt(b.Rect, at)
		}
		if own {
			d.Wires[i].Path = path
		}
	}
	for i := range d.Boxes {
		for k := range d.Boxes[i].Ports {
			if !taken[i][k] && !seatSpare(&d.Boxes[i], k, taken[i], planarBox(&g.Boxes[i], o).Head, o) {
				return nil, false
			}
			taken[i][k] = true
		}
	}
	return d, true
}

// seatSpare puts a port without wires where a side of the box has room for it.
func seatSpare(b *BoxAt, port int, taken []bool, head int, o Options) bool {
	for _, side := range [4]Side{East, West, South, North} {
		low, high, pitch := head, b.Rect.H-1, o.Pitch
		if !side.Horizontal() {
			low, high, pitch = o.Span/2, b.Rect.W-o.Span/2, o.Span
		}
		for at := low; at <= high; at++ {
			spot := place.Spot{Side: side, Offset: at}.On(b.Rect)
			free := true
			for k, p := range b.Ports {
				if away := p.At.Sub(spot); taken[k] && p.Side == side && max(geom.Abs(away.X), geom.Abs(away.Y)) < pitch {
					free = false
				}
			}
			if free {
				b.Ports[port].At, b.Ports[port].Side = spot, side
				return true
			}
		}
	}
	return false
}

// sideAt is the side of a box on which a cell lies that is none of its corners.
func sideAt(r Rect, at Point) Side {
	switch {
	case at.Y == r.Y:
		return North
	case at.Y == r.Bottom():
		return South
	case at.X == r.X:
		return West
	}
	return East
}
