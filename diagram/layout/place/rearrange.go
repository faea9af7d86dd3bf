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
		changed = b.exchange(k, j)
	case dice < 65:
		changed = b.turn(k, geom.Side(a.rnd.Below(4)))
		if changed {
			b.exchange(k, j)
		}
	case dice < 75:
		if changed = len(b.slots[k].ports) > 1; changed {
			b.slots[k].reversed = !b.slots[k].reversed
		} else {
			changed = b.overturn()
		}
	case dice < 85:
		changed = b.mirror()
	default:
		changed = b.slide(k, a.rnd.Below(8))
	}
	if changed {
		a.arrange(i)
	}
	return changed
}

// mirror sends every group that may sit there to the side across.
func (b *body) mirror() bool {
	changed, faced := false, false
	for k := range b.slots {
		s := &b.slots[k]
		if s.face > 0 && faced {
			continue // turned with the first
		}
		faced = faced || s.face > 0
		changed = b.turn(k, s.side.Opposite()) || changed
	}
	return changed
}

// slide sets the lead of the side of slot k, and for a face that of the side across too.
func (b *body) slide(k, by int) bool {
	s := &b.slots[k]
	if b.lead[s.side] == by {
		return false
	}
	b.lead[s.side] = by
	if s.face > 0 {
		b.lead[s.side.Opposite()] = by
	}
	return true
}
