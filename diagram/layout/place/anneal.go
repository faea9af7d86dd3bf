package place

import (
	"slices"

	"example.com/lugbook/diagram/layout/chance"
	"example.com/lugbook/diagram/layout/geom"
)

// coolSteps is the number of temperatures of an annealing.
const coolSteps = 128

// cooling is a first temperature and, in 1/65536, the factor from one to the next; the last one is about 0.5.
type cooling struct{ start, factor int64 }

// A placement box by box is annealed from a heat in which even boxes with many wires move, if there are moves enough to
// cool down again; one from a sketch keeps the map it was made by.
var (
	fromHot    = cooling{600 * chance.One, 62005} // (0.5/600)^(1/128)
	fromSketch = cooling{300 * chance.One, 62341} // (0.5/300)^(1/128)
	fromWarm   = cooling{150 * chance.One, 62678} // (0.5/150)^(1/128)
)

// heatOf is the cooling wanted if so many moves are enough for it.
func heatOf(moves, boxes int, wanted cooling) cooling {
	if moves < 1000*boxes {
		return fromWarm
	}
	return wanted
}

// backup is a box as it was before a move.
type backup struct {
	box   int
	rect  geom.Rect
	halo  [4]int
	lead  [4]int
	slots []slot
	spots []Spot
}

// annealer moves boxes about.
type annealer struct {
	*state
	rnd     chance.Source
	movable []int // boxes that are not pinned
	flexing []int // boxes with ports to choose
	free    []int // zones without pinned boxes
	touched []int
	region  geom.Rect
	old     []backup    // of the touched boxes
	zonesB  []geom.Rect // frames before the move
	reach   int         // farthest shift

	straighten int // moves in a hundred more that align boxes
}

// anneal runs the given number of moves. Pre and post: boxes are apart and zones clear, ports are seated.
func (s *state) anneal(moves int, seed uint64, c cooling) {
	a := &annealer{state: s, rnd: chance.New(seed)}
	for i := range s.bodies {
		if s.p.Boxes[i].Pin == nil {
			a.movable = append(a.movable, i)
		}
		if len(s.bodies[i].slots) > 0 {
			a.flexing = append(a.flexing, i)
		}
	}
	for z := range s.zones {
		if len(s.member[z]) > 0 && !slices.ContainsFunc(s.member[z], func(i int) bool { return s.p.Boxes[i].Pin != nil }) {
			a.free = append(a.free, z)
		}
	}
	if len(a.movable) == 0 && len(a.flexing) == 0 {
		return
	}
	a.region = s.region()
	t := c.start
	for k := range coolSteps {
		left := coolSteps - k
		a.reach = 2 + 40*left*left/(coolSteps*coolSteps)
		a.straighten = 30 * k / coolSteps
		for range moves / coolSteps {
			a.try(t)
		}
		t = t * c.factor >> 16
	}
}

// try makes one random move and keeps or undoes it.
func (a *annealer) try(t int64) {
	a.touched = a.touched[:0]
	a.zonesB = append(a.zonesB[:0], a.zones...)
	if !a.propose() {
		a.undo()
		return
	}
	if !a.within() || !a.fit(a.touched) {
		a.undo()
		return
	}
	delta, ok := a.price(a.touched, a.rnd.Limit(t))
	if !ok {
		a.undo()
		return
	}
	a.commit(a.touched, delta)
}

// spread is the area, in percent of the room that the boxes need, in which they are moved about. Without a bound they
// drift apart while it is hot, and later nothing brings whole groups together again.
const spread = 500

// region is the square, in steps, or the part of the page around the middle of the drawing, and around all that lies
// beyond.
func (s *state) region() geom.Rect {
	r := &s.p.Rules
	total := 0
	for i := range s.bodies {
		room := s.bodies[i].roomOf()
		total += room.W * room.H
	}
	w := root(total * spread / 100 * r.Row / r.Col)
	if r.MaxWidth > 0 {
		w = r.MaxWidth
	}
	h := total * spread / 100 / max(w, 1)
	b := s.bounds
	return b.Union(geom.Rect{X: b.X + (b.W-w)/2, Y: b.Y + (b.H-h)/2, W: w, H: h})
}

// within tells whether the touched boxes are in the region.
func (a *annealer) within() bool {
	for _, i := range a.touched {
		if a.region.Union(a.bodies[i].rect) != a.region {
			return false
		}
	}
	return true
}

// touch saves a box before it is changed.
func (a *annealer) touch(i int) *body {
	k := len(a.touched)
	a.touched = append(a.touched, i)
	for len(a.old) <= k {
		a.old = append(a.old, backup{})
	}
	b, o := &a.bodies[i], &a.old[k]
	o.box, o.rect, o.halo, o.lead = i, b.rect, b.halo, b.lead
	o.slots = append(o.slots[:0], b.slots...)
	o.spots = append(o.spots[:0], b.spots...)
	return b
}

