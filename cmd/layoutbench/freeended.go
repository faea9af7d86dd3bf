package main

import (
	"fmt"
	"math"

	"example.com/lugbook/diagram/layout/layouttest"
)

// freeEnds draws graphs whose wires may end anywhere on their boxes.
func (r *reporter) freeEnds() error {
	r.classics()
	if r.free == "" {
		r.printf("No other graphs with free ends: give -free DIR.\n")
		return nil
	}
	graphs, err := r.load(r.free)
	if err != nil {
		return err
	}
	r.sizeClasses(graphs)
	return nil
}

// classics holds us against proved crossing numbers. No drawing has fewer crossings.
func (r *reporter) classics() {
	head := []string{"graph", "boxes", "wires", "proved", "ours", "faults"}
	for _, p := range r.peers {
		head = append(head, p.name)
	}
	t := newTable(append(head, "source (from memory)")...)
	reached, all := 0, layouttest.Classics()
	for _, c := range all {
		file := fileOf("classic "+c.Name, c.Graph())
		own := r.make(full, file)
		r.progress("%s: %s", file.Name, own.brief())
		row := []any{c.Name, c.Boxes, len(c.Edges), c.Crossings, own.Crossings, own.faults}
		if own.failed == "" && own.Crossings <= c.Crossings {
			reached++
		}
		for _, o := range r.ask(file, 1) {
			row = append(row, o.count())
		}
		t.row(append(row, c.Source)...)
	}
	r.printf("Graphs whose crossing number is proved: ours reaches it in %d of %d.\n\n%s", reached, len(all), t)
}

// count is the number of crossings, marked where the drawing is not sound.
func (r result) count() string {
	switch {
	case r.failed != "":
		return r.failed
	case !r.Sound():
		return fmt.Sprintf("%d (unsound)", r.Crossings)
	}
	return fmt.Sprint(r.Crossings)
}

// sizes are the classes of numbers of boxes.
var sizes = [][2]int{{0, 30}, {31, 60}, {61, 100}, {101, math.MaxInt}}

// sizeClasses gives means per graph and class.
func (r *reporter) sizeClasses(graphs []fileGraph) {
	t := newTable("boxes", "graphs", "drawing", "failed", "ms", "crossings", "bends / wire", "length / wire", "area / box",
		"faults", "crossings / best peer")
	for _, size := range sizes {
		var class []fileGraph
		for _, g := range graphs {
			if len(g.Nodes) >= size[0] && len(g.Nodes) <= size[1] {
				class = append(class, g)
			}
		}
		if len(class) == 0 {
			continue
		}
		name := fmt.Sprintf("%d to %d", len(class[0].Nodes), len(class[len(class)-1].Nodes))
		means := map[string]*mean{}
		var order []string
		ratios := &mean{}
		for _, g := range class {
			own := r.make(full, g)
			r.progress("%s: %s", g.Name, own.brief())
			others := r.ask(g, 1)
			for _, o := range append([]result{own}, others...) {
				if means[o.who] == nil {
					means[o.who] = &mean{}
					order = append(order, o.who)
				}
				means[o.who].add(g, o)
			}
			ratios.compare(own, r.best(g.Name, others)[0])
		}
		for _, who := range order {
			m := means[who]
			last := any("")
			if who == full.name {
				last = ratios.overall()
			}
			t.row(name, len(class), who, m.failed, m.part(m.ms), m.part(m.crossings), m.part(m.bends), m.part(m.length),
				m.part(m.area), m.faults, last)
		}
	}
	r.printf("Means per graph (the last column: sum of our crossings over the sum of the best peer's, graph by graph).\n\n%s", t)
}

// mean sums up drawings of one program.
type mean struct {
	n, failed, faults                  int
	ms, crossings, bends, length, area float64
	ours, best                         float64
}

func (m *mean) add(g fileGraph, r result) {
	if r.failed != "" {
		m.failed++
		return
	}
	m.n++
	m.faults += r.faults
	m.ms += r.ms
	m.crossings += float64(r.Crossings)
	m.bends += float64(r.Bends) / float64(len(g.Edges))
	m.length += r.Length / float64(len(g.Edges))
	m.area += r.Area / float64(len(g.Nodes))
}

func (m *mean) part(sum float64) float64 { return sum / float64(max(m.n, 1)) }

func (m *mean) compare(own result, best float64) {
	if own.failed == "" && !math.IsNaN(best) {
		m.ours += float64(own.Crossings)
		m.best += best
	}
}

func (m *mean) overall() any {
	if m.best == 0 {
		return "-"
	}
	return m.ours / m.best
}
