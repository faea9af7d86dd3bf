// Package geom holds the integer geometry that placing, routing and measuring share.
//
// One unit is one text column or one text row; a coordinate names the centre of a cell. Y grows downward.
package geom

// Point is a cell of the grid.
type Point struct{ X, Y int }

// Add returns p moved by q.
func (p Point) Add(q Point) Point { return Point{p.X + q.X, p.Y + q.Y} }

// Sub returns the way from q to p.
func (p Point) Sub(q Point) Point { return Point{p.X - q.X, p.Y - q.Y} }

// Times returns p scaled by k.
func (p Point) Times(k int) Point { return Point{p.X * k, p.Y * k} }

// Rect covers the cells X..X+W by Y..Y+H, its border included: W = 0 is one column wide.
type Rect struct{ X, Y, W, H int }

// Right is the last column covered.
func (r Rect) Right() int { return r.X + r.W }

// Bottom is the last row covered.
func (r Rect) Bottom() int { return r.Y + r.H }

// Contains tells whether the cell p is covered.
func (r Rect) Contains(p Point) bool {
	return p.X >= r.X && p.X <= r.X+r.W && p.Y >= r.Y && p.Y <= r.Y+r.H
}

// Overlaps tells whether both cover a common cell.
func (r Rect) Overlaps(o Rect) bool {
	return r.X <= o.X+o.W && o.X <= r.X+r.W && r.Y <= o.Y+o.H && o.Y <= r.Y+r.H
}

// Grow returns r with its edges moved outward by the given cells.
func (r Rect) Grow(left, top, right, bottom int) Rect {
	return Rect{r.X - left, r.Y - top, r.W + left + right, r.H + top + bottom}
}

// Moved returns r shifted by d.
func (r Rect) Moved(d Point) Rect { return Rect{r.X + d.X, r.Y + d.Y, r.W, r.H} }

// Union returns the smallest rectangle covering both.
func (r Rect) Union(o Rect) Rect {
	x, y := min(r.X, o.X), min(r.Y, o.Y)
	return Rect{x, y, max(r.Right(), o.Right()) - x, max(r.Bottom(), o.Bottom()) - y}
}

// Around returns the smallest rectangle covering all points; the zero Rect for none.
func Around(points []Point) Rect {
	var out Rect
	for i, p := range points {
		if i == 0 {
			out = Rect{p.X, p.Y, 0, 0}
			continue
		}
		out = out.Union(Rect{p.X, p.Y, 0, 0})
	}
	return out
}

// Abs is the absolute value.
func Abs(v int) int {
	if v < 0 {
		return -v
	}
	return v
}
