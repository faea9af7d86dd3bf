package pdf

import (
	"example.com/lugbook/diagram/ink"
	"example.com/lugbook/diagram/scene"
)

// targets finds where the flags of each page lead: for a wire that goes on elsewhere, the
// number of the next page that holds it.
func targets(pages []scene.Page) []map[string]int {
	holds := map[string][]int{}
	for i := range pages {
		for _, w := range pages[i].Wires {
			holds[w.ID] = append(holds[w.ID], i)
		}
	}
	found := make([]map[string]int, len(pages))
	for i := range pages {
		found[i] = map[string]int{}
		offPage := map[string]bool{}
		for _, f := range pages[i].Flags {
			offPage[f.ID] = f.Kind == scene.OffPage
		}
		for _, w := range pages[i].Wires {
			for _, end := range []string{w.From, w.To} {
				if next := after(holds[w.ID], i); offPage[end] && next != i {
					found[i][end] = next + 1
				}
			}
		}
	}
	return found
}

// after is the number in a rising list that follows another, round from the last to the
// first.
func after(list []int, n int) int {
	for _, other := range list {
		if other > n {
			return other
		}
	}
	return list[0]
}

// link makes the texts of a flag lead to a page.
func (d *document) link(g ink.Group, page int) {
	to := d.AddLink()
	d.SetLink(to, 0, page)
	for _, m := range g.Marks {
		if m.Shape != ink.Letters {
			continue
		}
		x, y := d.at(ink.Point{X: m.At.X * ink.Fine, Y: (m.At.Y - ink.CellH/2) * ink.Fine})
		width, height := d.at(ink.Point{X: m.Cells * ink.CellW * ink.Fine, Y: ink.CellH * ink.Fine})
		d.Link(x, y, width, height, to)
	}
}
