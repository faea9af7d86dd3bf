package diagram

import (
	"fmt"
	"slices"
	"strings"

	"example.com/lugbook/diagram/layout"
	"example.com/lugbook/model"
)

// OnScreen is what a drawing made for the screen is kept for.
const OnScreen = "screen"

// Keep is the drawing as a sheet of a job records it; what says what it was made for.
func (d *Drawing) Keep(what string) []model.Kept {
	var out []model.Kept
	for i := range d.layouts {
		page := keepPage(&d.layouts[i].drawing)
		page.For = pageOf(what, i+1, len(d.layouts))
		out = append(out, page)
	}
	return out
}

// KeepIn records the drawing in its sheet in the place of an earlier one made for the same.
func (d *Drawing) KeepIn(s *model.Sheet, what string) {
	s.Drawn = slices.DeleteFunc(s.Drawn, func(k model.Kept) bool { return isPageOf(&k, what) })
	s.Drawn = append(s.Drawn, d.Keep(what)...)
}

// KeptFor names what a drawing made in this way is for: pages of a size are kept apart from
// others, and a whole sheet on one page is the drawing that is on the screen. It is empty for
// a drawing that begins from no kept one.
func (o Options) KeptFor() string {
	switch {
	case len(o.Shapes) == 0:
		return ""
	case o.Whole:
		return OnScreen
	case o.Shapes[0].Paper.Name != "":
		return o.Shapes[0].Paper.Name
	}
	return fmt.Sprintf("%d columns", o.Shapes[0].Columns)
}

func isPageOf(k *model.Kept, what string) bool {
	return k.For == what || strings.HasPrefix(k.For, pageMark(what))
}

// Recall is the drawing that a sheet records of what it was made for: what is drawn next
// can begin from it, by Options.Previous. It is nil if none is recorded. A page that never was
// a drawing, as a file edited by hand may say, is passed over.
func Recall(s *model.Sheet, what string) *Drawing {
	d := &Drawing{}
	for i := range s.Drawn {
		if k := &s.Drawn[i]; isPageOf(k, what) {
			at := pageLayout{drawing: recallPage(k)}
			if !sound(&at.drawing) {
				continue
			}
			d.layouts = append(d.layouts, at)
		}
	}
	if len(d.layouts) == 0 {
		return nil
	}
	return d
}

func pageMark(what string) string { return what + ", page " }

func pageOf(what string, page, pages int) string {
	if pages == 1 {
		return what
	}
	return fmt.Sprint(pageMark(what), page)
}

var (
	sideLetters = map[layout.Side]byte{layout.North: 'N', layout.East: 'E', layout.South: 'S', layout.West: 'W'}
	letterSides = map[byte]layout.Side{'N': layout.North, 'E': layout.East, 'S': layout.South, 'W': layout.West}
)

func keepPage(d *layout.Drawing) model.Kept {
	var k model.Kept
	for _, z := range d.Zones {
		if z.Rect.W > 0 {
			k.Frames = append(k.Frames, model.KeptFrame{Zone: model.ZoneID(z.ID), At: model.KeptRect(z.Rect)})
		}
	}
	for _, b := range d.Boxes {
		box := model.KeptBox{ID: b.ID, At: model.KeptRect(b.Rect)}
		for _, p := range b.Ports {
			offset := p.At.X - b.Rect.X
			if p.Side == layout.East || p.Side == layout.West {
				offset = p.At.Y - b.Rect.Y
			}
			box.Ports = append(box.Ports, model.KeptPort{ID: p.ID, Side: sideLetters[p.Side], Offset: offset})
		}
		k.Boxes = append(k.Boxes, box)
	}
	for _, w := range d.Wires {
		if len(w.Path) == 0 {
			continue
		}
		line := model.KeptLine{Wire: model.WireID(w.ID)}
		for _, at := range w.Path {
			line.Way = append(line.Way, model.KeptCorner(at))
		}
		if l := w.Label; l.OK {
			line.Label = model.KeptLabel{X: l.At.X, Y: l.At.Y, Text: l.Index, Upright: l.Vertical, Stands: true}
		}
		k.Lines = append(k.Lines, line)
	}
	return k
}

func recallPage(k *model.Kept) layout.Drawing {
	var d layout.Drawing
	cover := func(x, y int) { d.W, d.H = max(d.W, x+1), max(d.H, y+1) }
	for _, f := range k.Frames {
		d.Zones = append(d.Zones, layout.ZoneAt{ID: string(f.Zone), Rect: layout.Rect(f.At)})
		cover(f.At.X+f.At.W, f.At.Y+f.At.H)
	}
	for _, b := range k.Boxes {
		box := layout.BoxAt{ID: b.ID, Rect: layout.Rect(b.At)}
		cover(b.At.X+b.At.W, b.At.Y+b.At.H)
		for _, p := range b.Ports {
			box.Ports = append(box.Ports, layout.PortAt{ID: p.ID, Side: letterSides[p.Side], At: onBorder(box.Rect, p)})
		}
		d.Boxes = append(d.Boxes, box)
	}
	for _, l := range k.Lines {
		w := layout.WireAt{ID: string(l.Wire)}
		for _, at := range l.Way {
			w.Path = append(w.Path, layout.Point(at))
			cover(at.X, at.Y)
		}
		if l.Label.Stands {
			w.Label = layout.Label{Index: l.Label.Text, At: layout.Point{X: l.Label.X, Y: l.Label.Y}, Vertical: l.Label.Upright, OK: true}
		}
		d.Wires = append(d.Wires, w)
	}
	return d
}

// onBorder is the cell of a port.
func onBorder(r layout.Rect, p model.KeptPort) layout.Point {
	switch p.Side {
	case 'N':
		return layout.Point{X: r.X + p.Offset, Y: r.Y}
	case 'S':
		return layout.Point{X: r.X + p.Offset, Y: r.Y + r.H}
	case 'W':
		return layout.Point{X: r.X, Y: r.Y + p.Offset}
	default:
		return layout.Point{X: r.X + r.W, Y: r.Y + p.Offset}
	}
}

// mostCells is the most cells of a page that is recalled: more than twenty times what 200 parts
// take. A slip in a file edited by hand must not ask for gigabytes.
const mostCells = 4_000_000

// sound reports whether the page is no larger than any is, no frames share a cell, no boxes do,
// and all ports are on their boxes.
func sound(d *layout.Drawing) bool {
	if d.W*d.H > mostCells {
		return false
	}
	for i := range d.Zones {
		for k := range i {
			if d.Zones[i].Rect.Overlaps(d.Zones[k].Rect) {
				return false
			}
		}
	}
	for i := range d.Boxes {
		for k := range i {
			if d.Boxes[i].Rect.Overlaps(d.Boxes[k].Rect) {
				return false
			}
		}
		for _, p := range d.Boxes[i].Ports {
			if !d.Boxes[i].Rect.Contains(p.At) {
				return false
			}
		}
	}
	return true
}
