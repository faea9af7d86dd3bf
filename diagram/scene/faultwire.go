package scene

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

func (c *checker) label(w Wire) {
	if w.Label.Text == "" {
		return
	}
	ids := []string{w.ID}
	cells := w.Label.Cells()
	for _, cell := range cells {
		if cell.X < 0 || cell.Y < 0 || cell.X >= c.page.W || cell.Y >= c.page.H {
			c.fault(cell, ids, "the label of wire %s leaves the page", w.ID)
			return
		}
		for _, r := range c.runs[cell] {
			if r.wire != w.ID {
				c.fault(cell, []string{w.ID, r.wire}, "the label of wire %s lies on wire %s", w.ID, r.wire)
			} else if r.turns {
				c.fault(cell, ids, "the label of wire %s hides a bend of it", w.ID)
			}
		}
		other := c.solid[cell]
		if other == "" {
			other = c.frame[cell]
		}
		if other != "" {
			c.fault(cell, []string{w.ID, other}, "the label of wire %s lies on %s", w.ID, other)
		}
		c.solid[cell] = "the label of " + w.ID
	}
	if !c.atOwnWire(w, cells) {
		c.fault(cells[0], ids, "the label of wire %s does not stand at it", w.ID)
	}
	if w.Label.Vertical {
		c.besidePort(w, cells[0].Add(-1, 0), East)
		c.besidePort(w, cells[len(cells)-1].Add(1, 0), West)
	}
}

// besidePort checks that a label beside an upright run touches no terminal that faces
// it: it would read as a wire that lands there.
func (c *checker) besidePort(w Wire, at Point, side Side) {
	if p, ok := c.ports[at]; ok && p.side == side {
		c.fault(at, []string{w.ID}, "the label of wire %s touches %s", w.ID, p.name)
	}
}

// atOwnWire reports whether a label stands in a level run with a piece of the line
// on either hand, or across or beside an upright run.
func (c *checker) atOwnWire(w Wire, cells []Point) bool {
	first, last := cells[0], cells[len(cells)-1]
	if !w.Label.Vertical {
		for _, cell := range append(cells, first.Add(-1, 0), last.Add(1, 0)) {
			if !c.hasRun(cell, w.ID, true) {
				return false
			}
		}
		return true
	}
	for x := first.X - labelReach; x <= last.X+labelReach; x++ {
		if c.hasRun(Point{x, first.Y}, w.ID, false) {
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
