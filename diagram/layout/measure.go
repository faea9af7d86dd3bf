package layout

import (
	"unicode/utf8"

	"example.com/lugbook/diagram/layout/metrics"
)

// Measure counts the faults of a drawing of the graph and its crossings, bends and lengths. The lists of the drawing
// must be in the order of the graph, as Layout and Route return them.
func Measure(g Graph, d Drawing) (metrics.Report, error) {
	x, err := newIndex(&g)
	if err != nil {
		return metrics.Report{}, err
	}
	if err := sameShape(&g, &d); err != nil {
		return metrics.Report{}, err
	}
	var s metrics.Scene
	for _, b := range d.Boxes {
		s.Boxes = append(s.Boxes, b.Rect)
	}
	for i, z := range d.Zones {
		if z.Rect.W > 0 {
			s.Frames = append(s.Frames, metrics.Frame{Rect: z.Rect, Title: g.Zones[i].Title})
		}
	}
	end := func(box, port int) metrics.Terminal {
		p := d.Boxes[box].Ports[port]
		return metrics.Terminal{Box: box, Key: port, At: p.At, Side: p.Side}
	}
	for i, w := range x.wires {
		s.Wires = append(s.Wires, metrics.Wire{From: end(w.From.Box, w.From.Port), To: end(w.To.Box, w.To.Port),
			Path: d.Wires[i].Path})
		if l := d.Wires[i].Label; l.OK && l.Index < len(g.Wires[i].Labels) {
			length := utf8.RuneCountInString(g.Wires[i].Labels[l.Index])
			s.Labels = append(s.Labels, metrics.Label{Wire: i, Length: length, At: l.At, Vertical: l.Vertical})
		}
	}
	return metrics.Measure(s), nil
}

// sameShape tells whether the lists of a drawing are those of the graph.
func sameShape(g *Graph, d *Drawing) error {
	if len(d.Boxes) != len(g.Boxes) || len(d.Wires) != len(g.Wires) || len(d.Zones) != len(g.Zones) {
		return &GraphError{"drawing", "is of another graph: lay it out anew"}
	}
	for i, b := range g.Boxes {
		if d.Boxes[i].ID != b.ID || len(d.Boxes[i].Ports) != len(b.Ports) {
			return &GraphError{b.ID, "is drawn as another box: lay the graph out anew"}
		}
	}
	return nil
}
