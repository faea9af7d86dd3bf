package planar

import (
	"slices"

	"example.com/lugbook/diagram/layout/chance"
)

// shape says how the wires of a plane turn.
type shape struct {
	corners []int // per half-edge: corners of the box it runs to, between it and the next one of its face
	bends   []int // per half-edge: quarter turns to the left on the way; those of its reverse are the opposite
	outer   int   // number of the outer face
	cost    int
}

// Prices of the shape: of a bend, and of the first to fourth corner of a box between two neighbouring wires, so that
// wires spread over all sides.
const bendPrice = 10

var cornerPrice = [4]int{0, 3, 5, 8}

// shapes tries the largest faces as the outer one and returns the cheapest so many, the best first, and some folded
// ones of each.
func shapes(p *plane, w *wiring, many, folds int) []*shape {
	p.label()
	gaps := p.gaps(w)
	size := make([]int, len(p.faces))
	for h := range p.org {
		if p.owner[h/2] != none {
			size[p.face[h]]++
		}
	}
	order := make([]int, len(p.faces))
	for f := range order {
		order[f] = f
	}
	slices.SortStableFunc(order, func(a, b int) int { return size[b] - size[a] })
	straight := make([]int, len(p.org))
	var out []*shape
	for _, f := range order[:min(2*many, len(order))] {
		if s := shapeOf(p, gaps, straight, f); s != nil {
			out = append(out, s)
		}
	}
	slices.SortStableFunc(out, func(a, b *shape) int { return a.cost - b.cost })
	out = out[:min(many, len(out))]
	rnd := chance.New(1)
	for i := range folds * many {
		if s := shapeOf(p, gaps, p.turns(&rnd), out[i%len(out)].outer); s != nil {
			out = append(out, s)
		}
	}
	return out
}

// turns asks some wires, one in six, to make a half turn to the left or the right: a drawing that is too wide for the
// page may then come out folded.
func (p *plane) turns(rnd *chance.Source) []int {
	out := make([]int, len(p.org))
	for h := 0; h < len(p.org); h += 2 {
		if p.owner[h/2] != none && rnd.Below(6) == 0 {
			out[h] = 2 - 4*rnd.Below(2)
			out[h+1] = -out[h]
		}
	}
	return out
}

// shapeOf finds the shape with the cheapest turns (Tamassia, 1987). A unit of flow is a quarter turn: every box hands
// its four corners to the faces around it, a bend hands one from the face on its one side to that on the other, and
// every face has to turn four quarters in all, the outer one minus four. A box may have any number of wires on a side,
// so two neighbouring wires need no corner between them. turns are quarter turns that half-edges make in any case.
func shapeOf(p *plane, gaps []between, turns []int, outer int) *shape {
	faces := len(p.faces)
	n := newNetwork(faces + p.real)
	for f := range faces {
		n.supply[f] = 4
	}
	n.supply[outer] = -4
	corner, bend := make([]int, len(p.org)), make([]int, len(p.org))
	for h := range p.org {
		if p.owner[h/2] == none {
			continue
		}
		f, v := p.face[h], p.dest(h)
		bend[h] = n.arc(f, p.face[h^1], boundless, bendPrice)
		n.supply[f] -= turns[h]
		if p.crossing(v) {
			n.supply[f]--
			continue
		}
		n.supply[f] -= 2
		corner[h] = len(n.to)
		for k, price := range cornerPrice {
			n.arc(faces+v, f, min(1, max(gaps[h].room()-k, 0)), price)
		}
	}
	for v := range p.real {
		if p.out[v] != none {
			n.supply[faces+v] = 4
		}
	}
	if !n.solve() {
		return nil
	}
	s := &shape{corners: make([]int, len(p.org)), bends: make([]int, len(p.org)), outer: outer}
	for h := range p.org {
		if p.owner[h/2] == none {
			continue
		}
		s.bends[h] = n.flow(bend[h]) - n.flow(bend[h^1]) + turns[h]
		s.cost += bendPrice * max(s.bends[h], 0)
		if p.crossing(p.dest(h)) {
			continue
		}
		for k, price := range cornerPrice {
			s.corners[h] += n.flow(corner[h] + 2*k)
			s.cost += price * n.flow(corner[h]+2*k)
		}
	}
	return s
}
