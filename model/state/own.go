package state

import (
	"slices"
	"strings"

	"example.com/lugbook/model"
)

// OfJob lists the derived states of a sheet and after them those that a person added.
// A control that the sheet has not is not set.
func OfJob(j *model.Job, s *model.Sheet, cat *model.Catalogue) []State {
	list := List(s, cat)
	if len(j.States) == 0 {
		return list
	}
	have := Controls(s, cat)
	known := everyDerived(have)
	for i := range j.States {
		own := fromOwn(&j.States[i], known, have)
		known = append(known, own)
		list = append(list, own)
	}
	return list
}

// everyDerived are all states that can be derived, whether the sheet asks for them or not:
// a person's state may start from any of them.
func everyDerived(have []model.Control) []State {
	var list []State
	for _, c := range candidates {
		list = append(list, c.state(have))
	}
	return list
}

// fromOwn makes a state of a person's. One that starts from nothing that is known starts
// from parked.
func fromOwn(own *model.OwnState, known []State, have []model.Control) State {
	from := own.From
	if from == "" {
		from = Parked
	}
	s, ok := Find(known, from)
	if !ok {
		s = known[0]
	}
	about := []string{"as " + s.Name}
	for _, set := range own.Set {
		about = append(about, string(set.Control)+" "+set.Position)
		if slices.Contains(have, set.Control) {
			s = s.With(set.Control, set.Position)
		}
	}
	s.Name, s.About = own.Name, own.About
	if s.About == "" {
		s.About = strings.Join(about, ", ")
	}
	return s
}
