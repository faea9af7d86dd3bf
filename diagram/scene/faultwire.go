package scene

import "fmt"

func (c *checker) wire(w Wire) {
	ids := []string{w.ID}
	if len(w.Path) < 2 {
		c.fault(Point{}, ids, "wire %s has no path", w.ID)
		return
	}
	c.unique(WireKind, "wire", w.ID, w.Path[0])
	for i := 1; i < len(w.Path); i++ {
		if from, to := w.Path[i-1], w.Path[i]; from == to || from.X != to.X && from.Y != to.Y {
			c.fault(to, ids, "wire %s is not orthogonal", w.ID)
			return
		}
	}
	cells := Cells(w.Path)
	last := len(cells) - 1
	c.end(w, cells[0], cells[1], w.From)
	c.end(w, cells[last], cells[last-1], w.To)
	for i := 1; i < last; i++ {
		c.pass(w.ID, cells[i-1], cells[i], cells[i+1])
	}
	if last == 1 {
		c.fault(cells[0], ids, "wire %s is too short to be seen", w.ID)
	}
}

// end checks one end of a wire: on a free port, leaving the box, where it says.
func (c *checker) end(w Wire, at, next Point, name string) {
	p, ok := c.ports[at]
	dx, dy := p.side.Step()
	switch {
	case !ok:
		c.fault(at, []string{w.ID}, "wire %s ends on no terminal", w.ID)
	case p.wire != "":
		c.fault(at, []string{w.ID, p.wire}, "wires %s and %s end in one cell", w.ID, p.wire)
	case at.Add(dx, dy) != next:
		c.fault(at, []string{w.ID}, "wire %s does not leave %s straight", w.ID, p.name)
	case name != "" && name != p.name:
		c.fault(at, []string{w.ID}, "wire %s says it ends on %s but ends on %s", w.ID, name, p.name)
	}
	p.wire = w.ID
	c.ports[at] = p
}

// pass checks one cell of a wire between its ends.
func (c *checker) pass(id string, before, at, after Point) {
	if at.X < 0 || at.Y < 0 || at.X >= c.page.W || at.Y >= c.page.H {
		c.fault(at, []string{id}, "wire %s leaves the page", id)
		return
	}
	if other := c.solid[at]; other != "" {
		c.fault(at, []string{id, other}, "wire %s runs through %s", id, other)
	}
	now := run{wire: id, level: before.Y == at.Y, turns: before.X != after.X && before.Y != after.Y}
	for _, r := range c.runs[at] {
		if r.turns || now.turns || r.level == now.level || r.wire == id {
			c.fault(at, []string{id, r.wire}, "wires %s and %s lie on each other", id, r.wire)
		}
	}
	c.runs[at] = append(c.runs[at], now)
}

// labelReach is how far, in columns, a label may stand from the upright run that it names.
const labelReach = 2

// label checks a wire's label, or its figure, and takes the room.
func (c *checker) label(wire string, l Label) {
	if l.Text == "" {
		return
	}
	faults, cells := c.labelFaults(wire, l)
	c.faults = append(c.faults, faults...)
	for _, cell := range cells {
		c.solid[cell] = "the label of " + wire
	}
}

// labelFaults lists what is wrong with a text at a wire, and the cells of it that are on
// the page.
func (c *checker) labelFaults(wire string, l Label) (faults []Fault, cells []Point) {
	found := func(at Point, ids []string, format string, args ...any) {
		faults = append(faults, Fault{At: at, IDs: ids, Text: fmt.Sprintf(format, args...)})
	}
	ids := []string{wire}
	all := l.Cells()
	for i, cell := range all {
		if cell.X < 0 || cell.Y < 0 || cell.X >= c.page.W || cell.Y >= c.page.H {
			found(cell, ids, "the label of wire %s leaves the page", wire)
			return faults, all[:i]
		}
		for _, r := range c.runs[cell] {
			if r.wire != wire {
				found(cell, []string{wire, r.wire}, "the label of wire %s lies on wire %s", wire, r.wire)
			} else if r.turns {
				found(cell, ids, "the label of wire %s hides a bend of it", wire)
			}
		}
		other := c.solid[cell]
		if other == "" {
			other = c.frame[cell]
		}
		if other != "" {
			found(cell, []string{wire, other}, "the label of wire %s lies on %s", wire, other)
		}
	}
	if !c.atOwnWire(wire, l.Vertical, all) {
		found(all[0], ids, "the label of wire %s does not stand at it", wire)
	}
	if l.Vertical {
		for _, end := range []struct {
			at   Point
			side Side
		}{{all[0].Add(-1, 0), East}, {all[len(all)-1].Add(1, 0), West}} {
			// It would read as a wire that lands there.
			if p, ok := c.ports[end.at]; ok && p.side == end.side {
				found(end.at, ids, "the label of wire %s touches %s", wire, p.name)
			}
		}
	}
	return faults, all
}

// atOwnWire reports whether a label stands in a level run with a piece of the line
// on either hand, or across or beside an upright run.
func (c *checker) atOwnWire(wire string, upright bool, cells []Point) bool {
	first, last := cells[0], cells[len(cells)-1]
	if !upright {
		for _, cell := range append(cells, first.Add(-1, 0), last.Add(1, 0)) {
			if !c.hasRun(cell, wire, true) {
				return false
			}
		}
		return true
	}
	for x := first.X - labelReach; x <= last.X+labelReach; x++ {
		if c.hasRun(Point{x, first.Y}, wire, false) {
			return true
		}
	}
	return false
}

func (c *checker) hasRun(at Point, wire string, level bool) bool {
	for _, r := range c.runs[at] {
		if r.wire == wire && (r.turns || r.level == level) {
			return true
		}
	}
	return false
}
