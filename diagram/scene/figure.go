package scene

import (
	"cmp"
	"slices"
)

// leg is one straight piece of a wire's path.
type leg struct{ from, to Point }

func (l leg) level() bool { return l.from.Y == l.to.Y }
func (l leg) length() int { return abs(l.to.X-l.from.X) + abs(l.to.Y-l.from.Y) }

// legsOf lists the legs of a path, the longest first and level ones before upright ones.
func legsOf(path []Point) []leg {
	var list []leg
	for i := 1; i < len(path); i++ {
		list = append(list, leg{path[i-1], path[i]})
	}
	slices.SortStableFunc(list, func(a, b leg) int {
		if a.level() != b.level() {
			if a.level() {
				return -1
			}
			return 1
		}
		return cmp.Compare(b.length(), a.length())
	})
	return list
}

// placeFigure finds a place for a wire's figure that touches nothing else: in a level
// run, or beside an upright one. The label is empty if there is none.
func (c *checker) placeFigure(w *Wire) Label {
	text := Clean(w.Flow.Figure)
	if text == "" {
		return Label{}
	}
	for _, l := range legsOf(w.Path) {
		for _, off := range fromMiddle(l) {
			for _, at := range places(l, off, Width(text)) {
				if label := (Label{Text: text, At: at, Vertical: !l.level()}); c.clear(w.ID, label) {
					return label
				}
			}
		}
	}
	return Label{}
}

// fromMiddle lists the cells of a leg from its middle outwards.
func fromMiddle(l leg) []Point {
	cells := Cells([]Point{l.from, l.to})
	middle := len(cells) / 2
	out := make([]Point, 0, len(cells))
	for d := 0; len(out) < len(cells); d++ {
		if i := middle - d; i >= 0 {
			out = append(out, cells[i])
		}
		if i := middle + d; d > 0 && i < len(cells) {
			out = append(out, cells[i])
		}
	}
	return out
}

// places lists where a text of some width may begin about a cell of a leg.
func places(l leg, at Point, width int) []Point {
	if l.level() {
		return []Point{at.Add(-width/2, 0)}
	}
	return []Point{at.Add(1, 0), at.Add(-width, 0)}
}

// clear reports whether a figure touches nothing but its own wire. It is stricter than
// the check: on either hand there is a line of its own or a blank.
func (c *checker) clear(wire string, l Label) bool {
	cells := l.Cells()
	before, after := cells[0].Add(-1, 0), cells[len(cells)-1].Add(1, 0)
	for _, cell := range cells {
		switch {
		case cell.X < 0 || cell.Y < 0 || cell.X >= c.page.W || cell.Y >= c.page.H, c.solid[cell] != "", c.frame[cell] != "":
			return false
		case l.Vertical && len(c.runs[cell]) > 0, !l.Vertical && !c.isLine(cell, wire):
			return false
		}
	}
	if !l.Vertical {
		return c.isLine(before, wire) && c.isLine(after, wire) && c.solid[before] == "" && c.solid[after] == "" && c.frame[before] == "" && c.frame[after] == ""
	}
	own := 0
	for _, side := range []Point{before, after} {
		switch {
		case c.solid[side] != "" || c.frame[side] != "":
			return false
		case len(c.runs[side]) == 0:
		case c.isUpright(side, wire):
			own++
		default:
			return false
		}
	}
	return own == 1
}

// isLine reports whether a cell shows a straight level piece of a wire and nothing else.
func (c *checker) isLine(at Point, wire string) bool {
	runs := c.runs[at]
	return len(runs) == 1 && runs[0].wire == wire && runs[0].level && !runs[0].turns
}

// isUpright reports whether a cell shows a straight upright piece of a wire, over another or not.
func (c *checker) isUpright(at Point, wire string) bool {
	return slices.ContainsFunc(c.runs[at], func(r run) bool { return r.wire == wire && !r.level && !r.turns })
}

// take marks the room of a label as used.
func (c *checker) take(wire string, l Label) {
	for _, cell := range l.Cells() {
		c.solid[cell] = "the label of " + wire
	}
}

// Arrows stand in the middle of the clear stretches of a line, in stretches of at least
// some cells, and on long ones more than once.
const (
	arrowStretch = 4
	arrowEvery   = 24
)

// arrows finds where the line of a wire shows which way its current goes.
func (c *checker) arrows(w *Wire) []Arrow {
	var all, best []Arrow
	longest := 0
	for i := 1; i < len(w.Path); i++ {
		way := wayOf(w.Path[i-1], w.Path[i])
		if w.Flow.Amps < 0 {
			way = (way + 2) % 4
		}
		for _, stretch := range c.stretches(w.ID, leg{w.Path[i-1], w.Path[i]}) {
			var here []Arrow
			n := 1 + len(stretch)/arrowEvery
			for k := range n {
				here = append(here, Arrow{stretch[len(stretch)*(2*k+1)/(2*n)], way})
			}
			if len(stretch) >= arrowStretch {
				all = append(all, here...)
			}
			if len(stretch) > longest {
				longest, best = len(stretch), here
			}
		}
	}
	if len(all) == 0 {
		return best
	}
	return all
}

// sign finds where the line of a wire bears a sign: in the middle of its longest stretch.
func (c *checker) sign(w *Wire) []Arrow {
	var best []Point
	way := North
	for i := 1; i < len(w.Path); i++ {
		for _, stretch := range c.stretches(w.ID, leg{w.Path[i-1], w.Path[i]}) {
			if len(stretch) > len(best) {
				best, way = stretch, wayOf(w.Path[i-1], w.Path[i])
			}
		}
	}
	if len(best) == 0 {
		return nil
	}
	return []Arrow{{best[len(best)/2], way}}
}

// stretches lists the runs of cells of a leg that show its line and nothing else.
func (c *checker) stretches(wire string, l leg) [][]Point {
	var list [][]Point
	var now []Point
	end := func() {
		if len(now) > 0 {
			list = append(list, now)
		}
		now = nil
	}
	for _, cell := range Cells([]Point{l.from, l.to}) {
		if c.showsArrow(wire, cell, l.level()) {
			now = append(now, cell)
			continue
		}
		end()
	}
	end()
	return list
}

// showsArrow reports whether an arrow on a wire's line stands clear in a cell.
func (c *checker) showsArrow(wire string, at Point, level bool) bool {
	runs := c.runs[at]
	return len(runs) == 1 && runs[0].wire == wire && !runs[0].turns && runs[0].level == level && c.solid[at] == "" && c.frame[at] == "" && !c.facesOther(at, wire)
}

// facesOther reports whether a cell is next to a terminal of another wire, where an arrow
// would read as that wire's.
func (c *checker) facesOther(at Point, wire string) bool {
	for side := North; side <= West; side++ {
		dx, dy := side.Step()
		if p, ok := c.ports[at.Add(-dx, -dy)]; ok && p.side == side && p.wire != wire {
			return true
		}
	}
	return false
}

// wayOf is the way from one end of a leg to the other.
func wayOf(from, to Point) Side {
	switch {
	case to.Y < from.Y:
		return North
	case to.X > from.X:
		return East
	case to.Y > from.Y:
		return South
	default:
		return West
	}
}

// arrowFaults checks the arrows of a wire.
func (c *checker) arrowFaults(w Wire) {
	for _, a := range w.Flow.Arrows {
		if level := a.Way == East || a.Way == West; !c.showsArrow(w.ID, a.At, level) {
			c.fault(a.At, []string{w.ID}, "the arrow of wire %s does not stand on its line alone", w.ID)
		}
	}
}
