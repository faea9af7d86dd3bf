package text

import (
	"slices"

	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/symbol"
)

// Options chooses how a page is painted.
type Options struct {
	ASCII bool // printable ASCII characters only
	Bare  bool // the drawing alone, without title block and legend
}

// Render paints a page. It never fails: what lies outside of the page is left out.
// Run [scene.Check] to learn whether a page can be painted legibly.
func Render(p *scene.Page, o Options) *Grid {
	g := &unicodeGlyphs
	if o.ASCII {
		g = &asciiGlyphs
	}
	var below []line
	w := p.W
	if !o.Bare {
		w = max(w, leastWidth)
		below = titleBlock(p, g, w)
	}
	c := canvas{Grid: newGrid(w, p.H+len(below)), glyphs: g, crossed: map[scene.Point]bool{}}
	for _, crossing := range p.Crossings() {
		c.crossed[crossing.At] = true
	}
	c.zones(p)
	for _, upright := range []bool{false, true} {
		for _, wire := range p.Wires {
			c.wire(wire, upright)
		}
	}
	for _, b := range p.Boxes {
		c.box(b)
	}
	for _, f := range p.Flags {
		c.flag(f)
	}
	c.pieces(p)
	for _, wire := range p.Wires {
		c.ends(p, wire)
		c.write(wire.Label.At, c.text(wire.Label.Text), wireCell(wire, WireLabel, scene.LabelKind))
		c.flow(wire)
	}
	c.changes(p)
	for i, l := range below {
		c.write(scene.Point{Y: p.H + i}, l.text, Cell{Role: l.role})
	}
	return c.Grid
}

type canvas struct {
	*Grid
	glyphs  *glyphs
	crossed map[scene.Point]bool // where wires cross
}

// text cleans a text, and makes it ASCII where that is asked for.
func (c canvas) text(s string) string {
	if s = scene.Clean(s); c.glyphs.ascii {
		return asciiOnly(s)
	}
	return s
}

func (c canvas) zones(p *scene.Page) {
	for _, z := range p.Zones {
		c.rect(z.Rect, &c.glyphs.zone, Cell{Role: ZoneFrame, Owner: scene.Ref{Kind: scene.ZoneKind, ID: z.ID}})
	}
	for _, t := range p.ZoneTitles() {
		c.write(t.At, c.text(t.Text), Cell{Role: ZoneName, Owner: scene.Ref{Kind: scene.ZoneKind, ID: t.Zone}})
	}
}

// rect draws the outer cells of a rectangle.
func (c canvas) rect(r scene.Rect, set *[16]rune, like Cell) {
	if r.W < 2 || r.H < 2 {
		return
	}
	corners := []scene.Point{{X: r.X, Y: r.Y}, {X: r.Right(), Y: r.Y}, {X: r.Right(), Y: r.Bottom()}, {X: r.X, Y: r.Bottom()}}
	bends := [4]int{east | south, south | west, west | north, north | east}
	for i, corner := range corners {
		next := corners[(i+1)%4]
		cells := scene.Cells([]scene.Point{corner, next})
		for k, cell := range cells[:len(cells)-1] {
			arms := bends[i]
			if k > 0 && corner.Y == next.Y {
				arms = east | west
			} else if k > 0 {
				arms = north | south
			}
			like.Rune = set[arms]
			if c.glyphs.ascii && like.Role == ZoneFrame && arms == east|west && cell.X%2 == 1 {
				like.Rune = ' '
			}
			c.put(cell, like)
		}
	}
}

func wireCell(w scene.Wire, role Role, kind scene.Kind) Cell {
	return Cell{
		Role: role, Weight: w.Weight, Colour: scene.Clean(w.Colour), Change: w.Change, Energy: w.Flow.Energy, Flows: w.Flow.Carries(),
		Owner: scene.Ref{Kind: kind, ID: w.ID},
	}
}

// unjudgedSign stands on the line of a wire of which nothing is known in a state.
const unjudgedSign = '?'

// flow writes what a wire does in the state that is shown: its figure and its arrows.
func (c canvas) flow(w scene.Wire) {
	c.write(w.Flow.Note.At, c.text(w.Flow.Note.Text), wireCell(w, WireFigure, scene.LabelKind))
	like := wireCell(w, FlowArrow, scene.WireKind)
	for _, a := range w.Flow.Arrows {
		like.Rune = c.glyphs.arrow[a.Way]
		if w.Flow.Energy == scene.Unjudged {
			like.Rune = unjudgedSign
		}
		c.put(a.At, like)
	}
}

// wire draws the upright runs of a wire, or the rest of it, without its ends.
func (c canvas) wire(w scene.Wire, upright bool) {
	cells := scene.Cells(w.Path)
	like := wireCell(w, WireLine, scene.WireKind)
	for i := 1; i+1 < len(cells); i++ {
		arms := arm(cells[i], cells[i-1]) | arm(cells[i], cells[i+1])
		if (arms == north|south) == upright {
			like.Rune = c.glyphs.line(w, arms, cells[i])
			if like.Rune == ' ' && c.needsLine(cells, i) {
				like.Rune = c.glyphs.wire[penOf(w.Weight)][arms]
			}
			c.put(cells[i], like)
		}
	}
}

