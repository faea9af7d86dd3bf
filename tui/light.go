package tui

import (
	"image"

	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/text"
	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/tui/theme"
)

// light is what the lit wire takes of a drawing: its cells from end to end, also where another
// wire is drawn over it, and what it ends on.
type light struct {
	cells map[image.Point]bool
	ends  [2]thing
	alone bool // all else is dimmed: the wire itself is selected
}

// light finds the cells of the lit wire.
func (k *canvasKey) light(s *model.Sheet) light {
	w := k.picture.wire(k.marks.wire.wire)
	if k.marks.wire.kind == noThing || w == nil {
		return light{}
	}
	l := light{cells: map[image.Point]bool{}, alone: k.marks.cursor.kind == wireThing || k.marks.cursor.kind == looseThing}
	for _, c := range scene.Cells(w.Path) {
		l.cells[image.Pt(c.X, c.Y)] = true
	}
	if wire := s.Wire(k.marks.wire.wire); wire != nil {
		l.ends = [2]thing{ofEnd(wire, edit.From), ofEnd(wire, edit.To)}
	}
	return l
}

// role is what the light makes of a cell that is not selected; false if it leaves it alone.
// What is live is never dimmed.
func (l *light) role(c text.Cell, at image.Point) (theme.Role, bool) {
	of := ofRef(c.Owner)
	switch {
	case c.Role == text.WireLine && l.cells[at]:
		return theme.Selected, true // another wire passes over
	case c.Role == text.PortName && (of == l.ends[0] || of == l.ends[1]):
		return theme.Title, true
	case !l.alone || c.Energy != scene.NotShown || c.Role == text.WorkWord:
		return 0, false
	case of.kind == partThing && (of.at.Part == l.ends[0].at.Part || of.at.Part == l.ends[1].at.Part):
		return 0, false
	}
	return theme.Dim, true
}
