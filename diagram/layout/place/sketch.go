package place

import (
	"example.com/lugbook/diagram/layout/chance"
	"example.com/lugbook/diagram/layout/geom"
)

// sketchFrom is the number of boxes from which on a placement begins with a sketch, groupSize that of the boxes of its
// groups at most, and sketchRoom the area given to them in percent of the room that their boxes need. sketchTries is the number of
// exchanges tried per cell and temperature.
const (
	sketchFrom = 150
	groupSize  = 16
	sketchRoom = 300

	sketchTries = 1000
)

// sketchable tells whether the placement can begin with a sketch: there are many boxes, and they may go anywhere.
func (s *state) sketchable() bool {
	return len(s.bodies) >= sketchFrom && len(s.zones) == 0 && !s.pins && s.p.Rules.MaxWidth == 0
}

// sketch is a map of groups of boxes on a coarse grid, before the boxes have places.
type sketch struct {
	groups [][]int
	of     []int // group per box
	wide   int   // cells in a row of the grid
	cell   []int // per cell the group on it, -1 for none
	at     []int // per group its cell
	wires  [][]sketched
}

// sketched is a wire of a group to another one, leaving to a side of its box if that is fixed.
type sketched struct {
	other int
	side  geom.Side
	fixed bool
	count int
}

// sketch maps groups so that those wired to each other lie close and wires leave towards where they go.
func (s *state) sketch(groups [][]int, seed uint64) *sketch {
	k := &sketch{groups: groups, of: make([]int, len(s.bodies)), wires: make([][]sketched, len(groups)), at: make([]int, len(groups))}
	for g, boxes := range groups {
		for _, i := range boxes {
			k.of[i] = g
		}
	}
	for k.wide*k.wide < len(groups) {
		k.wide++
	}
	high := (len(groups) + k.wide - 1) / k.wide
	k.cell = make([]int, k.wide*high)
	for c := range k.cell {
		k.cell[c] = -1
		if c < len(groups) {
			k.cell[c], k.at[c] = c, c
		}
	}
	for _, w := range s.p.Wires {
		a, b := k.of[w.From.Box], k.of[w.To.Box]
		if a != b {
			k.link(a, b, &s.p.Boxes[w.From.Box].Ports[w.From.Port])
			k.link(b, a, &s.p.Boxes[w.To.Box].Ports[w.To.Port])
		}
	}
	k.improve(seed)
	return k
}

func (k *sketch) link(a, b int, p *Port) {
	side, fixed := p.Sides.First(), p.Sides.Count() == 1
	for i := range k.wires[a] {
		if w := &k.wires[a][i]; w.other == b && w.side == side && w.fixed == fixed {
			w.count++
			return
		}
	}
	k.wires[a] = append(k.wires[a], sketched{b, side, fixed, 1})
}

// cost prices the wires of a group: twice the distance, and where they leave the wrong way.
func (k *sketch) cost(g int) int {
	sum := 0
	x, y := k.at[g]%k.wide, k.at[g]/k.wide
	for _, w := range k.wires[g] {
		dx, dy := k.at[w.other]%k.wide-x, k.at[w.other]/k.wide-y
		d := 2 * (geom.Abs(dx) + geom.Abs(dy))
		if step := w.side.Step(); w.fixed && step.X*dx+step.Y*dy < 0 {
			d++
		}
		sum += w.count * d
	}
	return sum
}

// improve exchanges cells by annealing.
func (k *sketch) improve(seed uint64) {
	rnd := chance.New(seed)
	n := len(k.cell)
	t := int64(64) * chance.One
	for range 64 {
		for range sketchTries * n {
			c, d := rnd.Below(n), rnd.Below(n)
			if c == d {
				continue
			}
			before := k.both(c, d)
			k.exchange(c, d)
			if k.both(c, d)-before > rnd.Limit(t) {
				k.exchange(c, d)
			}
		}
		t = t * 58000 >> 16
	}
}

// both prices the wires of the groups on two cells.
func (k *sketch) both(c, d int) int {
	sum := 0
	for _, c := range [2]int{c, d} {
		if g := k.cell[c]; g >= 0 {
			sum += k.cost(g)
		}
	}
	return sum
}

func (k *sketch) exchange(c, d int) {
	k.cell[c], k.cell[d] = k.cell[d], k.cell[c]
	for _, c := range [2]int{c, d} {
		if g := k.cell[c]; g >= 0 {
			k.at[g] = c
		}
	}
}

// areas gives each group its rectangle: cells of one row are equally high, those of one column equally wide, and all
// hold sketchRoom.
func (k *sketch) areas(s *state) []geom.Rect {
	widths, heights := make([]int, k.wide), make([]int, len(k.cell)/k.wide)
	for g, boxes := range k.groups {
		room, w, h := 0, 0, 0
		for _, i := range boxes {
			r := s.bodies[i].roomOf()
			room += (r.W + 1) * (r.H + 1)
			w, h = max(w, r.W+1), max(h, r.H+1)
		}
		side := root(room * sketchRoom / 100)
		x, y := k.at[g]%k.wide, k.at[g]/k.wide
		widths[x] = max(widths[x], side, w)
		heights[y] = max(heights[y], side, h)
	}
	out := make([]geom.Rect, len(k.groups))
	for g := range out {
		r := geom.Rect{W: widths[k.at[g]%k.wide], H: heights[k.at[g]/k.wide]}
		for _, w := range widths[:k.at[g]%k.wide] {
			r.X += w
		}
		for _, h := range heights[:k.at[g]/k.wide] {
			r.Y += h
		}
		out[g] = r
	}
	return out
}

// settleSketch places the boxes of each group in its area.
func (s *state) settleSketch(k *sketch) {
	areas := k.areas(s)
	s.recount()
	for g := range k.groups {
		for range k.groups[g] {
			i := s.nextIn(k.groups[g])
			area := areas[g]
			area.W = max(area.W-s.bodies[i].rect.W, 0)
			area.H = max(area.H-s.bodies[i].rect.H, 0)
			for !s.settleIn(i, area) {
				area = area.Grow(area.W/2+4, area.H/2+4, area.W/2+4, area.H/2+4)
			}
		}
	}
	s.recount()
}

// nextIn picks the unplaced box of a list with most wires to placed boxes, then with most wires.
func (s *state) nextIn(list []int) int {
	best, bestKey := -1, -1
	for _, i := range list {
		if s.bodies[i].placed {
			continue
		}
		key := len(s.bodies[i].wires)
		for _, w := range s.bodies[i].wires {
			other := s.p.Wires[w].From.Box
			if other == i {
				other = s.p.Wires[w].To.Box
			}
			if s.bodies[other].placed {
				key += 1000
			}
		}
		if key > bestKey {
			best, bestKey = i, key
		}
	}
	return best
}
