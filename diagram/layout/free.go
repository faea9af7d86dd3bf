package layout

import (
	"cmp"
	"slices"

	"example.com/lugbook/diagram/layout/geom"
	"example.com/lugbook/diagram/layout/place"
	"example.com/lugbook/diagram/layout/planar"
	"example.com/lugbook/diagram/layout/route"
)

// layout places and routes a graph from nothing. One whose wires may end anywhere on their boxes is laid out for few
// crossings; tried on graphs of known crossing number the general way never came out more than a hundredth cheaper.
// Where there are some rules for the ends of wires, full effort tries both ways.
func layout(g *Graph, x *index, o Options) (Drawing, error) {
	free, bound := freeEnded(g, x)
	if !free || bound && o.Effort == Draft {
		return general(g, x, o)
	}
	d, ok := o.planar(g, x, bound)
	if ok && !bound {
		return d, nil
	}
	usual, err := general(g, x, o)
	if ok && (err != nil || costOf(g, x, &d, o) <= costOf(g, x, &usual, o)) {
		return d, nil
	}
	return usual, err
}

// costOf is the price of a finished drawing, as routeDraft counts.
func costOf(g *Graph, x *index, d *Drawing, o Options) int {
	p := routeProblem(g, x, d, o)
	cost := p.Cost() + sizePrice*(d.W*o.ColumnCost+d.H*o.RowCost)
	for i, w := range d.Wires {
		if len(w.Path) < 2 {
			cost += unroutedPrice
		}
		if !w.Label.OK && len(g.Wires[i].Labels) > 0 {
			cost += unlabelledPrice
		}
	}
	return cost
}

// crossFree is the price of a crossing where the topology was chosen for few: no bend or way pays for one.
const crossFree = 200

// freeEnded tells whether few but the wires say where things go: no zone or one that holds all, no pins, no wire from a
// box to itself, and the ports of each box may sit anywhere on it or anywhere on its left and right. bound tells
// whether there are such boxes, a zone, or groups and faces.
func freeEnded(g *Graph, x *index) (free, bound bool) {
	if len(g.Zones) > 1 || len(g.Wires) == 0 || pinned(g) {
		return false, false
	}
	for i := range g.Boxes {
		b := &g.Boxes[i]
		if len(g.Zones) == 1 && b.Zone != g.Zones[0].ID {
			return false, false
		}
		level := b.level() && len(b.Ports) > 0
		for _, p := range b.Ports {
			if p.Offset >= 0 || !level && (p.Sides&AnySide != AnySide || p.Group != "" || p.Face != 0) {
				return false, false
			}
		}
		if b.H == 0 && (!level || len(b.Ports) > 1) {
			return false, false
		}
		bound = bound || level
	}
	for _, w := range x.wires {
		if w.From.Box == w.To.Box {
			return false, false
		}
	}
	return true, bound || len(g.Zones) > 0
}

// planar draws a graph with free ends; ok is false when the drawing does not fit the page or a label has no room.
func (o Options) planar(g *Graph, x *index, bound bool) (d Drawing, ok bool) {
	w := o.work(g)
	effort := planar.Effort{Starts: 2, Steps: 100, Shapes: 2}
	if o.Effort == Full {
		n := len(g.Wires)
		effort = planar.Effort{Starts: 8, Steps: max(min(1000, 300000/n), 100), Shapes: max(min(32, 2000/n), 1)}
	}
	if bound && o.MaxWidth > 0 {
		effort.Folds = 3
	}
	q, ok := planar.Draw(planarProblem(g, x, o), effort)
	if !ok {
		return Drawing{}, false
	}
	if !bound {
		o.cross = crossFree
	}
	draft, ok := unfolded(g, x, &q, o)
	if !ok {
		return Drawing{}, false
	}
	again := draft.clone()
	best := routeDraft(g, x, draft, o, w.route)
	if w.tries > 0 {
		w.route.Polish = route.Polishing{Tries: w.tries}
		polished := routeDraft(g, x, &again, o, w.route)
		if polished.worse() < best.worse() || polished.worse() == best.worse() && polished.cost < best.cost {
			best = polished
		}
	}
	for _, w := range best.drawing.Wires {
		ok = ok && len(w.Path) > 1
	}
	return *best.drawing, ok && best.worse() == 0 && (o.MaxWidth == 0 || best.drawing.W <= o.MaxWidth)
}

func planarProblem(g *Graph, x *index, o Options) planar.Problem {
	width := o.MaxWidth
	if width > 0 && len(g.Zones) > 0 {
		width = max(width-2*frameRoom.Side, 1)
	}
	p := planar.Problem{Rules: planar.Rules{GapX: o.GapX, GapY: o.GapY, Pitch: o.Pitch, Span: o.Span,
		ColumnCost: o.ColumnCost, RowCost: o.RowCost, MaxWidth: width}}
	for i, wired := range wiredPorts(g, x) {
		p.Boxes = append(p.Boxes, planarBox(&g.Boxes[i], slices.Contains(wired, false), o))
	}
	end := func(r place.Ref) planar.End { // the wires of one port lie together too
		port := g.Boxes[r.Box].Ports[r.Port]
		e := planar.End{Box: r.Box, Face: port.Face, Group: 1 + r.Port}
		if port.Group != "" {
			e.Group = 1 + slices.IndexFunc(g.Boxes[r.Box].Ports, func(p Port) bool { return p.Group == port.Group })
		}
		return e
	}
	for _, w := range x.wires {
		p.Wires = append(p.Wires, [2]planar.End{end(w.From), end(w.To)})
	}
	return p
}

