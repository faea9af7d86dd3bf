package layout

import (
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

// freeEnded tells whether nothing but the wires says where things go: no zones, no pins, no flags, and every port may
// sit anywhere on its box and has one wire.
func freeEnded(g *Graph, x *index) bool {
	if len(g.Zones) > 0 || len(g.Wires) == 0 || pinned(g) {
		return false
	}
	wires := make([][]int, len(g.Boxes))
	for i, b := range g.Boxes {
		if b.H == 0 {
			return false
		}
		wires[i] = make([]int, len(b.Ports))
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
		wires[w.From.Box][w.From.Port]++
		wires[w.To.Box][w.To.Port]++
	}
	for _, ports := range wires {
		for _, n := range ports {
			if n != 1 {
				return false
			}
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
	best := routeDraft(g, x, unfolded(g, x, &q), o, w.route)
	if w.tries > 0 {
		w.route.Polish = route.Polishing{Tries: w.tries}
		polished := routeDraft(g, x, unfolded(g, x, &q), o, w.route)
		if polished.worse() < best.worse() || polished.worse() == best.worse() && polished.cost < best.cost {
			best = polished
		}
	}
	return *best.drawing, best.worse() == 0 && (o.MaxWidth == 0 || best.drawing.W <= o.MaxWidth)
}

func planarProblem(g *Graph, x *index, o Options) planar.Problem {
	p := planar.Problem{Rules: planar.Rules{GapX: o.GapX, GapY: o.GapY, Pitch: o.Pitch, Span: o.Span}}
	for _, b := range g.Boxes {
		head := b.Head
		if head == 0 {
			head = o.Pitch
		}
		p.Boxes = append(p.Boxes, planar.Box{W: b.W, H: b.H, Head: head})
	}
	for _, w := range x.wires {
		p.Wires = append(p.Wires, [2]int{w.From.Box, w.To.Box})
	}
	return p
}

// unfolded writes a plane drawing into one of the graph.
func unfolded(g *Graph, x *index, q *planar.Drawing) *Drawing {
	d := emptyDrawing(g)
	for i := range d.Boxes {
		d.Boxes[i].Rect = q.Boxes[i]
	}
	for i, w := range x.wires {
		path := q.Wires[i]
		d.Wires[i].Path = path
		for _, end := range [2]struct {
			box, port int
			at        Point
		}{{w.From.Box, w.From.Port, path[0]}, {w.To.Box, w.To.Port, path[len(path)-1]}} {
			port := &d.Boxes[end.box].Ports[end.port]
			port.At, port.Side = end.at, sideAt(d.Boxes[end.box].Rect, end.at)
		}
	}
	return d
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
