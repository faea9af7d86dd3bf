package diagram

import (
	"errors"
	"fmt"
	"slices"

	"example.com/lugbook/diagram/layout"
	"example.com/lugbook/model"
)

// builder turns one sheet into pages.
type builder struct {
	job     *model.Job
	sheet   *model.Sheet
	cat     *model.Catalogue
	options Options
	shape   Shape
	drafts  map[string]draft // pages tried, by their zones
}

// draft is a page laid out with little work, or why it could not be.
type draft struct {
	page page
	err  error
}

// page is a part of the sheet that is drawn by itself: the parts of some zones.
type page struct {
	zones      []model.ZoneID
	number, of int
	boxes      []box
	flags      []flag
	onward     map[model.WireID]bool // which way the power wires lead
	graph      layout.Graph
	drawing    layout.Drawing
}

func (p *page) holds(zone model.ZoneID) bool { return slices.Contains(p.zones, zone) }

// allZones lists the zones that hold parts or loose ends, in the order of the job;
// the empty zone, of what has no zone, comes last.
func (b *builder) allZones() []model.ZoneID {
	used := map[model.ZoneID]bool{}
	for i := range b.sheet.Parts {
		used[b.sheet.Parts[i].Zone] = true
	}
	for i := range b.sheet.Wires {
		used[b.home(&b.sheet.Wires[i])] = true
	}
	var zones []model.ZoneID
	for _, z := range b.job.Zones {
		if used[z.ID] {
			zones = append(zones, z.ID)
		}
	}
	if used[""] {
		zones = append(zones, "")
	}
	return zones
}

// home is the zone of a wire that has no end on a part: where it was seen.
func (b *builder) home(w *model.Wire) model.ZoneID {
	for _, e := range w.Ends() {
		if p := b.sheet.Part(e.At.Part); p != nil {
			return p.Zone
		}
	}
	if w.From.In != "" {
		return w.From.In
	}
	return w.To.In
}

// page lays out the parts of some zones.
func (b *builder) page(zones []model.ZoneID) (page, error) {
	p := page{zones: zones}
	b.fill(&p)
	o := layout.Options{ColumnCost: 1, RowCost: 2, MaxWidth: b.shape.Columns, Effort: layout.Full, Seeds: 2, Previous: b.options.previous(p.zones)}
	if b.options.Quick {
		o.Effort = layout.Draft
	}
	d, err := layout.Layout(p.graph, o)
	for err != nil && p.unpin(err) {
		d, err = layout.Layout(p.graph, o)
	}
	p.drawing = d
	return p, err
}

// draft lays out the parts of some zones with little work, once.
func (b *builder) draft(zones []model.ZoneID) (page, error) {
	key := fmt.Sprint(zones)
	if d, tried := b.drafts[key]; tried {
		return d.page, d.err
	}
	quick := *b
	quick.options.Quick = true
	p, err := quick.page(zones)
	b.drafts[key] = draft{p, err}
	return p, err
}

// unpin lets boxes that a person placed go where they are in the way: the one that lies
// on another, as when that grew with its wires, or all where they leave no room for the
// rest. It is false if there is none to let go.
func (p *page) unpin(failure error) bool {
	var (
		clash    *layout.GraphError
		pinned   *layout.PinError
		unrouted *layout.UnroutedError
	)
	id := ""
	switch {
	case errors.As(failure, &clash):
		id = clash.ID
	case errors.As(failure, &pinned), errors.As(failure, &unrouted):
	default:
		return false
	}
	let := false
	for i := range p.graph.Boxes {
		if box := &p.graph.Boxes[i]; box.Pin != nil && (id == "" || box.ID == id) {
			box.Pin, let = nil, true
		}
	}
	return let
}

// fits reports whether the parts of some zones find room on one page. It tries with
// little work.
func (b *builder) fits(zones []model.ZoneID) (bool, error) {
	p, err := b.draft(zones)
	var narrow *layout.WidthError
	if errors.As(err, &narrow) {
		return false, nil
	}
	return err == nil && (b.shape.Rows == 0 || p.drawing.H <= b.shape.Rows), err
}

// split puts zones on pages in the order of the job, as many on a page as fit.
func (b *builder) split() ([][]model.ZoneID, error) {
	var pages [][]model.ZoneID
	zones := b.allZones()
	for len(zones) > 0 {
		n := 1
		for n < len(zones) {
			ok, err := b.fits(zones[:n+1])
			if err != nil {
				return nil, err
			}
			if !ok {
				break
			}
			n++
		}
		pages = append(pages, zones[:n])
		zones = zones[n:]
	}
	return pages, nil
}
