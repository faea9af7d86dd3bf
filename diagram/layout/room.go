package layout

import (
	"slices"

	"example.com/lugbook/diagram/layout/geom"
	"example.com/lugbook/diagram/layout/place"
	"example.com/lugbook/diagram/layout/route"
)

// span is the stretch of r in rows (axis route.Rows) or columns.
func span(r Rect, axis route.Axis) (low, high int) {
	if axis == route.Rows {
		return r.Y, r.Bottom()
	}
	return r.X, r.Right()
}

// alongside tells whether r and o have a column (axis route.Rows) or a row in common, or almost.
func alongside(r, o Rect, axis route.Axis) bool {
	if axis == route.Rows {
		return r.X-1 <= o.Right() && o.X-1 <= r.Right()
	}
	return r.Y-1 <= o.Bottom() && o.Y-1 <= r.Bottom()
}

// lengthened is r with its far edge moved.
func lengthened(r Rect, axis route.Axis, by int) Rect {
	if axis == route.Rows {
		return r.Grow(0, 0, 0, by)
	}
	return r.Grow(0, 0, by, 0)
}

// open inserts empty rows or columns. It reports false, and changes nothing, when a pinned box would move or the page
// is too narrow.
func (e *extension) open(axis route.Axis, before, n int) bool {
	if n <= 0 {
		return true
	}
	p := routeProblem(e.g, e.x, e.d, e.o)
	if !p.Open(axis, before, n) {
		return false
	}
	e.d.takeRoutes(p, p.Placed)
	return true
}

// growAll brings the kept boxes to their sizes, each in its place, and the frames to the width of their titles. What
// then lies too close moves aside with all beyond it.
func (e *extension) growAll() {
	for i := range e.d.Zones {
		z := &e.d.Zones[i]
		if missing := e.g.Zones[i].Title + titleEnds - z.Rect.W; z.Rect.W > 0 && missing > 0 {
			e.widen(i, missing)
		}
	}
	for i := range e.g.Boxes {
		if !e.kept(i) {
			continue
		}
		for _, axis := range [2]route.Axis{route.Columns, route.Rows} {
			e.grow(i, axis)
		}
		e.setPorts(i)
	}
}

// titleEnds is the number of cells of a frame's top edge beside its title.
const titleEnds = 3

// grow makes a kept box as wide or as tall as it has to be. Where no room can be made it lies on others afterwards.
func (e *extension) grow(i int, axis route.Axis) {
	r := e.d.Boxes[i].Rect
	by := e.sizes[i].Y - r.H
	if axis == route.Columns {
		by = e.sizes[i].X - r.W
	}
	if by <= 0 {
		return
	}
	_, edge := span(r, axis)
	missing := e.missing(i, axis, by)
	zone, zoned := e.x.zone[e.g.Boxes[i].Zone]
	if zoned && e.d.Zones[zone].Rect.W > 0 {
		_, end := span(e.d.Zones[zone].Rect, axis)
		lack := edge + by + frameEnd(axis) - end
		if longer := lengthened(e.d.Zones[zone].Rect, axis, lack); lack > missing && missing <= 0 && e.clear(zone, longer) {
			e.d.Zones[zone].Rect = longer
		} else {
			missing = max(missing, lack)
		}
	}
	e.open(axis, edge+1, missing)
	e.d.Boxes[i].Rect = lengthened(e.d.Boxes[i].Rect, axis, by)
}

// frameEnd is the room that a frame keeps below (axis route.Rows) or right of its boxes.
func frameEnd(axis route.Axis) int {
	if axis == route.Rows {
		return frameRoom.Bottom
	}
	return frameRoom.Side
}

// missing is the number of rows or columns that box i lacks to become longer. What lies beyond keeps the distance it
// had, or that of new boxes if that is less.
func (e *extension) missing(i int, axis route.Axis, by int) int {
	r := e.d.Boxes[i].Rect
	_, edge := span(r, axis)
	gap := e.o.GapY
	if axis == route.Columns {
		gap = e.o.GapX
	}
	most := 0
	lack := func(other Rect, gap int) {
		if low, _ := span(other, axis); low > edge && alongside(r, other, axis) {
			most = max(most, edge+by+min(gap, low-edge)-low)
		}
	}
	for j := range e.d.Boxes {
		if j != i && e.kept(j) {
			lack(e.d.Boxes[j].Rect, gap)
		}
	}
	for _, z := range e.d.Zones {
		if z.Rect.W > 0 && z.ID != e.g.Boxes[i].Zone {
			lack(z.Rect, frameRoom.Gap)
		}
	}
	return most
}

// widen makes the frame of a zone wider, to the right.
func (e *extension) widen(zone, by int) {
	r := &e.d.Zones[zone].Rect
	if longer := lengthened(*r, route.Columns, by); e.clear(zone, longer) && (e.o.MaxWidth == 0 || longer.Right() < e.o.MaxWidth) {
		*r = longer
		return
	}
	e.open(route.Columns, r.Right(), by)
}

