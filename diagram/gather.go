package diagram

import "slices"

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
