// Package route draws the wires of a diagram whose boxes have their places.
//
// The grid has two slots per cell, one for a wire running level and one for a wire running upright; a bend takes
// both. Two wires in one slot are a conflict, a level and an upright wire in one cell are a crossing. So wires
// cannot lie on each other or touch once no slot is taken twice. Wires first share slots at a price that rises until
// they part (negotiated congestion, McMurchie and Ebeling, "PathFinder", FPGA 1995); where that does not end, rows
// and columns are inserted. All costs are integers and all ties go to the lower index.
package route

import (
	"slices"

	"example.com/lugbook/diagram/layout/geom"
)

// Terminal is a place on a box's border where wires end.
type Terminal struct {
	// Box is the index of the box.
	Box int
	// At is the cell on the border.
	At geom.Point
	// Side is the side of the box: wires leave that way.
	Side geom.Side
}

// Wire joins two terminals, given by index.
type Wire struct {
	From, To int
	// Labels are the lengths in cells of the texts that may stand on the wire, best first.
	Labels []int
}

func (w Wire) ends() [2]int { return [2]int{w.From, w.To} }

// Zone is a frame that wires cross at right angles only.
type Zone struct {
	Rect geom.Rect
	// Title is the number of cells in the top edge, from the third on, that no wire may cross.
	Title int
}

// Costs prices a route.
type Costs struct {
	Col, Row int // one step level, one step upright
	Bend     int
	Cross    int // crossing another wire
	Near     int // each cell right beside a box
	Frame    int // crossing a zone's frame
	Label    int // bending too early for a label, or crossing the place where one would stand
	Shared   int // each cell beyond the second that wires of one terminal share
	Hidden   int // crossing right beside a corner or the end of either wire, besides Cross
	Beside   int // each few cells right beside a wire that runs the same way
}

// DefaultCosts weighs a crossing against a bend as 24 to 20, with one step costing col or row. The proportion was
// tuned on random graphs; studies of reading agree that crossings hurt more (Purchase, 1997).
func DefaultCosts(col, row int) Costs {
	return Costs{Col: col, Row: row, Bend: 20, Cross: 24, Near: 1, Frame: 15, Label: 6, Shared: 3, Hidden: 6,
		Beside: 1}
}

// Problem is a diagram to be routed. Solve changes it: Paths are filled, and where rows or columns had to be
// inserted, boxes, terminals and zones lie further right or down.
type Problem struct {
	Boxes     []geom.Rect
	Pinned    []bool // per box: must not be shifted
	Terminals []Terminal
	Wires     []Wire
	Zones     []Zone
	// Paths holds the corners of each wire from terminal to terminal. A path given that is still legal is kept.
	Paths [][]geom.Point
	// Placed are places that labels had before, in the order of the wires; nil for none.
	Placed []Label
	// MaxWidth is the number of columns the drawing may have, counted from column 0; 0 for any.
	MaxWidth int
	// Anchored forbids columns and rows below 0.
	Anchored bool
	Costs    Costs

	reach  geom.Rect // the grid covers at least this, as far as the page allows
	longer []int     // per terminal, cells added to its stub; nil for none
}

// stubLength is the number of cells before a terminal that its k wires share: two can leave to the sides of each cell,
// and one straight on from the last.
func (p *Problem) stubLength(terminal, k int) int {
	length := min(k, 1)
	if k > 2 {
		length = k / 2
	}
	if k > 1 && p.longer != nil {
		length += p.longer[terminal]
	}
	return length
}

// lengthen makes the stub of a terminal longer, so that its wires can leave where those of the next terminal do not. It
// reports false when that has been done often enough.
func (p *Problem) lengthen(terminal int) bool {
	if p.longer == nil {
		p.longer = make([]int, len(p.Terminals))
	}
	if p.longer[terminal] == stubMost {
		return false
	}
	p.longer[terminal]++
	return true
}

// stubsDrawn is by how much the stubs of terminals are longer than they need be in the paths as they are: the wires of
// one terminal run together as far as all but one of them go straight on.
func (p *Problem) stubsDrawn() []int {
	out := make([]int, len(p.Terminals))
	ends := make([][]int, len(p.Terminals))
	for w, path := range p.Paths {
		if n := len(path); n > 1 {
			from, to := p.Wires[w].From, p.Wires[w].To
			ends[from] = append(ends[from], distance(path[0], path[1]))
			ends[to] = append(ends[to], distance(path[n-1], path[n-2]))
		}
	}
	for t, k := range p.wiresPer() {
		if len(ends[t]) < 2 {
			continue
		}
		slices.Sort(ends[t])
		together := ends[t][len(ends[t])-2]
		out[t] = max(0, min(together-p.stubLength(t, k), stubMost))
	}
	return out
}

func distance(a, b geom.Point) int { return geom.Abs(a.X-b.X) + geom.Abs(a.Y-b.Y) }

// stubMost is the number of cells by which a stub may be made longer.
const stubMost = 4

// labelRoom is the length of straight line that the first label asks for: two cells of line on both ends.
func (w Wire) labelRoom() int {
	if len(w.Labels) == 0 {
		return 0
	}
	return w.Labels[0] + labelEnds
}

// labelEnds is the number of line cells that stay visible beside an inline label, both ends together.
const labelEnds = 4

// Extent is the rectangle that covers boxes, zones and paths.
func (p *Problem) Extent() geom.Rect {
	var out geom.Rect
	first := true
	add := func(r geom.Rect) {
		if first {
			out, first = r, false
			return
		}
		out = out.Union(r)
	}
	for _, b := range p.Boxes {
		add(b)
	}
	for _, z := range p.Zones {
		add(z.Rect)
	}
	for _, path := range p.Paths {
		if len(path) > 0 {
			add(geom.Around(path))
		}
	}
	return out
}

// Shift moves everything by d.
func (p *Problem) Shift(d geom.Point) {
	zones := make([]Zone, len(p.Zones))
	for i, z := range p.Zones {
		zones[i] = Zone{Rect: z.Rect.Moved(d), Title: z.Title}
	}
	p.remap(func(q geom.Point) geom.Point { return q.Add(d) }, func(r geom.Rect) geom.Rect { return r.Moved(d) }, zones)
}

// remap moves boxes by rect, their terminals with them, and corners of paths by point, and takes the new zones.
func (p *Problem) remap(point func(geom.Point) geom.Point, rect func(geom.Rect) geom.Rect, zones []Zone) {
	moved := make([]geom.Point, len(p.Boxes))
	for i, b := range p.Boxes {
		p.Boxes[i] = rect(b)
		moved[i] = geom.Point{X: p.Boxes[i].X - b.X, Y: p.Boxes[i].Y - b.Y}
	}
	for t := range p.Terminals {
		p.Terminals[t].At = p.Terminals[t].At.Add(moved[p.Terminals[t].Box])
	}
	p.Zones = zones
	for _, path := range p.Paths {
		for k := range path {
			path[k] = point(path[k])
		}
	}
	for w := range p.Placed {
		if p.Placed[w].OK {
			p.Placed[w].At = point(p.Placed[w].At)
		}
	}
}
