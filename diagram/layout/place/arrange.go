package place

import "example.com/lugbook/diagram/layout/geom"

// slot is one group of free ports on one side of a box; its place among the box's slots is its order on that side.
type slot struct {
	ports    []int
	sides    geom.Sides
	side     geom.Side
	reversed bool
}

// newSlots makes the groups of a box's free ports, spread over the east and west side as far as they are allowed; of
// ports of one group the common sides count.
func newSlots(b Box) []slot {
	var out []slot
	at := map[int]int{}
	for i, p := range b.Ports {
		if p.Offset >= 0 {
			continue
		}
		if j, seen := at[p.Group]; seen && p.Group >= 0 {
			out[j].ports = append(out[j].ports, i)
			if common := out[j].sides & p.Sides; common != 0 {
				out[j].sides = common
			}
			continue
		}
		at[p.Group] = len(out)
		out = append(out, slot{ports: []int{i}, sides: p.Sides})
	}
	var load [4]int
	for i := range out {
		o := &out[i]
		o.side = o.sides.First()
		if o.side == geom.East && o.sides.Has(geom.West) && load[geom.West] < load[geom.East] {
			o.side = geom.West
		}
		load[o.side] += len(o.ports)
	}
	return out
}

// arrange gives every port of box b its spot, and the box its size. Fixed ports keep their offsets; free groups
// follow each other in the order of the slots, at the pitch, around them. lead moves the free ports of a side down or
// right where the box has room left anyway.
func arrange(b Box, slots []slot, lead [4]int, r Rules, spots []Spot) (w, h int) {
	var taken [4][]int
	for i, p := range b.Ports {
		if p.Offset >= 0 {
			side := p.Sides.First()
			spots[i] = Spot{side, p.Offset}
			taken[side] = append(taken[side], p.Offset)
		}
	}
	last := [4]int{-1, -1, -1, -1}
	next := [4]int{r.Span / 2, b.Head, r.Span / 2, b.Head}
	for _, s := range slots {
		pitch := r.Span
		if s.side.Horizontal() {
			pitch = r.Pitch
		}
		first := FreeFrom(next[s.side], len(s.ports), pitch, taken[s.side])
		for k, port := range s.ports {
			at := k
			if s.reversed {
				at = len(s.ports) - 1 - k
			}
			spots[port] = Spot{s.side, first + at*pitch}
		}
		last[s.side] = first + (len(s.ports)-1)*pitch
		next[s.side] = last[s.side] + pitch
	}
	w, h = b.W, b.H
	for i, side := range [4]geom.Side{geom.North, geom.East, geom.South, geom.West} {
		switch {
		case last[i] < 0 || side.Horizontal() && b.H == 0 && last[i] == 0:
		case side.Horizontal():
			h = max(h, last[i]+1)
		default:
			w = max(w, last[i]+r.Span/2)
		}
	}
	shiftLead(slots, lead, taken, last, w, h, spots)
	return w, h
}

func shiftLead(slots []slot, lead [4]int, taken [4][]int, last [4]int, w, h int, spots []Spot) {
	for _, s := range slots {
		room := w - 1 - last[s.side]
		if s.side.Horizontal() {
			room = h - 1 - last[s.side]
		}
		if d := min(lead[s.side], room); d > 0 && len(taken[s.side]) == 0 {
			for _, port := range s.ports {
				spots[port].Offset += d
			}
		}
	}
}

// FreeFrom finds the first offset from start on at which n ports at the pitch keep the pitch to all fixed ones.
func FreeFrom(start, n, pitch int, taken []int) int {
	for again := true; again; {
		again = false
		for _, t := range taken {
			if t > start-pitch && t < start+n*pitch {
				start, again = t+pitch, true
			}
		}
	}
	return start
}

// On is the cell of the spot on a box that covers r.
func (s Spot) On(r geom.Rect) geom.Point {
	switch s.Side {
	case geom.North:
		return geom.Point{X: r.X + s.Offset, Y: r.Y}
	case geom.South:
		return geom.Point{X: r.X + s.Offset, Y: r.Bottom()}
	case geom.West:
		return geom.Point{X: r.X, Y: r.Y + s.Offset}
	}
	return geom.Point{X: r.Right(), Y: r.Y + s.Offset}
}
