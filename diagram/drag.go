package diagram

import (
	"errors"
	"fmt"
	"reflect"
	"slices"

	"example.com/lugbook/diagram/layout"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/model"
)

// Drag is a box of a drawing being moved by hand. What it shows follows from the drawing that
// it began with and from where the box is now, and from nothing on the way there: wires that
// made way for the box are back where they were as soon as it has passed. It is for one
// goroutine at a time.
type Drag struct {
	held
	box  string
	from layout.Point
	now  layout.Drawing
	seen scene.Page // of it
}

// Grab takes hold of a part's box in the drawing o.Previous, which has to be one of the sheet
// as it is, on one page. Nothing changes until the box is moved.
func Grab(j *model.Job, sheet model.SheetName, lib *model.Catalogue, o Options, part model.PartID) (*Drag, error) {
	h, err := hold(j, sheet, lib, o)
	if err != nil {
		return nil, err
	}
	for k := range h.page.boxes {
		if h.page.boxes[k].part.ID == part {
			r := h.page.drawing.Boxes[k].Rect
			return &Drag{held: h, box: string(part), from: layout.Point{X: r.X, Y: r.Y}, now: h.page.drawing, seen: h.shown(h.page.drawing)}, nil
		}
	}
	return nil, fmt.Errorf("%s is not on the drawing", part)
}

// To moves the upper left corner of the box to a cell and gives the page as it is then: the
// wires of the box, and those that it would lie on, go another way; all else stays. On an error
// the box is where it was: something else lies there, or a wire would find no way.
func (g *Drag) To(x, y int) (scene.Page, error) {
	live, err := g.open()
	if err != nil {
		return scene.Page{}, err
	}
	if by := (layout.Point{X: x - g.from.X, Y: y - g.from.Y}); by != (layout.Point{}) {
		if err := live.Move(g.box, by); err != nil {
			return scene.Page{}, err
		}
	}
	g.now = live.Drawing()
	g.seen = g.shown(g.now)
	return g.seen, nil
}

// Drop is the drawing with the box where it was moved to last. To keep it there, the part's
// place is recorded; what is drawn next from this drawing is the same picture.
func (g *Drag) Drop() *Drawing {
	out := &Drawing{Pages: []scene.Page{g.seen}, layouts: slices.Clone(g.layouts)}
	out.layouts[0] = pageLayout{drawing: g.now, graph: &g.page.graph}
	return out
}

// standing is the earlier layout of a page if it shows just what the page is to show, with every
// box that a person placed where it was placed: then there is nothing to draw anew. It is nil if
// there is none.
func (b *builder) standing(g *layout.Graph) *layout.Drawing {
	if b.options.Previous == nil {
		return nil
	}
	for i := range b.options.Previous.layouts {
		l := &b.options.Previous.layouts[i]
		if b.shape.Columns > 0 && l.drawing.W > b.shape.Columns {
			continue
		}
		if l.graph != nil && reflect.DeepEqual(unpinned(l.graph), unpinned(g)) && atPins(g, &l.drawing) {
			return &l.drawing
		}
	}
	return nil
}

// unpinned is a graph without the places of its boxes.
func unpinned(g *layout.Graph) layout.Graph {
	out := *g
	out.Boxes = slices.Clone(g.Boxes)
	for i := range out.Boxes {
		out.Boxes[i].Pin = nil
	}
	return out
}

func atPins(g *layout.Graph, d *layout.Drawing) bool {
	for i, b := range g.Boxes {
		if r := d.Boxes[i].Rect; b.Pin != nil && *b.Pin != (layout.Point{X: r.X, Y: r.Y}) {
			return false
		}
	}
	return true
}

// held is a drawing of one page with what it was made from, ready for changes by hand.
type held struct {
	b       *builder
	page    page
	layouts []pageLayout
}

// hold prepares the drawing o.Previous. It fails if that is not one of the sheet as it is.
func hold(j *model.Job, sheet model.SheetName, lib *model.Catalogue, o Options) (held, error) {
	s := j.Sheet(sheet)
	if s == nil || o.Previous == nil || len(o.Previous.layouts) == 0 {
		return held{}, fmt.Errorf("there is no drawing of the %s sheet", sheet)
	}
	if len(o.Previous.layouts) > 1 {
		return held{}, errors.New("a drawing of several pages is not changed by hand")
	}
	h := held{b: &builder{job: j, sheet: s, cat: lib.For(j), options: o}, layouts: o.Previous.layouts}
	h.page = h.b.newPage(h.b.zoneSections())
	h.page.number, h.page.of, h.page.drawing = 1, 1, h.layouts[0].drawing
	h.b.fill(&h.page)
	if !sameThings(&h.page.graph, &h.page.drawing) {
		return held{}, fmt.Errorf("the %s sheet has changed since it was drawn", sheet)
	}
	return h, nil
}

// sameThings reports whether a drawing shows the boxes and wires of a graph, and no others.
func sameThings(g *layout.Graph, d *layout.Drawing) bool {
	return slices.EqualFunc(g.Boxes, d.Boxes, func(b layout.Box, at layout.BoxAt) bool { return b.ID == at.ID }) &&
		slices.EqualFunc(g.Wires, d.Wires, func(w layout.Wire, at layout.WireAt) bool { return w.ID == at.ID })
}

// open starts to change a copy of the drawing.
func (h *held) open() (*layout.Live, error) {
	return layout.Open(h.page.graph, h.page.drawing, layout.Options{ColumnCost: 1, RowCost: rowCost})
}

// shown is the page with another layout.
func (h *held) shown(d layout.Drawing) scene.Page {
	p := h.page
	p.drawing = d
	return h.b.scene(&p, []page{p})
}
