package scene

import "iter"

// frameCells runs over the outer cells of a rectangle, row by row.
func frameCells(r Rect) iter.Seq[Point] {
	return func(yield func(Point) bool) {
		for cell := range rectCells(r) {
			if r.OnFrame(cell) && !yield(cell) {
				return
			}
		}
	}
}

func rectCells(r Rect) iter.Seq[Point] {
	return func(yield func(Point) bool) {
		for y := r.Y; y <= r.Bottom(); y++ {
			for x := r.X; x <= r.Right(); x++ {
				if !yield(Point{x, y}) {
					return
				}
			}
		}
	}
}

func (c *checker) box(b Box) {
	c.unique(BoxKind, "part", b.ID, Point{b.Rect.X, b.Rect.Y})
	if !c.inPage("part "+b.ID, b.Rect) {
		return
	}
	if b.Rect.W < 3 || b.Rect.H < 3 {
		c.fault(Point{b.Rect.X, b.Rect.Y}, []string{b.ID}, "part %s is smaller than 3 by 3 cells", b.ID)
		return
	}
	c.occupy(b.ID, b.Rect)
	for _, p := range b.Ports {
		c.port(b, p)
	}
	for _, lost := range Inside(b).Lost {
		c.fault(Point{b.Rect.X, b.Rect.Y}, []string{b.ID}, "part %s has no room for %q", b.ID, lost)
	}
}

// occupy marks the cells of a solid thing and faults the first that is taken.
func (c *checker) occupy(id string, r Rect) {
	clean := true
	for cell := range rectCells(r) {
		other := c.solid[cell]
		if other == "" {
			other = c.frame[cell]
		}
		if other != "" && clean {
			clean = false
			c.fault(cell, []string{id, other}, "%s lies on %s", id, other)
		}
		c.solid[cell] = id
	}
}

func (c *checker) port(b Box, p Port) {
	name := b.ID + "." + p.Terminal()
	if !onSide(b.Rect, p.At, p.Side) {
		c.fault(p.At, []string{b.ID}, "terminal %s is not on its side of the frame", name)
		return
	}
	c.addPort(p, name)
}

func (c *checker) addPort(p Port, name string) {
	if other, taken := c.ports[p.At]; taken {
		c.fault(p.At, []string{name, other.name}, "terminals %s and %s share a cell", name, other.name)
		return
	}
	c.ports[p.At] = portAt{name: name, side: p.Side}
}

// onSide reports whether a cell is on one side of a frame, corners left out.
func onSide(r Rect, p Point, s Side) bool {
	betweenX, betweenY := p.X > r.X && p.X < r.Right(), p.Y > r.Y && p.Y < r.Bottom()
	switch s {
	case North:
		return betweenX && p.Y == r.Y
	case South:
		return betweenX && p.Y == r.Bottom()
	case East:
		return betweenY && p.X == r.Right()
	default:
		return betweenY && p.X == r.X
	}
}

func (c *checker) flag(f Flag) {
	at := Point{f.Rect.X, f.Rect.Y}
	c.unique(FlagRef, "flag", f.ID, at)
	if !c.inPage("flag "+f.ID, f.Rect) {
		return
	}
	c.occupy(f.ID, f.Rect)
	atStart := f.Port.At == at
	switch {
	case f.Rect.H != 1 || Width(f.Text) > f.Rect.W-1:
		c.fault(at, []string{f.ID}, "flag %s is not one row with room for its mark and %q", f.ID, f.Text)
	case !atStart && f.Port.At != at.Add(f.Rect.W-1, 0) || f.Port.Side == West && !atStart || f.Port.Side == East && atStart && f.Rect.W > 1:
		c.fault(f.Port.At, []string{f.ID}, "the wire of flag %s does not meet an end of it", f.ID)
	}
	c.addPort(f.Port, f.ID)
}
