package tui

import (
	"image"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
)

// moveLayer is a box being moved. Nothing changes until it is set down.
type moveLayer struct {
	id model.PartID
	by image.Point
}

func (m *moveLayer) place() place { return inMove }

func (m *moveLayer) stale(d *desk) bool { return d.sheet().Part(m.id) == nil }

func (m *moveLayer) key(*desk, tea.KeyMsg) (tea.Cmd, bool) { return nil, false }

func (m *moveLayer) reading(*desk) string {
	return "moving " + string(m.id) + ": arrows, with Shift by four cells; Esc puts it back"
}

// startMove picks the selected part's box up.
func startMove(d *desk) tea.Cmd {
	d.goTo(ofPart(d.cursor.at.Part))
	d.push(&moveLayer{id: d.cursor.at.Part})
	return nil
}

// movable is why no box can be moved.
func movable(d *desk) string {
	if d.cursor.kind != partThing && d.cursor.kind != terminalThing {
		return "go to a part first"
	}
	if p := d.work.picture; p == nil || d.work.pictureOf != d.stamp() {
		return "the drawing is not ready yet"
	}
	return ""
}

// shift moves the box by cells, never off the drawing's upper left edges.
func (m *moveLayer) shift(d *desk, dx, dy int) {
	at, drawn := d.work.picture.place(ofPart(m.id))
	if !drawn {
		return
	}
	m.by.X = max(m.by.X+dx, -at.Min.X)
	m.by.Y = max(m.by.Y+dy, -at.Min.Y)
}

// set puts the box down.
func (m *moveLayer) set(d *desk) tea.Cmd {
	at, drawn := d.work.picture.place(ofPart(m.id))
	d.pop()
	if drawn {
		at = at.Add(m.by)
		d.try(edit.PlacePart{Sheet: d.sheetName, ID: m.id, Place: &model.Place{X: at.Min.X, Y: at.Min.Y}})
	}
	return nil
}

func moveActions() []Action {
	in := []place{inMove}
	moving := func(d *desk) string {
		if _, ok := topOf[*moveLayer](d); !ok {
			return "only while a box is moved; m picks one up"
		}
		return ""
	}
	act := func(id, title, hint, keys string, run func(*moveLayer, *desk) tea.Cmd) Action {
		return Action{ID: id, Title: title, Hint: hint, Keys: strings.Fields(keys), In: in, When: moving, Run: func(d *desk) tea.Cmd {
			m, _ := topOf[*moveLayer](d)
			return run(m, d)
		}}
	}
	by := func(dx, dy int) func(*moveLayer, *desk) tea.Cmd {
		return func(m *moveLayer, d *desk) tea.Cmd {
			m.shift(d, dx, dy)
			return nil
		}
	}
	return []Action{
		act("move-set", "Set the box down here", "set down", "enter", (*moveLayer).set),
		act("move-left", "Box one cell to the left", "", "left h", by(-1, 0)),
		act("move-right", "Box one cell to the right", "", "right l", by(1, 0)),
		act("move-up", "Box one row up", "", "up k", by(0, -1)),
		act("move-down", "Box one row down", "", "down j", by(0, 1)),
		act("move-far-left", "Box four cells to the left", "", "shift+left H", by(-4, 0)),
		act("move-far-right", "Box four cells to the right", "", "shift+right L", by(4, 0)),
		act("move-far-up", "Box four rows up", "", "shift+up K", by(0, -4)),
		act("move-far-down", "Box four rows down", "", "shift+down J", by(0, 4)),
	}
}
