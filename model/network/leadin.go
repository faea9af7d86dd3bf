package network

import "example.com/lugbook/model"

// LeadIn is what leaves a feed before any protective device.
type LeadIn struct {
	Reach   *Reach
	Open    []*Link // wires that reach something else than a protective device or a loose end, in the order of the walk
	Leading []*Link // wires that reach protective devices alone
	Devices []Met   // the protective devices that end the lead-in, nearest first
}

// Met is a protective device where a walk from a feed meets it.
type Met struct {
	Device *Link
	At     Node    // the terminal on the feed's side
	Path   []*Link // from where the walk began
}

// LeadIn walks from a terminal over everything that conducts, up to the protective
// devices. Nodes marked in stop are not entered.
func (n *Network) LeadIn(from Node, stop []bool) *LeadIn {
	lead := &LeadIn{}
	lead.Reach = n.Walk([]Node{from}, func(l *Link, at Node) bool {
		next := l.Other(at)
		return (stop == nil || !stop[next]) && l.Conducts()
	})
	n.meetDevices(lead)
	n.sort(lead, stop)
	return lead
}

func (n *Network) meetDevices(lead *LeadIn) {
	met := map[*Link]bool{}
	for _, at := range lead.Reach.Order {
		for _, l := range n.LinksAt(at) {
			if l.Is(model.FuseElement) && !met[l] {
				met[l] = true
				lead.Devices = append(lead.Devices, Met{Device: l, At: at, Path: lead.Reach.Path(at)})
			}
		}
	}
}

// sort parts the wires by what current finds beyond them.
func (n *Network) sort(lead *LeadIn, stop []bool) {
	r := lead.Reach
	taken, guarded := make([]bool, n.Size()), make([]bool, n.Size())
	for _, m := range lead.Devices {
		guarded[m.At] = true
	}
	for i := len(r.Order) - 1; i >= 0; i-- {
		at := r.Order[i]
		taken[at] = taken[at] || n.consumes(at) || n.returns(at, stop)
		if via := r.Via(at); via != nil {
			before := via.Other(at)
			taken[before] = taken[before] || taken[at]
			guarded[before] = guarded[before] || guarded[at]
		}
	}
	blocks := n.blocks(r)
	blocks.share(r, taken)
	blocks.share(r, guarded)
	listed := map[*Link]bool{}
	for _, at := range r.Order {
		for _, l := range n.LinksAt(at) {
			if l.Kind != WireLink || listed[l] || !r.Has(l.A) || !r.Has(l.B) {
				continue
			}
			listed[l] = true
			switch block := blocks.of(r.deeper(l)); {
			case taken[block]:
				lead.Open = append(lead.Open, l)
			case guarded[block]:
				lead.Leading = append(lead.Leading, l)
			case n.ends(r.deeper(l)):
				lead.Open = append(lead.Open, l)
			}
		}
	}
}

// ends reports whether a wire ends at a part that takes nothing there, such as the other side
// of an open switch: a fault there loads the wire all the same. Loose ends and posts with
// nothing on them are left out; the frame is not, for much may touch it.
func (n *Network) ends(at Node) bool {
	d := n.DefinitionOf(n.points[at].At)
	return at == n.Frame() || d != nil && d.Family != model.Joining && d.Family != model.Storage
}

// returns reports whether current goes on from a node to the return side, as through a
// motor without a controller.
func (n *Network) returns(at Node, stop []bool) bool {
	if stop == nil {
		return false
	}
	for _, l := range n.LinksAt(at) {
		if l.Conducts() && stop[l.Other(at)] {
			return true
		}
	}
	return false
}

// consumes reports whether something at a node takes current, or may: a load, a
// winding, electronics, or a terminal of which nothing is known. Batteries, devices,
// loose ends and plain posts do not.
func (n *Network) consumes(at Node) bool {
	ref := n.points[at].At
	if ref.IsZero() {
		return false
	}
	elements, wired := 0, false
	for _, l := range n.LinksAt(at) {
		if l.Kind == WireLink {
			wired = true
			continue
		}
		elements++
		if n.takes(l) {
			return true
		}
	}
	if elements > 0 || !wired {
		return false
	}
	d := n.DefinitionOf(ref)
	return d == nil || d.Family != model.Joining
}

func (n *Network) takes(l *Link) bool {
	switch l.Kind {
	case Kind(model.SourceElement), Kind(model.FuseElement), OutputLink:
		return false
	}
	return l.Def.Family != model.Storage && !l.Conducts() && !l.Is(model.ContactElement)
}
