package protect

import (
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/state"
)

// atWill are the controls that may be on in any state.
var atWill = []model.Control{model.LightSwitch, model.HornButton, model.BrakeSwitch, model.OtherSwitch}

// SwitchedOn is what the name of a state gets when everything that may be switched at
// will is switched on in it.
const SwitchedOn = " with all switched on"

// solve finds the states in which a fault may happen: those of the sheet, and each of
// them once more with everything switched on that may be. States that come to no rest
// are left out.
func (s *Survey) solve() {
	for _, st := range s.net.States() {
		s.add(st)
		if on, differs := s.allOn(st); differs {
			s.add(on)
		}
	}
}

func (s *Survey) add(st state.State) {
	if solution, err := s.net.Solve(st); err == nil {
		s.states = append(s.states, solved{st, solution})
	}
}

// allOn is a state with every control that may be on at will away from its rest.
func (s *Survey) allOn(st state.State) (on state.State, differs bool) {
	on = st
	for i := range s.net.Sheet.Parts {
		d := s.net.Cat.Definition(s.net.Sheet.Parts[i].Kind)
		if d == nil || d.Control == nil || !slices.Contains(atWill, d.Control.Sets) {
			continue
		}
		for _, p := range d.Control.Positions {
			if p != d.Control.Rest && st.Of(d.Control) == d.Control.Rest {
				on, differs = on.With(d.Control.Sets, p), true
				break
			}
		}
	}
	on.Name += SwitchedOn
	return on, differs
}

// names lists the states that were looked at.
func (s *Survey) names() []string {
	var names []string
	for _, st := range s.states {
		names = append(names, st.state.Name)
	}
	return names
}
