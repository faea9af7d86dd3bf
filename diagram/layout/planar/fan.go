package planar

import (
	"slices"

	"example.com/lugbook/diagram/layout/geom"
)

// sketch is a drawing: boxes, and the corners of every edge's wire from its u to its v.
type sketch struct {
	boxes []geom.Rect
	wires [][]geom.Point
	ends  [][2]end
}

// end is the side of a box on which a wire ends.
type end struct {
	box  int
	side geom.Side
}

// fan sets boxes of their least size into the room that scale left for them and leads the wires to them.
func fan(at []geom.Point, rims []rim, wires []trail, boxes []Box, edges []edge, r Rules) *sketch {
	s := &sketch{boxes: make([]geom.Rect, len(boxes)), wires: make([][]geom.Point, len(wires)), ends: make([][2]end, len(wires))}
	tail := map[int][]geom.Point{} // by the vertex where a wire meets the room of a box: the rest of it, from there on
	side := map[int]geom.Side{}
	for b := range rims {
		if len(rims[b][0]) == 0 {
			continue
		}
		s.boxes[b] = seat(at, &rims[b], boxes[b], r)
		for d := range geom.Side(4) {
			for _, v := range rims[b][d][1 : len(rims[b][d])-1] {
				side[v] = d
			}
			leads(at, rims[b][d], s.boxes[b], d, boxes[b], r, tail)
		}
	}
	for e, t := range wires {
		first, last := t.at[0], t.at[len(t.at)-1]
		path := slices.Clone(tail[first])
		slices.Reverse(path)
		for _, v := range t.at {
			path = append(path, at[v])
		}
		s.wires[e] = clean(append(path, tail[last]...))
		s.ends[e] = [2]end{{edges[e].u, side[first]}, {edges[e].v, side[last]}}
	}
	return s
}

// seat chooses where in its room a box stands: in the middle of the wires above and below, and of those beside it.
func seat(at []geom.Point, r *rim, b Box, rules Rules) geom.Rect {
	w, h := b.size(r, rules)
	corner, opposite := at[r[geom.North][0]], at[r[geom.South][len(r[geom.South])-1]]
	var xs, ys []int
	for d, list := range r {
		for _, v := range list[1 : len(list)-1] {
			if geom.Side(d).Horizontal() {
				ys = append(ys, at[v].Y)
			} else {
				xs = append(xs, at[v].X)
			}
		}
	}
	return geom.Rect{
		X: middle(xs, w, corner.X+lead(r.ends(geom.West)), opposite.X-lead(r.ends(geom.East))), W: w,
		Y: middle(ys, h, corner.Y+lead(r.ends(geom.North)), opposite.Y-lead(r.ends(geom.South))), H: h,
	}
}

// middle is where a box of some size begins so that its middle is at that of the wires, within limits.
func middle(wires []int, size, low, high int) int {
	at := (low + high - size) / 2
	if n := len(wires); n > 0 {
		slices.Sort(wires)
		at = (wires[(n-1)/2]+wires[n/2])/2 - size/2
	}
	return max(low, min(at, high-size))
}

// leads finds for the wires on one side of the room of a box the way on to the box: straight, or with a step in a
// track of its own, so that they do not cross. The tracks lie at the edge of the room, out of the way of other sides.
func leads(at []geom.Point, list []int, box geom.Rect, d geom.Side, b Box, r Rules, tail map[int][]geom.Point) {
	n := len(list) - 2
	along := func(p geom.Point) int { return p.X }
	low, pitch, first, high := box.X, r.Span, r.Span/2, box.Right()-r.Span/2
	if d.Horizontal() {
		along = func(p geom.Point) int { return p.Y }
		low, pitch, first, high = box.Y, r.Pitch, b.Head, box.Bottom()-1
	}
	from, to, track := make([]int, n), make([]int, n), make([]int, n)
	for i := range n {
		from[i] = along(at[list[i+1]])
		to[i] = max(low+first+i*pitch, min(from[i], high-(n-1-i)*pitch))
		if i > 0 {
			to[i] = max(to[i], to[i-1]+pitch)
		}
	}
	for i := range n {
		if from[i] < to[i] {
			track[i] = 1
			if i > 0 {
				track[i] += track[i-1]
			}
		}
	}
	for i := n - 1; i >= 0; i-- {
		if from[i] > to[i] {
			track[i] = 1
			if i+1 < n {
				track[i] += track[i+1]
			}
		}
	}
	for i := range n {
		port := onBorder(box, d, to[i])
		var out []geom.Point
		if track[i] > 0 {
			bend := onLine(at[list[0]].Sub(d.Step().Times(n+1-track[i])), d, to[i])
			out = append(out, onLine(bend, d, from[i]), bend)
		}
		tail[list[i+1]] = append(out, port)
	}
}

// onBorder is the cell of a box's side at a column or row.
func onBorder(box geom.Rect, d geom.Side, v int) geom.Point {
	switch d {
	case geom.North:
		return geom.Point{X: v, Y: box.Y}
	case geom.South:
		return geom.Point{X: v, Y: box.Bottom()}
	case geom.West:
		return geom.Point{X: box.X, Y: v}
	}
	return geom.Point{X: box.Right(), Y: v}
}

// onLine is the cell at a column or row of the line that runs along a side through p.
func onLine(p geom.Point, d geom.Side, v int) geom.Point {
	if d.Horizontal() {
		return geom.Point{X: p.X, Y: v}
	}
	return geom.Point{X: v, Y: p.Y}
}

// clean drops points where a path does not bend.
func clean(path []geom.Point) []geom.Point {
	var out []geom.Point
	for _, p := range path {
		if n := len(out); n > 0 && out[n-1] == p {
			continue
		}
		if n := len(out); n > 1 && (out[n-2].X == out[n-1].X && out[n-1].X == p.X || out[n-2].Y == out[n-1].Y && out[n-1].Y == p.Y) {
			out[n-1] = p
			continue
		}
		out = append(out, p)
	}
	return out
}
