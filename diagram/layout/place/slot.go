package place

import (
	"slices"

	"example.com/lugbook/diagram/layout/geom"
)

// slot is one group of free ports on one side of a box; its place among the box's slots is its order on that side.
type slot struct {
	ports    []int
	sides    geom.Sides
	side     geom.Side
	face     int
	reversed bool
}

// newSlots makes the groups of a box's free ports, spread over the east and west side as far as they are allowed; of
// ports of one group the common sides count. Face 1 begins on the first side it may sit on, west before east.
func newSlots(b *Box) []slot {
	var out []slot
	at := map[int]int{}
	facing, faced := firstFacing(Facings(b))
	for i, p := range b.Ports {
		if p.Offset >= 0 {
			continue
		}
		face := p.Face
		if !faced {
			face = 0
		}
		if j, seen := at[p.Group]; seen && p.Group >= 0 {
			o := &out[j]
			o.ports = append(o.ports, i)
			o.face = max(o.face, face)
			if common := o.sides & p.Sides; common != 0 {
				o.sides = common
			}
			continue
		}
		at[p.Group] = len(out)
		out = append(out, slot{ports: []int{i}, sides: p.Sides, face: face})
	}
	var load [4]int
	for i := range out {
		o := &out[i]
		o.side = o.sides.First()
		if o.side == geom.East && o.sides.Has(geom.West) && load[geom.West] < load[geom.East] {
			o.side = geom.West
		}
		if o.face > 0 {
			o.side = sideOf(o.face, facing)
		}
		load[o.side] += len(o.ports)
	}
	return out
}

// Facings are the sides that face 1 of a box may sit on, so that face 2 may sit across; all for a box without faces.
func Facings(b *Box) geom.Sides {
	out := geom.AnySide
	for _, p := range b.Ports {
		sides := p.Sides
		if p.Offset >= 0 {
			sides = geom.Of(sides.First())
		}
		switch p.Face {
		case 1:
			out &= sides
		case 2:
			out &= sides<<2&geom.AnySide | sides>>2
		}
	}
	return out
}

// firstFacing is where face 1 begins: west if it may, so that what comes in comes in on the left.
func firstFacing(allowed geom.Sides) (side geom.Side, ok bool) {
	for _, side := range [4]geom.Side{geom.West, geom.East, geom.North, geom.South} {
		if allowed.Has(side) {
			return side, true
		}
	}
	return geom.West, false
}

// sideOf is where a face sits when face 1 sits on the given side.
func sideOf(face int, facing geom.Side) geom.Side {
	if face == 2 {
		return facing.Opposite()
	}
	return facing
}

// turn moves slot k of a body to another side if it may sit there. If it belongs to a face, all slots of both faces
// turn with it.
func (b *body) turn(k int, side geom.Side) bool {
	s := &b.slots[k]
	if s.face == 0 {
		if s.side == side || !s.sides.Has(side) {
			return false
		}
		s.side = side
		return true
	}
	facing := sideOf(s.face, side)
	if s.side == side || !b.facings.Has(facing) {
		return false
	}
	for k := range b.slots {
		if s := &b.slots[k]; s.face > 0 {
			s.side = sideOf(s.face, facing)
		}
	}
	return true
}

// exchange changes the order of slots k and j. In a box whose faces are ordered only a slot without a face can move:
// it goes to the place of the other one.
func (b *body) exchange(k, j int) bool {
	switch {
	case k == j:
		return false
	case !b.ordered || b.slots[k].face == 0 && b.slots[j].face == 0:
		b.slots[k], b.slots[j] = b.slots[j], b.slots[k]
		return true
	case b.slots[k].face > 0:
		return false
	}
	s := b.slots[k]
	copy(b.slots[k:], b.slots[k+1:])
	copy(b.slots[j+1:], b.slots[j:len(b.slots)-1])
	b.slots[j] = s
	return true
}

// overturn reverses the order of all slots that belong to a face.
func (b *body) overturn() bool {
	if n := len(b.slots); n < 2 || !slices.ContainsFunc(b.slots, func(s slot) bool { return s.face > 0 }) {
		return false
	}
	for k, j := 0, len(b.slots)-1; k < j; {
		switch {
		case b.slots[k].face == 0:
			k++
		case b.slots[j].face == 0:
			j--
		default:
			b.slots[k], b.slots[j] = b.slots[j], b.slots[k]
			k, j = k+1, j-1
		}
	}
	return true
}
