package tui

import (
	"image"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/lugbook/diagram"
	"example.com/lugbook/model"
)

// roomMade is a drawing with a box where it had no room: others made way for it, if they could.
type roomMade struct {
	layer   *moveLayer
	corner  image.Point // where the box was set down
	drawing *diagram.Drawing
	err     error
}

// makeRoom starts to draw the sheet with the box where something is in its way. Nothing is
// recorded before it is known that the box can be there.
func (m *moveLayer) makeRoom(d *desk, corner image.Point) tea.Cmd {
	job, sheet, lib, o, drawer := d.job().Clone(), d.sheetName, d.lib, d.byHand(), d.drawer
	out, place := roomMade{layer: m, corner: corner}, m.putAt(sheet, corner)
	m.busy, m.forcing = true, true
	return func() tea.Msg {
		out.err = guarded(func() (err error) {
			if err = place.Apply(job); err == nil {
				out.drawing, err = drawer(job, sheet, lib, o)
			}
			return err
		})
		return out
	}
}

// takeRoom sets the box down if the drawing has it where it was set down, and no other away from
// where it was placed by hand. Else nothing is changed: a place that cannot be kept would be one
// that the drawing does not show. A box that was let go meanwhile is passed over.
func (d *desk) takeRoom(f roomMade) tea.Cmd {
	m, moving := topOf[*moveLayer](d)
	if !moving || m != f.layer {
		return nil
	}
	d.pop()
	switch {
	case f.err != nil:
		d.warn(explain(f.err))
	case !d.keepsPlaces(f):
		d.warn(string(m.id) + " cannot go there: what is in its way has no other place, or was placed by hand; nothing was changed")
	default:
		m.record(d, f.corner, f.drawing)
	}
	return d.refresh()
}

// keepsPlaces reports whether the box is where it was set down, and each other one where a person
// placed it if it is there now.
func (d *desk) keepsPlaces(f roomMade) bool {
	before, after := corners(d.work.picture.drawing), corners(f.drawing)
	for i := range d.sheet().Parts {
		p := &d.sheet().Parts[i]
		if p.Place == nil || p.ID == f.layer.id {
			continue
		}
		if at := image.Pt(p.Place.X, p.Place.Y); before[p.ID] == at && after[p.ID] != at {
			return false
		}
	}
	return after[f.layer.id] == f.corner
}

// corners are the upper left corners of the boxes of a drawing.
func corners(on *diagram.Drawing) map[model.PartID]image.Point {
	out := map[model.PartID]image.Point{}
	for i := range on.Pages {
		for _, b := range on.Pages[i].Boxes {
			out[model.PartID(b.ID)] = image.Pt(b.Rect.X, b.Rect.Y)
		}
	}
	return out
}
