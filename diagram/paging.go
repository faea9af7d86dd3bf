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

// gather joins pages while two of them fit one: first those with the most wires between
// them, last those with none.
func (b *builder) gather(pages [][]section) ([][]section, error) {
	for {
		i, k, err := b.couple(pages)
		if err != nil {
			return nil, err
		}
		if i == k {
			return pages, nil
		}
		pages[i] = slices.Concat(pages[i], pages[k])
		pages = slices.Delete(pages, k, k+1)
	}
}

// couple finds the next two pages to join; the same twice if there are none.
func (b *builder) couple(pages [][]section) (first, second int, err error) {
	type pair struct{ i, k, wires int }
	var pairs []pair
	between := b.between(pages)
	for k := range pages {
		for i := range k {
			pairs = append(pairs, pair{i, k, between[i][k]})
		}
	}
	slices.SortStableFunc(pairs, func(p, q pair) int { return q.wires - p.wires })
	for _, p := range pairs {
		ok, err := b.fits(slices.Concat(pages[p.i], pages[p.k]))
		if ok || err != nil {
			return p.i, p.k, err
		}
	}
	return 0, 0, nil
}

// between counts the wires between each two pages.
func (b *builder) between(pages [][]section) [][]int {
	on := make([]int, len(b.bulk.parts))
	count := make([][]int, len(pages))
	for i, page := range pages {
		count[i] = make([]int, len(pages))
		for _, s := range page {
			for _, part := range s.parts {
				on[part] = i
			}
		}
	}
	for _, ends := range b.bulk.wires {
		if ends[0] >= 0 && ends[1] >= 0 {
			i, k := on[ends[0]], on[ends[1]]
			count[min(i, k)][max(i, k)]++
		}
	}
	return count
}

// mostSqueezes is how often three pages are tried on two.
const mostSqueezes = 40

// squeeze puts what is on three pages on two where that fits, even if it has to cut zones for
// it, the emptiest pages first.
func (b *builder) squeeze(pages [][]section) ([][]section, error) {
	for tries := 0; tries < mostSqueezes; {
		found := false
		for _, three := range b.threes(pages) {
			tries++
			var things []section
			for _, i := range three {
				for _, s := range pages[i] {
					things = append(things, s.apart()...)
				}
			}
			two := b.cut(things, 2)
			ok, err := b.allFit(two)
			if err != nil {
				return nil, err
			}
			if ok {
				pages = slices.Delete(pages, three[2], three[2]+1)
				pages = slices.Delete(pages, three[1], three[1]+1)
				pages = append(slices.Delete(pages, three[0], three[0]+1), two...)
				found = true
			}
			if ok || tries == mostSqueezes {
				break
			}
		}
		if !found {
			break
		}
	}
	return pages, nil
}

// emptiest is the number of pages of which three are looked for that find room on two.
const emptiest = 12

// threes lists which three of the emptiest pages might find room on two, the emptiest first.
func (b *builder) threes(pages [][]section) [][]int {
	rows := make([]int, len(pages))
	order := make([]int, len(pages))
	for i, p := range pages {
		rows[i], order[i] = b.rows(p), i
	}
	slices.SortStableFunc(order, func(i, k int) int { return rows[i] - rows[k] })
	order = order[:min(emptiest, len(order))]
	slices.Sort(order)
	type trio struct {
		pages []int
		rows  int
	}
	var list []trio
	for z, k := range order {
		for y, j := range order[:z] {
			for _, i := range order[:y] {
				rows := b.rows(slices.Concat(pages[i], pages[j], pages[k])) + rowsBelow/pageAsDrawing
				if rows*b.bar()/100 <= 2*b.shape.Rows {
					list = append(list, trio{[]int{i, j, k}, rows})
				}
			}
		}
	}
	slices.SortStableFunc(list, func(s, t trio) int { return s.rows - t.rows })
	out := make([][]int, len(list))
	for i := range list {
		out[i] = list[i].pages
	}
	return out
}

// emptyPerCent is how much less than the fullest page one may hold without looking forlorn.
const emptyPerCent = 30

// even shares zones out anew between the emptiest page and the one that it has most wires
// with, if it holds very little.
func (b *builder) even(pages [][]section) ([][]section, error) {
	if len(pages) < 2 {
		return pages, nil
	}
	least, most := 0, 0
	for i := range pages {
		if b.rows(pages[i]) < b.rows(pages[least]) {
			least = i
		}
		if b.rows(pages[i]) > b.rows(pages[most]) {
			most = i
		}
	}
	below := rowsBelow / pageAsDrawing
	if (b.rows(pages[least])-below)*100 > (b.rows(pages[most])-below)*emptyPerCent {
		return pages, nil
	}
	partner, wires := most, -1
	for i, row := range b.between(pages) {
		if n := row[least] + b.between(pages)[least][i]; i != least && len(pages[i]) > 1 && n > wires {
			partner, wires = i, n
		}
	}
	two := b.cut(slices.Concat(pages[partner], pages[least]), 2)
	ok, err := b.allFit(two)
	if ok && len(two) == 2 {
		pages[least], pages[partner] = two[0], two[1]
	}
	return pages, err
}
