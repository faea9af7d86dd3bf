package diagram

import (
	"errors"
	"fmt"

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
	Whole    bool     // put all on one page: on paper however small, of characters as wide as the first shape says
	Quick    bool     // less work on the placing, for while a person waits
	Unwired  bool     // show terminals without a wire too
	Previous *Drawing // an earlier drawing of about the same sheet: what is in it stays where it is; nil for what the job keeps

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
	drawing layout.Drawing
	graph   *layout.Graph // that it shows; nil if it was recalled from a job file
}

// fullStarts is the number of beginnings of which the best drawing is taken.
const fullStarts = 2

// Draw draws a sheet of the job. It fails if the job has no such sheet, or if some part is
// wider than a page of characters; the error then says how many columns are missing. Equal
// input gives an equal drawing.
func Draw(j *model.Job, sheet model.SheetName, lib *model.Catalogue, o Options) (*Drawing, error) {
	s := j.Sheet(sheet)
	if s == nil {
		return nil, fmt.Errorf("the job has no %s sheet", sheet)
	}
	if what := o.KeptFor(); what != "" && o.Previous == nil {
		o.Previous = Recall(s, what)
	}
	b := &builder{job: j, sheet: s, cat: lib.For(j), options: o, starts: fullStarts, drafts: map[string]draft{}}
	all := b.zoneSections()
	switch {
	case len(all) == 0:
		return b.nothing(), nil
	case len(o.Shapes) == 0:
		return b.draw([][]section{all})
	}
	if o.Whole {
		b.bulk = b.measure()
		return b.whole(all)
	}
	if o.Previous != nil {
		if d := b.again(all); d != nil {
			return d, nil
		}
		b.options.Previous = nil
	}
	p, err := b.plan(all)
	if err != nil {
		return nil, err
	}
	on := b.on(p.shape)
	on.tried = p.tried
	return on.draw(p.pages)
}

// nothing is the drawing of a sheet without parts and wires: a page with its title block.
func (b *builder) nothing() *Drawing {
	if len(b.options.Shapes) > 0 {
		b.shape = b.options.Shapes[0]
	}
	empty := page{number: 1, of: 1}
	return &Drawing{Pages: []scene.Page{b.scene(&empty, nil)}}
}

// draw lays out pages and turns them into scenes.
func (b *builder) draw(sections [][]section) (*Drawing, error) {
	b.settle(sections)
	pages := make([]page, len(sections))
	for i, s := range sections {
		p, err := b.best(s)
		if err != nil {
			return nil, err
		}
		pages[i], pages[i].number, pages[i].of = p, i+1, len(sections)
	}
	return b.drawn(pages), nil
}

// settle sets on which page each part is.
func (b *builder) settle(sections [][]section) {
	b.where = map[model.PartID]int{}
	for i, s := range sections {
		for part := range b.newPage(s).parts {
			b.where[part] = i + 1
		}
	}
}

// drawn turns pages that are laid out into scenes.
func (b *builder) drawn(pages []page) *Drawing {
	d := &Drawing{}
	for i := range pages {
		d.Pages = append(d.Pages, b.scene(&pages[i], pages))
		d.layouts = append(d.layouts, pageLayout{pages[i].drawing, &pages[i].graph})
	}
	return d
}

// best lays out a page with all the work that is asked for. More work is no promise of less
// room: where that does not fit, a draft may, and the page as it was planned does. Marks
// without zones are narrower; and on paper what is too wide for all that is made smaller, as
// one part with very long names may be.
func (b *builder) best(s []section) (page, error) {
	full, err := b.page(s)
	if err == nil && b.holds(&full) {
		return full, nil
	}
	if quick, failed := b.draft(s); failed == nil && b.holds(&quick) {
		return quick, nil
	}
	if planned, ok := b.tried[contents(s)]; ok && planned.err == nil && (err != nil || b.holds(&planned.page)) {
		b.renumber(&planned.page)
		return planned.page, nil
	}
	var narrow *layout.WidthError
	if !errors.As(err, &narrow) {
		return full, err
	}
	terse := b.on(b.shape)
	terse.terse = true
	if full, err = terse.page(s); !errors.As(err, &narrow) || b.shape.Paper == (scene.Paper{}) {
		return full, err
	}
	wide := b.on(Shape{Paper: b.shape.Paper})
	return wide.page(s)
}

// renumber writes the pages into the marks of one that was laid out before they were settled.
func (b *builder) renumber(p *page) {
	for i := range p.flags {
		f := &p.flags[i]
		if f.kind == scene.OffPage {
			f.text = b.awayFlag(b.sheet.Wire(f.wire), "", f.end).text
		}
	}
}

// previous is the earlier layout of a page with most of the same boxes; of several the one
// with fewest others. It is nil if none has any.
func (o Options) previous(g *layout.Graph) *layout.Drawing {
	if o.Previous == nil {
		return nil
	}
	here := map[string]bool{}
	for _, b := range g.Boxes {
		here[b.ID] = true
	}
	var best *layout.Drawing
	most, others := 0, 0
	for i := range o.Previous.layouts {
		earlier := &o.Previous.layouts[i].drawing
		shared := 0
		for _, b := range earlier.Boxes {
			if here[b.ID] {
				shared++
			}
		}
		rest := len(earlier.Boxes) - shared
		if shared > most || shared > 0 && shared == most && rest < others {
			best, most, others = earlier, shared, rest
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
