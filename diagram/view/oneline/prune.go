package oneline

import (
	"cmp"
	"slices"

	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/model"
)

// keep reports whether a path leads to something worth a line: what uses or gives power,
// or a part that nobody has identified. It takes the ends of paths that do not from it.
func keep(n *Node) bool {
	n.Out = slices.DeleteFunc(n.Out, func(e Edge) bool { return !keep(e.To) })
	for i, e := range n.Out {
		if through := passes(e.To); through != nil {
			n.Out[i].To, n.Out[i].At = through.To, through.At
		}
	}
	if len(n.Out) > 0 || n.Joins != "" || n.Def == nil {
		return true
	}
	switch n.Def.Family {
	case model.Storage, model.Drive, model.ChargeGear, model.Supply, model.Loads:
		return true
	default:
		return false
	}
}

// passes is the way on through a plug, splice or post on which nothing parts; nil if it is
// none.
func passes(n *Node) *Edge {
	if n.Def == nil || n.Def.Family != model.Joining || len(n.Out) != 1 || n.Joins != "" {
		return nil
	}
	return &n.Out[0]
}

// mainAmps is the current from which a load has a line of its own; smaller ones are told
// together. Our choice.
const mainAmps = 10

// tidy tells small loads of one part together and puts the path of the drive first.
func tidy(n *Node) {
	var rest []Edge
	var small []*Node
	var first *Edge
	for i := range n.Out {
		e := n.Out[i]
		if loads, all := smallLoads(e.To); all {
			small = append(small, loads...)
			if first == nil {
				first = &n.Out[i]
			}
			continue
		}
		tidy(e.To)
		rest = append(rest, e)
	}
	if len(small) > 0 {
		e := *first
		e.To = together(n, small)
		switch {
		case len(small) > 1:
			e.Wire, e.At = nil, ""
		case e.To != first.To:
			e.At = ""
		}
		rest = append(rest, e)
	}
	n.Out = rest
	slices.SortStableFunc(n.Out, func(a, b Edge) int { return cmp.Compare(rank(a.To), rank(b.To)) })
}

// together is several loads as one node.
func together(of *Node, loads []*Node) *Node {
	if len(loads) == 1 {
		return loads[0]
	}
	node := &Node{ID: "loads of " + of.ID}
	for _, l := range loads {
		node.Parts = append(node.Parts, l.Parts...)
		node.Loads = append(node.Loads, scene.Shorten(short(name(l.Parts[0], l.Def)), mostName/2))
	}
	return node
}

// smallLoads are the loads at the ends of a path, if there is nothing else at its ends and
// on it nothing but plain switches and joints, and all are small.
func smallLoads(n *Node) (loads []*Node, all bool) {
	if n.Def == nil || n.Joins != "" {
		return nil, false
	}
	switch n.Def.Family {
	case model.Loads:
		if len(n.Out) == 0 {
			return []*Node{n}, current(n.Parts[0], n.Def) < mainAmps
		}
	case model.Switchgear, model.Joining, model.Metering, model.Support:
		if hasCoil(n.Def) {
			return nil, false
		}
	default:
		return nil, false
	}
	for _, e := range n.Out {
		some, ok := smallLoads(e.To)
		if !ok {
			return nil, false
		}
		loads = append(loads, some...)
	}
	return loads, true
}

func hasCoil(d *model.Definition) bool {
	return slices.ContainsFunc(d.Elements, func(e model.Element) bool { return e.Is == model.CoilElement })
}

// current is what a load takes in amperes, by its own figure or the library's; 0 if
// neither says.
func current(p *model.Part, d *model.Definition) float64 {
	r, ok := p.Rating("current")
	if !ok {
		if r, ok = d.Rating("current"); !ok {
			return 0
		}
	}
	a, _ := r.Value.Ampere()
	return a.Amperes()
}

// rank puts the path that leads to a drive first, then other loads and supplies, then
// chargers, and small loads last.
func rank(n *Node) int {
	if len(n.Loads) > 0 {
		return 3
	}
	best := 2
	if n.Def != nil {
		switch n.Def.Family {
		case model.Drive:
			best = 0
		case model.Loads, model.Supply:
			best = 1
		}
	}
	for _, e := range n.Out {
		best = min(best, rank(e.To))
	}
	return best
}
