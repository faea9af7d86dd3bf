// Package metrics measures a finished drawing: what is faulty about it and how good it is otherwise.
//
// It is independent of the placer and the router, so that tests can hold their results against it.
package metrics

import "example.com/lugbook/diagram/layout/geom"

// Terminal is where a wire has to end.
type Terminal struct {
	// Box is the index of the box that carries the terminal.
	Box int
	// Key is equal for equal terminals of one box and different for different ones.
	Key int
	// At is the cell on the box's border.
	At geom.Point
	// Side is the side of the box it sits on.
	Side geom.Side
}

// Wire is one drawn wire. Path runs from From to To; fewer than two points mean not routed.
type Wire struct {
	From, To Terminal
	Path     []geom.Point
}

// Scene is a drawing to be measured.
type Scene struct {
	Boxes  []geom.Rect
	Wires  []Wire
	Frames []Frame
	Labels []Label
}

// Report holds the counts. Lengths are in cells.
type Report struct {
	// Faults: a valid drawing has none of these.
	Unrouted, Through, ThroughOwn, Graze, Overlap, Touches, Tight, PortMiss, PortDir, Oblique, NodeOverlap int
	// FrameFaults are cells of wires on frames other than crossings at right angles; LabelFaults are cells of labels
	// that meet anything but their own wire.
	FrameFaults, LabelFaults int
	// Quality: less is better. OverlapSame is the length on which wires of one net lie on each other.
	Crossings, CrossPoints, Bends, MaxBends, Length, OverlapSame, Width, Height, Area int
}

// Faults is the sum of all fault counts.
func (r Report) Faults() int {
	return r.Unrouted + r.Through + r.ThroughOwn + r.Graze + r.Overlap + r.Touches + r.Tight +
		r.PortMiss + r.PortDir + r.Oblique + r.NodeOverlap + r.FrameFaults + r.LabelFaults
}

// Measure counts everything. The time grows with the square of the number of wires.
func Measure(s Scene) Report {
	var m Report
	paths := make([][]geom.Point, len(s.Wires))
	var all []geom.Point
	for _, b := range s.Boxes {
		all = append(all, geom.Point{X: b.X, Y: b.Y}, geom.Point{X: b.Right(), Y: b.Bottom()})
	}
	for i, a := range s.Boxes {
		for _, b := range s.Boxes[i+1:] {
			if a.X < b.Right() && b.X < a.Right() && a.Y < b.Bottom() && b.Y < a.Bottom() {
				m.NodeOverlap++
			}
		}
	}
	for i, w := range s.Wires {
		path := Clean(w.Path)
		if len(path) < 2 {
			m.Unrouted++
			continue
		}
		paths[i] = path
		all = append(all, path...)
		m.wire(s.Boxes, w, path)
		if m.Oblique == 0 {
			m.frames(s.Frames, path)
		}
	}
	m.pairs(s.Wires, paths)
	if m.Oblique == 0 {
		m.labels(s, paths)
	}
	around := geom.Around(all)
	m.Width, m.Height, m.Area = around.W, around.H, around.W*around.H
	return m
}

func (m *Report) wire(boxes []geom.Rect, w Wire, path []geom.Point) {
	m.Bends += len(path) - 2
	m.MaxBends = max(m.MaxBends, len(path)-2)
	for i := 0; i+1 < len(path); i++ {
		d := path[i+1].Sub(path[i])
		m.Length += geom.Abs(d.X) + geom.Abs(d.Y)
		if d.X != 0 && d.Y != 0 {
			m.Oblique++
		}
	}
	for b, r := range boxes {
		inside, onBorder := false, false
		for i := 0; i+1 < len(path); i++ {
			inside = inside || throughRect(path[i], path[i+1], r)
			onBorder = onBorder || alongBorder(path[i], path[i+1], r)
		}
		switch {
		case inside && (b == w.From.Box || b == w.To.Box):
			m.ThroughOwn++
		case inside:
			m.Through++
		case onBorder:
			m.Graze++
		}
	}
	m.end(w.From, path[0], path[1])
	m.end(w.To, path[len(path)-1], path[len(path)-2])
}

func (m *Report) end(t Terminal, at, next geom.Point) {
	if t.At != at {
		m.PortMiss++
		return
	}
	if dir, ok := geom.Toward(at, next); !ok || dir != t.Side {
		m.PortDir++
	}
}

func (m *Report) pairs(wires []Wire, paths [][]geom.Point) {
	nets := netsOf(wires)
	boxes := make([]geom.Rect, len(paths))
	for i, p := range paths {
		boxes[i] = geom.Around(p)
	}
	spots := map[geom.Point]bool{}
	for i := range paths {
		for j := i + 1; j < len(paths); j++ {
			if paths[i] == nil || paths[j] == nil || !boxes[i].Overlaps(boxes[j]) {
				continue
			}
			c := contactsOf(paths[i], paths[j], spots)
			m.Crossings += c.crossings
			m.Touches += c.touches
			if nets[i] == nets[j] {
				m.OverlapSame += c.overlap
			} else {
				m.Overlap += c.overlap
			}
		}
	}
	m.CrossPoints = len(spots)
}

// netsOf numbers the nets: wires that share a terminal, directly or through other wires, have one number.
func netsOf(wires []Wire) []int {
	net := make([]int, len(wires))
	for i := range net {
		net[i] = i
	}
	find := func(i int) int {
		for net[i] != i {
			net[i] = net[net[i]]
			i = net[i]
		}
		return i
	}
	first := map[[2]int]int{}
	for i, w := range wires {
		for _, t := range []Terminal{w.From, w.To} {
			key := [2]int{t.Box, t.Key}
			if j, seen := first[key]; seen {
				net[find(i)] = find(j)
			} else {
				first[key] = i
			}
		}
	}
	for i := range net {
		net[i] = find(i)
	}
	return net
}

// Clean drops repeated and collinear points.
func Clean(path []geom.Point) []geom.Point {
	var out []geom.Point
	for _, p := range path {
		n := len(out)
		if n > 0 && out[n-1] == p {
			continue
		}
		if n > 1 {
			a, aok := geom.Toward(out[n-2], out[n-1])
			b, bok := geom.Toward(out[n-1], p)
			if aok && bok && a == b {
				out[n-1] = p
				continue
			}
		}
		out = append(out, p)
	}
	return out
}
