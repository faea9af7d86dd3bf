package layout

import (
	"unicode/utf8"

	"example.com/lugbook/diagram/layout/place"
)

// index turns the ids of a graph into numbers.
type index struct {
	zone  map[string]int
	box   map[string]int
	port  []map[string]int
	wires []place.Wire
}

// newIndex checks the graph on the way.
func newIndex(g *Graph) (*index, error) {
	x := &index{zone: map[string]int{}, box: map[string]int{}}
	for i, z := range g.Zones {
		if _, twice := x.zone[z.ID]; twice || z.ID == "" {
			return nil, &GraphError{z.ID, "zone id empty or used twice: give every zone its own"}
		}
		x.zone[z.ID] = i
	}
	for i := range g.Boxes {
		if err := x.addBox(i, &g.Boxes[i]); err != nil {
			return nil, err
		}
	}
	if err := pinsApart(g); err != nil {
		return nil, err
	}
	seen := map[string]bool{}
	for i := range g.Wires {
		w := &g.Wires[i]
		if seen[w.ID] {
			return nil, &GraphError{w.ID, "wire id used twice: give every wire its own"}
		}
		seen[w.ID] = true
		from, okFrom := x.ref(w.From)
		to, okTo := x.ref(w.To)
		switch {
		case !okFrom || !okTo:
			return nil, &GraphError{w.ID, "wire ends at a port that does not exist: correct the box or port id"}
		case from == to:
			return nil, &GraphError{w.ID, "wire begins and ends at one port: choose two"}
		}
		room := 0
		if len(w.Labels) > 0 {
			room = utf8.RuneCountInString(w.Labels[0]) + labelEnds
		}
		x.wires = append(x.wires, place.Wire{From: from, To: to, Room: room, Onward: w.Onward})
	}
	return x, nil
}

// pinsApart refuses boxes pinned off the drawing or onto each other.
func pinsApart(g *Graph) error {
	for i, a := range g.Boxes {
		if a.Pin == nil {
			continue
		}
		if a.Pin.X < 0 || a.Pin.Y < 0 {
			return &GraphError{a.ID, "box is pinned off the drawing: pin it right of and below the corner"}
		}
		r := Rect{X: a.Pin.X, Y: a.Pin.Y, W: a.W, H: a.H}
		for _, b := range g.Boxes[:i] {
			if b.Pin != nil && r.Overlaps(Rect{X: b.Pin.X, Y: b.Pin.Y, W: b.W, H: b.H}) {
				return &GraphError{a.ID, "box is pinned onto " + b.ID + ": move one of them"}
			}
		}
	}
	return nil
}

// labelEnds is the length of line that stays visible beside a label.
const labelEnds = 4

func (x *index) addBox(i int, b *Box) error {
	if _, twice := x.box[b.ID]; twice || b.ID == "" {
		return &GraphError{b.ID, "box id empty or used twice: give every box its own"}
	}
	if _, known := x.zone[b.Zone]; b.Zone != "" && !known {
		return &GraphError{b.ID, "box lies in a zone that does not exist: correct the zone id"}
	}
	if b.W < 1 || b.H < 0 {
		return &GraphError{b.ID, "box is too small: give it a width of at least 1 and a height of at least 0"}
	}
	x.box[b.ID] = i
	if err := portsFit(b); err != nil {
		return err
	}
	ports := map[string]int{}
	for k, p := range b.Ports {
		ports[p.ID] = k
	}
	x.port = append(x.port, ports)
	return nil
}

// portsFit refuses ports that cannot sit on their box.
func portsFit(b *Box) error {
	seen := map[string]bool{}
	spots := map[place.Spot]bool{}
	for _, p := range b.Ports {
		if seen[p.ID] {
			return &GraphError{b.ID, "port id " + p.ID + " used twice: give every port its own"}
		}
		seen[p.ID] = true
		if p.Sides&AnySide == 0 {
			return &GraphError{b.ID, "port " + p.ID + " may sit on no side: allow one"}
		}
		if p.Offset < 0 {
			continue
		}
		spot := place.Spot{Side: p.Sides.First(), Offset: p.Offset}
		length := b.W
		if spot.Side.Horizontal() {
			length = b.H
		}
		if p.Offset > length || spots[spot] {
			return &GraphError{b.ID, "port " + p.ID + " lies off the box or on another port: change its offset"}
		}
		spots[spot] = true
	}
	return facesFit(b)
}

func (x *index) ref(r PortRef) (place.Ref, bool) {
	b, ok := x.box[r.Box]
	if !ok {
		return place.Ref{}, false
	}
	p, ok := x.port[b][r.Port]
	return place.Ref{Box: b, Port: p}, ok
}
