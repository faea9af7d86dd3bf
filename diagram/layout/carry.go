package layout

import (
	"slices"

	"example.com/lugbook/diagram/layout/geom"
	"example.com/lugbook/diagram/layout/place"
)

// carry finds what of a previous drawing still fits the graph: a box of the same id keeps its place if its zone still
// holds it and its ports still fit on it; a new port takes a free cell on a side it may sit on. All else is nil.
// Post: no box in kept moved.
func carry(g *Graph, x *index, previous *Drawing) (*Drawing, []*place.Kept) {
	d := emptyDrawing(g)
	zones := map[string]Rect{}
	for _, z := range previous.Zones {
		zones[z.ID] = z.Rect
	}
	for i := range d.Zones {
		d.Zones[i].Rect = zones[d.Zones[i].ID]
	}
	boxes := map[string]*BoxAt{}
	for i := range previous.Boxes {
		boxes[previous.Boxes[i].ID] = &previous.Boxes[i]
	}
	kept := make([]*place.Kept, len(g.Boxes))
	for i := range g.Boxes {
		old := boxes[g.Boxes[i].ID]
		if old == nil {
			continue
		}
		zone := zones[g.Boxes[i].Zone]
		if g.Boxes[i].Zone != "" && zone.Union(old.Rect) != zone {
			continue
		}
		kept[i] = keep(&g.Boxes[i], old)
		if kept[i] == nil {
			continue
		}
		d.Boxes[i].Rect = old.Rect
		for k, spot := range kept[i].Spots {
			d.Boxes[i].Ports[k].At, d.Boxes[i].Ports[k].Side = spot.On(old.Rect), spot.Side
		}
	}
	paths := map[string][]Point{}
	for _, w := range previous.Wires {
		paths[w.ID] = w.Path
	}
	for i := range d.Wires {
		d.Wires[i].Path = slices.Clone(paths[d.Wires[i].ID])
	}
	return d, kept
}

// keep finds the spots of a box's ports on its old rectangle; nil when one does not fit.
func keep(b *Box, old *BoxAt) *place.Kept {
	if b.W > old.Rect.W || b.H > old.Rect.H || b.Pin != nil && (b.Pin.X != old.Rect.X || b.Pin.Y != old.Rect.Y) {
		return nil
	}
	spots := map[string]place.Spot{}
	for _, p := range old.Ports {
		spots[p.ID] = spotOf(old.Rect, p)
	}
	out := &place.Kept{Rect: old.Rect, Spots: make([]place.Spot, len(b.Ports))}
	var taken []place.Spot
	var fresh []int
	for i, p := range b.Ports {
		spot, known := spots[p.ID]
		fits := known && p.Sides.Has(spot.Side) && (p.Offset < 0 || p.Offset == spot.Offset)
		switch {
		case fits:
			out.Spots[i] = spot
			taken = append(taken, spot)
		case p.Offset >= 0:
			return nil
		default:
			fresh = append(fresh, i)
		}
	}
	for _, i := range fresh {
		spot, ok := freeSpot(b, old.Rect, b.Ports[i], taken)
		if !ok {
			return nil
		}
		out.Spots[i] = spot
		taken = append(taken, spot)
	}
	return out
}

func spotOf(r Rect, p PortAt) place.Spot {
	if p.Side.Horizontal() {
		return place.Spot{Side: p.Side, Offset: p.At.Y - r.Y}
	}
	return place.Spot{Side: p.Side, Offset: p.At.X - r.X}
}

// freeSpot finds the first offset on an allowed side, two cells from every port there. Ports of a group are not split
// up: a port that belongs to one finds no spot.
func freeSpot(b *Box, r Rect, p Port, taken []place.Spot) (place.Spot, bool) {
	if p.Group != "" {
		return place.Spot{}, false
	}
	for _, side := range [4]Side{East, West, South, North} {
		length, first, apart := r.W, 2, 4
		if side.Horizontal() {
			length, first, apart = r.H, max(b.Head, 1), 2
		}
		for at := first; p.Sides.Has(side) && at < length; at++ {
			near := func(s place.Spot) bool { return s.Side == side && geom.Abs(s.Offset-at) < apart }
			if !slices.ContainsFunc(taken, near) {
				return place.Spot{Side: side, Offset: at}, true
			}
		}
	}
	return place.Spot{}, false
}
