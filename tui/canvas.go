package tui

import (
	"image"

	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/text"
	"example.com/lugbook/model"
	"example.com/lugbook/tui/screen"
	"example.com/lugbook/tui/theme"
)

// canvasMemo keeps the painted pane, with what it was painted from.
type canvasMemo struct {
	of    canvasKey
	lines []string
}

// canvasKey is everything that the pane's content follows from.
type canvasKey struct {
	picture *picture
	grid    *text.Grid
	shown   image.Rectangle
	marks   marks
	jump    *jumpLayer
	sofar   string
	ghost   image.Rectangle // where the hand holds a box
	ghostOf model.PartID
	pull    *pullLayer
	way     pullTo          // of the wire that is pulled
	port    image.Rectangle // what the drawing as it is shows, on one of the whole job
}

// canvasLines paints the drawing's pane, or takes it from memory.
func (d *desk) canvasLines() []string {
	size := d.plan.Canvas.Size()
	p := d.onScreen()
	if p == nil {
		return d.blankCanvas(size)
	}
	key := canvasKey{picture: p, grid: d.grid(p), shown: image.Rectangle{Min: d.view, Max: d.view.Add(size)}, marks: d.marks(), port: d.viewport()}
	if j, ok := topOf[*jumpLayer](d); ok {
		key.jump, key.sofar = j, j.sofar
	}
	if m, ok := topOf[*moveLayer](d); ok {
		if stood, drawn := d.work.picture.place(ofPart(m.id)); drawn {
			key.ghost, key.ghostOf = stood.Add(m.by), m.id
		}
	}
	if w, ok := topOf[*pullLayer](d); ok && w.asked {
		key.pull, key.way = w, w.of
	}
	if d.canvas.of != key || d.canvas.lines == nil {
		d.canvas = canvasMemo{key, d.paint(key).Lines(d.theme.Reset())}
	}
	return d.canvas.lines
}

// blankCanvas says how to begin.
func (d *desk) blankCanvas(size image.Point) []string {
	s := screen.New(size.X, size.Y, d.session.ASCII)
	lines := []string{"drawing ..."}
	if d.empty() {
		lines = []string{
			"Nothing is on the " + string(d.sheetName) + " sheet yet.", "",
			"a  adds a part from the library",
			"z  adds a zone of the cart",
			"J  opens the job's card: title, system voltage",
			"g  walks from stud to stud, once there are parts",
			":  lists everything else",
		}
	}
	top := max(0, (size.Y-len(lines))/2)
	for i, l := range lines {
		s.WriteIn(max(1, (size.X-48)/2), top+i, size.X-1, l, d.theme.Prefix(theme.Dim))
	}
	return s.Lines(d.theme.Reset())
}

// paint paints the cells that are shown.
func (d *desk) paint(k canvasKey) *screen.Surface {
	size := k.shown.Size()
	s := screen.New(size.X, size.Y, d.session.ASCII)
	lit := k.light(d.sheet())
	for y := range size.Y {
		for x := range size.X {
			at := k.shown.Min.Add(image.Pt(x, y))
			c := k.grid.At(at.X, at.Y)
			if c.Rune == 0 || c.Rune == ' ' && c.Role != text.WireLabel {
				continue
			}
			letter, selected := k.marks.glyph(c, at)
			prefix := d.cellPrefix(c)
			if selected {
				prefix = d.theme.Prefix(theme.Selected)
			} else if role, changed := lit.role(c, at); changed {
				prefix = d.theme.Prefix(role)
			}
			s.Put(x, y, letter, prefix)
		}
	}
	d.port(s, k)
	d.bracket(s, k)
	d.pulled(s, k)
	d.labels(s, k)
	d.ghost(s, k)
	return s
}

// cellPrefix is the role of a cell that is not selected.
func (d *desk) cellPrefix(c text.Cell) string {
	switch c.Role {
	case text.WorkWord:
		if c.Active {
			return d.theme.Prefix(theme.Title)
		}
		return d.theme.Prefix(theme.Dim)
	case text.WireLine, text.WireLabel, text.WireFigure, text.FlowArrow, text.PortJoin:
		switch {
		case c.Energy != scene.NotShown:
			return d.theme.Prefix(energyRole(c))
		case c.Role != text.PortJoin || c.Colour != "":
			return d.theme.Tint(weights[c.Weight], c.Colour)
		}
	}
	return d.theme.Prefix(cellRoles[c.Role])
}

// energyRole is the role of a cell of a wire by what the state in force does to it.
func energyRole(c text.Cell) theme.Role {
	switch {
	case c.Energy == scene.Live && c.Flows:
		return theme.Carrying
	case c.Energy == scene.Live:
		return theme.Live
	case c.Energy == scene.Dead:
		return theme.Dead
	case c.Energy == scene.Return && c.Flows:
		return theme.Returning
	}
	return theme.Text
}

