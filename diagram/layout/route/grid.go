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
	cell         []cell
	owner        []int32    // terminal + 1 that reserves the cell, or 0
	apron        []uint8    // price of passing upright through a place where a label would stand
	who          [2][]int32 // wire + 1 in the slot; of several, all numbers combined by exclusive or
	step         [4]int32   // cell distance of a step per direction
	clip         geom.Rect  // where what the cells forbid is being worked out
	costs        Costs
	stub         [][]int32 // per terminal the cells that it reserves
}

// cell is what the search has to know of a place. What concerns its two slots stands in pairs.
type cell struct {
	pass   [2]uint16 // price for a foreign wire to run through, or noPass
	past   [2]uint16 // what conflicts have taught about the slot
	use    [2]uint8  // wires in the slot
	turns  [2]uint8  // wires that bend in a neighbour along the axis
	beside [2]uint8  // wires that run along the axis in a neighbour across it, on the cells that count
	static uint8
	extra  uint8 // price of entering
}

// noPass is the price where a wire must not run.
const noPass = 1<<16 - 1

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
	g := &grid{costs: p.Costs}
	g.bounds(p)
	g.clip = g.whole()
	n := g.w * g.h
	g.cell = make([]cell, n)
	g.owner = make([]int32, n)
	g.apron = make([]uint8, n)
	for a := range g.who {
		g.who[a] = make([]int32, n)
	}
	g.stub = make([][]int32, len(p.Terminals))
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
	g.price(g.clip)
	return g
}

// bounds chooses the area: the drawing and a margin, but no column below 0 or beyond the page if there is one.
func (g *grid) bounds(p *Problem) {
	e := p.Extent().Grow(margin, margin, margin, margin)
	if p.reach != (geom.Rect{}) {
		e = e.Union(p.reach)
	}
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
	g.each(b.Grow(1, 1, 1, 1), func(c int32) { g.cell[c].extra = uint8(near) })
	g.each(b, func(c int32) { g.cell[c].static |= blocked })
}

// addZone lets wires pass a frame at right angles only, and nowhere through its corners and its title, and keeps them
// from running close beside it.
func (g *grid) addZone(z Zone, near int) {
	r := z.Rect
	top, bottom := geom.Rect{X: r.X, Y: r.Y, W: r.W}, geom.Rect{X: r.X, Y: r.Bottom(), W: r.W}
	left, right := geom.Rect{X: r.X, Y: r.Y, H: r.H}, geom.Rect{X: r.Right(), Y: r.Y, H: r.H}
	for _, edge := range [4]geom.Rect{top, bottom, left, right} {
		g.each(edge.Grow(1, 1, 1, 1), func(c int32) { g.cell[c].extra = uint8(near) })
	}
	for _, edge := range [2]geom.Rect{top, bottom} {
		g.each(edge, func(c int32) { g.cell[c].static |= noLevel | frame })
	}
	for _, edge := range [2]geom.Rect{left, right} {
		g.each(edge, func(c int32) { g.cell[c].static |= noUpright | frame })
	}
	if z.Title > 0 {
		g.each(geom.Rect{X: r.X + 1, Y: r.Y, W: min(z.Title+1, r.W-1)}, func(c int32) { g.cell[c].static |= blocked })
	}
}

// reserve keeps the cells straight before every terminal in use for its own wires: one cell for a single wire, which
// others may cross, and (k-1)/2 rounded up, which are theirs alone, for k wires, so that two can leave at each.
func (g *grid) reserve(p *Problem, count []int) {
	for t, k := range count {
		g.stub[t] = g.stub[t][:0]
		at, out := p.Terminals[t].At, p.Terminals[t].Side.Step()
		for i := 0; i < p.stubLength(t, k); i++ {
			at = at.Add(out)
			if !g.inside(at) {
				break
			}
			c := g.index(at)
			if g.cell[c].static&blocked != 0 || g.owner[c] != 0 && g.owner[c] != int32(t+1) {
				break
			}
			if !g.clip.Contains(at) {
				if g.owner[c] == int32(t+1) {
					g.stub[t] = append(g.stub[t], c)
				}
				continue
			}
			g.stub[t] = append(g.stub[t], c)
			g.owner[c] = int32(t + 1)
			switch {
			case k > 1:
				g.cell[c].static |= stubOnly
			case p.Terminals[t].Side.Horizontal():
				g.cell[c].static |= noLevel
			default:
				g.cell[c].static |= noUpright
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
			if !g.inside(at) || g.cell[g.index(at)].static&blocked != 0 {
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
	s := g.cell[c].static
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
	return o != 0 && g.cell[c].static&stubOnly != 0 && (o == int32(from+1) || o == int32(to+1))
}

// price works out what it costs foreign wires to run through the cells of r.
func (g *grid) price(r geom.Rect) {
	g.each(r, func(c int32) {
		g.cell[c].pass[level], g.cell[c].pass[upright] = g.passage(c, level, -1, -1), g.passage(c, upright, -1, -1)
	})
}

// passage is the price for a wire between two terminals to run through c on the axis, other wires aside.
func (g *grid) passage(c int32, axis, from, to int) uint16 {
	if !g.allows(c, axis, from, to) {
		return noPass
	}
	price := int(g.cell[c].extra)
	if axis == level {
		price += g.costs.Col
	} else {
		price += g.costs.Row + int(g.apron[c])
	}
	if g.cell[c].static&frame != 0 {
		price += g.costs.Frame
	}
	switch own := g.private(c, from, to); {
	case own:
		price += g.costs.Shared
	case g.owner[c] != 0 && g.owner[c] != int32(from+1) && g.owner[c] != int32(to+1):
		price += g.costs.Hidden
	}
	return uint16(min(price, noPass-1))
}

// unlock puts the prices for their own wires into the cells that two terminals reserve; -1 is none. lock takes them
// back.
func (g *grid) unlock(from, to int) []int32 {
	var own []int32
	for _, t := range [2]int{from, to} {
		if t >= 0 {
			own = append(own, g.stub[t]...)
		}
	}
	for _, c := range own {
		g.cell[c].pass[level], g.cell[c].pass[upright] = g.passage(c, level, from, to), g.passage(c, upright, from, to)
	}
	return own
}

func (g *grid) lock(own []int32) {
	for _, c := range own {
		g.cell[c].pass[level], g.cell[c].pass[upright] = g.passage(c, level, -1, -1), g.passage(c, upright, -1, -1)
	}
}
