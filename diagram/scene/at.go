package scene

// At lists what lies in a cell, topmost first: port, flag, box, label,
// piece, the wire that is drawn there, the wire that passes under it, zones from the inside out.
func (p *Page) At(c Point) []Ref {
	var refs []Ref
	for _, b := range p.Boxes {
		if !b.Rect.Contains(c) {
			continue
		}
		for _, port := range b.Ports {
			if port.At == c {
				refs = append(refs, PortRef(b.ID, port))
			}
		}
		refs = append(refs, Ref{Kind: BoxKind, ID: b.ID})
	}
	for _, f := range p.Flags {
		if f.Rect.Contains(c) {
			refs = append(refs, Ref{Kind: FlagRef, ID: f.ID})
		}
	}
	for _, w := range p.Wires {
		if w.Label.covers(c) || w.Flow.Note.covers(c) {
			refs = append(refs, Ref{Kind: LabelKind, ID: w.ID})
		}
	}
	for _, piece := range p.Pieces {
		if piece.Of.Kind != Nothing && piece.Covers(c) {
			refs = append(refs, piece.Of)
		}
	}
	refs = append(refs, p.wiresAt(c)...)
	for i := len(p.Zones) - 1; i >= 0; i-- {
		if z := p.Zones[i]; z.Rect.Contains(c) {
			refs = append(refs, Ref{Kind: ZoneKind, ID: z.ID})
		}
	}
	return refs
}

// PortRef names a port of a box.
func PortRef(box string, p Port) Ref {
	return Ref{Kind: PortKind, ID: box, Port: p.Terminal(), Seat: p.Seat}
}

// wiresAt lists the wires through a cell, the upright one first.
func (p *Page) wiresAt(c Point) []Ref {
	var upright, level []Ref
	for _, w := range p.Wires {
		for i := 1; i < len(w.Path); i++ {
			from, to := w.Path[i-1], w.Path[i]
			if !onLeg(c, from, to) {
				continue
			}
			if ref := (Ref{Kind: WireKind, ID: w.ID}); from.X == to.X {
				upright = append(upright, ref)
			} else {
				level = append(level, ref)
			}
			break
		}
	}
	return append(upright, level...)
}

func onLeg(c, from, to Point) bool {
	return c.X >= min(from.X, to.X) && c.X <= max(from.X, to.X) && c.Y >= min(from.Y, to.Y) && c.Y <= max(from.Y, to.Y)
}

func (l Label) covers(c Point) bool {
	return l.Text != "" && c.Y == l.At.Y && c.X >= l.At.X && c.X < l.At.X+Width(l.Text)
}

// Cells lists the cells of the label's text.
func (l Label) Cells() []Point {
	cells := make([]Point, Width(l.Text))
	for i := range cells {
		cells[i] = l.At.Add(i, 0)
	}
	return cells
}
