package protect

import (
	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/opening"
	"example.com/lugbook/model/state"
)

// Report is the protection of one sheet.
type Report struct {
	Conductors []Conductor // one for each wire, in the order of the sheet
	Devices    []Device    // fuses and breakers, in the order of the sheet
	Pairs      []Pair      // devices in series, upstream first
	States     []string    // states that were looked at; one that comes to no rest is left out
}

// survey is what the parts of a report share.
type survey struct {
	net        *network.Network
	protection *network.Protection
	feeds      []network.Feed
	entries    []network.Entry
	nominals   map[*network.Link]float64
	regen      []network.Feed
	returns    []bool
	states     []solved
	faults     map[faultKey]*network.Solution
	curves     map[*network.Link]opening.Curve
}

// solved is a state with its solution.
type solved struct {
	state    state.State
	solution *network.Solution
}

// Of computes the protection of a sheet.
func Of(n *network.Network) *Report {
	s := &survey{
		net: n, protection: n.Protect(), regen: n.Regenerators(), returns: n.Returns(),
		faults:   map[faultKey]*network.Solution{},
		nominals: map[*network.Link]float64{}, curves: map[*network.Link]opening.Curve{},
	}
	s.feeds, s.entries = s.protection.Feeds, s.protection.Entries()
	s.solve()
	r := &Report{States: s.names()}
	for i := range n.Links() {
		switch l := &n.Links()[i]; {
		case l.Kind == network.WireLink:
			r.Conductors = append(r.Conductors, s.conductor(l))
		case l.Is(model.FuseElement):
			r.Devices = append(r.Devices, s.device(l))
		}
	}
	r.Pairs = s.pairs()
	return r
}

// Conductor finds the conductor of a wire; nil if the sheet has no such wire.
func (r *Report) Conductor(id model.WireID) *Conductor {
	for i := range r.Conductors {
		if r.Conductors[i].Wire.Wire.ID == id {
			return &r.Conductors[i]
		}
	}
	return nil
}

// Device finds the device of an element; nil if there is none.
func (r *Report) Device(l *network.Link) *Device {
	for i := range r.Devices {
		if r.Devices[i].Link == l {
			return &r.Devices[i]
		}
	}
	return nil
}
