package route

import "example.com/lugbook/diagram/layout/geom"

// What a cell forbids, whatever the wires do.
const (
	blocked   uint8 = 1 << iota // inside or on the border of a box, or under a zone's title
	noLevel                     // a wire must not run level here
	noUpright                   // a wire must not run upright here
	frame                       // part of a zone's frame: crossing it costs
	stubOnly                    // first cells of a terminal with several wires: theirs alone
)

// Axis indices of the two slots of a cell.
const (
	level = iota
	upright
)

func axisOf(d geom.Side) int {
	if d.Horizontal() {
		return level
	}
	return upright
}

// margin is the free room kept around the drawing for wires, in cells.
const margin = 6

// grid is the routing area. Cells are numbered row by row.
type grid struct {
	x0, y0, w, h int
	static       []uint8
	owner        []int32     // terminal + 1 that reserves the cell, or 0
	extra        []uint8     // price of entering the cell
	apron        []uint8     // price of passing upright through a place where a label would stand
	use          [2][]uint8  // wires in the slot
	past         [2][]uint16 // rounds in which the slot was in conflict
	step         [4]int32    // cell distance of a step per direction
	clip         geom.Rect   // where what the cells forbid is being worked out
}

func (g *grid) index(p geom.Point) int32 { return int32((p.Y-g.y0)*g.w + p.X - g.x0) }

func (g *grid) point(c int32) geom.Point {
	return geom.Point{X: int(c)%g.w + g.x0, Y: int(c)/g.w + g.y0}
}

func (g *grid) inside(p geom.Point) bool {
	return p.X >= g.x0 && p.X < g.x0+g.w && p.Y >= g.y0 && p.Y < g.y0+g.h
}

// newGrid sets up the area for the problem. Post: no slot is in use; every cell of a box is blocked; the first cell
// before each terminal is reserved for its wires.
func newGrid(p *Problem) *grid {
	g := &grid{}
	g.bounds(p)
	g.clip = g.whole()
	n := g.w * g.h
	g.static = make([]uint8, n)
	g.owner = make([]int32, n)
	g.extra = make([]uint8, n)
	g.apron = make([]uint8, n)
	for a := range g.use {
		g.use[a] = make([]uint8, n)
		g.past[a] = make([]uint16, n)
	}
	for d := range g.step {
		s := geom.Side(d).Step()
		g.step[d] = int32(s.Y*g.w + s.X)
	}
	for _, z := range p.Zones {
		g.addZone(z, p.Costs.Near)
	}
	for _, b := range p.Boxes {
		g.addBox(b, p.Costs.Near)
	}
	g.reserve(p, p.wiresPer())
	g.aprons(p)
	return g
}

// bounds chooses the area: the drawing and a margin, but no column below 0 or beyond the page if there is one.
func (g *grid) bounds(p *Problem) {
	e := p.Extent().Grow(margin, margin, margin, margin)
	if p.MaxWidth > 0 {
		right := max(min(e.Right(), p.MaxWidth-1), p.Extent().Right())
		e.X = max(e.X, min(0, p.Extent().X))
		e.W = right - e.X
	}
	if p.Anchored {
		right, bottom := e.Right(), e.Bottom()
		e.X, e.Y = max(e.X, 0), max(e.Y, 0)
		e.W, e.H = right-e.X, bottom-e.Y
	}
	g.x0, g.y0, g.w, g.h = e.X, e.Y, e.W+1, e.H+1
}

// each calls f for the cells of r that are being worked out.
func (g *grid) each(r geom.Rect, f func(c int32)) {
	for y := max(r.Y, g.y0, g.clip.Y); y <= min(r.Bottom(), g.y0+g.h-1, g.clip.Bottom()); y++ {
		for x := max(r.X, g.x0, g.clip.X); x <= min(r.Right(), g.x0+g.w-1, g.clip.Right()); x++ {
			f(g.index(geom.Point{X: x, Y: y}))
		}
	}
}

