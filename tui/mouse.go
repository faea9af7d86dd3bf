package tui

import (
	"image"

	tea "github.com/charmbracelet/bubbletea"
)

// click selects what was pressed on the drawing; the wheel moves the drawing.
func (d *desk) click(m tea.MouseMsg) tea.Cmd {
	p := d.picture()
	at := image.Pt(m.X, m.Y)
	if m.Action != tea.MouseActionPress || p == nil || !at.In(d.plan.Canvas) {
		return nil
	}
	switch m.Button {
	case tea.MouseButtonWheelUp:
		d.look(0, -1)
	case tea.MouseButtonWheelDown:
		d.look(0, 1)
	case tea.MouseButtonWheelLeft:
		d.look(-1, 0)
	case tea.MouseButtonWheelRight:
		d.look(1, 0)
	case tea.MouseButtonLeft:
		if t := d.under(at.Sub(d.plan.Canvas.Min).Add(d.view)); t.kind != noThing && !d.here().types() {
			d.goTo(t)
			if c, open := topOf[*cardLayer](d); open {
				c.of, c.at = t, 0
			}
		}
	}
	return nil
}

// under is the thing in a cell of the drawing, or beside it.
func (d *desk) under(cell image.Point) thing {
	grid := d.grid()
	for _, by := range []image.Point{{}, {X: 1}, {X: -1}, {Y: 1}, {Y: -1}} {
		near := cell.Add(by)
		if t := ofRef(grid.At(near.X, near.Y).Owner); t.kind != noThing && t.on(d.sheet(), d.cat()) {
			return t
		}
	}
	return thing{}
}
