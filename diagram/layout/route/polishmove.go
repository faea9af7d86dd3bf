package route

import (
	"slices"

	"example.com/lugbook/diagram/layout/geom"
)

// propose fills boxes with a random move: a shift, one that straightens a wire, or two boxes changing places.
func (s *polisher) propose() {
	b := s.movable[s.rnd.Below(len(s.movable))]
	s.boxes = s.boxes[:0]
	dice := s.rnd.Below(100)
	switch {
	case dice < 35 && len(s.wires[b]) > 0:
		wire := s.p.Wires[s.wires[b][s.rnd.Below(len(s.wires[b]))]]
		mine, other := s.p.Terminals[wire.From], s.p.Terminals[wire.To]
		if mine.Box != b {
			mine, other = other, mine
		}
		d := other.At.Sub(mine.At)
		if mine.Side.Horizontal() {
			s.boxes = append(s.boxes, moved{b, geom.Point{X: s.rnd.Within(2), Y: d.Y}})
		} else {
			s.boxes = append(s.boxes, moved{b, geom.Point{X: d.X, Y: s.rnd.Within(2)}})
		}
	case dice < 42:
		o := s.movable[s.rnd.Below(len(s.movable))]
		d := geom.Point{X: s.p.Boxes[o].X - s.p.Boxes[b].X, Y: s.p.Boxes[o].Y - s.p.Boxes[b].Y}
		if o != b {
			s.boxes = append(s.boxes, moved{b, d}, moved{o, d.Times(-1)})
		}
	default:
		reach := 1 + s.rnd.Below(8)
		s.boxes = append(s.boxes, moved{b, geom.Point{X: s.rnd.Within(reach), Y: s.rnd.Within(reach)}})
	}
}

func (s *polisher) shiftBack() {
	for _, m := range s.boxes {
		s.shift(m.box, m.by.Times(-1))
	}
}

// roomy tells whether the boxes to be moved keep their distances where they are now.
func (s *polisher) roomy() bool {
	area := s.g.whole().Grow(-2, -2, -2, -2)
	for _, m := range s.boxes {
		b := s.p.Boxes[m.box]
		bound := area
		zone := s.o.Within[m.box]
		if zone >= 0 {
			bound = s.p.Zones[zone].Rect.Grow(-s.o.Side, -s.o.Top, -s.o.Side, -s.o.Bottom)
		}
		if bound.Union(b) != bound || m.by == (geom.Point{}) {
			return false
		}
		wide := b.Grow(s.o.GapX-1, s.o.GapY-1, s.o.GapX-1, s.o.GapY-1)
		for i, other := range s.p.Boxes {
			if i != m.box && wide.Overlaps(other) {
				return false
			}
		}
		for z := range s.p.Zones {
			if zone < 0 && wide.Overlaps(s.p.Zones[z].Rect) {
				return false
			}
		}
	}
	return len(s.boxes) > 0 && s.stubsKept()
}

// stubsKept tells whether the boxes to be moved leave the cells alone that terminals of other boxes reserve.
func (s *polisher) stubsKept() bool {
	foreign := func(c int32) bool {
		o := s.g.owner[c]
		return o != 0 && !slices.ContainsFunc(s.boxes, func(m moved) bool { return m.box == s.p.Terminals[o-1].Box })
	}
	for _, m := range s.boxes {
		kept := true
		s.g.each(s.p.Boxes[m.box], func(c int32) { kept = kept && !foreign(c) })
		for _, t := range s.terminals[m.box] {
			at := s.p.Terminals[t].At
			for i := 0; i < max(1, s.p.stubLength(t, s.count[t])); i++ {
				at = at.Add(s.p.Terminals[t].Side.Step())
				kept = kept && s.g.inside(at) && !foreign(s.g.index(at))
			}
		}
		if !kept {
			return false
		}
	}
	return true
}
