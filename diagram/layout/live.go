package layout

import (
	"slices"

	"example.com/lugbook/diagram/layout/geom"
	"example.com/lugbook/diagram/layout/route"
)

// Live is a drawing that stays open for small changes by hand. What a change does not touch stays as it is; every
// state is legal.
type Live struct {
	g    Graph
	x    *index
	o    Options
	d    Drawing // names, sizes and frames; places and paths are those of the problem
	at   *route.Live
	port []int // per box the number of its first port among all
}

// Open makes a drawing ready for changes. The drawing must be one of the graph; a wire in it without a path, or with
// one that is not legal, is drawn first. The error says what is wrong with the graph or the drawing.
func Open(g Graph, d Drawing, o Options) (*Live, error) {
	x, err := newIndex(&g)
	if err != nil {
		return nil, err
	}
	if err := sameShape(&g, &d); err != nil {
		return nil, err
	}
	g.Wires, g.Boxes = slices.Clone(g.Wires), slices.Clone(g.Boxes)
	l := &Live{g: g, x: x, o: o.filled(labelled(&g)), d: d.clone()}
	ports := 0
	for _, b := range g.Boxes {
		l.port = append(l.port, ports)
		ports += len(b.Ports)
	}
	l.reopen()
	if slices.ContainsFunc(l.at.Problem().Paths, func(path []Point) bool { return path == nil }) {
		if next, err := routeKept(&l.g, l.x, &l.d, l.o); err == nil {
			l.d = next
			l.reopen()
		}
	}
	return l, nil
}

// reopen sets up the routing of the drawing anew.
func (l *Live) reopen() {
	copied := l.d.clone()
	p := routeProblem(&l.g, l.x, &copied, l.o)
	p.Anchored = true
	labels := make([]Label, len(l.d.Wires))
	for i, w := range l.d.Wires {
		labels[i] = w.Label
	}
	l.at = route.NewLive(p, labels)
}

// Drawing is what stands now. It is the caller's own.
func (l *Live) Drawing() Drawing {
	l.d.takeRoutes(l.at.Problem(), l.at.Labels())
	return l.d.clone()
}

// Move shifts a box. Its wires, and those in whose way it comes, are drawn anew; the rest is untouched. The error says
// why it cannot lie there; nothing has changed then.
func (l *Live) Move(box string, by Point) error {
	at, known := l.x.box[box]
	if !known {
		return &GraphError{box, "no such box: correct the id"}
	}
	p := l.at.Problem()
	to := p.Boxes[at].Moved(by)
	zone, frame := -1, geom.Rect{}
	if z, zoned := l.x.zone[l.g.Boxes[at].Zone]; zoned {
		zone = l.frameOf(z)
		frame = p.Zones[zone].Rect.Union(to.Grow(frameRoom.Side, frameRoom.Top, frameRoom.Side, frameRoom.Bottom))
	}
	if to.X < 0 || to.Y < 0 || frame.X < 0 || frame.Y < 0 || l.collides(at, to, zone, frame) {
		return &GraphError{box, "lies on another box or zone there: choose a free place"}
	}
	if l.at.Move(at, by, zone, frame) {
		return nil
	}
	return &GraphError{box, "leaves no way for a wire there: choose a place with more room"}
}

// redraw takes a drawing in which some wires have lost their ways and draws these, with rows and columns opened as
// need be. On an error nothing changes.
func (l *Live) redraw(d Drawing) error {
	next, err := routeKept(&l.g, l.x, &d, l.o)
	if err != nil {
		return err
	}
	l.d = next
	l.reopen()
	return nil
}

// frameOf is the number of a zone among those that have frames, -1 for none.
func (l *Live) frameOf(zone int) int {
	if l.d.Zones[zone].Rect.W == 0 {
		return -1
	}
	n := 0
	for _, z := range l.d.Zones[:zone] {
		if z.Rect.W > 0 {
			n++
		}
	}
	return n
}

// collides tells whether a box at r, and the frame that this gives its zone, would lie on others.
func (l *Live) collides(box int, r geom.Rect, zone int, frame geom.Rect) bool {
	p := l.at.Problem()
	if l.o.MaxWidth > 0 && max(r.Right(), frame.Right()) >= l.o.MaxWidth {
		return true
	}
	around := r.Grow(1, 1, 1, 1)
	for i, b := range p.Boxes {
		if i != box && b.Overlaps(around) {
			return true
		}
		if zone >= 0 && l.g.Boxes[i].Zone != l.g.Boxes[box].Zone && b.Overlaps(frame) {
			return true
		}
	}
	for z := range p.Zones {
		if z != zone && (p.Zones[z].Rect.Overlaps(r) || zone >= 0 && p.Zones[z].Rect.Overlaps(frame)) {
			return true
		}
	}
	return false
}

// Connect adds a wire and draws it; others give way only if it finds no free one. On an error nothing changes.
func (l *Live) Connect(w Wire) error {
	g := l.g
	g.Wires = append(slices.Clip(g.Wires), w)
	x, err := newIndex(&g)
	if err != nil {
		return err
	}
	end := x.wires[len(x.wires)-1]
	added := route.Wire{From: l.port[end.From.Box] + end.From.Port, To: l.port[end.To.Box] + end.To.Port, Labels: lengths(w.Labels)}
	if l.at.Connect(added) {
		l.g, l.x = g, x
		l.d.Wires = append(l.d.Wires, WireAt{ID: w.ID})
		return nil
	}
	old := *l
	d := l.Drawing()
	d.Wires = append(d.Wires, WireAt{ID: w.ID})
	l.g, l.x = g, x
	if err := l.redraw(d); err != nil {
		l.g, l.x = old.g, old.x
		return err
	}
	return nil
}

// Disconnect removes a wire. No box moves, and only wires that shared a port with it may be drawn anew.
func (l *Live) Disconnect(id string) error {
	at := slices.IndexFunc(l.g.Wires, func(w Wire) bool { return w.ID == id })
	if at < 0 {
		return &GraphError{id, "no such wire: correct the id"}
	}
	l.g.Wires = slices.Delete(slices.Clone(l.g.Wires), at, at+1)
	l.x.wires = slices.Delete(slices.Clone(l.x.wires), at, at+1)
	l.d.Wires = slices.Delete(l.d.Wires, at, at+1)
	if l.at.Disconnect(at) {
		return nil
	}
	return l.redraw(l.Drawing())
}

// Trace is the way of a wire that is being pulled from a port to a cell: its corners, nil if there is none. Where a
// port sits on the cell the wire ends there. Nothing changes.
func (l *Live) Trace(from PortRef, to Point) []Point {
	end, known := l.x.ref(from)
	if !known {
		return nil
	}
	return l.at.Trace(l.port[end.Box]+end.Port, to)
}
