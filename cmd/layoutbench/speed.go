package main

import (
	"fmt"

	"time"

	"example.com/lugbook/diagram/layout"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/text"
)

// Limits of the timing of changes by hand: the first so many boxes and wires of a graph, evenly spread.
const (
	movedBoxes  = 200
	editedWires = 100
)

// speed times drafts, changes by hand and painting, beside the times of the peers.
func (r *reporter) speed() error {
	if r.graphs == "" {
		r.printf("No port graphs: give -graphs DIR.\n")
		return nil
	}
	graphs, err := r.load(r.graphs)
	if err != nil {
		return err
	}
	r.printf("Draft: place and route, warm median. Move: one box by one cell, four ways, its wires drawn anew. Remove, add: " +
		"each wire taken out and put back. Text: painting the page. `a / b / c` are p50, p95 and p99.\n\n")
	t := newTable("graph", "draft", "move", "refused", "remove wire", "add wire", "text")
	for _, file := range graphs {
		g, err := file.graph(false)
		if err != nil {
			return err
		}
		r.progress("%s: timing", file.Name)
		if err := r.timed(t, file.Name, g); err != nil {
			return fmt.Errorf("%s: %w", file.Name, err)
		}
	}
	r.text.WriteString(t.String())
	if len(r.peers) == 0 {
		return nil
	}
	others := newTable("graph", "peer", "layout", "move one box, all wires drawn anew")
	for _, file := range graphs {
		for _, o := range r.ask(file, r.runs) {
			switch {
			case o.failed != "":
				others.row(file.Name, o.who, o.failed)
			case o.dragMs > 0:
				others.row(file.Name, o.who, o.ms, o.dragMs)
			default:
				others.row(file.Name, o.who, o.ms, "-")
			}
		}
	}
	r.printf("The peers, warm medians (of a peer that only routes: of the routing):\n\n%s", others)
	return nil
}

// timed adds the times of one graph.
func (r *reporter) timed(t *table, name string, g layout.Graph) error {
	var d layout.Drawing
	var err error
	drafts := warm(r.runs, func() { d, err = layout.Layout(g, draft.options) })
	if err != nil {
		return err
	}
	l, err := layout.Open(g, d, draft.options)
	if err != nil {
		return err
	}
	moves, refused := timeMoves(l, d)
	removed, added, err := timeWires(l, g)
	if err != nil {
		return err
	}
	page := pageOf(g, d)
	paint := warm(r.runs, func() { _ = text.Render(&page, text.Options{}).String() })
	t.row(name, drafts, spread(moves), refused, spread(removed), spread(added), paint)
	return nil
}

// timeMoves shifts boxes there and back. What has no room is refused and not timed.
func timeMoves(l *layout.Live, d layout.Drawing) (times []float64, refused int) {
	step := len(d.Boxes)/movedBoxes + 1
	for i := 0; i < len(d.Boxes); i += step {
		for _, by := range []layout.Point{{X: 1}, {X: -1}, {Y: 1}, {Y: -1}} {
			for _, way := range []layout.Point{by, {X: -by.X, Y: -by.Y}} {
				start := time.Now()
				if err := l.Move(d.Boxes[i].ID, way); err != nil {
					refused++
					break
				}
				times = append(times, since(start))
			}
		}
	}
	return times, refused
}

func timeWires(l *layout.Live, g layout.Graph) (removed, added []float64, err error) {
	step := len(g.Wires)/editedWires + 1
	for i := 0; i < len(g.Wires); i += step {
		start := time.Now()
		if err := l.Disconnect(g.Wires[i].ID); err != nil {
			return nil, nil, err
		}
		removed = append(removed, since(start))
		start = time.Now()
		if err := l.Connect(g.Wires[i]); err != nil {
			return nil, nil, err
		}
		added = append(added, since(start))
	}
	return removed, added, nil
}

// spread is the middle of some times and their ends.
func spread(times []float64) string {
	if len(times) == 0 {
		return "-"
	}
	return fmt.Sprintf("%.2f / %.2f / %.2f", percentile(times, 50), percentile(times, 95), percentile(times, 99))
}

// pageOf is a plain page of a drawing, for painting.
func pageOf(g layout.Graph, d layout.Drawing) scene.Page {
	place := map[layout.Side]scene.Side{layout.North: scene.North, layout.East: scene.East, layout.South: scene.South, layout.West: scene.West}
	p := scene.Page{W: d.W, H: d.H}
	for _, b := range d.Boxes {
		box := scene.Box{ID: b.ID, Name: b.ID, Rect: scene.Rect{X: b.Rect.X, Y: b.Rect.Y, W: b.Rect.W + 1, H: b.Rect.H + 1}}
		for _, port := range b.Ports {
			box.Ports = append(box.Ports, scene.Port{ID: port.ID, Name: port.ID, At: scene.Point(port.At), Side: place[port.Side]})
		}
		p.Boxes = append(p.Boxes, box)
	}
	for i, w := range d.Wires {
		wire := scene.Wire{ID: w.ID, From: g.Wires[i].From.Box + "." + g.Wires[i].From.Port, To: g.Wires[i].To.Box + "." + g.Wires[i].To.Port}
		for _, at := range w.Path {
			wire.Path = append(wire.Path, scene.Point(at))
		}
		p.Wires = append(p.Wires, wire)
	}
	return p
}
