package layout

import (
	"unicode/utf8"

	"example.com/lugbook/diagram/layout/geom"
	"example.com/lugbook/diagram/layout/place"
	"example.com/lugbook/diagram/layout/route"
)

// frameRoom is the room a zone's frame keeps: two free columns, and one free row above and below, besides its own
// cell; and two cells to the next frame.
var frameRoom = place.Frame{Side: 3, Top: 2, Bottom: 2, Gap: 2}

// filled puts the defaults in.
func (o Options) filled(labelled bool) Options {
	set := func(v *int, to int) {
		if *v == 0 {
			*v = to
		}
	}
	set(&o.ColumnCost, 1)
	set(&o.RowCost, 1)
	set(&o.Pitch, 2)
	set(&o.Span, 4)
	if labelled {
		set(&o.GapX, labelGap)
	}
	set(&o.GapX, 2)
	set(&o.GapY, 2)
	return o
}

// labelGap is the least distance of two boxes side by side when wires carry labels: room for a short one.
const labelGap = 8

func placeProblem(g *Graph, x *index, o Options, tracks int) *place.Problem {
	p := &place.Problem{Wires: x.wires, Rules: place.Rules{
		Col: o.ColumnCost, Row: o.RowCost, Bend: 17, Cross: 24, Hit: 36, Back: 40, Size: 3, GapX: o.GapX, GapY: o.GapY, Tracks: tracks,
		Pitch: o.Pitch, Span: o.Span, MaxWidth: o.MaxWidth, Frame: frameRoom}}
	if labelled(g) {
		p.Rules.Edge = labelEnds
	}
	for _, z := range g.Zones {
		p.Titles = append(p.Titles, z.Title)
	}
	for i := range g.Boxes {
		b := &g.Boxes[i]
		box := placeBox(b)
		if z, ok := x.zone[b.Zone]; ok {
			box.Zone = z
		}
		switch {
		case b.H == 0:
			box.Head = 0
		case box.Head == 0:
			box.Head = o.Pitch
		}
		p.Boxes = append(p.Boxes, box)
	}
	return p
}

// placeBox is a box without its zone as placing sees it.
func placeBox(b *Box) place.Box {
	out := place.Box{Zone: -1, W: b.W, H: b.H, Head: b.Head, Ordered: b.Ordered, Pin: b.Pin}
	groups := map[string]int{}
	for _, port := range b.Ports {
		group := -1
		if port.Group != "" {
			if _, ok := groups[port.Group]; !ok {
				groups[port.Group] = len(groups)
			}
			group = groups[port.Group]
		}
		out.Ports = append(out.Ports, place.Port{Sides: port.Sides & AnySide, Offset: port.Offset, Group: group,
			Face: port.Face})
	}
	return out
}

// routeProblem sets up the routing of a drawing whose boxes and ports have their places.
func routeProblem(g *Graph, x *index, d *Drawing, o Options) *route.Problem {
	p := &route.Problem{MaxWidth: o.MaxWidth, Costs: route.DefaultCosts(o.ColumnCost, o.RowCost)}
	first := make([]int, len(g.Boxes))
	for i, b := range d.Boxes {
		p.Boxes = append(p.Boxes, b.Rect)
		p.Pinned = append(p.Pinned, g.Boxes[i].Pin != nil)
		first[i] = len(p.Terminals)
		for _, port := range b.Ports {
			p.Terminals = append(p.Terminals, route.Terminal{Box: i, At: port.At, Side: port.Side})
		}
	}
	for i, z := range d.Zones {
		if z.Rect.W > 0 {
			p.Zones = append(p.Zones, route.Zone{Rect: z.Rect, Title: g.Zones[i].Title})
		}
	}
	for i, w := range x.wires {
		wire := route.Wire{From: first[w.From.Box] + w.From.Port, To: first[w.To.Box] + w.To.Port,
			Labels: lengths(g.Wires[i].Labels)}
		p.Wires = append(p.Wires, wire)
		p.Paths = append(p.Paths, d.Wires[i].Path)
		p.Placed = append(p.Placed, d.Wires[i].Label)
	}
	return p
}

// lengths are the numbers of cells that texts take.
func lengths(texts []string) []int {
	var out []int
	for _, text := range texts {
		out = append(out, utf8.RuneCountInString(text))
	}
	return out
}

// placed writes a placement into an empty drawing of the graph.
func placed(g *Graph, q place.Placement) *Drawing {
	d := emptyDrawing(g)
	for i := range d.Boxes {
		d.Boxes[i].Rect = q.Boxes[i]
		for k := range d.Boxes[i].Ports {
			port := &d.Boxes[i].Ports[k]
			port.At, port.Side = q.Spots[i][k].On(q.Boxes[i]), q.Spots[i][k].Side
		}
	}
	for i := range d.Zones {
		d.Zones[i].Rect = q.Zones[i]
	}
	return d
}

func emptyDrawing(g *Graph) *Drawing {
	d := &Drawing{Zones: make([]ZoneAt, len(g.Zones)), Boxes: make([]BoxAt, len(g.Boxes)),
		Wires: make([]WireAt, len(g.Wires))}
	for i, z := range g.Zones {
		d.Zones[i].ID = z.ID
	}
	for i, b := range g.Boxes {
		d.Boxes[i].ID = b.ID
		for _, p := range b.Ports {
			d.Boxes[i].Ports = append(d.Boxes[i].Ports, PortAt{ID: p.ID})
		}
	}
	for i, w := range g.Wires {
		d.Wires[i].ID = w.ID
	}
	return d
}

// takeRoutes writes the routed problem into the drawing: wires, and whatever had to move to make room.
func (d *Drawing) takeRoutes(p *route.Problem, labels []Label) {
	terminal, zone := 0, 0
	for i := range d.Boxes {
		d.Boxes[i].Rect = p.Boxes[i]
		for k := range d.Boxes[i].Ports {
			d.Boxes[i].Ports[k].At, d.Boxes[i].Ports[k].Side = p.Terminals[terminal].At, p.Terminals[terminal].Side
			terminal++
		}
	}
	for i := range d.Zones {
		if d.Zones[i].Rect.W > 0 {
			d.Zones[i].Rect = p.Zones[zone].Rect
			zone++
		}
	}
	for i := range d.Wires {
		d.Wires[i].Path, d.Wires[i].Label = p.Paths[i], Label{}
		if labels[i].OK {
			d.Wires[i].Label = labels[i]
		}
	}
	e := extentOf(p, labels)
	d.W, d.H = e.Right()+1, e.Bottom()+1
}

// extentOf is the smallest rectangle around everything, the labels included.
func extentOf(p *route.Problem, labels []Label) Rect {
	e := p.Extent()
	for i, l := range labels {
		if l.OK {
			e = e.Union(geom.Rect{X: l.At.X, Y: l.At.Y, W: p.Wires[i].Labels[l.Index] - 1})
		}
	}
	return e
}
