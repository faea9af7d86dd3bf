package network

import "example.com/lugbook/model"

// LeadIn is what leaves a feed before any protective device.
type LeadIn struct {
	Reach   *Reach
	Open    []*Link // wires that reach something else than a protective device, in the order of the walk
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
	n.findOpen(lead)
	return lead
}

func (n *Network) meetDevices(lead *LeadIn) {
	met := map[*Link]bool{}
	for _, at := range lead.Reach.Order {
		for _, l := range n.LinksAt(at) {
			if !l.Is(model.FuseElement) || met[l] {
				continue
			}
			met[l] = true
			lead.Devices = append(lead.Devices, Met{Device: l, At: at, Path: lead.Reach.Path(at)})
		}
	}
}

// findOpen marks the wires beyond which current finds something else than a device.
func (n *Network) findOpen(lead *LeadIn) {
	r := lead.Reach
	beyond := make([]bool, n.Size())
	for i := len(r.Order) - 1; i >= 0; i-- {
		at := r.Order[i]
		beyond[at] = beyond[at] || n.consumes(at)
		if via := r.Via(at); via != nil && beyond[at] {
			beyond[via.Other(at)] = true
		}
	}
	listed := map[*Link]bool{}
	for _, at := range r.Order {
		for _, l := range n.LinksAt(at) {
			if l.Kind != WireLink || listed[l] || !r.Has(l.A) || !r.Has(l.B) {
				continue
			}
			listed[l] = true
			if far := n.farther(r, l); far == None && (beyond[l.A] || beyond[l.B]) || far != None && beyond[far] {
				lead.Open = append(lead.Open, l)
			} else {
				lead.Leading = append(lead.Leading, l)
			}
		}
	}
}

// farther is the end of a wire that the walk reached through the wire itself.
func (n *Network) farther(r *Reach, l *Link) Node {
	switch {
	case r.Via(l.A) == l:
		return l.A
	case r.Via(l.B) == l:
		return l.B
	}
	return None
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
