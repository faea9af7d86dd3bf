package tui

import (
	"fmt"
	"image"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/lugbook/diagram"
	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
)

// moveLayer is a box being moved. The box and the wires that it concerns are drawn anew at
// each step, beside the screen. Nothing changes until it is set down.
type moveLayer struct {
	id    model.PartID
	by    image.Point // how far the hand has moved it
	mouse bool        // the hand is the mouse
	view  image.Point // of the drawing, when it was picked up

	drag    *diagram.Drag // nil before it was taken hold of
	busy    bool          // a step is being drawn
	asked   bool          // a step was drawn, or could not be
	at      image.Point   // how far it was moved in the step that was asked for last
	preview *picture      // the last step that could be drawn; nil if none
	err     error         // why the last step could not be drawn
	setting bool          // it is to be set down as soon as the step is drawn
	forcing bool          // room is being made for it where it has none
}

func (m *moveLayer) place() place { return inMove }

func (m *moveLayer) stale(d *desk) bool { return d.sheet().Part(m.id) == nil }

func (m *moveLayer) key(*desk, tea.KeyMsg) (tea.Cmd, bool) { return nil, false }

func (m *moveLayer) reading(*desk) string {
	if m.forcing {
		return "making room for " + string(m.id) + " ..."
	}
	if m.asked && m.err != nil && m.drag != nil && m.at == m.by {
		return string(m.id) + " has no room there; set down here, what is in its way is moved if it can be"
	}
	return "moving " + string(m.id) + ": arrows, with Shift by four cells; Esc puts it back"
}

// startMove picks the selected part's box up.
func startMove(d *desk) tea.Cmd {
	d.goTo(ofPart(d.cursor.at.Part))
	d.push(&moveLayer{id: d.cursor.at.Part, view: d.view})
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

// shift moves the box by cells.
func (m *moveLayer) shift(d *desk, dx, dy int) { m.to(d, m.by.Add(image.Pt(dx, dy))) }

// to moves the box so far from where it stood, never off the drawing's upper left edges.
func (m *moveLayer) to(d *desk, by image.Point) {
	if m.forcing {
		return
	}
	if at, drawn := d.work.picture.place(ofPart(m.id)); drawn {
		m.by = image.Pt(max(by.X, -at.Min.X), max(by.Y, -at.Min.Y))
	}
}

// moved is a step of a box that was drawn, or why it could not be.
type moved struct {
	layer   *moveLayer
	at      image.Point
	drag    *diagram.Drag
	preview *picture
	err     error
}

// carry starts to draw the step that the box has come to.
func (d *desk) carry() tea.Cmd {
	m, moving := topOf[*moveLayer](d)
	if !moving || m.busy || m.asked && (m.at == m.by || m.drag == nil) {
		return nil
	}
	stood, drawn := d.work.picture.place(ofPart(m.id))
	if !drawn || d.work.pictureOf != d.stamp() {
		return nil
	}
	m.busy = true
	out, corner := moved{layer: m, at: m.by, drag: m.drag}, stood.Min.Add(m.by)
	job, sheet, lib, o, ascii, shown := d.job(), d.sheetName, d.lib, d.byHand(), d.session.ASCII, d.shown()
	return func() tea.Msg {
		out.err = guarded(func() error {
			if out.drag == nil {
				g, err := diagram.Grab(job, sheet, lib, o, m.id)
				if err != nil {
					return err
				}
				out.drag = g
			}
			page, err := out.drag.To(corner.X, corner.Y)
			if err != nil {
				return err
			}
			if shown != nil {
				page = page.In(*shown)
			}
			out.preview = sketchOf(&page, ascii)
			return nil
		})
		return out
	}
}

// byHand is how the drawing on the screen was made, for changing it by hand.
func (d *desk) byHand() diagram.Options {
	return diagram.Options{Quick: true, Unwired: d.unwired, Previous: d.work.picture.drawing}
}

// guarded does something beside the screen; what would end the program is an error.
func guarded(do func() error) (err error) {
	defer func() {
		if r := recover(); r != nil {
			err = fmt.Errorf("it failed: %v", r)
		}
	}()
	return do()
}

// takeMoved shows a step that was drawn. One of a box that was let go is dropped.
func (d *desk) takeMoved(r moved) tea.Cmd {
	m, moving := topOf[*moveLayer](d)
	if !moving || m != r.layer {
		return nil
	}
	m.busy, m.asked, m.at, m.drag, m.err = false, true, r.at, r.drag, r.err
	if r.preview != nil {
		m.preview = r.preview
	}
	if m.setting && m.at == m.by {
		return tea.Batch(m.set(d), d.refresh())
	}
	return d.refresh()
}

// set puts the box down: on a drawing that stands as it was shown, if it has room there.
func (m *moveLayer) set(d *desk) tea.Cmd {
	at, drawn := d.work.picture.place(ofPart(m.id))
	if m.setting = m.busy || m.drag != nil && m.at != m.by; m.setting && drawn {
		return nil // until the last step is drawn
	}
	if !drawn {
		d.pop()
		return nil
	}
	corner := at.Min.Add(m.by)
	if !m.asked || m.err != nil || m.drag == nil {
		return m.makeRoom(d, corner)
	}
	d.pop()
	if at, drawn := m.preview.place(ofPart(m.id)); drawn {
		corner = at.Min
	}
	if m.record(d, corner, m.drag.Drop()) {
		d.work.standIn, d.work.standsFor = m.preview, d.stamp()
	}
	return nil
}

// putAt records the box's place.
func (m *moveLayer) putAt(sheet model.SheetName, corner image.Point) edit.PlacePart {
	return edit.PlacePart{Sheet: sheet, ID: m.id, Place: &model.Place{X: corner.X, Y: corner.Y}}
}

// record makes the box's place a step, with the drawing that it is on.
func (m *moveLayer) record(d *desk, corner image.Point, on *diagram.Drawing) bool {
	if err := d.act(m.putAt(d.sheetName, corner)); err != nil {
		d.warn(explain(err))
		return false
	}
	d.album.keep(d.shot(), on)
	return true
}

// onScreen is the picture that is looked at: the one with a box on its way, the one that it was
// dropped on while that is being prepared, else the drawing as it is moved about on.
func (d *desk) onScreen() *picture {
	if m, moving := topOf[*moveLayer](d); moving && m.preview != nil {
		return m.preview
	}
	if d.standsIn() {
		return d.work.standIn
	}
	return d.picture()
}

// standsIn reports whether a box was dropped and the drawing with it there is being prepared.
func (d *desk) standsIn() bool {
	return d.work.standIn != nil && d.work.standsFor == d.stamp() && d.work.pictureOf != d.stamp()
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
