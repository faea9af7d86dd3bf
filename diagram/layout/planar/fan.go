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
	// paired tells of every box whether its two wires run in on one side and out on the other in one row.
	paired []bool
}

// end is the side of a box on which a wire ends, and its group and face there.
type end struct {
	End
	side geom.Side
}

// fan sets boxes of their least size into their rooms and leads the wires to them.
func fan(at []geom.Point, rooms []room, wires []trail, ends [][2]End, r Rules) *sketch {
	s := &sketch{boxes: make([]geom.Rect, len(rooms)), wires: make([][]geom.Point, len(wires)), ends: make([][2]end, len(wires))}
	f := fanner{at: at, rules: r, tail: map[int][]geom.Point{}, side: map[int]geom.Side{}}
	for i := range rooms {
		s.paired = append(s.paired, rooms[i].paired)
	}
	for i := range rooms {
		f.room = &rooms[i]
		s.boxes[i] = f.seat()
		f.box = s.boxes[i]
		for side := range geom.Side(4) {
			f.leads(side)
		}
	}
	for e, t := range wires {
		first, last := t.at[0], t.at[len(t.at)-1]
		path := slices.Clone(f.tail[first])
		slices.Reverse(path)
		for _, v := range t.at {
			path = append(path, at[v])
		}
		s.wires[e] = clean(append(path, f.tail[last]...))
		s.ends[e] = [2]end{{ends[e][0], f.side[first]}, {ends[e][1], f.side[last]}}
	}
	return s
}

// fanner leads wires from the edge of a room to the box in it.
type fanner struct {
	at    []geom.Point
	rules Rules
	room  *room
	box   geom.Rect
	tail  map[int][]geom.Point // by the vertex where a wire comes to the room: the rest of it, from there on
	side  map[int]geom.Side    // and the side of the box where it ends
}

// core is the room without the strips in which wires are led.
func (f *fanner) core() geom.Rect {
	low, high := f.at[f.room.rim[geom.North][0]], f.at[f.room.rim[geom.South][len(f.room.rim[geom.South])-1]]
	lead := f.room.lead
	return geom.Rect{X: low.X, Y: low.Y, W: high.X - low.X, H: high.Y - low.Y}.
		Grow(-lead[geom.West], -lead[geom.North], -lead[geom.East], -lead[geom.South])
}

// seat chooses where in its room a box stands: in the middle of the wires above and below, and of those beside it.
func (f *fanner) seat() geom.Rect {
	var xs, ys []int
	for side := range geom.Side(4) {
		for _, v := range f.room.rim.ends(side) {
			if side.Horizontal() {
				ys = append(ys, f.at[v].Y)
			} else {
				xs = append(xs, f.at[v].X)
			}
		}
	}
	c := f.core()
	return geom.Rect{X: middle(xs, f.room.w, c.X, c.Right()), W: f.room.w, Y: middle(ys, f.room.h, c.Y, c.Bottom()), H: f.room.h}
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

// leads finds the ways of the wires that end on one side of a box: straight, or with a step in a track of their own at
// the edge of the room, out of the way of other sides, or round a corner of the box.
func (f *fanner) leads(d geom.Side) {
	list := f.room.sides[d]
	n := len(list)
	low, pitch, first, high := f.box.X, f.rules.Span, f.rules.Span/2, f.box.Right()-f.rules.Span/2
	if d.Horizontal() {
		low, pitch, first, high = f.box.Y, f.rules.Pitch, f.room.head, f.box.Bottom()-1
	}
	from, to := make([]int, n), make([]int, n)
	for i, v := range list {
		from[i] = along(f.at[v], d)
		want := from[i]
		if f.room.paired {
			want = f.at[f.room.sides[geom.West][0]].Y
		}
		to[i] = max(low+first+i*pitch, min(want, high-(n-1-i)*pitch))
		switch {
		case i == 0:
		case f.room.ends[list[i-1]].beside(f.room.ends[v]):
			to[i] = to[i-1] + pitch
		default:
			to[i] = max(to[i], to[i-1]+pitch)
		}
	}
	track := f.tracks(d, from, to)
	depth := len(f.room.rim.ends(d)) + 1
	for i, v := range list {
		port := onBorder(f.box, d, to[i])
		out := []geom.Point{port}
		switch c := f.comes(v, d); {
		case c != d:
			out = append(f.round(v, c, d, to[i]), port)
		case track[i] > 0:
			bend := onLine(f.at[v].Sub(d.Step().Times(depth-track[i])), d, to[i])
			out = []geom.Point{onLine(bend, d, from[i]), bend, port}
		}
		f.tail[v], f.side[v] = out, d
	}
}

// along is the column or row of a cell on a side.
func along(p geom.Point, d geom.Side) int {
	if d.Horizontal() {
		return p.Y
	}
	return p.X
}

// comes is the side of the room from which a wire comes that ends on a side of the box.
func (f *fanner) comes(v int, d geom.Side) geom.Side {
	for _, c := range [3]geom.Side{d, geom.North, geom.South} {
		if slices.Contains(f.room.rim.ends(c), v) {
			return c
		}
	}
	return d
}

// tracks numbers the tracks of the wires that need a step, from the box outward, so that they do not cross.
func (f *fanner) tracks(d geom.Side, from, to []int) []int {
	list, n := f.room.sides[d], len(from)
	track := make([]int, n)
	for i := range n {
		if from[i] < to[i] && f.comes(list[i], d) == d {
			track[i] = 1
			if i > 0 {
				track[i] += track[i-1]
			}
		}
	}
	for i := n - 1; i >= 0; i-- {
		if from[i] > to[i] && f.comes(list[i], d) == d {
			track[i] = 1
			if i+1 < n {
				track[i] += track[i+1]
			}
		}
	}
	return track
}

// round leads a wire from above or below to the left or right of a box: to a row of its own, to a column of its own
// beside the box, and to its port. The wires nearest the corner of the room go furthest out.
func (f *fanner) round(v int, from, d geom.Side, row int) []geom.Point {
	list := f.room.rim.ends(from)
	k := slices.Index(list, v) + 1 // 1 is the furthest out
	split := f.room.west[0]
	if from == geom.South {
		split = f.room.west[1]
	}
	of := split
	if d == geom.East {
		k, of = len(list)-k+1, len(list)-split
	}
	c := f.core()
	column := c.X - (of - k + 1)
	if d == geom.East {
		column = c.Right() + (of - k + 1)
	}
	level := f.at[v].Sub(from.Step().Times(k)).Y
	return []geom.Point{{X: f.at[v].X, Y: level}, {X: column, Y: level}, {X: column, Y: row}}
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
