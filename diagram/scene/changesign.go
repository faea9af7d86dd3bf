package scene

// ChangeSign is a place where the line of a wire bears the sign of what became of it, in
// brackets: (+). It takes three cells of one row, At in the middle.
type ChangeSign struct {
	Wire   string
	Change Change
	At     Point
}

// signs are the signs of changes.
var signs = [...]string{NoChange: "", Kept: "", Removed: "x", Added: "+", Changed: "~", Moved: ">"}

// Sign is the sign of a change; empty for what stays.
func (c Change) Sign() string { return signs[c] }

// signStretch is the length of a clear piece of line, in cells, that bears a sign in any case.
const signStretch = 9

// ChangeSigns lists where wires bear the signs of what became of them: in the clear
// stretches of their lines. A wire that has no room for one is missing.
func (p *Page) ChangeSigns() []ChangeSign {
	if !p.compares() {
		return nil
	}
	c := survey(p)
	for _, w := range p.Wires {
		c.take(w.ID, w.Flow.Note)
		for _, a := range w.Flow.Arrows {
			c.solid[a.At] = "the arrow of " + w.ID
		}
	}
	var list []ChangeSign
	for i := range p.Wires {
		for _, at := range c.signPlaces(&p.Wires[i]) {
			list = append(list, ChangeSign{p.Wires[i].ID, p.Wires[i].Change, at})
		}
	}
	return list
}

func (p *Page) compares() bool {
	for i := range p.Wires {
		if p.Wires[i].Change.Sign() != "" {
			return true
		}
	}
	return false
}

// signPlaces takes the places of a wire's signs: the middle of each long stretch, or of
// the longest that has room.
func (c *checker) signPlaces(w *Wire) []Point {
	if w.Change.Sign() == "" {
		return nil
	}
	var all, best []Point
	longest := 0
	for i := 1; i < len(w.Path); i++ {
		level := w.Path[i].Y == w.Path[i-1].Y
		for _, stretch := range c.stretches(w.ID, leg{w.Path[i-1], w.Path[i]}) {
			at, ok := c.signPlace(stretch, level)
			switch {
			case !ok:
			case len(stretch) >= signStretch:
				all = append(all, at)
			case len(stretch) > longest:
				longest, best = len(stretch), []Point{at}
			}
		}
	}
	if len(all) == 0 {
		all = best
	}
	for _, at := range all {
		for dx := -1; dx <= 1; dx++ {
			c.solid[at.Add(dx, 0)] = "the sign of " + w.ID
		}
	}
	return all
}

// signPlace finds room for a sign in a stretch, as near to its middle as there is: with a
// piece of the line at either end of it.
func (c *checker) signPlace(stretch []Point, level bool) (Point, bool) {
	edge := 1
	if level {
		edge = 2
	}
	if len(stretch) < 2*edge+1 {
		return Point{}, false
	}
	for _, at := range fromMiddle(leg{stretch[edge], stretch[len(stretch)-1-edge]}) {
		if level || c.blank(at.Add(-1, 0)) && c.blank(at.Add(1, 0)) {
			return at, true
		}
	}
	return Point{}, false
}

// blank reports whether nothing is in a cell of the page, and no terminal next to it opens
// towards it.
func (c *checker) blank(at Point) bool {
	return at.X >= 0 && at.X < c.page.W && c.solid[at] == "" && c.frame[at] == "" && len(c.runs[at]) == 0 && !c.facesOther(at, "")
}
