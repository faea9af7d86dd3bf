package rule

import (
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/unit"
)

// tractionGauge is the thinnest conductor that counts as a traction cable if nothing
// says what it serves. Our choice: carts use 6 AWG and up for traction, 8 and down for
// everything else.
var tractionGauge = unit.AWG(6)

// traction reports whether a wire is part of the traction path: by its record, else by
// the terminals that it joins, else by its size. A wire between a traction stud and
// something lesser is a tap.
func (p *Pass) traction(l *network.Link) bool {
	if l.Wire.Serves != "" {
		return l.Wire.Serves == model.Traction
	}
	known := 0
	for _, at := range []network.Node{l.A, l.B} {
		ref := p.Net.Point(at).At
		t, d := p.Net.TerminalDef(ref), p.Net.DefinitionOf(ref)
		if t == nil || t.Serves == "" || d.Family == model.Joining {
			continue
		}
		if t.Serves != model.Traction {
			return false
		}
		known++
	}
	if known == 2 {
		return true
	}
	return !l.Wire.Gauge.IsZero() && l.Wire.Gauge.Compare(tractionGauge) >= 0
}

// split parts wires into those of the traction path and the rest.
func (p *Pass) split(wires []*network.Link) (trunk, rest []*network.Link) {
	for _, l := range wires {
		if p.traction(l) {
			trunk = append(trunk, l)
		} else {
			rest = append(rest, l)
		}
	}
	return trunk, rest
}

// branches gathers wires that follow one another, through contacts too, without
// passing a hub. Each branch starts with the wire that comes first in the list.
func (p *Pass) branches(wires []*network.Link, hub func(network.Node) bool) [][]*network.Link {
	if len(wires) == 0 {
		return nil
	}
	member := map[*network.Link]bool{}
	for _, l := range wires {
		member[l] = true
	}
	groups := p.Net.Joined(func(l *network.Link) bool {
		return (member[l] || l.Kind != network.WireLink && l.Conducts()) && !hub(l.A) && !hub(l.B)
	})
	var order []int
	branch := map[int][]*network.Link{}
	for i, l := range wires {
		key := -1 - i
		if !hub(l.B) {
			key = groups.Of(l.B)
		} else if !hub(l.A) {
			key = groups.Of(l.A)
		}
		if branch[key] == nil {
			order = append(order, key)
		}
		branch[key] = append(branch[key], l)
	}
	var list [][]*network.Link
	for _, key := range order {
		list = append(list, branch[key])
	}
	return list
}

// hubs are the nodes where a traction wire lands, with the metal of parts around them.
func (p *Pass) hubs(also ...network.Node) func(network.Node) bool {
	if p.shared.hubs == nil {
		bars := p.Net.Joined(func(l *network.Link) bool { return l.Is(model.JoinElement) })
		marked := make([]bool, bars.Count())
		for i := range p.Net.Links() {
			if l := &p.Net.Links()[i]; l.Kind == network.WireLink && p.traction(l) {
				marked[bars.Of(l.A)], marked[bars.Of(l.B)] = true, true
			}
		}
		p.shared.hubs = func(at network.Node) bool { return marked[bars.Of(at)] }
	}
	return func(at network.Node) bool { return p.shared.hubs(at) || slices.Contains(also, at) }
}
