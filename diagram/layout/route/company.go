package route

import "example.com/lugbook/diagram/layout/geom"

// Lines right beside each other are followed with more care, and one keeps to its own line best where that shows for
// some cells on both sides of a crossing. So cells know of the wires in their neighbours.

// tell adds by to what the neighbours of a slot know of the wire in it: of a bend those along the axis, of a run those
// across it, where they count.
func (g *grid) tell(c int32, axis int, turn bool, by uint8) {
	along := g.step[axisStep[axis]]
	if turn {
		g.bothSides(c, along, func(n *cell) { n.turns[axis] += by })
		return
	}
	if at := g.point(c); axis == upright && at.Y%besideRows == 0 || axis == level && at.X%besideColumns == 0 {
		g.bothSides(c, g.step[axisStep[1-axis]], func(n *cell) { n.beside[axis] += by })
	}
}

// axisStep is the direction in which the cells of an axis are counted.
var axisStep = [2]geom.Side{geom.East, geom.South}

// Runs side by side cost something on every so manyth cell: less than one step, so that they part where that is no way
// round. Upright ones are closer together, and cost more.
const (
	besideRows    = 2
	besideColumns = 4
)

// bothSides calls f for the two cells at a distance of step from c, as far as there are such.
func (g *grid) bothSides(c, step int32, f func(*cell)) {
	for _, n := range [2]int32{c - step, c + step} {
		if n >= 0 && int(n) < len(g.cell) {
			f(&g.cell[n])
		}
	}
}
