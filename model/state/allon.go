package state

import (
	"slices"

	"example.com/lugbook/model"
)

// atWill are the controls that work beside all others, in the position in which what they
// switch takes current. No state says where they are but by itself.
var atWill = []Setting{
	{model.OtherSwitch, "on"}, {model.LightSwitch, "on"}, {model.HornButton, "on"}, {model.BrakeSwitch, "down"},
}

// AtWill reports whether a control may be on in any state, such as the lights.
func AtWill(c model.Control) bool {
	return slices.ContainsFunc(atWill, func(s Setting) bool { return s.Control == c })
}

// AllOn is a state with everything switched on that may be on at will on a sheet; false if
// that is how it stands already. A trunk must carry all of it at once.
func (s State) AllOn(sheet *model.Sheet, cat *model.Catalogue) (on State, differs bool) {
	on = s
	for _, set := range atWill {
		for i := range sheet.Parts {
			d := cat.Definition(sheet.Parts[i].Kind)
			if d == nil || d.Control == nil || d.Control.Sets != set.Control {
				continue
			}
			position := working(d.Control, set.Position)
			if s.Of(d.Control) != position {
				on, differs = on.With(set.Control, position), true
				break
			}
		}
	}
	return on, differs
}

// working is the position of a control in which what it switches takes current: the usual
// one if it has that, else the first that is not its rest.
func working(sw *model.Switching, usual string) string {
	if slices.Contains(sw.Positions, usual) {
		return usual
	}
	for _, p := range sw.Positions {
		if p != sw.Rest {
			return p
		}
	}
	return sw.Rest
}