// planarBox leaves room on either side of a level box for all ports, if some have no wire.
func planarBox(b *Box, spare bool, o Options) planar.Box {
	out := planar.Box{W: b.W, H: b.H, Head: b.Head, Level: b.level()}
	switch {
	case b.H == 0:
		out.Head = 0
	case b.Head == 0:
		out.Head = o.Pitch
	}
	if out.Level && spare && b.H > 0 {
		out.H = max(b.H, out.Head+(len(b.Ports)-1)*o.Pitch+1)
	}
	return out
}

// wiredPorts tells of every port of every box whether it has a wire.
func wiredPorts(g *Graph, x *index) [][]bool {
	out := make([][]bool, len(g.Boxes))
	for i := range out {
		out[i] = make([]bool, len(g.Boxes[i].Ports))
	}
	for _, w := range x.wires {
		out[w.From.Box][w.From.Port], out[w.To.Box][w.To.Port] = true, true
	}
	return out
}

// unfolded writes a plane drawing into one of the graph. A port that has several wires sits where the middle one
// of them ends; the others, and those whose ports have to change places, are left to be routed. ok is false when a port finds
// no place.
func unfolded(g *Graph, x *index, q *planar.Drawing, o Options) (d *Drawing, ok bool) {
	d = emptyDrawing(g)
	for i := range d.Boxes {
		d.Boxes[i].Rect = q.Boxes[i]
	}
	d.seatWired(x, q)
	wired, taken := wiredPorts(g, x), wiredPorts(g, x)
	for i := range d.Boxes {
		b := planarBox(&g.Boxes[i], false, o)
		if b.Level {
			s := ranking{box: &g.Boxes[i], at: &d.Boxes[i], wired: wired[i], head: b.Head, pitch: o.Pitch}
			if !s.seat() {
				return nil, false
			}
			continue
		}
		for k := range d.Boxes[i].Ports {
			if !taken[i][k] && !seatSpare(&d.Boxes[i], k, taken[i], b.Head, o) {
				return nil, false
			}
			taken[i][k] = true
		}
	}
	for i, w := range x.wires {
		path := q.Wires[i]
		from, to := d.Boxes[w.From.Box].Ports[w.From.Port], d.Boxes[w.To.Box].Ports[w.To.Port]
		if from.At == path[0] && to.At == path[len(path)-1] {
			d.Wires[i].Path = slices.Clone(path)
		}
	}
	if len(g.Zones) > 0 {
		d.Zones[0].Rect = frameAround(g.Zones[0], q)
	}
	return d, true
}

// frameAround is the frame of a zone that holds everything, wires as well.
func frameAround(z Zone, q *planar.Drawing) Rect {
	all := q.Boxes[0]
	for _, b := range q.Boxes {
		all = all.Union(b)
	}
	for _, w := range q.Wires {
		all = all.Union(geom.Around(w))
	}
	all = all.Grow(frameRoom.Side, frameRoom.Top, frameRoom.Side, frameRoom.Bottom)
	all.W = max(all.W, z.Title+3)
	return all
}

// seatWired puts every port that has wires drawn where the middle one of them ends.
func (d *Drawing) seatWired(x *index, q *planar.Drawing) {
	spots := map[place.Ref][]PortAt{}
	for i, w := range x.wires {
		path := q.Wires[i]
		spots[w.From] = append(spots[w.From], PortAt{At: path[0], Side: q.Sides[i][0]})
		spots[w.To] = append(spots[w.To], PortAt{At: path[len(path)-1], Side: q.Sides[i][1]})
	}
	for i := range d.Boxes {
		for k := range d.Boxes[i].Ports {
			list := spots[place.Ref{Box: i, Port: k}]
			if len(list) == 0 {
				continue
			}
			slices.SortStableFunc(list, func(a, b PortAt) int {
				return cmp.Or(cmp.Compare(a.Side, b.Side), cmp.Compare(a.At.X, b.At.X), cmp.Compare(a.At.Y, b.At.Y))
			})
			port := &d.Boxes[i].Ports[k]
			port.At, port.Side = list[len(list)/2].At, list[len(list)/2].Side
		}
	}
}

// seatSpare puts a port without wires where a side of the box has room for it.
func seatSpare(b *BoxAt, port int, taken []bool, head int, o Options) bool {
	for _, side := range [4]Side{East, West, South, North} {
		low, high, pitch := head, b.Rect.H-1, o.Pitch
		if !side.Horizontal() {
			low, high, pitch = o.Span/2, b.Rect.W-o.Span/2, o.Span
		}
		for at := low; at <= high; at++ {
			spot := place.Spot{Side: side, Offset: at}.On(b.Rect)
			free := true
			for k, p := range b.Ports {
				if away := p.At.Sub(spot); taken[k] && p.Side == side && max(geom.Abs(away.X), geom.Abs(away.Y)) < pitch {
					free = false
				}
			}
			if free {
				b.Ports[port].At, b.Ports[port].Side = spot, side
				return true
			}
		}
	}
	return false
}