func (a *annealer) undo() {
	for k := len(a.touched) - 1; k >= 0; k-- {
		o := &a.old[k]
		b := &a.bodies[o.box]
		b.rect, b.halo, b.lead = o.rect, o.halo, o.lead
		copy(b.slots, o.slots)
		copy(b.spots, o.spots)
	}
	copy(a.zones, a.zonesB)
}

// propose changes the state by one random move; false means the move makes no sense here.
func (a *annealer) propose() bool {
	dice := a.rnd.Below(100)
	if len(a.flexing) > 0 && (dice < 30 || len(a.movable) == 0) {
		return a.rearrange(a.flexing[a.rnd.Below(len(a.flexing))])
	}
	if len(a.movable) == 0 {
		return false
	}
	dice = a.rnd.Below(100) - a.straighten
	i := a.movable[a.rnd.Below(len(a.movable))]
	switch {
	case dice < 0:
		return a.align(i)
	case len(a.free) > 1 && dice < 4:
		return a.moveZone()
	case len(a.free) > 1 && dice < 6:
		return a.swapZones()
	case dice < 25:
		return a.align(i)
	case dice < 38:
		return a.swap(i, a.movable[a.rnd.Below(len(a.movable))])
	case dice < 47:
		return a.pull(i)
	}
	b := a.touch(i)
	b.rect.X += a.rnd.Within(a.reach)
	b.rect.Y += a.rnd.Within(a.reach*a.p.Rules.Col/a.p.Rules.Row + 1)
	return true
}

// align moves a box so that one of its wires can be straight.
func (a *annealer) align(i int) bool {
	wires := a.bodies[i].wires
	if len(wires) == 0 {
		return false
	}
	wire := a.p.Wires[wires[a.rnd.Below(len(wires))]]
	mine, other := wire.From, wire.To
	if mine.Box != i {
		mine, other = other, mine
	}
	if other.Box == i {
		return false
	}
	b := a.touch(i)
	o := &a.bodies[other.Box]
	d := o.spots[other.Port].On(o.rect).Sub(b.spots[mine.Port].On(b.rect))
	if b.spots[mine.Port].Side.Horizontal() {
		b.rect.Y += d.Y
		b.rect.X += a.rnd.Within(a.reach / 4)
	} else {
		b.rect.X += d.X
		b.rect.Y += a.rnd.Within(a.reach / 4)
	}
	return true
}

// pull moves a box near the middle of those it is wired to.
func (a *annealer) pull(i int) bool {
	var sum geom.Point
	n := 0
	for _, w := range a.bodies[i].wires {
		other := a.p.Wires[w].From.Box
		if other == i {
			other = a.p.Wires[w].To.Box
		}
		if other != i {
			r := &a.bodies[other].rect
			sum = sum.Add(geom.Point{X: r.X + r.W/2, Y: r.Y + r.H/2})
			n++
		}
	}
	if n == 0 {
		return false
	}
	b := a.touch(i)
	b.rect.X = sum.X/n - b.rect.W/2 + a.rnd.Within(b.rect.W+a.reach)
	b.rect.Y = sum.Y/n - b.rect.H/2 + a.rnd.Within(b.rect.H+a.reach)
	return true
}

// swap exchanges the places of two boxes of one zone.
func (a *annealer) swap(i, j int) bool {
	if i == j || a.p.Boxes[i].Zone != a.p.Boxes[j].Zone {
		return false
	}
	b, c := a.touch(i), a.touch(j)
	centre := func(r geom.Rect) geom.Point { return geom.Point{X: r.X + r.W/2, Y: r.Y + r.H/2} }
	d := centre(c.rect).Sub(centre(b.rect))
	b.rect = b.rect.Moved(d)
	c.rect = c.rect.Moved(geom.Point{}.Sub(d))
	return true
}

func (a *annealer) moveZone() bool {
	z := a.free[a.rnd.Below(len(a.free))]
	d := geom.Point{X: a.rnd.Within(a.reach), Y: a.rnd.Within(a.reach)}
	for _, i := range a.member[z] {
		b := a.touch(i)
		b.rect = b.rect.Moved(d)
	}
	a.zones[z] = a.zones[z].Moved(d)
	return true
}

// swapZones exchanges the top-left corners of two zones.
func (a *annealer) swapZones() bool {
	y, z := a.free[a.rnd.Below(len(a.free))], a.free[a.rnd.Below(len(a.free))]
	if y == z {
		return false
	}
	d := geom.Point{X: a.zones[z].X - a.zones[y].X, Y: a.zones[z].Y - a.zones[y].Y}
	for k, zone := range [2]int{y, z} {
		move := d.Times(1 - 2*k)
		for _, i := range a.member[zone] {
			b := a.touch(i)
			b.rect = b.rect.Moved(move)
		}
		a.zones[zone] = a.zones[zone].Moved(move)
	}
	return true
}