// needsLine reports whether a gap in a wire's line would hide where it joins a terminal or
// crosses another wire.
func (c canvas) needsLine(cells []scene.Point, i int) bool {
	return i == 1 || i == len(cells)-2 || c.crossed[cells[i-1]] || c.crossed[cells[i]] || c.crossed[cells[i+1]]
}

// ends draws the terminals of boxes that a wire ends on.
func (c canvas) ends(p *scene.Page, w scene.Wire) {
	if len(w.Path) < 2 {
		return
	}
	for _, b := range p.Boxes {
		for _, port := range b.Ports {
			if port.At == w.Path[0] || port.At == w.Path[len(w.Path)-1] {
				c.join(b, port, penOf(w.Weight), wireCell(w, PortJoin, scene.PortKind))
			}
		}
	}
}

func (c canvas) join(b scene.Box, port scene.Port, p pen, like Cell) {
	frame := 0
	if b.Change == scene.Added {
		frame = 1
	}
	like.Rune = c.glyphs.join[frame][p][port.Side]
	like.Owner = scene.PortRef(b.ID, port)
	c.put(port.At, like)
}

func (c canvas) flag(f scene.Flag) {
	owner := scene.Ref{Kind: scene.FlagRef, ID: f.ID}
	mark, ok := c.glyphs.flag[f.Kind]
	if !ok {
		mark = c.glyphs.offPage[f.Port.Side]
	}
	at := scene.Point{X: f.Rect.X, Y: f.Rect.Y}
	if f.Port.At == at {
		at.X++
	}
	c.write(at, c.text(f.Text), Cell{Role: FlagText, Owner: owner})
	c.put(f.Port.At, Cell{Rune: mark, Role: FlagMark, Owner: owner})
}

// box draws a part: frame, terminals, writing, brackets, symbol.
func (c canvas) box(b scene.Box) {
	owner := scene.Ref{Kind: scene.BoxKind, ID: b.ID}
	blank := Cell{Rune: ' ', Owner: owner, Change: b.Change}
	for y := b.Rect.Y; y <= b.Rect.Bottom(); y++ {
		for x := b.Rect.X; x <= b.Rect.Right(); x++ {
			c.put(scene.Point{X: x, Y: y}, blank)
		}
	}
	c.rect(b.Rect, c.frame(b.Change), Cell{Role: BoxFrame, Owner: owner, Change: b.Change})
	c.cornerSigns(b, owner)
	for _, port := range b.Ports {
		c.join(b, port, light, Cell{Role: PortJoin, Change: b.Change})
	}
	inside := scene.Inside(b)
	for _, br := range inside.Brackets {
		c.bracket(br, Cell{Role: SeatBracket, Owner: scene.PortRef(b.ID, b.Ports[br.Port])})
	}
	for _, w := range inside.Writings {
		like := Cell{Role: writingRoles[w.Role], Owner: owner, Change: b.Change, Active: b.Works.Active}
		if w.Port >= 0 {
			like.Owner = scene.PortRef(b.ID, b.Ports[w.Port])
		}
		c.write(w.At, c.text(w.Text), like)
	}
	if s, ok := symbol.Of(b); ok && inside.Symbol.W > 0 {
		c.symbol(s, inside.Symbol, Cell{Role: Symbol, Owner: owner, Change: b.Change})
	}
}

// symbol draws a symbol into its room: in three rows where there are as many and it says
// more so, else in one.
func (c canvas) symbol(s symbol.Symbol, room scene.Rect, like Cell) {
	at := scene.Point{X: room.X, Y: room.Y}
	if rows, ok := s.Block(c.glyphs.ascii); ok && room.H == len(rows) {
		for i, row := range rows {
			c.write(at.Add(0, i), row, like)
		}
		return
	}
	c.write(at.Add(0, room.H/2), s.Row(room.W, c.glyphs.ascii), like)
}

var writingRoles = [...]Role{scene.Head: BoxHead, scene.MarkSign: BoxMark, scene.PartName: BoxName, scene.PortName: PortName, scene.SeatNo: SeatNo, scene.WorkWord: WorkWord}

// frame is the line style of a box by what became of it: added parts stand out
// heavy, removed ones are dashed.
func (c canvas) frame(change scene.Change) *[16]rune {
	switch change {
	case scene.Added:
		return &c.glyphs.heavy
	case scene.Removed:
		return &c.glyphs.dashedFrame
	default:
		return &c.glyphs.frame
	}
}

// bracket draws the line that ties the positions of a stud together.
func (c canvas) bracket(br scene.Bracket, like Cell) {
	out, in := outward(br.Side)
	along := north | south
	if br.Side == scene.North || br.Side == scene.South {
		along = east | west
	}
	for _, cell := range scene.Cells([]scene.Point{br.From, br.To}) {
		arms := along
		if cell == br.From {
			arms &^= north | west
		}
		if cell == br.To {
			arms &^= south | east
		}
		if slices.Contains(br.Arms, cell) {
			arms |= out
		}
		if cell == br.Join && !br.Embedded {
			arms |= in
			if slices.Contains(br.Arms, cell) && cell != br.From && cell != br.To {
				arms &^= out // a cross would look like wires that cross
			}
		}
		like.Rune = c.glyphs.frame[arms]
		c.put(cell, like)
	}
}

// outward is the arm towards a side and the arm away from it.
func outward(s scene.Side) (out, in int) {
	out = north << s
	in = north << ((s + 2) % 4)
	return out, in
}
