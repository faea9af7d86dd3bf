package layout

import (
	"slices"
	"strconv"

	"example.com/lugbook/diagram/layout/place"
)

// extension is a drawing that is being carried over to a changed graph.
type extension struct {
	g *Graph
	x *index
	o Options
	// d holds what was kept so far; a box that is not kept lies nowhere.
	d *Drawing
	// spots are the spots of the ports of each kept box; nil for a box that has to be placed.
	spots [][]place.Spot
	// sizes are what the kept boxes have to grow to.
	sizes []Point
}

// carry takes over what a previous drawing says about the boxes of the graph. A box stays where it was if its zone
// still is around it, and no other; a pinned one goes to its pin. Post: no kept box has changed its size.
func carry(g *Graph, x *index, o Options) *extension {
	e := &extension{g: g, x: x, o: o, d: emptyDrawing(g),
		spots: make([][]place.Spot, len(g.Boxes)), sizes: make([]Point, len(g.Boxes))}
	e.carryFrames()
	boxes := earlier(g, o.Previous)
	for i := range g.Boxes {
		old := boxes[g.Boxes[i].ID]
		if old == nil || g.Boxes[i].Pin == nil && !e.inPlace(i, old.Rect) {
			continue
		}
		e.spots[i], e.sizes[i] = e.seat(i, old, boxes)
		e.d.Boxes[i].Rect = old.Rect
		if pin := g.Boxes[i].Pin; pin != nil {
			e.d.Boxes[i].Rect.X, e.d.Boxes[i].Rect.Y = pin.X, pin.Y
		}
	}
	wires := map[string]WireAt{}
	for _, w := range o.Previous.Wires {
		wires[w.ID] = w
	}
	for i := range e.d.Wires {
		w, old := &e.d.Wires[i], wires[e.d.Wires[i].ID]
		w.Path = slices.Clone(old.Path)
		if old.Label.Index < len(g.Wires[i].Labels) {
			w.Label = old.Label
		}
	}
	for i := range g.Boxes {
		e.setPorts(i)
	}
	return e
}

// earlier finds the boxes of the graph in a previous drawing, by id. A box whose id is new is one that is gone if both
// have the same ports and no other box does.
func earlier(g *Graph, previous *Drawing) map[string]*BoxAt {
	out := map[string]*BoxAt{}
	for i := range previous.Boxes {
		out[previous.Boxes[i].ID] = &previous.Boxes[i]
	}
	fresh, gone := map[string][]string{}, map[string][]*BoxAt{}
	stays := map[string]bool{}
	for _, b := range g.Boxes {
		stays[b.ID] = true
		if key := portKey(b.Ports, func(p Port) string { return p.ID }); key != "" && out[b.ID] == nil {
			fresh[key] = append(fresh[key], b.ID)
		}
	}
	for i := range previous.Boxes {
		if b := &previous.Boxes[i]; !stays[b.ID] {
			key := portKey(b.Ports, func(p PortAt) string { return p.ID })
			gone[key] = append(gone[key], b)
		}
	}
	for _, b := range g.Boxes {
		key := portKey(b.Ports, func(p Port) string { return p.ID })
		if ids, old := fresh[key], gone[key]; len(ids) == 1 && len(old) == 1 && ids[0] == b.ID {
			out[b.ID] = old[0]
		}
	}
	return out
}

// portKey is the same for the same list of ports; empty for none.
func portKey[P any](ports []P, id func(P) string) string {
	key := ""
	for _, p := range ports {
		key += strconv.Quote(id(p))
	}
	return key
}

// carryFrames takes over the frames of the zones that still hold boxes.
func (e *extension) carryFrames() {
	used := map[string]bool{}
	for i := range e.g.Boxes {
		used[e.g.Boxes[i].Zone] = true
	}
	frames := map[string]Rect{}
	for _, z := range e.o.Previous.Zones {
		frames[z.ID] = z.Rect
	}
	for i := range e.d.Zones {
		if z := &e.d.Zones[i]; used[z.ID] {
			z.Rect = frames[z.ID]
		}
	}
}

// inPlace tells whether box i may stay on r: within the frame of its zone and clear of all others.
func (e *extension) inPlace(i int, r Rect) bool {
	for _, z := range e.d.Zones {
		switch own := z.ID == e.g.Boxes[i].Zone; {
		case own && z.Rect.Union(r) != z.Rect:
			return false
		case !own && z.Rect.W > 0 && z.Rect.Overlaps(r):
			return false
		}
	}
	return true
}

// kept tells whether box i has its place from before.
func (e *extension) kept(i int) bool { return e.spots[i] != nil }

// drop gives up the place of box i: it is placed anew.
func (e *extension) drop(i int) {
	e.spots[i] = nil
	e.d.Boxes[i].Rect = Rect{}
}

// setPorts puts the ports of a kept box onto its border.
func (e *extension) setPorts(i int) {
	b := &e.d.Boxes[i]
	for k, spot := range e.spots[i] {
		b.Ports[k].At, b.Ports[k].Side = spot.On(b.Rect), spot.Side
	}
}

// whole tells whether nothing is left to be placed: every box has its place, and every frame the room for its boxes.
func (e *extension) whole() bool {
	for i := range e.g.Boxes {
		if !e.kept(i) {
			return false
		}
		zone, zoned := e.x.zone[e.g.Boxes[i].Zone]
		if !zoned {
			continue
		}
		if r := e.d.Zones[zone].Rect; r.W == 0 || r.Union(e.d.Boxes[i].Rect.Grow(leastSide, leastTop, leastSide, leastTop)) != r {
			return false
		}
	}
	return e.apart()
}

// leastSide and leastTop are the distances between the edge of a frame and its boxes, its own cell included, that remain
// when a drawing has been pushed together.
const (
	leastSide = 2
	leastTop  = 2
)

// apart tells whether no frame lies on another or on a box of another zone.
func (e *extension) apart() bool {
	for i, z := range e.d.Zones {
		if z.Rect.W > 0 && !e.clear(i, z.Rect) {
			return false
		}
	}
	return true
}
