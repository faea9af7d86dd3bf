package protect

import "example.com/lugbook/model/state"

// SwitchedOn is what the name of a state gets when everything that may be switched at
// will is switched on in it.
const SwitchedOn = " with all switched on"

// solve finds the states in which a fault may happen: those of the sheet, and each of
// them once more with everything switched on that may be. States that come to no rest
// are left out.
func (s *Survey) solve() {
	for _, st := range s.net.States() {
		s.add(st)
		if on, differs := st.AllOn(s.net.Sheet, s.net.Cat); differs {
			on.Name += SwitchedOn
			s.add(on)
		}
	}
}

func (s *Survey) add(st state.State) {
	if solution, err := s.net.Solve(st); err == nil {
		s.states = append(s.states, solved{st, solution})
	}
}

// names lists the states that were looked at.
func (s *Survey) names() []string {
	var names []string
	for _, st := range s.states {
		names = append(names, st.state.Name)
	}
	return names
}
