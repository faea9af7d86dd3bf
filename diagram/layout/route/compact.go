package route

import "example.com/lugbook/diagram/layout/geom"

// Compaction says how far a drawing may be pushed together: of a band of rows (columns) that hold nothing but wires
// straight across it, the given number stays. 0 leaves the drawing as it is.
type Compaction struct{ Rows, Columns int }

// compact deletes rows and columns that hold nothing but wires straight across. Pre and post: no conflict, all wires
// routed. If a wire should lose its way all is put back.
func (r *router) compact(c Compaction) {
	before := r.snapshot()
	r.p.Placed = nil
	if c.Rows > 0 {
		r.p.squeeze(level, c.Rows)
	}
	if c.Columns > 0 {
		r.p.squeeze(upright, c.Columns)
	}
	r.rebuild()
	for w := range r.cells {
		if r.missing(w) {
			r.restore(before)
			return
		}
	}
}

// squeeze maps every row (column) to its place after the deletion.
func (p *Problem) squeeze(axis, stay int) {
	e := p.Extent()
	low, length := e.Y, e.H+1
	if axis == upright {
		low, length = e.X, e.W+1
	}
	busy := p.busyLines(axis, low, length)
	to := make([]int, length)
	next, band := low, 0
	for i := range to {
		to[i] = next
		band++
		if busy[i] {
			band = 0
		}
		if busy[i] || band <= stay {
			next++
		}
	}
	at := func(v int) int { return to[v-low] }
	point := func(q geom.Point) geom.Point {
		if axis == level {
			q.Y = at(q.Y)
		} else {
			q.X = at(q.X)
		}
		return q
	}
	zones := make([]Zone, len(p.Zones))
	for i, z := range p.Zones {
		zones[i] = Zone{Rect: stretch(z.Rect, axis, at), Title: z.Title}
	}
	p.remap(point, func(r geom.Rect) geom.Rect {
		q := point(geom.Point{X: r.X, Y: r.Y})
		return geom.Rect{X: q.X, Y: q.Y, W: r.W, H: r.H}
	}, zones)
}

// busyLines marks the rows (columns) that hold part of a box, an edge or a title of a frame, or a run along them.
func (p *Problem) busyLines(axis, low, length int) []bool {
	busy := make([]bool, length)
	mark := func(from, to int) {
		for v := from; v <= to; v++ {
			busy[v-low] = true
		}
	}
	for _, b := range p.Boxes {
		if axis == level {
			mark(b.Y, b.Bottom())
		} else {
			mark(b.X, b.Right())
		}
	}
	for _, z := range p.Zones {
		if axis == level {
			mark(z.Rect.Y, z.Rect.Y)
			mark(z.Rect.Bottom(), z.Rect.Bottom())
			continue
		}
		mark(z.Rect.X, min(z.Rect.X+z.Title+2, z.Rect.Right()))
		mark(z.Rect.Right(), z.Rect.Right())
	}
	for _, path := range p.Paths {
		for i := 0; i+1 < len(path); i++ {
			s := geom.Around(path[i : i+2])
			if axis == level && s.H == 0 {
				mark(s.Y, s.Y)
			}
			if axis == upright && s.W == 0 {
				mark(s.X, s.X)
			}
		}
	}
	return busy
}
