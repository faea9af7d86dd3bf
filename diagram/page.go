package diagram

import (
	"errors"
	"fmt"
	"slices"

	"example.com/lugbook/diagram/layout"
	"example.com/lugbook/model"
)

// builder turns one sheet into pages of one shape.
type builder struct {
	job     *model.Job
	sheet   *model.Sheet
	cat     *model.Catalogue
	options Options
	shape   Shape
	starts  int                  // beginnings of which the best is taken
	terse   bool                 // marks name no zones
	where   map[model.PartID]int // the page that each part is on; nil while that is not settled
	bulk    *bulk
	drafts  map[string]draft // pages tried, by their parts
	misses  int              // how often a draft did not fit
	careful int              // how often one was laid out again with full work
	tried   map[string]draft // the pages that the plan was made with
}

// on is a builder of the same sheet for another shape of page.
func (b *builder) on(s Shape) *builder {
	c := *b
	c.shape, c.drafts = s, map[string]draft{}
	return &c
}

// draft is a page laid out with little work, or why it could not be.
type draft struct {
	page page
	err  error
}

// page is a part of the sheet that is drawn by itself.
type page struct {
	sections   []section
	number, of int
	parts      map[model.PartID]bool
	loose      map[model.WireID]bool // wires that end on no part
	boxes      []box
	flags      []flag
	onward     map[model.WireID]bool // which way the power wires lead
	letGo      []string              // boxes that a person placed where there was no room
	graph      layout.Graph
	drawing    layout.Drawing
}

func (b *builder) newPage(sections []section) page {
	p := page{sections: joined(sections), parts: map[model.PartID]bool{}, loose: map[model.WireID]bool{}}
	for _, s := range sections {
		for _, i := range s.parts {
			p.parts[b.sheet.Parts[i].ID] = true
		}
		for _, i := range s.loose {
			p.loose[b.sheet.Wires[i].ID] = true
		}
	}
	return p
}

// section is the page's share of a zone; nil if it holds nothing of it.
func (p *page) section(zone model.ZoneID) *section {
	for i := range p.sections {
		if p.sections[i].zone == zone {
			return &p.sections[i]
		}
	}
	return nil
}

// Prices of a row of cells, in columns: as it looks, and where rows are what a page lacks.
const (
	rowCost     = 2
	dearRowCost = 6
)

// page lays out some sections of the sheet.
func (b *builder) page(sections []section) (page, error) {
	p := b.newPage(sections)
	b.fill(&p)
	if len(p.parts) < len(b.sheet.Parts) || p.pinnedBeyond(b.shape.Columns) {
		p.movePins()
	}
	o := layout.Options{
		ColumnCost: 1, RowCost: rowCost, MaxWidth: b.shape.Columns, Effort: layout.Full, Seeds: b.starts,
		Previous: b.options.previous(&p.graph),
	}
	if b.shape.Rows > 0 {
		o.RowCost = dearRowCost
	}
	if b.options.Quick {
		o.Effort = layout.Draft
	}
	if d := b.standing(&p.graph); d != nil {
		p.drawing = *d
		return p, nil
	}
	d, err := layout.Layout(p.graph, o)
	for err != nil && p.unpin(err) {
		d, err = layout.Layout(p.graph, o)
	}
	p.drawing = d
	return p, err
}

// contents names what some sections hold, in whichever order.
func contents(sections []section) string {
	var parts, loose []int
	for _, s := range sections {
		parts, loose = append(parts, s.parts...), append(loose, s.loose...)
	}
	slices.Sort(parts)
	slices.Sort(loose)
	return fmt.Sprint(parts, loose)
}

// draft lays out some sections with little work, once.
func (b *builder) draft(sections []section) (page, error) {
	key := contents(sections)
	if d, tried := b.drafts[key]; tried {
		return d.page, d.err
	}
	quick := *b
	quick.options.Quick = true
	p, err := quick.page(sections)
	b.drafts[key] = draft{p, err}
	return p, err
}

// holds reports whether a laid out page fits its shape with what stands below it.
func (b *builder) holds(p *page) bool {
	if b.shape.Columns > 0 && p.drawing.W > b.shape.Columns {
		return false
	}
	if b.shape.Rows == 0 {
		return true
	}
	drawn := b.scene(p, nil)
	return p.drawing.H+below(&drawn, b.columns(p)) <= b.shape.Rows
}

// columns is the width of what stands below a page.
func (b *builder) columns(p *page) int {
	if b.shape.Columns > 0 {
		return b.shape.Columns
	}
	return p.drawing.W
}

// pinnedBeyond reports whether a person placed a box where the page has no columns.
func (p *page) pinnedBeyond(columns int) bool {
	return columns > 0 && slices.ContainsFunc(p.graph.Boxes, func(b layout.Box) bool {
		return b.Pin != nil && b.Pin.X+b.W >= columns
	})
}

// firstPin is where the uppermost and leftmost box go that a person placed, on a page that
// does not show all of the sheet or is not so wide.
var firstPin = layout.Point{X: 6, Y: 4}

// movePins moves the boxes that a person placed to the corner of the page, so that those of a
// far part of the sheet find room: they keep their places to one another.
func (p *page) movePins() {
	var corner *layout.Point
	for _, b := range p.graph.Boxes {
		if b.Pin == nil {
			continue
		}
		if corner == nil {
			at := *b.Pin
			corner = &at
		}
		corner.X, corner.Y = min(corner.X, b.Pin.X), min(corner.Y, b.Pin.Y)
	}
	for i := range p.graph.Boxes {
		if b := &p.graph.Boxes[i]; b.Pin != nil {
			b.Pin = &layout.Point{X: b.Pin.X - corner.X + firstPin.X, Y: b.Pin.Y - corner.Y + firstPin.Y}
		}
	}
}

// columnsPerWire bounds the wires on a page that is limited both ways: on 80 columns 40 can
// still be followed (a choice). More hardly ever find their ways, and to try takes long.
const columnsPerWire = 2

// fits reports whether some sections find room on one page. It tries with little work, and not
// at all where there is far too much.
func (b *builder) fits(sections []section) (bool, error) {
	if b.tooFull(sections) {
		return false, nil
	}
	p, err := b.draft(sections)
	if err == nil && !b.holds(&p) && b.near(&p) {
		p, err = b.carefully(sections)
	}
	var narrow *layout.WidthError
	switch {
	case errors.As(err, &narrow), err == nil && !b.holds(&p):
		b.misses++
		return false, nil
	}
	return err == nil, err
}

// A draft that is little too high is laid out with all the work that the page will get: how
// many per cent of the rows make little, and how often it is done for a sheet.
const (
	nearPerCent = 15
	mostCareful = 16
)

// near reports whether more work may make a draft fit.
func (b *builder) near(p *page) bool {
	high := b.shape
	high.Rows += high.Rows * nearPerCent / 100
	return !b.options.Quick && b.careful < mostCareful && b.on(high).holds(p)
}

// carefully replaces the draft of some sections by a page laid out with full work.
func (b *builder) carefully(sections []section) (page, error) {
	b.careful++
	once := *b
	once.starts = 1
	p, err := once.page(sections)
	if err == nil && b.holds(&p) {
		b.drafts[contents(sections)] = draft{p, nil}
	}
	return p, err
}
