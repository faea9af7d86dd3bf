package support

import (
	"errors"
	"fmt"
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/state"
)

// desk keeps a network with its states as solved.
type desk struct {
	n        *network.Network
	states   []state.State
	solved   map[string]*network.Solution
	failed   map[string]string       // why a state has no solution, by its name
	unsolved []string                // the same in the order of the states
	restless map[model.PartID]string // why a part that keeps switching comes to no rest
}

func newDesk(n *network.Network) *desk {
	d := &desk{
		n: n, states: n.States(), solved: map[string]*network.Solution{}, failed: map[string]string{}, restless: map[model.PartID]string{},
	}
	for _, s := range d.states {
		solution, err := n.Solve(s)
		if err != nil {
			d.failed[s.Name] = err.Error()
			d.unsolved = append(d.unsolved, err.Error())
			d.note(err)
			continue
		}
		d.solved[s.Name] = solution
	}
	return d
}

// note remembers which parts an error says to come to no rest.
func (d *desk) note(err error) {
	var chatter *network.ChatterError
	if !errors.As(err, &chatter) {
		return
	}
	for _, l := range chatter.Links {
		if d.restless[l.Part.ID] == "" {
			d.restless[l.Part.ID] = err.Error()
		}
	}
}

// whyNot says why one of some states has no solution; empty if all that the sheet has of
// them have one.
func (d *desk) whyNot(names ...string) string {
	for _, name := range names {
		if why := d.failed[name]; why != "" {
			return "not computed: " + why
		}
	}
	return ""
}

// at is the solution of a state; nil if the sheet has no such state or comes to no rest.
func (d *desk) at(name string) *network.Solution { return d.solved[name] }

// pushed lists the states, then those of the drive again with each switch that no state
// sets in each of its positions, such as the switch of a pump.
func (d *desk) pushed() []state.State {
	list := slices.Clone(d.states)
	for _, name := range []string{state.Parked, state.KeyOn, state.DriveForward} {
		s, ok := state.Find(d.states, name)
		if !ok {
			continue
		}
		for i := range d.n.Sheet.Parts {
			def := d.n.Cat.Definition(d.n.Sheet.Parts[i].Kind)
			if def == nil || def.Control == nil || !state.AtWill(def.Control.Sets) {
				continue
			}
			for _, position := range def.Control.Positions {
				if position != def.Control.Rest {
					with := s.With(def.Control.Sets, position)
					with.Name = fmt.Sprintf("%s with %s %s", s.Name, d.n.Sheet.Parts[i].ID, position)
					list = append(list, with)
				}
			}
		}
	}
	return list
}

// closed reports whether current passes a link in a solved state: metal, a resistance too
// low to limit anything, and what is closed.
func closed(s *network.Solution, l *network.Link) bool {
	if l.Is(model.ContactElement) || l.Is(model.FuseElement) {
		return s.On(l)
	}
	return l.Conducts()
}

// groups numbers the nodes that are one piece of metal in a solved state, with one link
// left out.
func groups(n *network.Network, s *network.Solution, without *network.Link) *network.Groups {
	return n.Joined(func(l *network.Link) bool { return l != without && closed(s, l) })
}

// whole lists the batteries and packs of the network as strings, each with its feed. Those
// that are shorted are left out.
func (d *desk) whole() []network.Feed {
	firm := d.n.FirmGroups()
	var list []network.Feed
	for _, f := range d.n.Feeds() {
		if f.String != nil && f.Whole && !isRing(f.String, firm) {
			list = append(list, f)
		}
	}
	return list
}

// fullVolts is the highest voltage at full charge of the strings; false if none is known.
func (d *desk) fullVolts() (volts float64, ok bool) {
	for _, f := range d.whole() {
		if f.Full.OK && f.Full.Value > volts {
			volts, ok = f.Full.Value, true
		}
	}
	return volts, ok
}

// gives is the current in amperes that a source drives into the wiring; negative if it is
// charged.
func gives(s *network.Solution, l *network.Link) float64 {
	amps := s.Current(l)
	if amps < 0 {
		amps = -amps
	}
	if s.Power(l) > 0 {
		return -amps
	}
	return amps
}
