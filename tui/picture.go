package tui

import (
	"image"
	"strings"

	"example.com/lugbook/diagram"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/text"
	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/tui/nav"
)

// picture is a finished drawing, ready to be shown and moved about on. It does not
// change.
type picture struct {
	drawing *diagram.Drawing // nil if it is a drawing made smaller
	page    *scene.Page
	grid    *text.Grid
	objects []object
	index   map[thing]int // into objects
	order   []int         // of all objects, as read
	levels  [kinds]level  // where the arrows lead, by kind of thing
}

// object is a thing with its place on the drawing.
type object struct {
	thing
	rect image.Rectangle
	side scene.Side // of its box, that a terminal is on
}

// beside is where a jump label of so many letters is written: in the lower frame line of
// a box, outside of a terminal, before anything else.
func (o *object) beside(letters int) image.Point {
	at := o.rect.Min
	switch {
	case o.kind == partThing:
		return at.Add(image.Pt(1, o.rect.Dy()-1))
	case o.kind != terminalThing || o.side == scene.West:
		return image.Pt(max(0, at.X-letters), at.Y)
	}
	dx, dy := o.side.Step()
	return at.Add(image.Pt(dx, dy))
}

// level is the things that the arrows move among, starting from a thing of some kind.
type level struct {
	members []int       // into objects
	member  map[int]int // from objects into members
	arrows  *nav.Map
}

// newPicture prepares a drawing.
func newPicture(d *diagram.Drawing, ascii bool) *picture {
	page := &scene.Page{}
	if len(d.Pages) > 0 {
		page = &d.Pages[0]
	}
	p := pictureOf(page, ascii)
	p.drawing = d
	return p
}

// pictureOf prepares a page.
func pictureOf(page *scene.Page, ascii bool) *picture {
	p := sketchOf(page, ascii)
	rects := make([]image.Rectangle, len(p.objects))
	for i, o := range p.objects {
		rects[i] = o.rect
	}
	p.order = nav.ReadingOrder(rects)
	p.levels[partThing] = p.level(partThing)
	p.levels[terminalThing] = p.level(terminalThing, looseThing)
	p.levels[looseThing] = p.levels[terminalThing]
	p.levels[wireThing] = p.level(wireThing)
	p.levels[noThing] = p.levels[partThing]
	return p
}

// sketchOf prepares a page that is looked at and not moved about on: it has no arrows.
func sketchOf(page *scene.Page, ascii bool) *picture {
	p := &picture{page: page, index: map[thing]int{}, grid: text.Render(page, text.Options{ASCII: ascii, Bare: true})}
	for i := range page.Boxes {
		p.addBox(&page.Boxes[i])
	}
	for _, f := range page.Flags {
		p.add(ofFlag(f.ID), area(f.Rect))
	}
	for _, piece := range page.Pieces {
		if t := ofRef(piece.Of); t.kind != noThing {
			p.add(t, area(piece.Rect))
		}
	}
	for i := range page.Wires {
		p.addWire(&page.Wires[i])
	}
	return p
}

func (p *picture) add(t thing, r image.Rectangle) {
	if i, known := p.index[t]; known {
		p.objects[i].rect = p.objects[i].rect.Union(r)
		return
	}
	p.index[t] = len(p.objects)
	p.objects = append(p.objects, object{thing: t, rect: r})
}

func (p *picture) addBox(b *scene.Box) {
	id := model.PartID(b.ID)
	p.add(ofPart(id), area(b.Rect))
	for _, port := range b.Ports {
		t := ofTerminal(model.TerminalRef{Part: id, Name: port.Terminal()})
		p.add(t, image.Rect(port.At.X, port.At.Y, port.At.X+1, port.At.Y+1))
		p.objects[p.index[t]].side = port.Side
	}
}

// addWire takes a wire to be where its label is, or else in the middle of its path.
func (p *picture) addWire(w *scene.Wire) {
	cells := scene.Cells(w.Path)
	if len(cells) == 0 {
		return
	}
	middle := cells[len(cells)/2]
	r := image.Rect(middle.X, middle.Y, middle.X+1, middle.Y+1)
	if n := scene.Width(w.Label.Text); n > 0 {
		r = image.Rect(w.Label.At.X, w.Label.At.Y, w.Label.At.X+n, w.Label.At.Y+1)
	}
	p.add(ofWire(model.WireID(w.ID)), r)
}

// level lets the arrows move among the things of some kinds.
func (p *picture) level(of ...kind) level {
	l := level{member: map[int]int{}}
	var rects []image.Rectangle
	for i, o := range p.objects {
		for _, k := range of {
			if o.kind == k {
				l.member[i] = len(l.members)
				l.members = append(l.members, i)
				rects = append(rects, o.rect)
			}
		}
	}
	l.arrows = nav.NewMap(rects)
	return l
}

// place is where a thing is drawn; false if it is not.
func (p *picture) place(t thing) (image.Rectangle, bool) {
	i, drawn := p.index[t]
	if !drawn && t.kind == terminalThing {
		i, drawn = p.index[ofPart(t.at.Part)]
	}
	if !drawn {
		return image.Rectangle{}, false
	}
	return p.objects[i].rect, true
}

// wire is a wire as drawn; nil if it is not.
func (p *picture) wire(id model.WireID) *scene.Wire {
	for i := range p.page.Wires {
		if p.page.Wires[i].ID == string(id) {
			return &p.page.Wires[i]
		}
	}
	return nil
}

func area(r scene.Rect) image.Rectangle { return image.Rect(r.X, r.Y, r.X+r.W, r.Y+r.H) }

// flag is the flag of a drawing that stands for a loose end.
func (t thing) flag() string { return string(t.wire) + " " + string(t.side) }

// ofFlag is the loose end that a flag of a drawing stands for.
func ofFlag(id string) thing {
	wire, side, _ := strings.Cut(id, " ")
	return ofLoose(model.WireID(wire), edit.Side(side))
}
