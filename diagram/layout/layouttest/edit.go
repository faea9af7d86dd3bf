package layouttest

import (
	"fmt"
	"slices"

	"example.com/lugbook/diagram/layout"
)

// WithoutWire is the graph without wire number i. Terminals stay.
func WithoutWire(g layout.Graph, i int) layout.Graph {
	g.Wires = slices.Delete(slices.Clone(g.Wires), i, i+1)
	return g
}

// WithBox is the graph with one more box, wired to a terminal each of two boxes that are there: the ends of wire number
// i. No other box changes. The new box lies in the zone of the wire's first box.
func WithBox(g layout.Graph, i int) layout.Graph {
	g.Boxes, g.Wires = slices.Clone(g.Boxes), slices.Clone(g.Wires)
	w := g.Wires[i]
	id, zone := fmt.Sprint("new", len(g.Boxes)), ""
	for _, b := range g.Boxes {
		if b.ID == w.From.Box {
			zone = b.Zone
		}
	}
	g.Boxes = append(g.Boxes, layout.Box{ID: id, Zone: zone, W: 12, H: 4, Ports: []layout.Port{
		{ID: "t1", Sides: layout.SidesOf(layout.West), Offset: 2}, {ID: "t2", Sides: layout.SidesOf(layout.South), Offset: 4}}})
	g.Wires = append(g.Wires,
		layout.Wire{ID: id + "a", From: w.From, To: layout.PortRef{Box: id, Port: "t1"}},
		layout.Wire{ID: id + "b", From: layout.PortRef{Box: id, Port: "t2"}, To: w.To})
	return g
}
