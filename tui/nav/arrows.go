package nav

import "image"

// none marks an arrow that leads nowhere.
const none = -1

// Map is where the arrows lead from each object. Make a new one when the layout has changed.
//
// It keeps three promises for any rectangles, overlapping ones as well: an arrow leads somewhere if the centre of
// anything lies in its direction; every object can be reached from every other; and the same arrow pressed again
// and again comes to an end.
type Map struct {
	next [][len(directions)]int
}

// NewMap works out the arrows of the objects.
func NewMap(boxes []image.Rectangle) *Map {
	m := neighbours(boxes)
	m.repair(boxes)
	return m
}

// Next is the object an arrow leads to, without memory. It reports false if the arrow leads nowhere, or if there is
// no such object.
func (m *Map) Next(from int, d Dir) (to int, found bool) {
	if from < 0 || from >= len(m.next) || int(d) >= len(directions) {
		return none, false
	}
	to = m.next[from][d]
	return to, to != none
}

// neighbours applies the arrow rule alone.
func neighbours(boxes []image.Rectangle) *Map {
	m := &Map{next: make([][len(directions)]int, len(boxes))}
	order := ReadingOrder(boxes) // of equal candidates the first one read wins
	for a := range boxes {
		for _, d := range directions {
			m.next[a][d] = none
			least := 0
			for _, b := range order {
				if !beyond(boxes, a, b, d) {
					continue
				}
				if c := cost(boxes[a], boxes[b], d); m.next[a][d] == none || c < least {
					m.next[a][d], least = b, c
				}
			}
		}
	}
	return m
}

// seen is a box turned so that the direction of view is ahead: near and far along it, the span lo to hi across it.
type seen struct {
	near, far, lo, hi int
}

// turn looks at a box in a direction. Rows count double, since a text cell is about twice as tall as wide.
func turn(box image.Rectangle, d Dir) seen {
	x0, x1, y0, y1 := box.Min.X, box.Max.X, 2*box.Min.Y, 2*box.Max.Y
	switch d {
	case Left:
		return seen{-x1, -x0, y0, y1}
	case Right:
		return seen{x0, x1, y0, y1}
	case Up:
		return seen{-y1, -y0, x0, x1}
	default:
		return seen{y0, y1, x0, x1}
	}
}

// beyond reports whether b lies in direction d of a: whether its centre does. Of two boxes with one centre the later
// lies to the right, so that neither is out of reach.
func beyond(boxes []image.Rectangle, a, b int, d Dir) bool {
	from, to := turn(boxes[a], d), turn(boxes[b], d)
	ahead := (to.near + to.far) - (from.near + from.far)
	if ahead != 0 || from.lo+from.hi != to.lo+to.hi {
		return ahead > 0
	}
	return d == Right && b > a || d == Left && b < a
}

// Weights of the arrow rule, in eighths of a cell. They are ours, tuned on random layouts: what lies straight ahead
// comes first, then what lies within 45 degrees, then the rest; never is something in that direction left out.
const (
	perGap       = 8
	perSide      = 2 * 8
	perSideFar   = 3 * 8
	withinCone   = 6 * 8
	outsideCone  = 30 * 8
	perHalfShift = 1 // of the doubled distance of the centres across, a quarter per cell
)

// cost is how far away b is, looking from a in direction d.
func cost(a, b image.Rectangle, d Dir) int {
	from, to := turn(a, d), turn(b, d)
	gap := max(0, to.near-from.far)
	side := max(0, to.lo-from.hi, from.lo-to.hi)
	shift := (to.lo + to.hi) - (from.lo + from.hi)
	c := perGap*gap + perHalfShift*max(shift, -shift)
	switch {
	case to.lo < from.hi && from.lo < to.hi && to.near >= from.far:
		return c // straight ahead
	case side <= gap:
		return c + perSide*side + withinCone
	default:
		return c + perSideFar*side + outsideCone
	}
}