func (g *grid) addBox(b geom.Rect, near int) {
	g.each(b.Grow(1, 1, 1, 1), func(c int32) { g.extra[c] = uint8(near) })
	g.each(b, func(c int32) { g.static[c] |= blocked })
}

// addZone lets wires pass a frame at right angles only, and nowhere through its corners and its title, and keeps them
// from running close beside it.
func (g *grid) addZone(z Zone, near int) {
	r := z.Rect
	top, bottom := geom.Rect{X: r.X, Y: r.Y, W: r.W}, geom.Rect{X: r.X, Y: r.Bottom(), W: r.W}
	left, right := geom.Rect{X: r.X, Y: r.Y, H: r.H}, geom.Rect{X: r.Right(), Y: r.Y, H: r.H}
	for _, edge := range [4]geom.Rect{top, bottom, left, right} {
		g.each(edge.Grow(1, 1, 1, 1), func(c int32) { g.extra[c] = uint8(near) })
	}
	for _, edge := range [2]geom.Rect{top, bottom} {
		g.each(edge, func(c int32) { g.static[c] |= noLevel | frame })
	}
	for _, edge := range [2]geom.Rect{left, right} {
		g.each(edge, func(c int32) { g.static[c] |= noUpright | frame })
	}
	if z.Title > 0 {
		g.each(geom.Rect{X: r.X + 1, Y: r.Y, W: min(z.Title+1, r.W-1)}, func(c int32) { g.static[c] |= blocked })
	}
}

// reserve keeps the cells straight before every terminal in use for its own wires: one cell for a single wire, which
// others may cross, and (k-1)/2 rounded up, which are theirs alone, for k wires, so that two can leave at each.
func (g *grid) reserve(p *Problem, count []int) {
	for t, k := range count {
		at, out := p.Terminals[t].At, p.Terminals[t].Side.Step()
		for i := 0; i < p.stubLength(k); i++ {
			at = at.Add(out)
			if !g.inside(at) {
				break
			}
			c := g.index(at)
			if g.static[c]&blocked != 0 || g.owner[c] != 0 && g.owner[c] != int32(t+1) {
				break
			}
			if !g.clip.Contains(at) {
				continue
			}
			g.owner[c] = int32(t + 1)
			switch {
			case k > 1:
				g.static[c] |= stubOnly
			case p.Terminals[t].Side.Horizontal():
				g.static[c] |= noLevel
			default:
				g.static[c] |= noUpright
			}
		}
	}
}

// aprons makes it dear to cross the row where a wire's label would stand, right before the terminal it comes from.
func (g *grid) aprons(p *Problem) {
	for _, w := range p.Wires {
		t := p.Terminals[w.From]
		room := w.labelRoom()
		if room == 0 || !t.Side.Horizontal() {
			continue
		}
		at := t.At
		for i := 0; i < room; i++ {
			at = at.Add(t.Side.Step())
			if !g.inside(at) || g.static[g.index(at)]&blocked != 0 {
				break
			}
			if g.clip.Contains(at) {
				g.apron[g.index(at)] = uint8(p.Costs.Label)
			}
		}
	}
}

// allows tells whether a wire between the terminals from and to may run through c on the axis, other wires aside.
func (g *grid) allows(c int32, axis int, from, to int) bool {
	s := g.static[c]
	if s&blocked != 0 {
		return false
	}
	if o := g.owner[c]; o != 0 {
		if o == int32(from+1) || o == int32(to+1) {
			return s&frame == 0
		}
		if s&stubOnly != 0 {
			return false
		}
	}
	if axis == level {
		return s&noLevel == 0
	}
	return s&noUpright == 0
}

// private tells whether c is shared freely by the wires of one of the two terminals, and by no others.
func (g *grid) private(c int32, from, to int) bool {
	o := g.owner[c]
	return o != 0 && g.static[c]&stubOnly != 0 && (o == int32(from+1) || o == int32(to+1))
}
