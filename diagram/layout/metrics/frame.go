package metrics

import "example.com/lugbook/diagram/layout/geom"

// Frame is the frame of a zone. Title is the number of cells of its top edge, from the third on, that hold text.
type Frame struct {
	Rect  geom.Rect
	Title int
}

// Label is text of a wire: Length cells from At on, in the wire's own level run or, if Vertical, beside it.
type Label struct {
	Wire, Length int
	At           geom.Point
	Vertical     bool
}

// cells lists the cells of a path, corners once.
func cells(path []geom.Point) []geom.Point {
	var out []geom.Point
	for i, p := range path {
		if i == 0 {
			out = append(out, p)
			continue
		}
		d, _ := geom.Toward(path[i-1], p)
		for at := path[i-1]; at != p; {
			at = at.Add(d.Step())
			out = append(out, at)
		}
	}
	return out
}

// onFrame tells whether p is a cell of the frame's edges.
func (f Frame) onFrame(p geom.Point) bool {
	r := f.Rect
	return r.Contains(p) && (p.X == r.X || p.X == r.Right() || p.Y == r.Y || p.Y == r.Bottom())
}

// frames counts the cells where a wire does anything on a frame but cross it at a right angle, or crosses a title.
func (m *Report) frames(frames []Frame, path []geom.Point) {
	line := cells(path)
	for _, f := range frames {
		for i, p := range line {
			if !f.onFrame(p) {
				continue
			}
			title := f.Title > 0 && p.Y == f.Rect.Y && p.X >= f.Rect.X+2 && p.X < f.Rect.X+2+f.Title
			straight := i > 0 && i+1 < len(line) && line[i+1].Sub(p) == p.Sub(line[i-1])
			outward := straight && f.onFrame(line[i-1]) == f.onFrame(line[i+1]) && !f.onFrame(line[i-1])
			if title || !outward {
				m.FrameFaults++
			}
		}
	}
}

// labels counts the cells of labels, one more on either end included, where there is anything they should not meet.
func (m *Report) labels(s Scene, paths [][]geom.Point) {
	level, upright := map[geom.Point][]int{}, map[geom.Point][]int{}
	for w, path := range paths {
		line := cells(path)
		for i, p := range line {
			if i > 0 && line[i-1].Y == p.Y || i+1 < len(line) && line[i+1].Y == p.Y {
				level[p] = append(level[p], w)
			}
			if i > 0 && line[i-1].X == p.X || i+1 < len(line) && line[i+1].X == p.X {
				upright[p] = append(upright[p], w)
			}
		}
	}
	taken := map[geom.Point]bool{}
	for _, l := range s.Labels {
		for i := -1; i <= l.Length; i++ {
			p := geom.Point{X: l.At.X + i, Y: l.At.Y}
			text := i >= 0 && i < l.Length
			if l.faulty(s, level[p], upright[p], p, text) || taken[p] {
				m.LabelFaults++
			}
		}
		for i := range l.Length {
			taken[geom.Point{X: l.At.X + i, Y: l.At.Y}] = true
		}
	}
}

func (l Label) faulty(s Scene, level, upright []int, p geom.Point, text bool) bool {
	for _, b := range s.Boxes {
		if b.Contains(p) {
			return true
		}
	}
	for _, f := range s.Frames {
		if f.onFrame(p) {
			return true
		}
	}
	alone := func(wires []int) bool { return len(wires) == 1 && wires[0] == l.Wire }
	if !l.Vertical {
		return len(upright) > 0 || !alone(level)
	}
	if text {
		return len(level)+len(upright) > 0
	}
	return len(level) > 0 || len(upright) > 0 && !alone(upright)
}
