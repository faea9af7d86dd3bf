package rule

import (
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

// deadEnd is a tree of wires that leads to parts from which nothing goes on: no current can
// flow in any of them, whatever is switched.
type deadEnd struct {
	root  network.Node // where it hangs on the rest of the sheet; None if on nothing
	wires []*network.Link
	ends  []network.Node // the terminals where it ends
}

// deadEnds lists the trees of wires that lead nowhere. What is joined to a loose end, to the
// frame or to a terminal of which the library knows no inside may lead on, and is left out.
func (p *Pass) deadEnds() []deadEnd {
	pruned := p.prune()
	stays := func(at network.Node) bool {
		return p.mayLeadOn(at) || slices.ContainsFunc(p.Net.LinksAt(at), func(l *network.Link) bool { return !pruned[l] })
	}
	trees := p.Net.Joined(func(l *network.Link) bool { return pruned[l] && !stays(l.A) && !stays(l.B) })
	var list []deadEnd
	place := map[int]int{}
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if !pruned[l] {
			continue
		}
		inner, root := l.B, network.None
		if stays(l.A) {
			root = l.A
		} else if stays(l.B) {
			inner, root = l.A, l.B
		}
		at, there := place[trees.Of(inner)]
		if !there {
			at = len(list)
			place[trees.Of(inner)] = at
			list = append(list, deadEnd{root: network.None, ends: p.endsOf(trees.Members(trees.Of(inner)))})
		}
		if root != network.None {
			list[at].hangOn(root, p.Net)
		}
		if l.Kind == network.WireLink {
			list[at].wires = append(list[at].wires, l)
		}
	}
	return slices.DeleteFunc(list, func(d deadEnd) bool { return len(d.wires) == 0 })
}

// hangOn notes where a dead end hangs. What is of the same part is no end of it.
func (d *deadEnd) hangOn(root network.Node, n *network.Network) {
	d.root = root
	d.ends = slices.DeleteFunc(d.ends, func(at network.Node) bool {
		return n.Point(at).At.Part != "" && n.Point(at).At.Part == n.Point(root).At.Part
	})
}

// prune takes off, again and again, what hangs on the rest by a single link. What is left can
// carry current in a loop, or may lead on.
func (p *Pass) prune() map[*network.Link]bool {
	pruned := map[*network.Link]bool{}
	left := func(at network.Node) (last *network.Link, n int) {
		for _, l := range p.Net.LinksAt(at) {
			if !pruned[l] && l.A != l.B {
				last, n = l, n+1
			}
		}
		return last, n
	}
	for n := range p.Net.Size() {
		for at := network.Node(n); !p.mayLeadOn(at); {
			last, count := left(at)
			if count != 1 {
				break
			}
			pruned[last] = true
			at = last.Other(at)
		}
	}
	return pruned
}

// mayLeadOn reports whether more than is known may be joined to a node: a loose end, the
// frame, or a terminal of a part of which the library knows nothing inside. The sense contact
// of an old charging socket leads nowhere but to its plug.
func (p *Pass) mayLeadOn(at network.Node) bool {
	point := p.Net.Point(at)
	if point.At.IsZero() || at == p.Net.Frame() {
		return true
	}
	def := p.Net.DefinitionOf(point.At)
	if def == nil {
		return true
	}
	inside := slices.ContainsFunc(p.Net.LinksAt(at), func(l *network.Link) bool { return l.Kind != network.WireLink })
	socket := def.Family == model.ChargeGear && p.Net.TerminalDef(point.At) != nil && p.Net.TerminalDef(point.At).Serves == model.Charging
	return !inside && def.Family != model.Joining && !socket
}

// endsOf lists the nodes of a tree on which a single wire lands and from whose part no other
// wire of the tree goes on.
func (p *Pass) endsOf(tree []network.Node) []network.Node {
	wires := func(at network.Node) (n int) {
		for _, l := range p.Net.LinksAt(at) {
			if l.Kind == network.WireLink {
				n++
			}
		}
		return n
	}
	var ends []network.Node
	for _, at := range tree {
		goesOn := slices.ContainsFunc(p.Net.LinksAt(at), func(l *network.Link) bool {
			return l.Kind != network.WireLink && slices.Contains(tree, l.Other(at)) && wires(l.Other(at)) > 0
		})
		if wires(at) == 1 && !goesOn {
			ends = append(ends, at)
		}
	}
	return ends
}
