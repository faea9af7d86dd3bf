package route

import "example.com/lugbook/diagram/layout/geom"

// refresh works out afresh what the cells of r forbid and cost, after boxes have moved. Slots in use stay.
func (g *grid) refresh(p *Problem, count []int, r geom.Rect) {
	g.clip = r
	g.each(r, func(c int32) { g.cell[c].static, g.owner[c], g.cell[c].extra, g.apron[c] = 0, 0, 0, 0 })
	for _, z := range p.Zones {
		if z.Rect.Grow(1, 1, 1, 1).Overlaps(r) {
			g.addZone(z, p.Costs.Near)
		}
	}
	for _, b := range p.Boxes {
		if b.Grow(1, 1, 1, 1).Overlaps(r) {
			g.addBox(b, p.Costs.Near)
		}
	}
	g.reserve(p, count)
	g.aprons(p)
	g.price(r)
	g.clip = g.whole()
}

func (g *grid) whole() geom.Rect { return geom.Rect{X: g.x0, Y: g.y0, W: g.w - 1, H: g.h - 1} }

// wiresPer counts the wires at each terminal.
func (p *Problem) wiresPer() []int {
	count := make([]int, len(p.Terminals))
	for _, w := range p.Wires {
		count[w.From]++
		count[w.To]++
	}
	return count
}
