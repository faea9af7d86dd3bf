package diagram

import (
	"fmt"
	"slices"

	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/model"
)

// section is what stays together on a page: a zone, or a share of one that no page holds.
type section struct {
	zone  model.ZoneID
	parts []int // of the sheet, in rising order
	loose []int // wires of the sheet that end on no part and were seen here, likewise
}

// zoneSections are the zones that hold parts or loose wires, in the order of the job. Zones
// that the job does not name come behind, and last what has no zone.
func (b *builder) zoneSections() []section {
	var all []section
	at := map[model.ZoneID]int{}
	for _, z := range b.job.Zones {
		at[z.ID] = len(all)
		all = append(all, section{zone: z.ID})
	}
	in := func(zone model.ZoneID) *section {
		if _, known := at[zone]; !known {
			at[zone] = len(all)
			all = append(all, section{zone: zone})
		}
		return &all[at[zone]]
	}
	for i := range b.sheet.Parts {
		s := in(b.sheet.Parts[i].Zone)
		s.parts = append(s.parts, i)
	}
	for i := range b.sheet.Wires {
		if w := &b.sheet.Wires[i]; b.sheet.Part(w.From.At.Part) == nil && b.sheet.Part(w.To.At.Part) == nil {
			s := in(b.home(w))
			s.loose = append(s.loose, i)
		}
	}
	all = slices.DeleteFunc(all, func(s section) bool { return len(s.parts)+len(s.loose) == 0 })
	slices.SortStableFunc(all, func(a, b section) int { return unnamedLast(a) - unnamedLast(b) })
	return all
}

func unnamedLast(s section) int {
	if s.zone == "" {
		return 1
	}
	return 0
}

// home is the zone of a wire that has no end on a part: where it was seen.
func (b *builder) home(w *model.Wire) model.ZoneID {
	if w.From.In != "" {
		return w.From.In
	}
	return w.To.In
}

// joined puts shares of one zone that stand on one page together.
func joined(sections []section) []section {
	var out []section
	for _, s := range sections {
		k := slices.IndexFunc(out, func(o section) bool { return o.zone == s.zone })
		if k < 0 {
			out = append(out, s)
			continue
		}
		out[k].parts = rising(out[k].parts, s.parts)
		out[k].loose = rising(out[k].loose, s.loose)
	}
	return out
}

func rising(a, b []int) []int {
	both := slices.Concat(a, b)
	slices.Sort(both)
	return both
}

// share tells which of the pages that hold a zone a page is, and of how many.
func share(zone model.ZoneID, p *page, pages []page) (no, of int) {
	for i := range pages {
		if pages[i].section(zone) != nil {
			of++
			if pages[i].number == p.number {
				no = of
			}
		}
	}
	return no, of
}

// sectionWords is the name of a zone, and which share of it the page holds.
func (b *builder) sectionWords(zone model.ZoneID, p *page, pages []page) string {
	words := b.zoneWords(zone)
	if no, of := share(zone, p, pages); of > 1 {
		return fmt.Sprintf("%s (%d of %d)", words, no, of)
	}
	return words
}

// apart is every thing of a section by itself.
func (s section) apart() []section {
	var things []section
	for _, i := range s.parts {
		things = append(things, section{zone: s.zone, parts: []int{i}})
	}
	for _, i := range s.loose {
		things = append(things, section{zone: s.zone, loose: []int{i}})
	}
	return things
}

// titleWidth is the room that the name of a section takes in its frame.
func (b *builder) titleWidth(s *section) int {
	width := scene.Width(b.zoneWords(s.zone)) + 2
	if b.shared(s) {
		width += scene.Width(" (1 of 2)")
	}
	return min(width, titleRoom)
}

// shared reports whether parts of a section's zone are on other pages.
func (b *builder) shared(s *section) bool {
	here := 0
	for i := range b.sheet.Parts {
		if b.sheet.Parts[i].Zone == s.zone {
			here++
		}
	}
	return here > len(s.parts)
}
