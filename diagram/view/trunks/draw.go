package trunks

import (
	"example.com/lugbook/diagram/layout"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/model"
	"example.com/lugbook/model/harness"
)

// Draw draws the runs of a harness on one page, at most so many columns wide; 0 for any.
// The page has no title. The error is that of a layout that finds no room.
func Draw(j *model.Job, h *harness.Harness, columns int, quick bool) (scene.Page, error) {
	s := newSketch(j, h)
	if len(s.boxes) == 0 {
		return scene.Page{}, nil
	}
	d, err := s.lay(columns, quick)
	if err != nil {
		return scene.Page{}, err
	}
	p := scene.Page{W: d.W, H: d.H}
	for _, z := range d.Zones {
		if z.Rect.W > 0 {
			p.Zones = append(p.Zones, scene.Zone{ID: z.ID, Name: ZoneWords(j, model.ZoneID(z.ID)), Rect: rect(z.Rect)})
		}
	}
	for i := range s.boxes {
		s.paint(&p, &s.boxes[i], d.Boxes[i])
	}
	for i, l := range s.lines {
		p.Wires = append(p.Wires, l.scene(d.Wires[i]))
	}
	return p, nil
}

// ZoneWords is a zone by its name, or by its id if it has none.
func ZoneWords(j *model.Job, id model.ZoneID) string {
	if z := j.Zone(id); z != nil && z.Name != "" {
		return z.Name
	}
	return string(id)
}

func (s *sketch) paint(p *scene.Page, b *box, at layout.BoxAt) {
	if b.kind == loose {
		port := at.Ports[0]
		p.Flags = append(p.Flags, scene.Flag{
			ID: b.id, Kind: b.flag, Text: b.text, Rect: rect(at.Rect), Port: scene.Port{ID: tailPort, At: point(port.At), Side: sides[port.Side]},
		})
		return
	}
	out := scene.Box{ID: b.id, Name: scene.Shorten(b.title, mostTitle), Rect: rect(at.Rect), Title: b.id + " " + b.title}
	for _, port := range at.Ports {
		out.Ports = append(out.Ports, scene.Port{ID: port.ID, At: point(port.At), Side: sides[port.Side]})
	}
	p.Boxes = append(p.Boxes, out)
}

func (l *line) scene(at layout.WireAt) scene.Wire {
	w := scene.Wire{ID: l.id, Weight: scene.Tail, Title: l.title}
	if l.trunk {
		w.Weight = scene.Trunk
	}
	for _, p := range at.Path {
		w.Path = append(w.Path, point(p))
	}
	if at.Label.OK {
		w.Label = scene.Label{Text: l.labels[at.Label.Index], At: point(at.Label.At), Vertical: at.Label.Vertical}
	}
	return w
}

func point(p layout.Point) scene.Point { return scene.Point{X: p.X, Y: p.Y} }

// rect converts a layout's rectangle, whose size is the distance of its edges, to one
// that counts cells.
func rect(r layout.Rect) scene.Rect { return scene.Rect{X: r.X, Y: r.Y, W: r.W + 1, H: r.H + 1} }

var sides = map[layout.Side]scene.Side{
	layout.North: scene.North, layout.East: scene.East, layout.South: scene.South, layout.West: scene.West,
}
