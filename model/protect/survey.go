package protect

import (
	"fmt"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/opening"
	"example.com/lugbook/model/state"
)

// Survey computes the protection of a sheet piece by piece: each answer when it is first
// asked for, and once. What needs no fault is quick; each fault is a solution of the
// network.
type Survey struct {
	net        *network.Network
	protection *network.Protection
	feeds      []network.Feed
	entries    []network.Entry
	nominals   map[*network.Link]float64
	fed        map[*network.Feed][]bool // by node, see fedBy
	regen      []network.Feed
	returns    []bool
	states     []solved
	distinct   []int               // states in which a fault finds different ways, the first of equal ones
	charges    [2][]network.Change // of the sources, by extreme
	bolts      map[boltKey]*network.Bolted
	faults     map[faultKey]Fault
	curves     map[*network.Link]opening.Curve
	outlines   map[*network.Link]*Conductor
	conductors map[*network.Link]*Conductor
	devices    map[*network.Link]*Device
}

// solved is a state with its solution.
type solved struct {
	state    state.State
	solution *network.Solution
}

// NewSurvey prepares the answers for a sheet.
func NewSurvey(n *network.Network) *Survey {
	s := &Survey{
		net: n, protection: n.Protect(), regen: n.Regenerators(), returns: n.Returns(),
		bolts: map[boltKey]*network.Bolted{}, faults: map[faultKey]Fault{}, nominals: map[*network.Link]float64{}, fed: map[*network.Feed][]bool{}, curves: map[*network.Link]opening.Curve{},
		outlines: map[*network.Link]*Conductor{}, conductors: map[*network.Link]*Conductor{}, devices: map[*network.Link]*Device{},
	}
	s.feeds, s.entries = s.protection.Feeds, s.protection.Entries()
	s.charges = [2][]network.Change{greatest: n.FullCharge(), least: s.emptied()}
	s.solve()
	s.distinguish()
	return s
}

// Outline is what is known of the conductor of a wire without any fault: its exposure, its
// capacity and the ways on which current comes to it unprotected.
func (s *Survey) Outline(l *network.Link) *Conductor {
	if s.outlines[l] == nil {
		s.outlines[l] = s.outline(l)
	}
	return s.outlines[l]
}

// Conductor is all that protects the conductor of a wire, faults included.
func (s *Survey) Conductor(l *network.Link) *Conductor {
	if s.conductors[l] == nil {
		s.conductors[l] = s.conductor(l)
	}
	return s.conductors[l]
}

// Device is a fuse or breaker against what it may have to open.
func (s *Survey) Device(l *network.Link) *Device {
	if s.devices[l] == nil {
		s.devices[l] = s.device(l)
	}
	return s.devices[l]
}

// distinguish finds the states in which everything that a fault's current may cross stands
// otherwise than in all before. In the rest a fault is the same.
func (s *Survey) distinguish() {
	seen := map[string]bool{}
	for i, st := range s.states {
		if key := s.stands(st); !seen[key] {
			seen[key] = true
			s.distinct = append(s.distinct, i)
		}
	}
}

// stands says how what may move stands in a state.
func (s *Survey) stands(st solved) string {
	var b strings.Builder
	for i := range s.net.Links() {
		switch l := &s.net.Links()[i]; {
		case l.Is(model.ContactElement), l.Is(model.FuseElement), l.Kind == network.OutputLink:
			fmt.Fprintf(&b, "%t ", st.solution.On(l))
		case l.Part != nil && l.Def.Control != nil && len(l.Element.ClosedIn) > 0:
			fmt.Fprintf(&b, "%s ", st.state.Of(l.Def.Control))
		}
	}
	return b.String()
}
