package network

import (
	"example.com/lugbook/model"
	"example.com/lugbook/model/state"
)

// Node is one electrical point of a network: a terminal or the loose end of a wire.
type Node int

// None is no node.
const None Node = -1

// Point names a node: a terminal, or a loose end by its wire and side.
type Point struct {
	At   model.TerminalRef // zero for a loose end
	Wire model.WireID      // wire of a loose end
	To   bool              // the loose end is the wire's to end
	How  model.Loose       // what the loose end looks like
}

// String is part.terminal, or the wire with what its loose end looks like.
func (p Point) String() string {
	if !p.At.IsZero() {
		return p.At.String()
	}
	return "the " + string(p.How) + " end of " + string(p.Wire)
}

// Network is a sheet as an electrical graph. It keeps the sheet that it was built
// from and is read-only once built.
type Network struct {
	Sheet *model.Sheet
	Cat   *model.Catalogue // as the job sees it

	job    *model.Job
	points []Point
	nodes  map[Point]Node
	parts  map[model.PartID]*model.Part
	links  []Link
	at     [][]int // indexes of links by node
	around [][]*Link
	ofWire map[model.WireID]int
	ofPart map[*model.Part][]Link
	metal  map[model.Metal]Node

	terminals map[model.TerminalRef]*model.Terminal
	controls  []*model.Switching // of the parts, in the order of the sheet
	solved    solved
	known     known
}

// Link is what joins two nodes: a wire, or an element inside a part.
type Link struct {
	Kind    Kind
	A, B    Node // A is a wire's from end or an element's first terminal
	Wire    *model.Wire
	Part    *model.Part
	Def     *model.Definition
	Element *model.Element

	index                  int  // among the links of the network
	conducts, firm, traced bool // computed once, see pass.go
	metres                 float64
	measured               bool
	perMetre               float64    // ohms of a wire at 20 C
	joints                 [2]float64 // ohms of a wire's joints at its from and its to end, as found
	assumed                bool       // the gauge that goes by
}

// Kind says what a link is: a wire, an element by its kind, or the output side of a converter.
type Kind string

// Kinds of link beyond those of elements.
const (
	WireLink   Kind = "wire"
	OutputLink Kind = "output" // of a converter, positive terminal first
)

// Is reports whether the link is an element of that kind.
func (l *Link) Is(k model.ElementKind) bool { return l.Kind == Kind(k) }

// Other is the link's node that is not n.
func (l *Link) Other(n Node) Node {
	if l.A == n {
		return l.B
	}
	return l.A
}

// Build makes the graph of a sheet. cat is the parts library, the job's own
// definitions not yet included. Parts of unknown kind get the terminals that wires
// name, and nothing between them.
func Build(job *model.Job, sheet *model.Sheet, cat *model.Catalogue) *Network {
	n := &Network{
		Sheet: sheet, Cat: cat.For(job), job: job,
		nodes: map[Point]Node{}, parts: map[model.PartID]*model.Part{}, ofWire: map[model.WireID]int{}, ofPart: map[*model.Part][]Link{}, metal: map[model.Metal]Node{},
		terminals: map[model.TerminalRef]*model.Terminal{},
	}
	for i := range sheet.Terminals {
		n.terminals[sheet.Terminals[i].At] = &sheet.Terminals[i]
	}
	for i := range sheet.Parts {
		n.addPart(&sheet.Parts[i])
	}
	for i := range sheet.Wires {
		n.addWire(&sheet.Wires[i])
	}
	for i := range n.links {
		n.classify(&n.links[i])
	}
	n.surround()
	n.sortByPart()
	n.remember()
	return n
}

func (n *Network) addPart(p *model.Part) {
	n.parts[p.ID] = p
	d := n.Cat.Definition(p.Kind)
	for _, name := range n.Cat.TerminalsOf(n.Sheet, p) {
		n.terminal(d, model.TerminalRef{Part: p.ID, Name: name})
	}
	if d == nil {
		return
	}
	if d.Control != nil {
		n.controls = append(n.controls, d.Control)
	}
	for i := range d.Elements {
		e := &d.Elements[i]
		n.addElement(Link{Kind: Kind(e.Is), Part: p, Def: d, Element: e}, e.Between)
		if e.Is == model.ConverterElement {
			n.addElement(Link{Kind: OutputLink, Part: p, Def: d, Element: e}, e.Out)
		}
	}
}

// terminal makes the node of a terminal. Terminals of one piece of metal share the node
// of the first of them.
func (n *Network) terminal(d *model.Definition, at model.TerminalRef) {
	if d == nil || d.Terminal(at.Name) == nil || d.Terminal(at.Name).Metal == "" {
		n.node(Point{At: at})
		return
	}
	metal := d.Terminal(at.Name).Metal
	shared, there := n.metal[metal]
	if !there {
		shared = n.node(Point{At: at})
		n.metal[metal] = shared
	}
	n.nodes[Point{At: at}] = shared
}

