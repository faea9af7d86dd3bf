package place

import (
	"slices"

	"example.com/lugbook/diagram/layout/geom"
)

// arranging lays the ports of one box out on its border.
type arranging struct {
	box   *Box
	rules *Rules
	slots []slot
	spots []Spot
	taken [4][]int // offsets of fixed ports
	last  [4]int   // the last chosen offset, -1 for none
}

// arrange gives every port of box b its spot, and the box its size. Fixed ports keep their offsets; free groups
// follow each other in the order of the slots, at the pitch, around them. A single port on each of two faces shares
// the row of the other. lead moves the free ports of a side down or right where the box has room left anyway, those of
// two faces together.
func arrange(b *Box, slots []slot, lead [4]int, r *Rules, spots []Spot) (w, h int) {
	a := arranging{box: b, rules: r, slots: slots, spots: spots}
	for i, p := range b.Ports {
		if p.Offset >= 0 {
			side := p.Sides.First()
			spots[i] = Spot{side, p.Offset}
			a.taken[side] = append(a.taken[side], p.Offset)
		}
	}
	one, two, _ := faces(b)
	a.seat(-1)
	for paired(b) && spots[one].Offset != spots[two].Offset {
		level := max(spots[one].Offset, spots[two].Offset)
		a.seat(level)
		if max(spots[one].Offset, spots[two].Offset) == level {
			break // one is fixed above the other
		}
	}
	w, h = a.size()
	a.shift(lead, w, h)
	return w, h
}

// faces finds a port on each face of a box; ok tells whether there are.
func faces(b *Box) (one, two int, ok bool) {
	one = slices.IndexFunc(b.Ports, func(p Port) bool { return p.Face == 1 })
	two = slices.IndexFunc(b.Ports, func(p Port) bool { return p.Face == 2 })
	return one, two, one >= 0 && two >= 0
}

// paired tells whether a box has exactly one port on each of two faces.
func paired(b *Box) bool {
	var count [3]int
	for _, p := range b.Ports {
		count[p.Face]++
	}
	return count[1] == 1 && count[2] == 1
}

// seat gives the free ports their spots; those of faces sit no higher, or further left, than the level.
func (a *arranging) seat(level int) {
	half := a.rules.Span / 2
	next := [4]int{half, a.box.Head, half, a.box.Head}
	a.last = [4]int{-1, -1, -1, -1}
	for _, s := range a.slots {
		pitch := a.rules.Span
		if s.side.Horizontal() {
			pitch = a.rules.Pitch
		}
		start := next[s.side]
		if s.face > 0 {
			start = max(start, level)
		}
		first := FreeFrom(start, len(s.ports), pitch, a.taken[s.side])
		for k, port := range s.ports {
			at := k
			if s.reversed {
				at = len(s.ports) - 1 - k
			}
			a.spots[port] = Spot{s.side, first + at*pitch}
		}
		a.last[s.side] = first + (len(s.ports)-1)*pitch
		next[s.side] = a.last[s.side] + pitch
	}
}

// size is the least size that holds all ports.
func (a *arranging) size() (w, h int) {
	w, h = a.box.W, a.box.H
	for i, side := range [4]geom.Side{geom.North, geom.East, geom.South, geom.West} {
		switch {
		case a.last[i] < 0 || side.Horizontal() && a.box.H == 0 && a.last[i] == 0:
		case side.Horizontal():
			h = max(h, a.last[i]+1)
		default:
			w = max(w, a.last[i]+a.rules.Span/2)
		}
	}
	return w, h
}

// shift moves the free ports of each side as its lead says, as far as there is room. Sides with faces move together.
func (a *arranging) shift(lead [4]int, w, h int) {
	room := [4]int{w - 1, h - 1, w - 1, h - 1}
	var by [4]int
	for side := range by {
		by[side] = max(min(lead[side], room[side]-a.last[side]), 0)
		if len(a.taken[side]) > 0 {
			by[side] = 0
		}
	}
	one, two, faced := faces(a.box)
	if faced {
		s, o := a.spots[one].Side, a.spots[two].Side
		by[s] = min(by[s], by[o])
		by[o] = by[s]
	}
	for _, s := range a.slots {
		for _, port := range s.ports {
			a.spots[port].Offset += by[s.side]
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
