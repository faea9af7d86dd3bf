package diagram

import "example.com/lugbook/model"

// again puts a sheet on the pages that the earlier drawing has, as long as they hold it: what
// somebody has printed stays on the page where it was. It is nil if they do not.
func (b *builder) again(all []section) *Drawing {
	sections := b.asBefore(all)
	for _, shape := range b.options.Shapes {
		if !b.options.Previous.within(shape) {
			continue
		}
		on := b.on(shape)
		on.settle(sections)
		pages := make([]page, len(sections))
		fits := true
		for i := range sections {
			p, err := on.page(sections[i])
			if err != nil || !on.holds(&p) && !b.options.Previous.covers(&p) {
				fits = false
				break
			}
			pages[i], pages[i].number, pages[i].of = p, i+1, len(sections)
		}
		if fits {
			return on.drawn(pages)
		}
	}
	return nil
}

// within reports whether all pages of a drawing are no larger than a shape.
func (d *Drawing) within(s Shape) bool {
	for i := range d.layouts {
		at := &d.layouts[i].drawing
		if s.Columns > 0 && at.W > s.Columns || s.Rows > 0 && at.H > s.Rows {
			return false
		}
	}
	return true
}

// covers reports whether the earlier drawing of a page took as much room: a page that was too
// full then, as one part with many wires may be, may be so again.
func (d *Drawing) covers(p *page) bool {
	earlier := Options{Previous: d}.previous(&p.graph)
	return earlier != nil && p.drawing.W <= earlier.W && p.drawing.H <= earlier.H
}

// asBefore puts each thing on the page where the earlier drawing has it. What is new goes
// where most of its zone is, or on the last page.
func (b *builder) asBefore(all []section) [][]section {
	before := b.options.Previous.pagesOf()
	pages := make([][]section, len(b.options.Previous.layouts))
	for _, s := range all {
		var fresh []section
		count := make([]int, len(pages))
		for _, thing := range s.apart() {
			at, known := before[b.boxOf(thing)]
			if !known {
				fresh = append(fresh, thing)
				continue
			}
			pages[at] = append(pages[at], thing)
			count[at]++
		}
		most := len(pages) - 1
		for i := range count {
			if count[i] > count[most] {
				most = i
			}
		}
		pages[most] = append(pages[most], fresh...)
	}
	var out [][]section
	for _, p := range pages {
		if len(p) > 0 {
			out = append(out, joined(p))
		}
	}
	return out
}

// boxOf is the id of the box of a single thing: the part, or the mark at the first end of a
// loose wire.
func (b *builder) boxOf(thing section) string {
	if len(thing.parts) > 0 {
		return string(b.sheet.Parts[thing.parts[0]].ID)
	}
	w := &b.sheet.Wires[thing.loose[0]]
	return looseFlag(w, "from", model.End{}).id
}

// pagesOf tells for each box on which page it is.
func (d *Drawing) pagesOf() map[string]int {
	out := map[string]int{}
	for i := range d.layouts {
		for _, box := range d.layouts[i].drawing.Boxes {
			out[box.ID] = i
		}
	}
	return out
}
