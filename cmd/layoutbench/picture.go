package main

import (
	"fmt"
	"math"
	"slices"

	"example.com/lugbook/diagram/layout"
	"example.com/lugbook/diagram/layout/metrics/offgrid"
)

// picture is a drawing in JSON, ours or that of a peer.
type picture struct {
	Nodes map[string]fileCorner      `json:"nodes"`
	Edges map[string][]offgrid.Point `json:"edges"`
}

// fileCorner is the top-left corner of a box, and its size if that is not the graph's.
type fileCorner struct {
	X float64 `json:"x"`
	Y float64 `json:"y"`
	W float64 `json:"w,omitempty"`
	H float64 `json:"h,omitempty"`
}

func pictureOf(d *layout.Drawing) picture {
	p := picture{Nodes: map[string]fileCorner{}, Edges: map[string][]offgrid.Point{}}
	for _, b := range d.Boxes {
		p.Nodes[b.ID] = fileCorner{float64(b.Rect.X), float64(b.Rect.Y), float64(b.Rect.W), float64(b.Rect.H)}
	}
	for _, w := range d.Wires {
		path := []offgrid.Point{}
		for _, at := range w.Path {
			path = append(path, offgrid.Point{float64(at.X), float64(at.Y)})
		}
		p.Edges[w.ID] = path
	}
	return p
}

// of is the picture without what is not in the graph, such as the frames of zones.
func (p picture) of(g *fileGraph) picture {
	out := picture{Nodes: map[string]fileCorner{}, Edges: p.Edges}
	for _, n := range g.Nodes {
		if at, ok := p.Nodes[n.ID]; ok {
			out.Nodes[n.ID] = at
		}
	}
	return out
}

// measure counts what is wrong with the picture and how good it is otherwise.
func (p picture) measure(g *fileGraph) (offgrid.Report, error) {
	var boxes []offgrid.Box
	ends := map[fileEnd]offgrid.End{}
	for i, n := range g.Nodes {
		at, ok := p.Nodes[n.ID]
		if !ok {
			return offgrid.Report{}, fmt.Errorf("box %s is not in the drawing", n.ID)
		}
		box := offgrid.Box{X: at.X, Y: at.Y, W: float64(n.W), H: float64(n.H)}
		if at.W > 0 {
			box.W, box.H = at.W, at.H
		}
		boxes = append(boxes, box)
		for k, port := range n.Ports {
			e := offgrid.End{Box: i, Port: k}
			offset := float64(port.Offset)
			switch sides[port.Side] {
			case layout.North:
				e.At, e.Out = offgrid.Point{box.X + offset, box.Y}, offgrid.Point{0, -1}
			case layout.East:
				e.At, e.Out = offgrid.Point{box.X + box.W, box.Y + offset}, offgrid.Point{1, 0}
			case layout.South:
				e.At, e.Out = offgrid.Point{box.X + offset, box.Y + box.H}, offgrid.Point{0, 1}
			case layout.West:
				e.At, e.Out = offgrid.Point{box.X, box.Y + offset}, offgrid.Point{-1, 0}
			}
			ends[fileEnd{Node: n.ID, Port: port.ID}] = e
		}
		ends[fileEnd{Node: n.ID, Free: true}] = offgrid.End{Box: i, Port: -1}
	}
	var wires []offgrid.Wire
	for _, e := range g.Edges {
		from, ok := ends[e.From]
		to, too := ends[e.To]
		if !ok || !too {
			return offgrid.Report{}, fmt.Errorf("edge %s ends nowhere", e.ID)
		}
		wires = append(wires, offgrid.Wire{From: from, To: to, Path: p.Edges[e.ID]})
	}
	return offgrid.Measure(boxes, wires), nil
}

// change is how much of a drawing is different from an earlier one.
type change struct{ boxes, moved, wires, changed int }

// add puts two counts together.
func (c change) add(o change) change {
	return change{c.boxes + o.boxes, c.moved + o.moved, c.wires + o.wires, c.changed + o.changed}
}

// still is the distance in cells that counts as no movement.
const still = 0.5

// since compares what is in both drawings. A shift that most boxes share is no change.
func (p picture) since(before picture) change {
	var xs, ys []float64
	for id, was := range before.Nodes {
		if at, ok := p.Nodes[id]; ok {
			xs, ys = append(xs, at.X-was.X), append(ys, at.Y-was.Y)
		}
	}
	c := change{boxes: len(xs)}
	if c.boxes == 0 {
		return c
	}
	shift := offgrid.Point{middle(xs), middle(ys)}
	for id, was := range before.Nodes {
		if at, ok := p.Nodes[id]; ok && math.Hypot(at.X-was.X-shift[0], at.Y-was.Y-shift[1]) > still {
			c.moved++
		}
	}
	for id, was := range before.Edges {
		path, ok := p.Edges[id]
		if !ok {
			continue
		}
		c.wires++
		if !slices.EqualFunc(path, was, func(a, b offgrid.Point) bool {
			return math.Hypot(a[0]-b[0]-shift[0], a[1]-b[1]-shift[1]) <= still
		}) {
			c.changed++
		}
	}
	return c
}

// middle is the upper median.
func middle(values []float64) float64 {
	if len(values) == 0 {
		return 0
	}
	sorted := slices.Sorted(slices.Values(values))
	return sorted[len(sorted)/2]
}

// percentile is the value that the given share of the values, in percent, does not exceed.
func percentile(values []float64, percent int) float64 {
	if len(values) == 0 {
		return 0
	}
	sorted := slices.Sorted(slices.Values(values))
	return sorted[min(len(sorted)*percent/100, len(sorted)-1)]
}
