package scene

import "fmt"

// Fault is one thing that makes a page illegible or wrong.
type Fault struct {
	At   Point    // a cell where it shows
	IDs  []string // the things concerned
	Text string   // what is wrong, in words
}

// String is the fault in one line.
func (f Fault) String() string { return fmt.Sprintf("column %d row %d: %s", f.At.X, f.At.Y, f.Text) }

// Check lists what is wrong with a page, in the order of its lists. A page without
// faults has its boxes apart and off the zones' frames, its wires orthogonal, from
// port to port, through no box and on no other wire, its labels and flags on nothing
// else, and the writing in its boxes legible.
func Check(p *Page) []Fault {
	c := survey(p)
	for _, w := range p.Wires {
		c.label(w.ID, w.Flow.Note)
	}
	for _, w := range p.Wires {
		c.arrowFaults(w)
	}
	for _, f := range p.Flags {
		if c.ports[f.Port.At].wire == "" {
			c.fault(f.Port.At, []string{f.ID}, "no wire ends on flag %s", f.ID)
		}
	}
	return c.faults
}

// survey goes over all of a page but its figures and arrows.
func survey(p *Page) *checker {
	c := &checker{page: p, solid: map[Point]string{}, frame: map[Point]string{}, ports: map[Point]portAt{}, runs: map[Point][]run{}, ids: map[Ref]bool{}}
	for _, z := range p.Zones {
		c.zone(z)
	}
	for _, b := range p.Boxes {
		c.box(b)
	}
	for _, f := range p.Flags {
		c.flag(f)
	}
	for _, w := range p.Wires {
		c.wire(w)
	}
	for _, w := range p.Wires {
		c.label(w.ID, w.Label)
	}
	for i, piece := range p.Pieces {
		c.piece(i, piece)
	}
	return c
}

type portAt struct {
	name string // part.terminal, or the flag
	side Side
	wire string
}

// run is a wire's way through one cell.
type run struct {
	wire         string
	level, turns bool
}

type checker struct {
	page   *Page
	faults []Fault
	solid  map[Point]string // cells of boxes and flags
	frame  map[Point]string // cells of zone frames
	ports  map[Point]portAt
	runs   map[Point][]run
	ids    map[Ref]bool
}

func (c *checker) fault(at Point, ids []string, format string, args ...any) {
	c.faults = append(c.faults, Fault{At: at, IDs: ids, Text: fmt.Sprintf(format, args...)})
}

// unique faults an id that is empty or taken.
func (c *checker) unique(kind Kind, word, id string, at Point) {
	ref := Ref{Kind: kind, ID: id}
	if id == "" {
		c.fault(at, nil, "%s without an id", word)
	} else if c.ids[ref] {
		c.fault(at, []string{id}, "second %s called %s", word, id)
	}
	c.ids[ref] = true
}

// inPage faults a rectangle that is empty or leaves the page.
func (c *checker) inPage(what string, r Rect) bool {
	if r.W < 1 || r.H < 1 || r.X < 0 || r.Y < 0 || r.Right() >= c.page.W || r.Bottom() >= c.page.H {
		c.fault(Point{r.X, r.Y}, nil, "%s leaves the page", what)
		return false
	}
	return true
}

func (c *checker) zone(z Zone) {
	c.unique(ZoneKind, "zone", z.ID, Point{z.Rect.X, z.Rect.Y})
	if !c.inPage("zone "+z.ID, z.Rect) {
		return
	}
	for cell := range frameCells(z.Rect) {
		if other := c.frame[cell]; other != "" {
			c.fault(cell, []string{z.ID, other}, "zones %s and %s share a frame cell", z.ID, other)
			return
		}
	}
	for cell := range frameCells(z.Rect) {
		c.frame[cell] = z.ID
	}
}
