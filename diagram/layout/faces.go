package layout

import "example.com/lugbook/diagram/layout/place"

// facesFit refuses a box whose faces cannot sit on opposite sides.
func facesFit(b *Box) error {
	faces := map[string]int{}
	for _, p := range b.Ports {
		if p.Face < 0 || p.Face > 2 {
			return &GraphError{b.ID, "port " + p.ID + " sits on a face that no box has: give it 0, 1 or 2"}
		}
		if face, seen := faces[p.Group]; p.Group != "" && seen && face != p.Face {
			return &GraphError{b.ID, "group " + p.Group + " sits on two faces: give its ports one"}
		}
		faces[p.Group] = p.Face
	}
	box := placeBox(b)
	if place.Facings(&box) == 0 {
		return &GraphError{b.ID, "faces cannot sit on opposite sides: allow their ports such sides"}
	}
	return nil
}

// facesKept tells whether the seated benches of the faces sit on opposite sides, a single port on each in one row,
// and, where the box is ordered, in their order or all in its reverse.
func (s *seating) facesKept() bool {
	box := placeBox(s.box)
	facings := place.Facings(&box)
	last := [3]int{-1, -1, -1}
	up, down := false, false
	for _, q := range s.benches {
		if q.face == 0 || q.anchor < 0 {
			continue
		}
		facing := q.side
		if q.face == 2 {
			facing = facing.Opposite()
		}
		facings &= SidesOf(facing)
		if last[q.face] >= 0 {
			up, down = up || q.start < last[q.face], down || q.start > last[q.face]
		}
		last[q.face] = q.start
	}
	level := !s.paired() || last[1] < 0 || last[2] < 0 || last[1] == last[2]
	return facings != 0 && level && !(s.box.Ordered && up && down)
}

// paired tells whether the box has exactly one port on each of two faces.
func (s *seating) paired() bool {
	var count [3]int
	for _, p := range s.box.Ports {
		count[p.Face]++
	}
	return count[1] == 1 && count[2] == 1
}

// unseatFaces gives up the spots of the faces, so that they are seated anew from the first on.
func (s *seating) unseatFaces() {
	for k := range s.benches {
		if s.benches[k].face > 0 {
			s.benches[k].anchor = -1
		}
	}
}

// faceSides are the sides that a bench may join, given where its face or the other one sits.
func (s *seating) faceSides(q *bench) Sides {
	if q.face == 0 {
		return q.sides
	}
	box := placeBox(s.box)
	facings := place.Facings(&box)
	if q.face == 2 {
		facings = facings<<2&AnySide | facings>>2
	}
	for _, o := range s.benches {
		switch {
		case o.anchor < 0 || o.face == 0:
		case o.face == q.face:
			facings &= SidesOf(o.side)
		default:
			facings &= SidesOf(o.side.Opposite())
		}
	}
	return facings
}

// faceStart is the least offset of a bench that joins a side: that of a single port across from it, and behind what
// is seated of an ordered face.
func (s *seating) faceStart(q *bench, side Side) int {
	start := s.lowest(side)
	if q.face == 0 {
		return start
	}
	for _, o := range s.benches {
		switch {
		case o.anchor < 0 || o.face == 0:
		case o.face == q.face && s.box.Ordered:
			start = max(start, o.start+len(o.ports)*s.pitch(side))
		case o.face != q.face && s.paired():
			start = max(start, o.start)
		}
	}
	return start
}
