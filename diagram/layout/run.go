package layout

import (
	"errors"
	"slices"
	"sync"

	"example.com/lugbook/diagram/layout/place"
	"example.com/lugbook/diagram/layout/route"
)

// Layout places and routes a graph. With Options.Previous only what is new is placed, and the rest moves aside no more
// than it has to; only if pinned boxes or the page leave no room for that is all placed anew. The drawing is legal
// when the error is nil or an UnroutedError; a WidthError says by how much the page is too narrow.
func Layout(g Graph, o Options) (Drawing, error) {
	x, err := newIndex(&g)
	if err != nil {
		return Drawing{}, err
	}
	o = o.filled(labelled(&g))
	if o.Previous != nil {
		if d, err := extend(&g, x, o); err == nil {
			return d, nil
		}
	}
	return layout(&g, x, o)
}

// general places and routes any graph from nothing.
func general(g *Graph, x *index, o Options) (Drawing, error) {
	var best *routed
	for _, tracks := range trackSteps(g) {
		drafts, err := o.place(g, x, tracks)
		if err != nil && best == nil {
			return Drawing{}, err
		}
		if err != nil {
			break
		}
		next := routeBest(g, x, drafts, o)
		if best == nil || next.worse() < best.worse() {
			best = &next
		}
		if best.worse() == 0 || pinned(g) {
			break
		}
	}
	switch {
	case len(best.left) == 0:
		return *best.drawing, nil
	case pinned(g) || o.MaxWidth == 0:
		return *best.drawing, unrouted(g, best.left)
	}
	return *best.drawing, tooNarrow(g, x, best.drawing, o)
}

// Place places the boxes of a graph and leaves the wires without paths.
func Place(g Graph, o Options) (Drawing, error) {
	x, err := newIndex(&g)
	if err != nil {
		return Drawing{}, err
	}
	o = o.filled(labelled(&g))
	drafts, err := o.place(&g, x, trackSteps(&g)[0])
	if err != nil {
		return Drawing{}, err
	}
	d := drafts[0] // the cheapest by estimate
	p := routeProblem(&g, x, d, o)
	if !pinned(&g) {
		p.Shift(centred(p.Extent(), o))
	}
	d.takeRoutes(p, make([]Label, len(g.Wires)))
	return *d, nil
}

// trackSteps are the tenths of a cell kept free per port, tried in turn while wires find no way, or labels no place.
// Large graphs send more wires past each box, so they begin with more.
func trackSteps(g *Graph) []int {
	if len(g.Boxes) > largeGraph {
		return []int{12, 16}
	}
	return []int{7, 10, 14}
}

// largeGraph is the number of boxes beyond which a drawing is more for finding one's way than for reading.
const largeGraph = 60

func labelled(g *Graph) bool {
	for _, w := range g.Wires {
		if len(w.Labels) > 0 {
			return true
		}
	}
	return false
}

func pinned(g *Graph) bool {
	for _, b := range g.Boxes {
		if b.Pin != nil {
			return true
		}
	}
	return false
}

// work is the number of annealing moves, of starts, and of moves with the wires drawn; and the routing effort.
type work struct {
	moves, seeds, tries int
	route               route.Effort
}

func (o Options) work(g *Graph) work {
	n, m := len(g.Boxes), len(g.Wires)
	w := work{moves: min(4000+400*n, 60000), seeds: 1, route: route.Effort{Rounds: 16, Inserts: 80, Passes: 1}}
	if o.Effort == Full {
		w.moves, w.seeds = min(100000+3000*n+20*n*n, 800000), starts(n)
		w.tries = polishTries(m)
		w.route.Rounds, w.route.Passes = 40, 4
		if m > manyWires {
			w.route.Passes = 2
		}
	}
	if o.Moves > 0 {
		w.moves = o.Moves
	}
	if o.Seeds > 0 {
		w.seeds = o.Seeds
	}
	return w
}

// manyWires is the number from which more than two passes of drawing single wires anew gain next to nothing.
const manyWires = 600

// polishTries is the number of moves with drawn wires: each takes longer the more wires there are, and drawings that are
// read closely get the most.
func polishTries(wires int) int {
	m := wires + 1
	return min(9000, max(30000000/(m*m), 150000/m, 200))
}

// starts is the number of placements that full effort begins with: small graphs are placed in no time.
func starts(boxes int) int {
	switch {
	case boxes <= 24:
		return 8
	case boxes <= 150:
		return 4
	}
	return 2
}

// place makes one draft per start, the cheapest by estimate first.
func (o Options) place(g *Graph, x *index, tracks int) ([]*Drawing, error) {
	w := o.work(g)
	found, err := place.Place(placeProblem(g, x, o, tracks), w.moves, w.seeds)
	if err != nil {
		return nil, placeError(g, err)
	}
	slices.SortStableFunc(found, func(a, b place.Placement) int { return a.Cost - b.Cost })
	out := make([]*Drawing, len(found))
	for i, q := range found {
		out[i] = placed(g, q)
	}
	return out, nil
}

// placeError puts ids in the place of numbers.
func placeError(g *Graph, err error) error {
	var none *place.NoRoomError
	switch {
	case !errors.As(err, &none):
		return err
	case none.Missing > 0:
		return &WidthError{none.Missing, g.Boxes[none.Box].ID}
	}
	return &PinError{g.Boxes[none.Box].ID}
}

// Of the placements, full effort draws the wires of the best by estimate, and works on the best of these drawings.
const (
	drawn    = 4
	polished = 2
)

