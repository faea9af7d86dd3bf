package protect

import (
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/opening"
)

// Report is the protection of one sheet.
type Report struct {
	Conductors []Conductor // one for each wire, in the order of the sheet
	Devices    []Device    // fuses and breakers, in the order of the sheet
	Pairs      []Pair      // devices in series, upstream first
	States     []string    // states that were looked at; one that comes to no rest is left out
}

// Of computes the protection of a sheet.
func Of(n *network.Network) *Report {
	s := NewSurvey(n)
	r := &Report{States: s.names()}
	for i := range n.Links() {
		switch l := &n.Links()[i]; {
		case l.Kind == network.WireLink:
			r.Conductors = append(r.Conductors, *s.Conductor(l))
		case l.Is(model.FuseElement):
			r.Devices = append(r.Devices, *s.Device(l))
		}
	}
	r.Pairs = s.Pairs()
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

// Holds reports whether nothing of the report fails for sure. Devices in series that are not
// selective are a nuisance, not a failure.
func (r *Report) Holds() bool {
	failed := func(l Line) bool { return l.Answer == opening.No }
	for i := range r.Conductors {
		if slices.ContainsFunc(r.Conductors[i].Lines(), failed) {
			return false
		}
	}
	return !slices.ContainsFunc(r.Devices, func(d Device) bool { return slices.ContainsFunc(d.Lines(), failed) })
}
