package layout

import (
	"errors"
	"slices"

	"example.com/lugbook/diagram/layout/geom"
	"example.com/lugbook/diagram/layout/place"
	"example.com/lugbook/diagram/layout/route"
)

// Route draws the wires between the boxes of d, which stay where they are unless a wire finds no way and rows or
// columns must be inserted; pinned boxes stay in any case. Paths in d that are still legal are kept, so after moving
// one box only the wires it touches are drawn anew. The error is nil or says which wires found no way.
func Route(g Graph, d Drawing, o Options) (Drawing, error) {
	x, err := newIndex(&g)
	if err != nil {
		return Drawing{}, err
	}
	if err := sameShape(&g, &d); err != nil {
		return Drawing{}, err
	}
	o = o.filled(labelled(&g))
	copied := d.clone()
	return routeKept(&g, x, &copied, o)
}

func routeKept(g *Graph, x *index, d *Drawing, o Options) (Drawing, error) {
	p := routeProblem(g, x, d, o)
	p.Anchored = true
	e := o.work(g).route
	e.Passes, e.KeepLabels, e.Patient = 0, true, true
	result := route.Solve(p, e)
	d.takeRoutes(p, result.Labels)
	if len(result.Left) > 0 {
		return *d, unrouted(g, result.Left)
	}
	return *d, nil
}

// MoveBox shifts one box of the drawing, its ports and, if it has to, the frame of its zone. It fails when the box
// would lie on another box or the frame on another frame. The wires keep their paths: call Route.
func MoveBox(g Graph, d Drawing, id string, by Point) (Drawing, error) {
	x, err := newIndex(&g)
	if err != nil {
		return d, err
	}
	at, known := x.box[id]
	if !known {
		return d, &GraphError{id, "no such box: correct the id"}
	}
	out := d.clone()
	b := &out.Boxes[at]
	b.Rect = b.Rect.Moved(by)
	for k := range b.Ports {
		b.Ports[k].At = b.Ports[k].At.Add(by)
	}
	zone, zoned := x.zone[g.Boxes[at].Zone]
	if zoned {
		f := frameRoom
		out.Zones[zone].Rect = out.Zones[zone].Rect.Union(b.Rect.Grow(f.Side, f.Top, f.Side, f.Bottom))
	}
	if b.Rect.X < 0 || b.Rect.Y < 0 || out.collides(&g, at, zone, zoned) {
		return d, &GraphError{id, "lies on another box or zone there: choose a free place"}
	}
	return out, nil
}

func (d *Drawing) collides(g *Graph, box, zone int, zoned bool) bool {
	for i, b := range d.Boxes {
		if i != box && b.Rect.Overlaps(d.Boxes[box].Rect.Grow(1, 1, 1, 1)) {
			return true
		}
		if zoned && g.Boxes[i].Zone != g.Boxes[box].Zone && b.Rect.Overlaps(d.Zones[zone].Rect) {
			return true
		}
	}
	for i, z := range d.Zones {
		if zoned && i == zone || z.Rect.W == 0 {
			continue
		}
		if z.Rect.Overlaps(d.Boxes[box].Rect) || zoned && z.Rect.Overlaps(d.Zones[zone].Rect) {
			return true
		}
	}
	return false
}

func (d *Drawing) clone() Drawing {
	out := *d
	out.Zones, out.Boxes, out.Wires = slices.Clone(d.Zones), slices.Clone(d.Boxes), slices.Clone(d.Wires)
	for i := range out.Boxes {
		out.Boxes[i].Ports = slices.Clone(out.Boxes[i].Ports)
	}
	for i := range out.Wires {
		out.Wires[i].Path = slices.Clone(out.Wires[i].Path)
	}
	return out
}

// extend carries the previous drawing over to the graph and places what is new. Where there is no room, rows and
// columns are opened. It fails when pinned boxes or the page forbid that.
func extend(g *Graph, x *index, o Options) (Drawing, error) {
	e := carry(g, x, o)
	e.growAll()
	e.yield()
	if e.whole() {
		return routeKept(g, x, e.d, o)
	}
	for range len(g.Boxes) + 1 {
		p := placeProblem(g, x, o, trackSteps(g)[0])
		q, err := place.Extend(p, e.keptBoxes(), e.d.zoneRects())
		var none *place.NoRoomError
		if errors.As(err, &none) && none.Missing == 0 && e.makeRoom(none.Box, place.Alone(p, none.Box)) {
			continue
		}
		if err != nil {
			return Drawing{}, placeError(g, err)
		}
		next := placed(g, q)
		next.Wires = e.d.Wires
		if next.offPage() {
			break
		}
		return routeKept(g, x, next, o)
	}
	return Drawing{}, &PinError{g.Boxes[0].ID}
}

// offPage tells whether a frame or a box lies left of or above the first cell.
func (d *Drawing) offPage() bool {
	off := func(r Rect) bool { return r.X < 0 || r.Y < 0 }
	return slices.ContainsFunc(d.Zones, func(z ZoneAt) bool { return off(z.Rect) }) ||
		slices.ContainsFunc(d.Boxes, func(b BoxAt) bool { return off(b.Rect) })
}

func (e *extension) keptBoxes() []*place.Kept {
	out := make([]*place.Kept, len(e.spots))
	for i, spots := range e.spots {
		if spots != nil {
			out[i] = &place.Kept{Rect: e.d.Boxes[i].Rect, Spots: spots}
		}
	}
	return out
}

func (d *Drawing) zoneRects() []geom.Rect {
	out := make([]geom.Rect, len(d.Zones))
	for i, z := range d.Zones {
		out[i] = z.Rect
	}
	return out
}