// routeBest routes every draft and keeps the cheapest, of equals the first. With moves to spend on drawn wires, the
// best two are worked on before the last choice.
func routeBest(g *Graph, x *index, drafts []*Drawing, o Options) routed {
	w := o.work(g)
	results := routeAll(g, x, drafts[:min(drawn, len(drafts))], o, w.route)
	if w.tries > 0 {
		results = results[:min(polished, len(results))]
		again := make([]*Drawing, len(results))
		for i := range results {
			again[i] = results[i].drawing
		}
		w.route.Polish = route.Polishing{Tries: w.tries}
		results = routeAll(g, x, again, o, w.route)
	}
	return results[0]
}

// routed is one draft with its wires.
type routed struct {
	drawing *Drawing
	left    []int
	bare    int // wires whose labels found no place
	cost    int
}

// worse ranks drawings by what is wrong with them, 0 for nothing.
func (r *routed) worse() int { return 1000*len(r.left) + r.bare }

// routeAll routes drafts side by side and sorts them by cost.
func routeAll(g *Graph, x *index, drafts []*Drawing, o Options, e route.Effort) []routed {
	out := make([]routed, len(drafts))
	var wait sync.WaitGroup
	for i, d := range drafts {
		wait.Go(func() { out[i] = routeDraft(g, x, d, o, e) })
	}
	wait.Wait()
	slices.SortStableFunc(out, func(a, b routed) int { return a.cost - b.cost })
	return out
}

// unroutedPrice and unlabelledPrice rank drafts: a wire without a way is worse than anything else.
const (
	unroutedPrice   = 1000000
	unlabelledPrice = 200
)

func routeDraft(g *Graph, x *index, d *Drawing, o Options, e route.Effort) routed {
	p := routeProblem(g, x, d, o)
	p.Costs.Cross = max(p.Costs.Cross, o.cross)
	free := !pinned(g)
	p.Anchored = !free
	if free {
		p.Shift(centred(p.Extent(), o))
		e.Compact.Rows = max(o.GapY-1, 1)
		if !labelled(g) {
			e.Compact.Columns = max(o.GapX-1, 1)
		}
	}
	if e.Polish.Tries > 0 {
		e.Polish = polishing(g, d, o, e.Polish.Tries)
	}
	result := route.Solve(p, e)
	if free {
		shift := centred(extentOf(p, result.Labels), o)
		p.Shift(shift)
		for i := range result.Labels {
			result.Labels[i].At = result.Labels[i].At.Add(shift)
		}
	}
	d.takeRoutes(p, result.Labels)
	out := routed{drawing: d, left: result.Left}
	for w, l := range result.Labels {
		if !l.OK && len(g.Wires[w].Labels) > 0 {
			out.bare++
		}
	}
	out.cost = p.Cost() + unroutedPrice*len(out.left) + unlabelledPrice*out.bare +
		sizePrice*(d.W*o.ColumnCost+d.H*o.RowCost)
	return out
}

// centred is the shift that leaves room for wires left and above, and the same on both sides of a page.
func centred(e Rect, o Options) Point {
	left := cornerX
	if o.MaxWidth > 0 {
		left = max(0, min(left, (o.MaxWidth-1-e.W)/2))
	}
	return Point{X: left - e.X, Y: cornerY - e.Y}
}

// Where a new drawing begins.
const (
	cornerX = 2
	cornerY = 1
)

// sizePrice is the price of one more step in a drawing's width and height.
const sizePrice = 2

// polishing sets up the moves with drawn wires: boxes stay within the frames of their zones, and free ports that are
// not tied to others may change places with their like.
func polishing(g *Graph, d *Drawing, o Options, tries int) route.Polishing {
	out := route.Polishing{Tries: tries, Seed: 1, GapX: max(o.GapX/2, 2), GapY: o.GapY, Size: sizePrice,
		Side: frameRoom.Side, Top: frameRoom.Top, Bottom: frameRoom.Bottom}
	zones := map[string]int{}
	for i, z := range d.Zones {
		if z.Rect.W > 0 {
			zones[g.Zones[i].ID] = len(zones)
		}
	}
	for _, b := range g.Boxes {
		zone, zoned := zones[b.Zone]
		if !zoned {
			zone = -1
		}
		out.Within = append(out.Within, zone)
		size := map[string]int{}
		for _, port := range b.Ports {
			size[port.Group]++
		}
		for _, port := range b.Ports {
			out.Swap = append(out.Swap, swapClass(&b, &port, size[port.Group]))
		}
	}
	return out
}

// swapClass is equal for the ports of a box that may change places with each other, 0 for one that may not: a port
// that is fixed, tied to its group, or in the order of its face.
func swapClass(b *Box, p *Port, group int) int {
	if p.Offset >= 0 || p.Group != "" && group > 1 || p.Face > 0 && b.Ordered {
		return 0
	}
	return int(p.Sides&AnySide) + p.Face<<4
}

func unrouted(g *Graph, left []int) error {
	e := &UnroutedError{}
	for _, w := range left {
		e.IDs = append(e.IDs, g.Wires[w].ID)
	}
	return e
}

// tooNarrow finds out how many columns are lacking, by routing once more without the limit.
func tooNarrow(g *Graph, x *index, d *Drawing, o Options) error {
	limit := o.MaxWidth
	o.MaxWidth = 0
	p := routeProblem(g, x, d, o)
	if result := route.Solve(p, o.work(g).route); len(result.Left) > 0 {
		return unrouted(g, result.Left)
	}
	return &WidthError{Missing: max(p.Extent().W+1-limit, 1)}
}