var weights = [...]theme.Role{scene.Control: theme.Control, scene.Power: theme.Power, scene.Traction: theme.Traction, scene.Mains: theme.Mains, scene.Trunk: theme.Traction}

// cellRoles are the roles of cells but wires; what is missing is plain text.
var cellRoles = [...]theme.Role{
	text.ZoneFrame: theme.Dim, text.ZoneName: theme.Dim, text.BoxHead: theme.Title, text.BoxMark: theme.Caution,
	text.SeatNo: theme.Dim, text.SeatBracket: theme.Dim, text.FlagMark: theme.Caution, text.FlagText: theme.Caution, text.StrongWriting: theme.Title, text.Legend: theme.Text,
}

// bracket puts brackets round the label of the lit wire, where nothing else is.
func (d *desk) bracket(s *screen.Surface, k canvasKey) {
	if k.marks.wire.kind == noThing {
		return
	}
	w := k.picture.wire(k.marks.wire.wire)
	if w == nil || w.Label.Text == "" {
		return
	}
	at := image.Pt(w.Label.At.X, w.Label.At.Y)
	ends := [2]image.Point{at.Add(image.Pt(-1, 0)), at.Add(image.Pt(scene.Width(w.Label.Text), 0))}
	for _, end := range ends {
		c := k.grid.At(end.X, end.Y)
		if c.Rune != 0 && (c.Owner.Kind != scene.WireKind || c.Owner.ID != w.ID) {
			return
		}
	}
	for i, letter := range []rune{'[', ']'} {
		s.Put(ends[i].X-k.shown.Min.X, ends[i].Y-k.shown.Min.Y, letter, d.theme.Prefix(theme.Selected))
	}
}

// labels writes the jump letters beside their places.
func (d *desk) labels(s *screen.Surface, k canvasKey) {
	if k.jump == nil {
		return
	}
	for _, o := range k.picture.objects {
		label, has := k.jump.labels[o.thing]
		if !has || len(label) < len(k.sofar) || label[:len(k.sofar)] != k.sofar {
			continue
		}
		at := o.beside(len(label)).Sub(k.shown.Min)
		s.Write(at.X, at.Y, label, d.theme.Prefix(theme.Marked))
	}
}

// port dots the edges of what the drawing as it is shows, where nothing is drawn.
func (d *desk) port(s *screen.Surface, k canvasKey) {
	r, prefix := k.port, d.theme.Prefix(theme.Dim)
	for y := r.Min.Y; y < r.Max.Y; y++ {
		for x := r.Min.X; x < r.Max.X; x++ {
			edge := y == r.Min.Y || y == r.Max.Y-1 || x == r.Min.X || x == r.Max.X-1
			if edge && k.grid.At(x, y).Rune == 0 {
				s.Put(x-k.shown.Min.X, y-k.shown.Min.Y, '·', prefix)
			}
		}
	}
}

// ghost draws the outline of a box that is being moved where it is held, unless the box is
// drawn there.
func (d *desk) ghost(s *screen.Surface, k canvasKey) {
	if at, drawn := k.picture.place(ofPart(k.ghostOf)); k.ghost.Empty() || drawn && at == k.ghost && k.picture != d.work.picture {
		return
	}
	r, prefix := k.ghost.Sub(k.shown.Min), d.theme.Prefix(theme.Selected)
	for x := r.Min.X; x < r.Max.X; x++ {
		s.Put(x, r.Min.Y, '#', prefix)
		s.Put(x, r.Max.Y-1, '#', prefix)
	}
	for y := r.Min.Y; y < r.Max.Y; y++ {
		s.Put(r.Min.X, y, '#', prefix)
		s.Put(r.Max.X-1, y, '#', prefix)
	}
	s.WriteIn(r.Min.X+2, r.Min.Y, r.Dx()-4, " "+string(k.ghostOf)+" ", prefix)
}

// pulled dots the way of a wire that is being pulled. Where an upright wire passes over it,
// that stays.
func (d *desk) pulled(s *screen.Surface, k canvasKey) {
	if k.pull == nil || len(k.pull.way) < 2 {
		return
	}
	prefix := d.theme.Prefix(theme.Selected)
	cells := scene.Cells(k.pull.way)
	for i, cell := range cells {
		at, letter := image.Pt(cell.X, cell.Y), '·'
		switch c := k.grid.At(at.X, at.Y); {
		case ofRef(c.Owner) == k.marks.cursor && i == len(cells)-1:
			continue
		case c.Role == text.PortJoin || c.Role == text.FlagMark:
			letter = k.marks.pick(endMark, endMarkASCII)
		case c.Role == text.WireLine && i > 0 && i < len(cells)-1 && cells[i-1].Y == cells[i+1].Y:
			letter = c.Rune
		}
		s.Put(at.X-k.shown.Min.X, at.Y-k.shown.Min.Y, letter, prefix)
	}
}
