package diagram

import (
	"errors"
	"fmt"
	"slices"

	"example.com/lugbook/diagram/layout"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/model"
)

// Shape is a size of page.
type Shape struct {
	Columns int         // most columns of a drawing; 0 for any number
	Rows    int         // most rows of a drawing with what stands below it; 0 for any number
	Paper   scene.Paper // what the page is printed on; zero for none in particular
}

// Options say how a sheet is drawn.
type Options struct {
	Shapes   []Shape  // the pages to choose from: the shape that needs fewest is taken for all; none for one page of any size
	Whole    bool     // put all on one page of about the proportions of the first shape, however large
	Quick    bool     // less work on the placing, for while a person waits
	Unwired  bool     // show terminals without a wire too
	Previous *Drawing // an earlier drawing of about the same sheet: what is in it stays where it is

	// Against is the sheet that a comparison takes for the earlier one; the one before the
	// drawn sheet if it is not said. Only comparisons look at it.
	Against model.SheetName
}

// Drawing is a drawn sheet.
type Drawing struct {
	Pages []scene.Page

	layouts []pageLayout
}

type pageLayout struct {
	zones   []model.ZoneID // which zones the page holds
	drawing layout.Drawing
}

// Draw draws a sheet of the job. It fails if the job has no such sheet or a zone does
// not fit the page; the error then says how many columns are missing. Equal input gives
// an equal drawing.
func Draw(j *model.Job, sheet model.SheetName, lib *model.Catalogue, o Options) (*Drawing, error) {
	s := j.Sheet(sheet)
	if s == nil {
		return nil, fmt.Errorf("the job has no %s sheet", sheet)
	}
	b := builder{job: j, sheet: s, cat: lib.For(j), options: o, drafts: map[string]draft{}}
	if len(o.Shapes) > 0 && !o.Whole {
		b.shape = o.Shapes[0]
	}
	if len(s.Parts)+len(s.Wires) == 0 {
		empty := page{number: 1, of: 1}
		return &Drawing{Pages: []scene.Page{b.scene(&empty, nil)}}, nil
	}
	pages := [][]model.ZoneID{b.allZones()}
	if b.shape.Columns > 0 || b.shape.Rows > 0 {
		if ok, err := b.fits(pages[0]); err != nil {
			return nil, err
		} else if !ok {
			if pages, err = b.split(); err != nil {
				return nil, err
			}
		}
	}
	return b.draw(pages)
}

// draw lays out the pages and turns them into scenes.
func (b *builder) draw(zones [][]model.ZoneID) (*Drawing, error) {
	pages := make([]page, len(zones))
	for i := range zones {
		lay := b.page
		if b.options.Quick {
			lay = b.draft
		}
		p, err := lay(zones[i])
		var narrow *layout.WidthError
		if errors.As(err, &narrow) {
			// More work is no promise of less width: take the draft, which may fit.
			p, err = b.draft(zones[i])
		}
		if err != nil {
			return nil, err
		}
		pages[i], pages[i].number, pages[i].of = p, i+1, len(zones)
	}
	d := &Drawing{}
	for i := range pages {
		d.Pages = append(d.Pages, b.scene(&pages[i], pages))
		d.layouts = append(d.layouts, pageLayout{pages[i].zones, pages[i].drawing})
	}
	return d, nil
}

// previous is the earlier layout of a page that held the same zones, else of the one that
// held most of them: a zone may be new or gone. It is nil if none held any.
func (o Options) previous(zones []model.ZoneID) *layout.Drawing {
	if o.Previous == nil {
		return nil
	}
	var best *layout.Drawing
	most, others := 0, 0
	for i := range o.Previous.layouts {
		earlier := &o.Previous.layouts[i]
		shared := 0
		for _, z := range zones {
			if slices.Contains(earlier.zones, z) {
				shared++
			}
		}
		rest := len(earlier.zones) - shared
		if shared > most || shared > 0 && shared == most && rest < others {
			best, most, others = &earlier.drawing, shared, rest
		}
	}
	return best
}

// In is the drawing with a state painted over each of its pages. Nothing moves, so that
// states can be compared.
func (d *Drawing) In(s scene.State) *Drawing {
	out := *d
	out.Pages = make([]scene.Page, len(d.Pages))
	for i := range d.Pages {
		out.Pages[i] = d.Pages[i].In(s)
	}
	return &out
}
