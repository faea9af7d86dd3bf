package diagram

import (
	"cmp"
	"errors"
	"slices"

	"example.com/lugbook/diagram/layout"
)

// unpin lets boxes that a person placed go where they are in the way: first the one that
// the failure is about, then as many again of those that are likeliest to be, and so on,
// until there is room. It is false if there is none to let go.
func (p *page) unpin(failure error) bool {
	guilt, knows := p.guilt(failure)
	if !knows {
		return false
	}
	var pinned []int
	for i := range p.graph.Boxes {
		if p.graph.Boxes[i].Pin != nil {
			pinned = append(pinned, i)
		}
	}
	slices.SortStableFunc(pinned, func(a, b int) int {
		return cmp.Or(guilt(&p.graph.Boxes[b])-guilt(&p.graph.Boxes[a]), b-a)
	})
	pinned = pinned[:min(len(pinned), max(len(p.letGo), 1))]
	for _, i := range pinned {
		p.graph.Boxes[i].Pin = nil
		p.letGo = append(p.letGo, p.graph.Boxes[i].ID)
	}
	return len(pinned) > 0
}

// guilt tells how likely a hand-placed box is what a layout failed for. It knows nothing of
// other failures.
func (p *page) guilt(failure error) (of func(*layout.Box) int, knows bool) {
	var (
		clash    *layout.GraphError
		pinned   *layout.PinError
		narrow   *layout.WidthError
		unrouted *layout.UnroutedError
	)
	named := func(id string) func(*layout.Box) int {
		zone := ""
		for i := range p.graph.Boxes {
			if p.graph.Boxes[i].ID == id {
				zone = p.graph.Boxes[i].Zone
			}
		}
		return func(b *layout.Box) int {
			switch {
			case b.ID == id:
				return 2
			case b.Zone == zone:
				return 1
			}
			return 0
		}
	}
	switch {
	case errors.As(failure, &clash):
		return named(clash.ID), p.pins(clash.ID)
	case errors.As(failure, &pinned):
		return named(pinned.ID), true
	case errors.As(failure, &narrow) && narrow.ID != "":
		return named(narrow.ID), true
	case errors.As(failure, &narrow):
		return func(b *layout.Box) int { return b.Pin.X + b.W }, true
	case errors.As(failure, &unrouted):
		return p.endsOf(unrouted.IDs), true
	}
	return nil, false
}

// pins reports whether a box is one that a person placed.
func (p *page) pins(id string) bool {
	return slices.ContainsFunc(p.graph.Boxes, func(b layout.Box) bool { return b.ID == id && b.Pin != nil })
}

// endsOf counts how many of some wires end on a box.
func (p *page) endsOf(wires []string) func(*layout.Box) int {
	ends := map[string]int{}
	for _, w := range p.graph.Wires {
		if slices.Contains(wires, w.ID) {
			ends[w.From.Box]++
			ends[w.To.Box]++
		}
	}
	return func(b *layout.Box) int { return ends[b.ID] }
}
