package scene

// cells is a set of cells in a rectangle.
type cells struct {
	within Rect
	taken  []bool
}

func newCells(r Rect) cells { return cells{r, make([]bool, max(r.W, 0)*max(r.H, 0))} }

// has reports whether a cell is in the set; none outside of the rectangle is.
func (c cells) has(at Point) bool {
	return c.within.Contains(at) && c.taken[(at.Y-c.within.Y)*c.within.W+at.X-c.within.X]
}

// take adds a cell, if it is in the rectangle.
func (c cells) take(at Point) {
	if c.within.Contains(at) {
		c.taken[(at.Y-c.within.Y)*c.within.W+at.X-c.within.X] = true
	}
}
