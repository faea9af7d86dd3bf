package route

import (
	"slices"

	"example.com/lugbook/diagram/layout/chance"
	"example.com/lugbook/diagram/layout/geom"
)

// Polishing says how boxes may be moved once the wires are drawn.
type Polishing struct {
	// Tries is the number of moves tried.
	Tries int
	Seed  uint64
	// GapX and GapY are the least distances of two boxes.
	GapX, GapY int
	// Size is the price of one more step of the whole drawing's width and height.
	Size int
	// Within holds per box the index of the zone whose frame it may not leave, -1 for none.
	Within []int
	// Side, Top and Bottom are the distances a box keeps from that frame.
	Side, Top, Bottom int
	// Swap numbers terminals that may change places with others of the same number on the same box; 0 is none.
	Swap []int
}

// Temperatures of polishing, in the prices of routes.
const (
	polishStart = 16 * chance.One
	polishSteps = 64
	polishCool  = 61000 // of 65536: from 24 to about 0.25 in all steps
)

// polisher moves boxes of a routed drawing and routes their wires anew.
type polisher struct {
	*mover
	o       Polishing
	rnd     chance.Source
	movable []int
	swaps   [][]int // terminals that may change places
	boxes   []moved
	size    int
}

type moved struct {
	box int
	by  geom.Point
}

// polish improves a legal drawing by moving boxes, routing what is touched by free slots, and keeping what pays, or,
// early on, costs little more. Post: still legal, boxes still apart.
func (r *router) polish(o Polishing) {
	s := &polisher{mover: newMover(r), o: o, rnd: chance.New(o.Seed)}
	for b := range r.p.Boxes {
		if b >= len(r.p.Pinned) || !r.p.Pinned[b] {
			s.movable = append(s.movable, b)
		}
	}
	if len(s.movable) == 0 {
		return
	}
	s.findSwaps()
	s.size = s.extent()
	t := int64(polishStart)
	for range polishSteps {
		for range o.Tries / polishSteps {
			s.try(t)
		}
		t = t * polishCool >> 16
	}
}

func (s *polisher) findSwaps() {
	at := map[[2]int]int{}
	for t, class := range s.o.Swap {
		if class == 0 {
			continue
		}
		key := [2]int{s.p.Terminals[t].Box, class}
		k, seen := at[key]
		if !seen {
			k = len(s.swaps)
			at[key] = k
			s.swaps = append(s.swaps, nil)
		}
		s.swaps[k] = append(s.swaps[k], t)
	}
	s.swaps = slices.DeleteFunc(s.swaps, func(ts []int) bool { return len(ts) < 2 })
}

func (s *polisher) try(t int64) {
	if len(s.swaps) > 0 && s.rnd.Below(100) < 30 {
		s.trySwap(t)
		return
	}
	s.propose()
	for _, m := range s.boxes {
		s.shift(m.box, m.by)
	}
	if !s.roomy() {
		s.shiftBack()
		return
	}
	s.shiftBack()
	s.saved = s.saved[:0]
	var regions []geom.Rect
	before := 0
	for _, m := range s.boxes {
		regions = append(regions, s.region(m.box))
		before += s.ripAll(s.wires[m.box])
	}
	for _, m := range s.boxes {
		s.shift(m.box, m.by)
		regions = append(regions, s.region(m.box))
	}
	s.settle(t, before, regions, s.shiftBack)
}

// settle routes the ripped wires in the changed problem, and undoes the change when that is not worth it.
func (s *polisher) settle(t int64, before int, regions []geom.Rect, undo func()) {
	for _, r := range regions {
		s.g.refresh(s.p, s.count, r)
	}
	before += s.ripIllegal(regions)
	size := s.extent()
	after, ok := s.drawSaved(before+s.size-size+int(hopeless*t/chance.One), int(hopeless*t/chance.One)+polishSpare)
	if ok && s.rnd.Takes(after-before+size-s.size, t) {
		s.size = size
		return
	}
	for _, k := range s.saved {
		if !s.missing(k.wire) {
			s.rip(k.wire)
		}
	}
	undo()
	for _, r := range regions {
		s.g.refresh(s.p, s.count, r)
	}
	for _, k := range s.saved {
		s.take(k.wire, k.cells)
	}
}

// polishSpare is what the new way of a wire may cost more than the old one, before temperature.
const polishSpare = 60

// hopeless is how many temperatures worse a move may look before it is given up: the chance to be taken is then one in
// three thousand.
const hopeless = 8

// drawSaved routes the remembered wires by free slots, those with near ends first, and returns what they cost. It
// gives up when they must come to more than limit, or one of them to more than it did by more than spare.
func (s *polisher) drawSaved(limit, spare int) (int, bool) {
	slices.SortStableFunc(s.saved, func(a, b saved) int { return s.span(a.wire) - s.span(b.wire) })
	rest := 0
	for _, k := range s.saved {
		rest += s.least(k.wire)
	}
	sum := 0
	for _, k := range s.saved {
		rest -= s.least(k.wire)
		room := limit - sum - rest
		if room <= 0 {
			return 0, false
		}
		mended := len(k.cells) > longWire && s.salvage(k.wire, k.cells, terms{spare: spare})
		if !mended && !s.drawWithin(k.wire, 0, min(room, k.cost+spare)) {
			return 0, false
		}
		sum += s.cost(k.wire)
	}
	return sum, sum <= limit
}

// least is a lower bound of what a wire costs.
func (s *polisher) least(w int) int {
	q := s.goalOf(w)
	return s.s.bound(&q, q.origin, q.out)
}

func (s *polisher) span(w int) int {
	d := s.p.Terminals[s.p.Wires[w].From].At.Sub(s.p.Terminals[s.p.Wires[w].To].At)
	return geom.Abs(d.X) + geom.Abs(d.Y)
}

// trySwap exchanges the places of two terminals of one box.
func (s *polisher) trySwap(t int64) {
	list := s.swaps[s.rnd.Below(len(s.swaps))]
	a, b := list[s.rnd.Below(len(list))], list[s.rnd.Below(len(list))]
	if a == b || s.count[a]+s.count[b] == 0 {
		return
	}
	exchange := func() {
		x, y := &s.p.Terminals[a], &s.p.Terminals[b]
		x.At, y.At = y.At, x.At
		x.Side, y.Side = y.Side, x.Side
	}
	var wires []int
	for _, w := range s.wires[s.p.Terminals[a].Box] {
		if wire := s.p.Wires[w]; wire.From == a || wire.To == a || wire.From == b || wire.To == b {
			wires = append(wires, w)
		}
	}
	s.saved = s.saved[:0]
	region := s.region(s.p.Terminals[a].Box)
	before := s.ripAll(wires)
	exchange()
	s.settle(t, before, []geom.Rect{region}, exchange)
}

// extent prices the rectangle around all boxes and zones.
func (s *polisher) extent() int {
	e := s.p.Boxes[0]
	for _, b := range s.p.Boxes {
		e = e.Union(b)
	}
	for _, z := range s.p.Zones {
		e = e.Union(z.Rect)
	}
	if s.p.MaxWidth > 0 {
		return s.o.Size * s.p.Costs.Row * e.H
	}
	return s.o.Size * (s.p.Costs.Col*e.W + s.p.Costs.Row*e.H)
}