// clear tells whether r as the frame of a zone would be clear of all that does not belong to it.
func (e *extension) clear(zone int, r Rect) bool {
	around := r.Grow(1, 1, 1, 1)
	for i, z := range e.d.Zones {
		if i != zone && z.Rect.W > 0 && around.Overlaps(z.Rect) {
			return false
		}
	}
	for i, b := range e.d.Boxes {
		if e.kept(i) && e.g.Boxes[i].Zone != e.d.Zones[zone].ID && around.Overlaps(b.Rect) {
			return false
		}
	}
	return true
}

// yield drops boxes that are in the way of others: of those a person placed, and of those that grew where nothing
// could be moved.
func (e *extension) yield() {
	for i := range e.g.Boxes {
		if !e.kept(i) {
			continue
		}
		around := e.d.Boxes[i].Rect.Grow(1, 1, 1, 1)
		for j := range e.g.Boxes {
			if j == i || !e.kept(j) || !around.Overlaps(e.d.Boxes[j].Rect) {
				continue
			}
			if e.g.Boxes[j].Pin == nil {
				e.drop(j)
			} else if e.g.Boxes[i].Pin == nil {
				e.drop(i)
				break
			}
		}
	}
}

// makeRoom opens rows in the frame of box i's zone, as near as can be to the boxes it is wired to, and puts the box,
// of the given size, there. Columns are opened as well if the frame is too narrow. It reports false when a pinned box
// or the page is in the way.
func (e *extension) makeRoom(i int, q place.Kept) bool {
	zone, zoned := e.x.zone[e.g.Boxes[i].Zone]
	if !zoned || e.d.Zones[zone].Rect.W == 0 {
		return false
	}
	frame := &e.d.Zones[zone].Rect
	if !e.open(route.Columns, frame.Right(), q.Rect.W+2*frameRoom.Side-frame.W) {
		return false
	}
	near := e.partners(i, *frame)
	for _, c := range e.cuts(zone, near.Y) {
		if !e.open(route.Rows, c.before, c.top+q.Rect.H+e.o.GapY+1-c.next) {
			continue
		}
		right := frame.Right() - frameRoom.Side - q.Rect.W
		x := max(min(near.X-q.Rect.W/2, right), frame.X+frameRoom.Side)
		e.spots[i], e.sizes[i] = q.Spots, Point{X: q.Rect.W, Y: q.Rect.H}
		e.d.Boxes[i].Rect = Rect{X: x, Y: c.top, W: q.Rect.W, H: q.Rect.H}
		e.setPorts(i)
		return true
	}
	return false
}

// partners is the middle of the kept boxes that box i is wired to, or that of a frame.
func (e *extension) partners(i int, frame Rect) Point {
	var sum Point
	n := 0
	for _, w := range e.x.wires {
		other := w.From.Box
		if other == i {
			other = w.To.Box
		}
		if other == i || !e.kept(other) || w.From.Box != i && w.To.Box != i {
			continue
		}
		r := e.d.Boxes[other].Rect
		sum = sum.Add(Point{X: r.X + r.W/2, Y: r.Y + r.H/2})
		n++
	}
	if n == 0 {
		return Point{X: frame.X + frame.W/2, Y: frame.Bottom()}
	}
	return Point{X: sum.X / n, Y: sum.Y / n}
}

// cutBetween is a place in a zone where rows can be opened with boxes above and below: the row before which they are
// opened, the first row that a box may take there, and the first that is taken below.
type cutBetween struct{ before, top, next int }

// cuts lists the places where no box of the zone lies across, those near a row first.
func (e *extension) cuts(zone, row int) []cutBetween {
	frame := e.d.Zones[zone].Rect
	lows := []int{}
	for i, b := range e.d.Boxes {
		if e.kept(i) && e.g.Boxes[i].Zone == e.d.Zones[zone].ID {
			lows = append(lows, b.Rect.Bottom())
		}
	}
	var out []cutBetween
	for _, low := range lows {
		c := cutBetween{before: low + 1, top: low + e.o.GapY + 1, next: frame.Bottom() - frameRoom.Bottom + e.o.GapY + 1}
		across := false
		for i, b := range e.d.Boxes {
			if !e.kept(i) || e.g.Boxes[i].Zone != e.d.Zones[zone].ID || b.Rect.Bottom() <= low {
				continue
			}
			across = across || b.Rect.Y <= low
			c.next = min(c.next, b.Rect.Y)
		}
		if !across && !slices.Contains(out, c) {
			out = append(out, c)
		}
	}
	if len(lows) == 0 {
		out = append(out, cutBetween{frame.Bottom(), frame.Y + frameRoom.Top, frame.Bottom() - frameRoom.Bottom + e.o.GapY + 1})
	}
	slices.SortStableFunc(out, func(a, b cutBetween) int { return geom.Abs(a.before-row) - geom.Abs(b.before-row) })
	return out
}
