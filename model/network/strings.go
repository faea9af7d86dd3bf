package network

import (
	"math"
	"slices"

	"example.com/lugbook/model"
)

// String is a chain of batteries in series, or a single pack. Cells run from the low
// end to the high end, the way that most of their voltage points.
type String struct {
	Cells   []Cell
	Low     Node    // outer terminal of the first cell
	High    Node    // outer terminal of the last cell
	Volts   float64 // open-circuit sum in volts, reversed cells taken off
	Devices []*Link // fuses inside the chain
}

// Cell is one source of a string.
type Cell struct {
	Link     *Link
	Reversed bool // against the rest of the string
	Before   Node // its terminal toward the low end
	After    Node // its terminal toward the high end
}

func (n *Network) findStrings() []String {
	c := chainer{n: n, groups: n.known.firm, used: map[int]bool{}}
	for i := range n.links {
		l := &n.links[i]
		if l.Is(model.SourceElement) && !c.groups.Same(l.A, l.B) {
			c.sources = append(c.sources, i)
		}
	}
	var list []String
	for _, i := range c.sources {
		if !c.used[i] {
			for _, chain := range c.unroll(c.chain(i)) {
				list = append(list, n.orient(chain))
			}
		}
	}
	return list
}

// Poles are the outer terminals of the traction string: the one of the highest
// voltage, the first of several. It is false if the sheet has no source.
func (n *Network) Poles() (low, high Node, ok bool) {
	var best *String
	list := n.Strings()
	for i := range list {
		if best == nil || list[i].Volts > best.Volts {
			best = &list[i]
		}
	}
	if best == nil {
		return None, None, false
	}
	return best.Low, best.High, true
}

// Shorted lists the sources whose two terminals are joined by metal.
func (n *Network) Shorted() []*Link {
	groups := n.known.firm
	var list []*Link
	for i := range n.links {
		if l := &n.links[i]; l.Is(model.SourceElement) && groups.Same(l.A, l.B) {
			list = append(list, l)
		}
	}
	return list
}

// chainer follows sources from terminal to terminal.
type chainer struct {
	n       *Network
	groups  *Groups
	sources []int
	used    map[int]bool
}

// at lists the sources that touch a group.
func (c *chainer) at(group int) []int {
	var list []int
	for _, i := range c.sources {
		l := &c.n.links[i]
		if c.groups.Of(l.A) == group || c.groups.Of(l.B) == group {
			list = append(list, i)
		}
	}
	return list
}

// chain is the run of sources through the given one, each passed from Before to
// After, as far as exactly two sources meet.
func (c *chainer) chain(start int) []Cell {
	l := &c.n.links[start]
	c.used[start] = true
	chain := []Cell{{Link: l, Before: l.B, After: l.A}}
	chain = append(chain, c.extend(l.A)...)
	back := c.extend(l.B)
	slices.Reverse(back)
	for i := range back {
		back[i].Before, back[i].After = back[i].After, back[i].Before
	}
	return append(back, chain...)
}

func (c *chainer) extend(at Node) []Cell {
	var cells []Cell
	for {
		group := c.groups.Of(at)
		meet := c.at(group)
		next := slices.IndexFunc(meet, func(i int) bool { return !c.used[i] })
		if len(meet) != 2 || next < 0 {
			return cells
		}
		c.used[meet[next]] = true
		l := &c.n.links[meet[next]]
		cell := Cell{Link: l, Before: l.A, After: l.B}
		if c.groups.Of(l.B) == group {
			cell.Before, cell.After = l.B, l.A
		}
		cells = append(cells, cell)
		at = cell.After
	}
}

// unroll opens a chain that closes on itself where two strings lie in parallel: at
// the two places where the direction of its sources turns, or if a reversed source makes
// it turn elsewhere too, at the two places where something else is connected.
func (c *chainer) unroll(chain []Cell) [][]Cell {
	first, last := chain[0].Before, chain[len(chain)-1].After
	if len(chain) < 2 || !c.groups.Same(first, last) {
		return [][]Cell{chain}
	}
	forward := func(i int) bool { cell := chain[i%len(chain)]; return cell.After == cell.Link.A }
	var turns, tapped []int
	for i := range chain {
		if forward(i) != forward(i+1) {
			turns = append(turns, i+1)
		}
		if c.tapped(chain[i].After) {
			tapped = append(tapped, i+1)
		}
	}
	if len(turns) > 2 {
		turns = tapped
	}
	if len(turns) != 2 {
		return [][]Cell{chain}
	}
	twice := append(slices.Clone(chain), chain...)
	return [][]Cell{twice[turns[0]:turns[1]], twice[turns[1] : turns[0]+len(chain)]}
}

// tapped reports whether something other than a source is joined to a terminal.
func (c *chainer) tapped(at Node) bool {
	return slices.ContainsFunc(c.groups.Members(c.groups.Of(at)), func(m Node) bool {
		d := c.n.DefinitionOf(c.n.points[m].At)
		return d != nil && d.Family != model.Storage
	})
}

// orient turns a chain so that its voltage counts upward, and marks what opposes.
func (n *Network) orient(cells []Cell) String {
	cells = slices.Clone(cells)
	volts := 0.0
	for _, cell := range cells {
		volts += n.rise(cell)
	}
	if volts < 0 {
		slices.Reverse(cells)
		for i := range cells {
			cells[i].Before, cells[i].After = cells[i].After, cells[i].Before
		}
		volts = -volts
	}
	s := String{Cells: cells, Low: cells[0].Before, High: cells[len(cells)-1].After, Volts: volts}
	for i := range cells {
		cells[i].Reversed = n.rise(cells[i]) < 0
		if i > 0 {
			s.Devices = append(s.Devices, n.fusesBetween(cells[i-1].After, cells[i].Before)...)
		}
	}
	return s
}

// rise is the voltage that a cell adds on the way from Before to After.
func (n *Network) rise(cell Cell) float64 {
	volts, known := n.Figure(cell.Link.Part, cell.Link.Element.Volts)
	if !known {
		volts = 1
	}
	return math.Copysign(volts, map[bool]float64{true: 1, false: -1}[cell.After == cell.Link.A])
}

func (n *Network) fusesBetween(a, b Node) []*Link {
	var fuses []*Link
	for _, l := range n.Walk([]Node{a}, func(l *Link, _ Node) bool { return l.Firm() }).Path(b) {
		if l.Is(model.FuseElement) {
			fuses = append(fuses, l)
		}
	}
	return fuses
}
