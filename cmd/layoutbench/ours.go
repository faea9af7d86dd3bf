package main

import (
	"errors"
	"slices"
	"time"

	"example.com/lugbook/diagram/layout"
	"example.com/lugbook/diagram/layout/layouttest"
)

// variant is a way to use our layout.
type variant struct {
	name  string
	zones bool
	// most is the number of boxes up to which it is used; 0 for any.
	most int
	// change, if not nil, is done to the graph first.
	change  func(layout.Graph) layout.Graph
	options layout.Options
}

var (
	full      = variant{name: "ours", options: layout.Options{Effort: layout.Full}}
	draft     = variant{name: "ours, draft"}
	fullZones = variant{name: "ours, zones", zones: true, options: layout.Options{Effort: layout.Full}}
	fullFree  = variant{name: "ours, free", most: 40, change: layouttest.Freed, options: layout.Options{Effort: layout.Full}}

	// variants are those that the quality of port graphs is told of.
	variants = []variant{full, draft, fullZones, fullFree}
)

// make draws a graph with the work that the flags leave to full effort.
func (r *reporter) make(v variant, g fileGraph) result {
	if v.options.Effort == layout.Full {
		v.options.Moves, v.options.Seeds = r.moves, r.starts
	}
	return v.make(g)
}

// make draws a graph with our layout. Faults are those of the layout's own measurement, which knows frames as well.
func (v variant) make(file fileGraph) result {
	out := result{who: v.name}
	g, err := file.graph(v.zones)
	if err != nil {
		out.failed = err.Error()
		return out
	}
	if v.change != nil {
		g = v.change(g)
	}
	start := time.Now()
	d, err := layout.Layout(g, v.options)
	out.ms = since(start)
	var left *layout.UnroutedError
	if err != nil && !errors.As(err, &left) {
		out.failed = err.Error()
		return out
	}
	out.picture = pictureOf(&d)
	if v.change != nil {
		file = fileOf(file.Name, seated(g, d))
	}
	if out.Report, err = out.picture.measure(&file); err != nil {
		out.failed = err.Error()
		return out
	}
	own, err := layout.Measure(g, d)
	if err != nil {
		out.failed = err.Error()
		return out
	}
	out.faults = own.Faults()
	return out
}

// seated is the graph with every terminal fixed where the drawing has it.
func seated(g layout.Graph, d layout.Drawing) layout.Graph {
	g.Boxes = slices.Clone(g.Boxes)
	for i, at := range d.Boxes {
		b := &g.Boxes[i]
		b.W, b.H, b.Ports = at.Rect.W, at.Rect.H, slices.Clone(b.Ports)
		for k, p := range at.Ports {
			offset := p.At.X - at.Rect.X
			if p.Side.Horizontal() {
				offset = p.At.Y - at.Rect.Y
			}
			b.Ports[k].Sides, b.Ports[k].Offset = layout.SidesOf(p.Side), offset
		}
	}
	return g
}

// since is the time from start on in milliseconds.
func since(start time.Time) float64 { return float64(time.Since(start).Microseconds()) / 1000 }

// warmBudget ends the timing of one thing before all its runs are made.
const warmBudget = 3 * time.Second

// warm is the median time of a function after its first run, in milliseconds.
func warm(runs int, f func()) float64 {
	f()
	var times []float64
	for begin := time.Now(); len(times) < max(runs, 1) && (len(times) == 0 || time.Since(begin) < warmBudget); {
		start := time.Now()
		f()
		times = append(times, since(start))
	}
	slices.Sort(times)
	return times[len(times)/2]
}
