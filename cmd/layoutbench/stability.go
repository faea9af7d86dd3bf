package main

import (
	"fmt"
	"reflect"

	"example.com/lugbook/diagram/layout"
	"example.com/lugbook/diagram/layout/layouttest"
)

// steadyBoxes is the number of boxes up to which peers are asked to draw edited graphs.
const steadyBoxes = 40

// edit is a small change of a graph near its wire number i.
type edit struct {
	name string
	do   func(g layout.Graph, i int) layout.Graph
}

var edits = []edit{
	{"remove a wire", layouttest.WithoutWire},
	{"add a box, two wires", layouttest.WithBox},
}

// stability tells how much of a drawing changes after a small edit.
func (r *reporter) stability() error {
	if r.graphs == "" {
		r.printf("No port graphs: give -graphs DIR.\n")
		return nil
	}
	graphs, err := r.load(r.graphs)
	if err != nil {
		return err
	}
	r.printf("%d edits of each kind and graph. A shift of the whole drawing is no change. Put back: the wire added again to the "+
		"drawing without it, against the drawing before.\n\n", r.edits)
	t := newTable("graph", "drawing", "edit", "boxes moved", "wires changed", "faults")
	same := newTable("graph", "drawn twice", "drawn on itself")
	for _, file := range graphs {
		r.progress("%s: edits", file.Name)
		g, err := file.graph(false)
		if err != nil {
			return err
		}
		if err := r.steady(t, same, file.Name, g); err != nil {
			return fmt.Errorf("%s: %w", file.Name, err)
		}
		if len(g.Boxes) <= steadyBoxes {
			r.steadyPeers(t, file, g)
		}
	}
	r.printf("%s%s", t, same)
	return nil
}

// at spreads the edits evenly over the wires.
func (r *reporter) at(i, wires int) int { return (2*i + 1) * wires / (2 * r.edits) }

// steady adds the rows of our own drawings of one graph.
func (r *reporter) steady(t, same *table, name string, g layout.Graph) error {
	before, err := layout.Layout(g, draft.options)
	if err != nil {
		return err
	}
	again, err := layout.Layout(g, draft.options)
	if err != nil {
		return err
	}
	onItself, err := layout.Layout(g, follow(before))
	if err != nil {
		return err
	}
	same.row(name, equal(before, again), equal(before, onItself))
	was := pictureOf(&before)
	for k, e := range edits {
		var c, back change
		faults := 0
		for i := range r.edits {
			at := r.at(i, len(g.Wires))
			after, found, err := followed(e.do(g, at), before)
			if err != nil {
				return err
			}
			faults += found
			c = c.add(pictureOf(&after).since(was))
			if k > 0 {
				continue
			}
			again, found, err := followed(g, after)
			if err != nil {
				return err
			}
			faults += found
			back = back.add(pictureOf(&again).since(was))
		}
		t.row(name, draft.name, e.name, share(c.moved, c.boxes), share(c.changed, c.wires), faults)
		if k == 0 {
			t.row(name, draft.name, "put it back", share(back.moved, back.boxes), share(back.changed, back.wires), "")
		}
	}
	return nil
}

// follow are the options for drawing on the places of an earlier drawing.
func follow(before layout.Drawing) layout.Options {
	o := draft.options
	o.Previous = &before
	return o
}

// followed draws a graph on the places of an earlier drawing and counts the faults.
func followed(g layout.Graph, before layout.Drawing) (layout.Drawing, int, error) {
	after, err := layout.Layout(g, follow(before))
	if err != nil {
		return after, 0, err
	}
	m, err := layout.Measure(g, after)
	return after, m.Faults(), err
}

func equal(a, b layout.Drawing) string {
	if reflect.DeepEqual(a, b) {
		return "equal"
	}
	return "DIFFERENT"
}

// steadyPeers adds the rows of the peers, which know nothing of an earlier drawing.
func (r *reporter) steadyPeers(t *table, file fileGraph, g layout.Graph) {
	zones := map[string]string{}
	for _, n := range file.Nodes {
		zones[n.ID] = n.Zone
	}
	before := r.ask(file, r.runs)
	for _, e := range edits {
		sums := make([]change, len(r.peers))
		for i := range r.edits {
			edited := fileOf(fmt.Sprintf("%s, %s %d", file.Name, e.name, i+1), e.do(g, r.at(i, len(g.Wires))))
			edited.Zones = file.Zones
			for k := range edited.Nodes {
				edited.Nodes[k].Zone = zones[edited.Nodes[k].ID]
			}
			for k, after := range r.ask(edited, 1) {
				if after.failed == "" && before[k].failed == "" {
					sums[k] = sums[k].add(after.picture.since(before[k].picture))
				}
			}
		}
		for k, p := range r.peers {
			t.row(file.Name, p.name, e.name, share(sums[k].moved, sums[k].boxes), share(sums[k].changed, sums[k].wires), "")
		}
	}
}
