package layout

import (
	"errors"
	"sync"

	"example.com/lugbook/diagram/layout/geom"
	"example.com/lugbook/diagram/layout/place"
	"example.com/lugbook/diagram/layout/route"
)

// Layout places and routes a graph. With Options.Previous only what is new is placed. The drawing is legal when the
// error is nil or an UnroutedError; a WidthError says by how much the page is too narrow.
func Layout(g Graph, o Options) (Drawing, error) {
	x, err := newIndex(&g)
	if err != nil {
		return Drawing{}, err
	}
	o = o.filled(labelled(&g))
	var best Drawing
	for _, tracks := range trackSteps {
		drafts, err := o.place(&g, x, tracks)
		if err != nil {
			return Drawing{}, err
		}
		var left []int
		best, left = routeBest(&g, x, drafts, o)
		if len(left) == 0 {
			return best, nil
		}
		err = unrouted(&g, left)
		if pinned(&g) {
			return best, err
		}
	}
	return best, tooNarrow(&g, x, &best, o)
}

// trackSteps are the tenths of a cell kept free per port, tried in turn while the page leaves wires without a way.
var trackSteps = [...]int{5, 8, 12}

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

// work is the number of annealing moves, the number of starts, and the routing effort.
func (o Options) work(g *Graph) (moves, seeds int, e route.Effort) {
	n := len(g.Boxes)
	switch o.Effort {
	case Full:
		moves, seeds = min(100000+10000*n, 2000000), 4
		e = route.Effort{Rounds: 40, Inserts: 80, Passes: 4}
	default:
		moves, seeds = min(4000+400*n, 60000), 1
		e = route.Effort{Rounds: 30, Inserts: 80, Passes: 1}
	}
	if o.Moves > 0 {
		moves = o.Moves
	}
	if o.Seeds > 0 {
		seeds = o.Seeds
	}
	return moves, seeds, e
}

func (o Options) place(g *Graph, x *index, tracks int) ([]*Drawing, error) {
	moves, seeds, _ := o.work(g)
	found, err := place.Place(placeProblem(g, x, o, tracks), moves, seeds)
	var none *place.NoRoomError
	if errors.As(err, &none) {
		if none.Missing > 0 {
			return nil, &WidthError{none.Missing, g.Boxes[none.Box].ID}
		}
		return nil, &PinError{g.Boxes[none.Box].ID}
	}
	if err != nil {
		return nil, err
	}
	out := make([]*Drawing, len(found))
	for i, q := range found {
		out[i] = placed(g, q)
	}
	return out, nil
}

// routeBest routes every draft and keeps the cheapest legal one, of equals the first.
func routeBest(g *Graph, x *index, drafts []*Drawing, o Options) (Drawing, []int) {
	left := make([][]int, len(drafts))
	cost := make([]int, len(drafts))
	var wait sync.WaitGroup
	for i, d := range drafts {
		wait.Go(func() { left[i], cost[i] = routeDraft(g, x, d, o) })
	}
	wait.Wait()
	best := 0
	for i := range drafts {
		if cost[i] < cost[best] {
			best = i
		}
	}
	return *drafts[best], left[best]
}

// unroutedPrice and unlabelledPrice rank drafts: a wire without a way is worse than anything else.
const (
	unroutedPrice   = 1000000
	unlabelledPrice = 200
)

func routeDraft(g *Graph, x *index, d *Drawing, o Options) ([]int, int) {
	_, _, effort := o.work(g)
	p := routeProblem(g, x, d, o)
	free := !pinned(g)
	if free {
		e := p.Extent()
		left := 0
		if o.MaxWidth > 0 {
			left = max(0, (o.MaxWidth-e.W-1)/2)
		}
		p.Shift(Point{X: left - e.X, Y: -e.Y})
	}
	result := route.Solve(p, effort)
	if free {
		e := p.Extent()
		shift := Point{X: -e.X, Y: -e.Y}
		p.Shift(shift)
		for i := range result.Labels {
			result.Labels[i].At = result.Labels[i].At.Add(shift)
		}
	}
	d.takeRoutes(p, result.Labels)
	cost := p.Cost() + unroutedPrice*len(result.Left) + 2*(d.W*o.ColumnCost+d.H*o.RowCost)
	for w, l := range result.Labels {
		if !l.OK && len(g.Wires[w].Labels) > 0 {
			cost += unlabelledPrice
		}
	}
	return result.Left, cost
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
	_, _, effort := o.work(g)
	p := routeProblem(g, x, d, o)
	if result := route.Solve(p, effort); len(result.Left) > 0 {
		return unrouted(g, result.Left)
	}
	var e geom.Rect = p.Extent()
	return &WidthError{Missing: max(e.W+1-limit, 1)}
}
