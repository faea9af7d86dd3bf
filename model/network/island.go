package network

import (
	"slices"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/circuit"
)

// Island is a set of nodes that conduct to each other in a state and to nothing else:
// voltages inside it are sure, voltages to other islands are not.
type Island struct {
	Reference Node     // its voltages are best told against this: the low end of its source if it has one
	Nodes     []Node   // at least two
	Holds     []string // what is in it in words: the pack, the output of a reducer, the frame, mains
}

// Name is what the island holds, or its first terminal if that is nothing of note.
func (i Island) Name() string { return strings.Join(i.Holds, " and ") }

// IsCoupled reports whether the island holds things that a cart keeps apart, such as the
// pack and the frame.
func (i Island) IsCoupled() bool { return len(i.Holds) > 1 }

// Islands lists the islands of more than one node, in the order of their first nodes.
func (s *Solution) Islands() []Island {
	var list []Island
	at := map[int]int{}
	for k := range s.n.points {
		group := s.solved.Island(circuit.Node(k))
		i, seen := at[group]
		if !seen {
			i = len(list)
			at[group] = i
			list = append(list, Island{Reference: Node(k)})
		}
		list[i].Nodes = append(list[i].Nodes, Node(k))
	}
	for i := range list {
		s.n.describe(&list[i])
	}
	return slices.DeleteFunc(list, func(i Island) bool { return len(i.Nodes) < 2 })
}

// describe names an island and chooses its reference.
func (n *Network) describe(i *Island) {
	within := make([]bool, n.Size())
	for _, at := range i.Nodes {
		within[at] = true
	}
	chosen, mains := false, false
	hold := func(what string, reference Node) {
		if !chosen {
			i.Reference, chosen = reference, true
		}
		if !slices.Contains(i.Holds, what) {
			i.Holds = append(i.Holds, what)
		}
	}
	for _, f := range n.Feeds() {
		switch {
		case !within[f.At]:
		case f.String != nil && f.Whole:
			hold("the "+packWord(f.String), f.Return)
		case f.Link.Kind == OutputLink:
			hold("the output of "+string(f.Link.Part.ID), f.Return)
		}
	}
	for _, at := range i.Nodes {
		t := n.TerminalDef(n.points[at].At)
		switch {
		case t == nil:
		case t.Metal == model.FrameMetal:
			hold("the frame", at)
		case t.Serves == model.Mains:
			mains = true
		}
	}
	switch {
	case len(i.Holds) > 0:
	case mains:
		i.Holds = []string{"mains"}
	default:
		i.Holds = []string{n.points[i.Reference].String()}
	}
}

// packWord is what a string of sources is called.
func packWord(s *String) string {
	if len(s.Cells) == 1 {
		return string(s.Cells[0].Link.Part.ID)
	}
	return "string from " + string(s.Cells[0].Link.Part.ID) + " to " + string(s.Cells[len(s.Cells)-1].Link.Part.ID)
}
