package scene

// Point is a cell: column X, row Y, counted from the upper left corner of the page.
type Point struct{ X, Y int }

// Add moves a point by the given columns and rows.
func (p Point) Add(dx, dy int) Point { return Point{p.X + dx, p.Y + dy} }

// Rect covers W columns and H rows of cells, the first at (X, Y).
type Rect struct{ X, Y, W, H int }

// Right is the last column that the rectangle covers.
func (r Rect) Right() int { return r.X + r.W - 1 }

// Bottom is the last row that the rectangle covers.
func (r Rect) Bottom() int { return r.Y + r.H - 1 }

// Contains reports whether the rectangle covers the cell.
func (r Rect) Contains(p Point) bool {
	return p.X >= r.X && p.X <= r.Right() && p.Y >= r.Y && p.Y <= r.Bottom()
}

// OnFrame reports whether the cell is one of the rectangle's outer cells.
func (r Rect) OnFrame(p Point) bool {
	return r.Contains(p) && (p.X == r.X || p.X == r.Right() || p.Y == r.Y || p.Y == r.Bottom())
}

// Overlaps reports whether two rectangles share a cell.
func (r Rect) Overlaps(o Rect) bool {
	return r.X <= o.Right() && o.X <= r.Right() && r.Y <= o.Bottom() && o.Y <= r.Bottom()
}

// Side is a side of a box, named as on a map: North is up.
type Side uint8

// The sides of a box.
const (
	North Side = iota
	East
	South
	West
)

// Step is the way outwards from a side: one column or one row.
func (s Side) Step() (dx, dy int) {
	switch s {
	case North:
		return 0, -1
	case East:
		return 1, 0
	case South:
		return 0, 1
	default:
		return -1, 0
	}
}

// Cells lists every cell of an orthogonal path in order, each once. A leg that is
// not orthogonal contributes its end points only.
func Cells(path []Point) []Point {
	if len(path) == 0 {
		return nil
	}
	cells := append(make([]Point, 0, steps(path)+1), path[0])
	for i := 1; i < len(path); i++ {
		at, to := path[i-1], path[i]
		if at.X != to.X && at.Y != to.Y {
			cells = append(cells, to)
			continue
		}
		dx, dy := sign(to.X-at.X), sign(to.Y-at.Y)
		for at != to {
			at = at.Add(dx, dy)
			cells = append(cells, at)
		}
	}
	return cells
}

// steps is the number of cells that a path goes over after its first.
func steps(path []Point) int {
	n := 0
	for i := 1; i < len(path); i++ {
		n += max(abs(path[i].X-path[i-1].X), abs(path[i].Y-path[i-1].Y))
	}
	return n
}

func sign(n int) int { return min(1, max(-1, n)) }
