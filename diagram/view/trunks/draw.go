package trunks

import (
	"fmt"
	"strings"

	"example.com/lugbook/diagram/layout"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/model"
	"example.com/lugbook/model/harness"
)

// Draw draws the runs of a harness on one page, at most so many columns wide; 0 for any.
// The page has no title, and is empty if no wire lies in a run. The error is that of a
// layout that finds no room.
func Draw(j *model.Job, h *harness.Harness, columns int, quick bool) (scene.Page, error) {
	s := newSketch(j, h, columns)
	if len(s.zones) == 0 {
		return scene.Page{}, nil
	}
	o := layout.Options{ColumnCost: 1, RowCost: 2, MaxWidth: columns, Effort: layout.Full, Seeds: 2}
	if quick {
		o.Effort = layout.Draft
	}
	d, err := layout.Layout(s.graph, o)
	if err != nil {
		return scene.Page{}, err
	}
	p := scene.Page{W: d.W, H: d.H}
	for i := range s.zones {
		s.paint(&p, i, d.Boxes[i])
	}
	var short []string
	for i, r := range s.runs {
		w := trunk(r, d.Wires[i])
		p.Wires = append(p.Wires, w)
		if full := runLabels(r)[0]; w.Label.Text != full {
			short = append(short, RunName(r)+" "+full)
		}
	}
	if len(short) > 0 {
		p.Legend = []string{"In full: " + strings.Join(short, "; ") + "."}
	}
	return p, nil
}

// paint adds the box of a zone with its list.
func (s *sketch) paint(p *scene.Page, i int, at layout.BoxAt) {
	z := s.zones[i]
	r := scene.Rect{X: at.Rect.X, Y: at.Rect.Y, W: at.Rect.W + 1, H: at.Rect.H + 1}
	out := scene.Box{ID: string(z.ID), Rect: r, Title: fmt.Sprintf("%s: %s, %s", z.ID, ZoneWords(s.job, z.ID), meets(z))}
	for _, port := range at.Ports {
		out.Ports = append(out.Ports, scene.Port{ID: port.ID, At: point(port.At), Side: sides[port.Side]})
	}
	p.Boxes = append(p.Boxes, out)
	for _, piece := range s.lists[i].Pieces {
		piece.Rect.X += r.X + edge
		piece.Rect.Y += r.Y + 1
		piece.In = out.ID
		p.Pieces = append(p.Pieces, piece)
	}
}

func trunk(r harness.Run, at layout.WireAt) scene.Wire {
	w := scene.Wire{ID: RunName(r), Weight: scene.Trunk, Title: fmt.Sprintf("run %s, %s: %s", RunName(r), r.Length, List(r.Wires))}
	for _, p := range at.Path {
		w.Path = append(w.Path, point(p))
	}
	if at.Label.OK {
		w.Label = scene.Label{Text: runLabels(r)[at.Label.Index], At: point(at.Label.At), Vertical: at.Label.Vertical}
	}
	return w
}

func point(p layout.Point) scene.Point { return scene.Point{X: p.X, Y: p.Y} }

var sides = map[layout.Side]scene.Side{
	layout.North: scene.North, layout.East: scene.East, layout.South: scene.South, layout.West: scene.West,
}
