package meter

import (
	"math"
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

// works looks in a solution that asks for traction current at what else it takes for a
// cart to move: a motor that can turn, released brakes, a throttle that the controller can
// read. What the sheet does not show is never held against the cart.
type works struct {
	n      *network.Network
	s      *network.Solution
	tied   *network.Groups // what plain metal, closed contacts, fuses and shunts join
	unsure []bool          // by group: it goes out of sight, or reaches what nobody defined
	asking []*network.Link // loads of controllers that take traction current
}

// hindrances lists what keeps a cart that asks for current from moving, in words that
// follow "it asks for current, but".
func hindrances(n *network.Network, s *network.Solution) []string {
	w := &works{n: n, s: s}
	w.tied = n.Joined(w.ties)
	w.findUnsure()
	links := n.Links()
	for i := range links {
		if l := &links[i]; l.Is(model.LoadElement) && isTraction(n, l) && math.Abs(s.Current(l)) > driveAmps {
			w.asking = append(w.asking, l)
		}
	}
	return slices.Concat(w.standing(), w.held(), w.unread())
}

// ties reports whether a link joins its nodes as good as metal in the solution. Pedal
// potentiometers join nothing, whatever their wiper lies on.
func (w *works) ties(l *network.Link) bool {
	switch {
	case l.IsMetal():
		return true
	case isThrottle(l.Def):
		return false
	case l.Is(model.ContactElement), l.Is(model.FuseElement):
		return w.s.On(l)
	case l.Is(model.ResistanceElement) && l.Def.Family != model.Drive:
		return passes(w.n, w.s, l) <= firmOhms
	}
	return false
}

// findUnsure marks what cannot be judged: a wire that goes out of sight, and a part whose
// inside nobody defined.
func (w *works) findUnsure() {
	w.unsure = make([]bool, w.tied.Count())
	for i := range w.n.Size() {
		node := network.Node(i)
		p := w.n.Point(node)
		hidden := p.How == model.Untraced
		if !p.At.IsZero() {
			d := w.n.DefinitionOf(p.At)
			hidden = d == nil || d.Family != model.Joining && len(d.Elements) == 0
		}
		if hidden {
			w.unsure[w.tied.Of(node)] = true
		}
	}
}

// group is the tied group of a part's terminal; -1 if the sheet has no such node.
func (w *works) group(part model.PartID, terminal string) int {
	if node := w.n.Node(model.TerminalRef{Part: part, Name: terminal}); node != network.None {
		return w.tied.Of(node)
	}
	return -1
}

// groups are the tied groups of terminals of a part.
func (w *works) groups(part model.PartID, terminals []string) []int {
	list := make([]int, len(terminals))
	for i, t := range terminals {
		list[i] = w.group(part, t)
	}
	return list
}

// anyUnsure reports whether one of some groups cannot be judged.
func (w *works) anyUnsure(groups []int) bool {
	return slices.ContainsFunc(groups, func(g int) bool { return g >= 0 && w.unsure[g] })
}

// touched reports whether an element of a definition is at a terminal.
func touched(d *model.Definition, terminal string) bool {
	return slices.ContainsFunc(d.Elements, func(e model.Element) bool {
		return slices.Contains(e.Between, terminal) || slices.Contains(e.Out, terminal)
	})
}