func (n *Network) addElement(l Link, between []string) {
	if len(between) != 2 {
		return
	}
	l.A = n.node(Point{At: model.TerminalRef{Part: l.Part.ID, Name: between[0]}})
	l.B = n.node(Point{At: model.TerminalRef{Part: l.Part.ID, Name: between[1]}})
	n.addLink(l)
}

func (n *Network) addWire(w *model.Wire) {
	n.ofWire[w.ID] = len(n.links)
	n.addLink(Link{Kind: WireLink, Wire: w, A: n.end(w, w.From, false), B: n.end(w, w.To, true)})
}

func (n *Network) addLink(l Link) {
	i := len(n.links)
	l.index = i
	n.links = append(n.links, l)
	n.at[l.A] = append(n.at[l.A], i)
	if l.B != l.A {
		n.at[l.B] = append(n.at[l.B], i)
	}
}

func (n *Network) end(w *model.Wire, e model.End, to bool) Node {
	if e.At.IsZero() {
		return n.node(Point{Wire: w.ID, To: to, How: e.Loose})
	}
	return n.node(Point{At: e.At})
}

func (n *Network) node(p Point) Node {
	if at, ok := n.nodes[p]; ok {
		return at
	}
	at := Node(len(n.points))
	n.nodes[p] = at
	n.points = append(n.points, p)
	n.at = append(n.at, nil)
	return at
}

// Job is the job that the sheet belongs to. Treat it as read-only.
func (n *Network) Job() *model.Job { return n.job }

// Size is the number of nodes; they are numbered from 0.
func (n *Network) Size() int { return len(n.points) }

// Point names a node.
func (n *Network) Point(at Node) Point { return n.points[at] }

// Node finds the node of a terminal; None if the sheet has no such terminal.
func (n *Network) Node(at model.TerminalRef) Node {
	if node, ok := n.nodes[Point{At: at}]; ok {
		return node
	}
	return None
}

// Links lists all links: those of parts in the order of the sheet, then the wires.
func (n *Network) Links() []Link { return n.links }

// LinksAt lists the links that touch a node, in the order of Links. Treat it as read-only.
func (n *Network) LinksAt(at Node) []*Link { return n.around[at] }

// surround lists the links around each node.
func (n *Network) surround() {
	n.around = make([][]*Link, len(n.at))
	all := make([]*Link, 0, 2*len(n.links))
	for at, list := range n.at {
		from := len(all)
		for _, i := range list {
			all = append(all, &n.links[i])
		}
		n.around[at] = all[from:len(all):len(all)]
	}
}

// sortByPart finds the links of each part, which stand next to each other.
func (n *Network) sortByPart() {
	for from := 0; from < len(n.links); {
		to := from + 1
		for to < len(n.links) && n.links[to].Part == n.links[from].Part {
			to++
		}
		if p := n.links[from].Part; p != nil {
			n.ofPart[p] = n.links[from:to:to]
		}
		from = to
	}
}

// LinksOf lists the links inside a part of the sheet, in the order of its definition.
func (n *Network) LinksOf(p *model.Part) []Link { return n.ofPart[p] }

// WireLink finds the link of a wire; nil if the sheet has no such wire.
func (n *Network) WireLink(id model.WireID) *Link {
	i, ok := n.ofWire[id]
	if !ok {
		return nil
	}
	return &n.links[i]
}

// Frame is the node of the cart's frame; None if the sheet has no point of it.
func (n *Network) Frame() Node {
	if at, ok := n.metal[model.FrameMetal]; ok {
		return at
	}
	return None
}

// Part finds a part of the sheet; nil if there is none of that id.
func (n *Network) Part(id model.PartID) *model.Part { return n.parts[id] }

// DefinitionOf is the definition of the part that a terminal belongs to; nil if the
// part or its kind is not known.
func (n *Network) DefinitionOf(at model.TerminalRef) *model.Definition {
	if p := n.parts[at.Part]; p != nil {
		return n.Cat.Definition(p.Kind)
	}
	return nil
}

// TerminalDef is what the library says of a terminal; nil if it does not know it.
func (n *Network) TerminalDef(at model.TerminalRef) *model.TerminalDef {
	if d := n.DefinitionOf(at); d != nil {
		return d.Terminal(at.Name)
	}
	return nil
}

// States lists the states that the controls on the sheet give, then those that the job adds.
func (n *Network) States() []state.State { return state.OfJob(n.job, n.Sheet, n.Cat) }
