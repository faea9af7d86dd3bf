// Package oneline draws how power reaches what uses it: one line for each path, from the
// batteries on the left to the loads on the right, returns left out.
package oneline

import (
	"slices"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

// Node is a part on a path of power, or several that are drawn as one.
type Node struct {
	ID     string
	Parts  []*model.Part // one, or the batteries of a string, or loads that are told together
	Def    *model.Definition
	String *network.String // set for a source
	Loads  []string        // names of several small loads told together
	Out    []Edge
	Joins  string // the part that this path runs into, where another source feeds it too
}

// Edge is a conductor to the next part of a path.
type Edge struct {
	Wire     *model.Wire
	Terminal string // of the part that it leaves
	At       string // terminal of the part that it leads to; empty if it leads there through others
	Against  bool   // the wire is recorded the other way: from there to here
	To       *Node
}

// tracer follows the paths of power, all sources side by side: a part is on the path that
// reaches it over fewest parts.
type tracer struct {
	n       *network.Network
	returns []bool
	nodes   map[model.PartID]*Node
	from    map[model.PartID]int // the source whose path a part is on
	queue   []step
}

// step is a part whose terminals are still to be left.
type step struct {
	node   *Node
	part   *model.Part
	source int
	at     []network.Node
}

// Trace follows power from each string of batteries. A part is on one path alone.
func Trace(n *network.Network) []*Node {
	t := &tracer{n: n, returns: n.Returns(), nodes: map[model.PartID]*Node{}, from: map[model.PartID]int{}}
	var roots []*Node
	all := n.Strings()
	for i := range all {
		root := source(&all[i])
		roots = append(roots, root)
		for _, c := range slices.Backward(all[i].Cells) {
			p := c.Link.Part
			t.nodes[p.ID], t.from[p.ID] = root, i
			t.queue = append(t.queue, step{root, p, i, []network.Node{c.After}})
		}
	}
	for len(t.queue) > 0 {
		s := t.queue[0]
		t.queue = t.queue[1:]
		t.leave(s)
	}
	for _, r := range roots {
		keep(r)
		tidy(r)
	}
	return roots
}

// source is a string as one node.
func source(s *network.String) *Node {
	node := &Node{String: s, Def: s.Cells[0].Link.Def}
	for _, c := range s.Cells {
		if p := c.Link.Part; !slices.Contains(node.Parts, p) {
			node.Parts = append(node.Parts, p)
		}
	}
	node.ID = string(node.Parts[0].ID)
	if last := len(node.Parts) - 1; last > 0 {
		node.ID += " to " + string(node.Parts[last].ID)
	}
	return node
}

// leave follows the wires that leave a part by some of its terminals.
func (t *tracer) leave(s step) {
	for _, node := range s.at {
		for _, l := range t.n.LinksAt(node) {
			next := l.Other(node)
			if l.Kind != network.WireLink || !carriesPower(l.Wire) || t.returns[next] {
				continue
			}
			end := t.n.Point(next).At
			to := t.n.Part(end.Part)
			if to == nil || to == s.part {
				continue
			}
			there, seen := t.nodes[to.ID]
			if !seen {
				leaves := t.n.Point(node).At
				s.node.Out = append(s.node.Out, Edge{
					Wire: l.Wire, Terminal: leaves.Name, At: end.Name, Against: l.Wire.From.At != leaves, To: t.enter(to, next, s.source),
				})
				continue
			}
			if t.from[to.ID] != s.source && s.node.Joins == "" && s.node.String == nil && there.String == nil && there.Joins != s.node.ID {
				s.node.Joins = there.ID
			}
		}
	}
}

// enter is a part that a path reaches at a terminal; what lies beyond it is still to come.
func (t *tracer) enter(p *model.Part, at network.Node, source int) *Node {
	node := &Node{ID: string(p.ID), Parts: []*model.Part{p}, Def: t.n.Cat.Definition(p.Kind)}
	t.nodes[p.ID], t.from[p.ID] = node, source
	if node.Def != nil && !isMotor(node.Def) {
		t.queue = append(t.queue, step{node, p, source, t.through(p, node.Def, at)})
	}
	return node
}

// through lists the terminals by which power leaves a part that it enters at one.
func (t *tracer) through(p *model.Part, d *model.Definition, at network.Node) []network.Node {
	reached := []network.Node{at}
	add := func(n network.Node) {
		if n != network.None && !t.returns[n] && !slices.Contains(reached, n) {
			reached = append(reached, n)
		}
	}
	for i := 0; i < len(reached); i++ {
		for _, l := range t.n.LinksAt(reached[i]) {
			switch {
			case l.Part != p:
			case l.Is(model.ConverterElement) && l.Element != nil && len(l.Element.Out) > 0:
				add(t.n.Node(model.TerminalRef{Part: p.ID, Name: l.Element.Out[0]}))
			case l.Is(model.FuseElement) || l.Conducts():
				add(l.Other(reached[i]))
			}
		}
	}
	if d.Family == model.Drive {
		for _, term := range d.Terminals {
			if term.Serves == model.Traction {
				add(t.n.Node(model.TerminalRef{Part: p.ID, Name: term.Name}))
			}
		}
	}
	return reached
}

// powerArea is the conductor area in mm2 from which a wire of unknown service counts as
// one that carries power: 12 AWG.
const powerArea = 3

// carriesPower reports whether a wire is one of the power path.
func carriesPower(w *model.Wire) bool {
	switch w.Serves {
	case model.Traction, model.Charging, model.Accessory:
		return true
	case "":
		return w.Gauge.AreaMM2() >= powerArea
	default:
		return false
	}
}

func isMotor(d *model.Definition) bool {
	return d.Family == model.Drive && strings.HasPrefix(d.Symbol, "motor")
}
