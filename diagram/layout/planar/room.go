package planar

import (
	"slices"

	"example.com/lugbook/diagram/layout/geom"
)

// room is the place that a shape gives to a box, larger than the box, and how its wires are led from its edge to the
// box.
type room struct {
	head int
	rim  rim
	ends map[int]End // by the vertex where a wire comes to the room
	// paired is a level box with one wire on each of its two faces: they run through in one row.
	paired bool
	sides  [4][]int // the ends on each side of the box, from left to right or from top to bottom
	// west is how many of the wires that come from above, and from below, are led round to the left of a level box; the
	// others go to its right.
	west [2]int
	w, h int
	lead [4]int // depth of the strip on each side in which wires are led
}

// rooms plans the boxes of a part.
func (c *part) rooms(rims []rim, wires []trail, r Rules) []room {
	ends := map[int]End{}
	for i, t := range wires {
		ends[t.at[0]], ends[t.at[len(t.at)-1]] = c.ends[i][0], c.ends[i][1]
	}
	out := make([]room, len(c.boxes))
	for b := range out {
		m := &out[b]
		*m = room{head: c.boxes[b].Head, rim: rims[b], ends: ends}
		for side := range m.sides {
			m.sides[side] = slices.Clone(m.rim.ends(geom.Side(side)))
			if n := len(m.sides[side]); n > 0 {
				m.lead[side] = n + 1
			}
		}
		if c.boxes[b].Level {
			m.lay()
		}
		m.size(c.boxes[b], r)
	}
	return out
}

// lay leads the wires above and below a level box round to its left and right.
func (m *room) lay() {
	up, down := m.sides[geom.North], m.sides[geom.South]
	left, right := m.sides[geom.West], m.sides[geom.East]
	a := m.westward(up, len(left)-len(right), len(up))
	b := m.westward(down, len(left)+a-len(right)-(len(up)-a), 0)
	m.west = [2]int{a, b}
	over, under := slices.Clone(up[:a]), slices.Clone(down[b:])
	reverse(over)
	reverse(under)
	m.sides = [4][]int{geom.West: slices.Concat(over, left, down[:b]), geom.East: slices.Concat(up[a:], right, under)}
	if west, east := m.sides[geom.West], m.sides[geom.East]; len(west) == 1 && len(east) == 1 {
		m.paired = m.ends[west[0]].Face+m.ends[east[0]].Face == 3
	}
	m.lead[geom.West], m.lead[geom.East] = 0, 0
	if len(m.sides[geom.West]) > 0 {
		m.lead[geom.West] = len(left) + m.round(geom.West) + 1
	}
	if len(m.sides[geom.East]) > 0 {
		m.lead[geom.East] = len(right) + m.round(geom.East) + 1
	}
}

// round is the number of columns beside a level box that wires led round it take.
func (m *room) round(side geom.Side) int {
	a, b := m.west[0], m.west[1]
	if side == geom.East {
		a, b = len(m.rim.ends(geom.North))-a, len(m.rim.ends(geom.South))-b
	}
	return max(a, b)
}

// westward is how many of the wires above or below a box are led to its left so that both sides have about the same
// number, given how many more are on its left so far. Groups stay together; ends of a face all go where it says.
func (m *room) westward(list []int, ahead, faced int) int {
	if len(list) > 0 && m.ends[list[0]].Face > 0 {
		return faced
	}
	best, least := 0, -1
	for a := range len(list) + 1 {
		if a > 0 && a < len(list) && m.ends[list[a]].beside(m.ends[list[a-1]]) {
			continue
		}
		if off := geom.Abs(ahead + 2*a - len(list)); least < 0 || off < least {
			best, least = a, off
		}
	}
	return best
}

// size finds the least size of the box that holds its wires.
func (m *room) size(b Box, r Rules) {
	m.w, m.h = b.W, b.H
	if n := max(len(m.sides[geom.North]), len(m.sides[geom.South])); n > 0 {
		m.w = max(m.w, (n-1)*r.Span+r.Span/2*2)
	}
	n := max(len(m.sides[geom.West]), len(m.sides[geom.East]))
	if n > 1 || n == 1 && b.H > 0 {
		m.h = max(m.h, b.Head+(n-1)*r.Pitch+1)
	}
}
