package diagram

import (
	"cmp"
	"slices"
)

// plan is what goes on which page.
type plan struct {
	shape Shape
	pages [][]section
	cut   int              // wires that go on on another page
	tried map[string]draft // what the pages came out as
}

// plan puts a sheet on pages of the shape that needs the fewest; of equals that which
// cuts fewer wires, then the first. The shape is chosen by drafts alone.
func (b *builder) plan(all []section) (plan, error) {
	var best plan
	var chosen *builder
	shapes := b.likely(all)
	for _, shape := range shapes {
		on := b.on(shape)
		on.bulk = on.measure()
		on.careful = mostCareful
		next, err := on.planned(all)
		if err != nil {
			return plan{}, err
		}
		if chosen == nil || cmp.Or(len(next.pages)-len(best.pages), next.cut-best.cut) < 0 {
			best, chosen = next, on
		}
		if len(best.pages) == 1 {
			return best, nil
		}
	}
	if b.options.Quick {
		return best, nil
	}
	chosen.careful, chosen.misses = 0, 0
	return chosen.planned(all)
}

// planned is the plan for the builder's shape.
func (b *builder) planned(all []section) (plan, error) {
	pages, err := b.split(all)
	return plan{b.shape, pages, b.cutWires(pages), b.drafts}, err
}

// fewPages is the number of pages up to which every shape is tried. For more, a page that is
// turned makes little difference, and the shape is chosen by estimate.
const fewPages = 12

// likely are the shapes that are worth trying.
func (b *builder) likely(all []section) []Shape {
	best, fewest := 0, 0
	for i, shape := range b.options.Shapes {
		on := b.on(shape)
		on.bulk = on.measure()
		pages := 1
		if room := shape.Rows - rowsBelow/pageAsDrawing; room > 0 {
			pages = on.rows(all) / room
		}
		if i == 0 || pages < fewest {
			best, fewest = i, pages
		}
	}
	if fewest > fewPages {
		return b.options.Shapes[best : best+1]
	}
	return b.options.Shapes
}

// cutWires counts the wires whose ends are on two pages.
func (b *builder) cutWires(pages [][]section) int {
	on := map[int]int{}
	for i, page := range pages {
		for _, s := range page {
			for _, part := range s.parts {
				on[part] = i
			}
		}
	}
	n := 0
	for _, ends := range b.bulk.wires {
		if ends[0] >= 0 && ends[1] >= 0 && on[ends[0]] != on[ends[1]] {
			n++
		}
	}
	return n
}

// split puts all sections on one page if they fit; else zones on as few pages as it can, and
// those that no page holds in shares. The pages come in the order of their first sections.
func (b *builder) split(all []section) ([][]section, error) {
	if ok, err := b.fits(all); ok || err != nil {
		return [][]section{all}, err
	}
	var pages [][]section
	for _, s := range all {
		shares, err := b.shares(s)
		if err != nil {
			return nil, err
		}
		pages = append(pages, shares...)
	}
	for _, step := range []func([][]section) ([][]section, error){b.gather, b.squeeze, b.even} {
		var err error
		if pages, err = step(pages); err != nil {
			return nil, err
		}
	}
	return inOrder(pages, all), nil
}

// inOrder sorts pages by the first zone that they hold, and those of one zone by its parts.
func inOrder(pages [][]section, all []section) [][]section {
	zone := func(s section) int {
		return slices.IndexFunc(all, func(o section) bool { return o.zone == s.zone })
	}
	for i := range pages {
		pages[i] = joined(pages[i])
		slices.SortStableFunc(pages[i], func(s, o section) int { return zone(s) - zone(o) })
	}
	slices.SortStableFunc(pages, func(p, q []section) int {
		return cmp.Or(zone(p[0])-zone(q[0]), slices.Compare(p[0].parts, q[0].parts))
	})
	return pages
}

// fewShares is the number of shares up to which a zone is cut anew when one does not fit, so
// that all are about equally large. Of more only the one that does not fit is cut again.
const fewShares = 3

// shares cuts a zone into as many shares as it needs to fit pages, with few wires between
// them. One thing alone is a share whether it fits or not.
func (b *builder) shares(s section) ([][]section, error) {
	things := s.apart()
	if len(things) == 1 {
		return [][]section{{s}}, nil
	}
	n := 1
	for n < len(things) && !b.seemToFit(b.cut(things, n)) {
		n++
	}
	for ; n <= min(fewShares, len(things)); n++ {
		pages := b.cut(things, n)
		if ok, err := b.allFit(pages); ok || err != nil {
			return pages, err
		}
	}
	var pages [][]section
	for _, page := range b.cut(things, min(max(n, 2), len(things))) {
		ok, err := b.fits(page)
		if err != nil {
			return nil, err
		}
		more := [][]section{page}
		if !ok {
			if more, err = b.shares(page[0]); err != nil {
				return nil, err
			}
		}
		pages = append(pages, more...)
	}
	return pages, nil
}

// seemToFit reports whether pages are not known to be too full before any is laid out.
func (b *builder) seemToFit(pages [][]section) bool {
	return !slices.ContainsFunc(pages, func(p []section) bool { return b.tooFull(p) })
}

func (b *builder) allFit(pages [][]section) (bool, error) {
	if !b.seemToFit(pages) {
		return false, nil
	}
	for _, page := range pages {
		if ok, err := b.fits(page); !ok || err != nil {
			return false, err
		}
	}
	return true, nil
}

// sameZone is by how many wires parts of a zone that follow one another in the job count as
// joined more than they are, so that zones stay together where pages are cut.
const sameZone = 2

// cut puts sections on n pages that are about equally full, with few wires between them.
func (b *builder) cut(things []section, n int) [][]section {
	if n == 1 {
		return [][]section{joined(things)}
	}
	g := cutting{}
	at := map[int]int{}
	for i, s := range things {
		g.sizes = append(g.sizes, b.cells(s))
		for _, part := range s.parts {
			at[part] = i
		}
		if i > 0 && things[i-1].zone == s.zone {
			for range sameZone {
				g.joins = append(g.joins, [2]int{i - 1, i})
			}
		}
	}
	for _, ends := range b.bulk.wires {
		from, here := at[ends[0]]
		to, there := at[ends[1]]
		if here && there && from != to {
			g.joins = append(g.joins, [2]int{from, to})
		}
	}
	pages := make([][]section, n)
	for i, page := range g.cut(n) {
		pages[page] = append(pages[page], things[i])
	}
	pages = slices.DeleteFunc(pages, func(p []section) bool { return len(p) == 0 })
	for i := range pages {
		pages[i] = joined(pages[i])
	}
	return pages
}
