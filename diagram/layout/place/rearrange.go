package place

import "example.com/lugbook/diagram/layout/geom"

// rearrange changes the sides or the order of a box's free ports.
func (a *annealer) rearrange(i int) bool {
	b := a.touch(i)
	n := len(b.slots)
	k, j := a.rnd.Below(n), a.rnd.Below(n)
	changed := false
	switch dice := a.rnd.Below(100); {
	case dice < 35:
		changed = k != j
		b.slots[k], b.slots[j] = b.slots[j], b.slots[k]
	case dice < 65:
		changed = turnTo(&b.slots[k], geom.Side(a.rnd.Below(4)))
		if changed && j != k {
			b.slots[k], b.slots[j] = b.slots[j], b.slots[k]
		}
	case dice < 75:
		changed = len(b.slots[k].ports) > 1
		b.slots[k].reversed = !b.slots[k].reversed
	case dice < 85:
		changed = a.mirror(b)
	default:
		side := b.slots[k].side
		old := b.lead[side]
		b.lead[side] = a.rnd.Below(8)
		changed = b.lead[side] != old
	}
	if changed {
		a.arrange(i)
	}
	return changed
}

// turnTo moves a group to another side if it may sit there.
func turnTo(s *slot, side geom.Side) bool {
	if s.side == side || !s.sides.Has(side) {
		return false
	}
	s.side = side
	return true
}

// mirror sends every group that may sit there to the side across.
func (a *annealer) mirror(b *body) bool {
	changed := false
	for k := range b.slots {
		s := &b.slots[k]
		if turnTo(s, s.side.Opposite()) {
			changed = true
		}
	}
	return changed
}
