package diagram

import (
	"errors"
	"fmt"

	"example.com/lugbook/diagram/layout"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/model"
)

// Options say how a sheet is drawn.
type Options struct {
	Width    int      // columns of a page; 0 for one page as wide as it needs
	Height   int      // rows above which a sheet is split into pages by zone; 0 for no limit
	Quick    bool     // less work on the placing, for while a person waits
	Unwired  bool     // show terminals without a wire too
	Previous *Drawing // an earlier drawing of about the same sheet: what is in it stays where it is
}

// Drawing is a drawn sheet.
type Drawing struct {
	Pages []scene.Page

	layouts []pageLayout
}

type pageLayout struct {
	zones   string // which zones the page holds
	drawing layout.Drawing
	graph   layout.Graph
}

// Draw draws a sheet of the job. It fails if the job has no such sheet or a zone does
// not fit the page; the error then says how many columns are missing. Equal input gives
// an equal drawing.
func Draw(j *model.Job, sheet model.SheetName, lib *model.Catalogue, o Options) (*Drawing, error) {
	s := j.Sheet(sheet)
	if s == nil {
		return nil, fmt.Errorf("the job has no %s sheet", sheet)
	}
	b := builder{job: j, sheet: s, cat: lib.For(j), options: o}
	whole, err := b.page(b.allZones())
	var narrow *layout.WidthError
	switch {
	case err != nil && !errors.As(err, &narrow):
		return nil, err
	case err == nil && (o.Height == 0 || whole.drawing.H <= o.Height):
		return b.finish([]page{whole})
	}
	pages, err := b.split()
	if err != nil {
		return nil, err
	}
	return b.finish(pages)
}

// finish turns the laid out pages into scenes.
func (b *builder) finish(pages []page) (*Drawing, error) {
	d := &Drawing{}
	for i := range pages {
		pages[i].number, pages[i].of = i+1, len(pages)
	}
	for i := range pages {
		d.Pages = append(d.Pages, b.scene(&pages[i], pages))
		d.layouts = append(d.layouts, pageLayout{pages[i].name(), pages[i].drawing, pages[i].graph})
	}
	return d, nil
}

// previous is the earlier layout of a page that held the same zones; nil if there is none.
func (o Options) previous(zones string) *layout.Drawing {
	if o.Previous == nil {
		return nil
	}
	for i := range o.Previous.layouts {
		if o.Previous.layouts[i].zones == zones {
			return &o.Previous.layouts[i].drawing
		}
	}
	return nil
}
