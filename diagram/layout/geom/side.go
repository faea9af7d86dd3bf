package geom

// Side names an edge of a box and, likewise, the direction of a step on the grid.
type Side uint8

// The four sides, clockwise.
const (
	North Side = iota
	East
	South
	West
)

var steps = [4]Point{{0, -1}, {1, 0}, {0, 1}, {-1, 0}}

// Step is the unit step outward from a box on this side.
func (s Side) Step() Point { return steps[s&3] }

// Opposite is the side across.
func (s Side) Opposite() Side { return (s + 2) & 3 }

// Horizontal tells whether a step that way stays in its row.
func (s Side) Horizontal() bool { return s&1 == 1 }

// String gives the letter N, E, S or W.
func (s Side) String() string { return "NESW"[s&3 : s&3+1] }

// Sides is a set of sides.
type Sides uint8

// Of builds a set.
func Of(sides ...Side) Sides {
	var out Sides
	for _, s := range sides {
		out |= 1 << s
	}
	return out
}

// AnySide allows all four sides.
const AnySide Sides = 15

// Has tells whether s is in the set.
func (set Sides) Has(s Side) bool { return set>>s&1 == 1 }

// Count is the number of sides in the set.
func (set Sides) Count() int {
	return int(set&1 + set>>1&1 + set>>2&1 + set>>3&1)
}

// First is the first side of the set in the order east, west, south, north: the order in which sides are
// preferred for terminals of a box drawn as text. An empty set gives east.
func (set Sides) First() Side {
	for _, s := range [4]Side{East, West, South, North} {
		if set.Has(s) {
			return s
		}
	}
	return East
}

// Toward is the direction of the straight way from p to q; ok is false unless they share a row or a column and differ.
func Toward(p, q Point) (dir Side, ok bool) {
	switch {
	case p.X == q.X && p.Y < q.Y:
		return South, true
	case p.X == q.X && p.Y > q.Y:
		return North, true
	case p.Y == q.Y && p.X < q.X:
		return East, true
	case p.Y == q.Y && p.X > q.X:
		return West, true
	}
	return North, false
}

// MinBends is the fewest right-angle bends of a path that stands on p, last moved in direction d, and has to leave
// q in direction e, in an empty plane. It never exceeds 4.
func MinBends(p Point, d Side, q Point, e Side) int {
	x, y := p.X-q.X, p.Y-q.Y
	switch e { // turn the plane so that the goal direction is east
	case North:
		x, y = -y, x
	case South:
		x, y = y, -x
	case West:
		x, y = -x, -y
	}
	switch (d - e + East) & 3 {
	case East:
		if x > 0 {
			return 4
		}
		if y == 0 {
			return 0
		}
		return 2
	case West:
		if y == 0 {
			return 4
		}
		return 2
	case North:
		if y >= 0 && x <= 0 {
			return 1
		}
	default:
		if y <= 0 && x <= 0 {
			return 1
		}
	}
	return 3
}
