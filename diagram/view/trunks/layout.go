package trunks

import (
	"example.com/lugbook/diagram/layout"
	"example.com/lugbook/diagram/scene"
)

// Room in boxes, in cells.
const (
	frameRoom = 4  // frames and a blank on either hand
	mostTitle = 28 // of a name in a box
	leastBox  = 7
	zoneTitle = 30
)

// fill describes the sketch to the layout.
func (s *sketch) fill() {
	for i := range s.h.Zones {
		if z := &s.h.Zones[i]; z.ID != "" && len(z.Runs) > 0 {
			title := min(scene.Width(ZoneWords(s.job, z.ID))+2, zoneTitle)
			s.graph.Zones = append(s.graph.Zones, layout.Zone{ID: string(z.ID), Title: title})
		}
	}
	for i := range s.boxes {
		s.graph.Boxes = append(s.graph.Boxes, s.layoutBox(&s.boxes[i]))
	}
	for _, l := range s.lines {
		s.graph.Wires = append(s.graph.Wires, layout.Wire{ID: l.id, From: l.from, To: l.to, Labels: l.labels})
	}
}

func (s *sketch) layoutBox(b *box) layout.Box {
	out := layout.Box{ID: b.id, Zone: string(b.zone)}
	free := func(id string, sides layout.Sides) {
		out.Ports = append(out.Ports, layout.Port{ID: id, Sides: sides, Offset: -1})
	}
	level := layout.SidesOf(layout.East, layout.West)
	switch b.kind {
	case loose:
		out.W = scene.Width(b.text)
		free(tailPort, level)
	case hanging:
		out.W, out.H = max(leastBox, scene.Width(b.head())+frameRoom)-1, 2
		free(tailPort, level)
	default:
		out.W, out.H = max(leastBox, scene.Width(b.head())+frameRoom)-1, 2
		for _, l := range s.lines {
			for _, end := range []layout.PortRef{l.from, l.to} {
				if end.Box == b.id {
					sides := layout.AnySide
					if !l.trunk {
						sides = level
					}
					free(end.Port, sides)
				}
			}
		}
	}
	return out
}

// head is the first line of a box: its id and, where there is room, what it is.
func (b *box) head() string {
	if b.title == "" {
		return b.id
	}
	return b.id + " " + scene.Shorten(b.title, mostTitle)
}

// lay lays the sketch out.
func (s *sketch) lay(columns int, quick bool) (layout.Drawing, error) {
	o := layout.Options{ColumnCost: 1, RowCost: 2, MaxWidth: columns, Effort: layout.Full, Seeds: 2}
	if quick {
		o.Effort = layout.Draft
	}
	return layout.Layout(s.graph, o)
}
