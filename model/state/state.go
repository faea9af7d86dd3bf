// Package state names the settings of a cart's controls that a technician asks
// about: parked, key on, driving forward, charging and so on. It is pure: a list of
// states comes from the controls that a sheet has, and nothing is computed here.
package state

import (
	"slices"

	"example.com/lugbook/model"
)

// State is one setting of the controls of a cart.
type State struct {
	Name  string    // plain name, such as drive-forward
	About string    // what is set, in one line for a person
	Set   []Setting // positions by control, in the order of model.Control.Names
}

// Setting is one control in one position.
type Setting struct {
	Control  model.Control
	Position string
}

// Position is where the state puts a control; false if the state does not say.
func (s State) Position(c model.Control) (string, bool) {
	for _, set := range s.Set {
		if set.Control == c {
			return set.Position, true
		}
	}
	return "", false
}

// Of is the position that a part's own control takes in the state. A position that
// the part does not have, and a control that the state does not set, leave the part
// at rest; an isolator is closed in service and a tow switch in run.
func (s State) Of(sw *model.Switching) string {
	if p, ok := s.Position(sw.Sets); ok && slices.Contains(sw.Positions, p) {
		return p
	}
	if p, ok := inService[sw.Sets]; ok && slices.Contains(sw.Positions, p) {
		return p
	}
	return sw.Rest
}

// With is the state with one control set otherwise.
func (s State) With(c model.Control, position string) State {
	set := slices.DeleteFunc(slices.Clone(s.Set), func(o Setting) bool { return o.Control == c })
	s.Set = sorted(append(set, Setting{c, position}))
	return s
}

// inService holds the controls that rest otherwise than a cart in service has them.
var inService = map[model.Control]string{
	model.Isolator: "closed",
	model.PackOn:   "on",
	model.TowRun:   "run",
}

func sorted(set []Setting) []Setting {
	order := model.Control("").Names()
	slices.SortStableFunc(set, func(a, b Setting) int {
		return slices.Index(order, string(a.Control)) - slices.Index(order, string(b.Control))
	})
	return set
}
