package tui

import (
	"image"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/lugbook/diagram/text"
)

// grip is what the left button was pressed on.
type grip struct {
	on thing
	at image.Point // cell of the drawing
}

// slack is how far the mouse moves with its button down before it drags: a hand shakes.
const slack = 2

// pointer takes what the mouse did: a press selects, a drag moves a box or pulls a wire, the
// wheel moves the drawing.
func (d *desk) pointer(m tea.MouseMsg) tea.Cmd {
	at := image.Pt(m.X, m.Y)
	if d.picture() == nil {
		return nil
	}
	cell := at.Sub(d.plan.Canvas.Min).Add(d.view)
	switch m.Action {
	case tea.MouseActionMotion:
		return d.dragged(at, cell)
	case tea.MouseActionRelease:
		return d.released(cell)
	}
	if !at.In(d.plan.Canvas) {
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
		return d.pressed(cell)
	}
	return nil
}

// pressed selects what is in a cell, or beside it; what is in it may be dragged then.
func (d *desk) pressed(cell image.Point) tea.Cmd {
	t := d.near(cell)
	if t.kind == noThing || d.here().types() || d.here() == inMove {
		return nil
	}
	again := t == d.cursor
	d.goTo(t)
	switch top := d.top().(type) {
	case nil:
		d.grip = grip{d.under(cell), cell}
	case *cardLayer:
		top.of, top.at = t, 0
	case *overviewLayer:
		if again {
			return zoomHere(d)
		}
	case *pullLayer:
		if t.kind == terminalThing && t != top.from {
			return top.accept(d)
		}
	}
	return nil
}

// dragged moves what the mouse holds. at is the cell of the screen, cell that of the drawing.
func (d *desk) dragged(at, cell image.Point) tea.Cmd {
	off := cell.Sub(d.grip.at)
	if d.top() == nil && d.grip.on.kind != noThing && max(off.X, -off.X)+2*max(off.Y, -off.Y) >= slack {
		d.pickUp()
	}
	switch top := d.top().(type) {
	case *moveLayer:
		if top.mouse && !top.setting {
			top.to(d, off)
			d.pushOn(at)
		}
	case *pullLayer:
		if top.mouse {
			top.hand, d.cursor = cell, top.from
			if t := d.under(cell); t.kind == terminalThing {
				d.goTo(t)
			}
			d.pushOn(at)
		}
	}
	return nil
}

// pickUp begins to drag what was pressed: a box, or a wire from a terminal or a loose end.
func (d *desk) pickUp() {
	on := d.grip.on
	d.goTo(on)
	switch on.kind {
	case partThing:
		if why := movable(d); why != "" {
			d.warn("move: " + why)
			d.grip = grip{}
			return
		}
		d.push(&moveLayer{id: on.at.Part, mouse: true, view: d.view})
	case terminalThing, looseThing:
		d.push(&pullLayer{from: on, mouse: true, view: d.view})
	}
}

// released lets go of what the mouse holds.
func (d *desk) released(cell image.Point) tea.Cmd {
	d.grip = grip{}
	switch top := d.top().(type) {
	case *moveLayer:
		switch {
		case !top.mouse:
		case top.by == image.Point{}:
			back(d)
		default:
			return top.set(d)
		}
	case *pullLayer:
		if !top.mouse {
			return nil
		}
		if t := d.under(cell); t.kind == terminalThing && t != top.from {
			d.goTo(t)
			return top.accept(d)
		}
		back(d)
		d.say("a wire ends on a terminal; nothing was changed")
	}
	return nil
}

// How far the drawing moves when something is dragged to the edge of its pane.
const (
	pushColumns = 6
	pushRows    = 2
)

// pushOn moves the drawing when the mouse drags something to the edge of its pane.
func (d *desk) pushOn(at image.Point) {
	pane, grid := d.plan.Canvas, d.onScreen().grid
	push := func(first *int, at, low, high, by, size int) {
		switch {
		case at <= low:
			*first = bound(*first-by, size, high-low)
		case at >= high-1:
			*first = bound(*first+by, size, high-low)
		}
	}
	push(&d.view.X, at.X, pane.Min.X, pane.Max.X, pushColumns, grid.W)
	push(&d.view.Y, at.Y, pane.Min.Y, pane.Max.Y, pushRows, grid.H)
}

// under is the thing that is drawn in a cell.
func (d *desk) under(cell image.Point) thing {
	if t := hit(d.grid(d.picture()), cell); t.on(d.sheet(), d.cat()) {
		return t
	}
	return thing{}
}

// hit is what a cell of a drawing belongs to.
func hit(grid *text.Grid, cell image.Point) thing { return ofRef(grid.At(cell.X, cell.Y).Owner) }

// near is the thing that is drawn in a cell, or else beside it.
func (d *desk) near(cell image.Point) thing {
	for _, by := range []image.Point{{}, {X: 1}, {X: -1}, {Y: 1}, {Y: -1}} {
		if t := d.under(cell.Add(by)); t.kind != noThing {
			return t
		}
	}
	return thing{}
}
