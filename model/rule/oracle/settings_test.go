package oracle

import (
	"slices"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/state"
)

// driving are the controls that are tried in all combinations.
var driving = []model.Control{model.Key, model.TowRun, model.Direction, model.Pedal, model.PluggedIn}

// switchedOn are the controls that are tried at rest and, in some settings, all on.
var switchedOn = []state.Setting{
	{Control: model.LightSwitch, Position: "on"},
	{Control: model.HornButton, Position: "on"},
	{Control: model.BrakeSwitch, Position: "down"},
	{Control: model.OtherSwitch, Position: "on"},
}

// settings lists every combination of the controls that have to do with driving, and those
// of them that a cart spends its life in with everything else switched on.
func settings(n *network.Network) []state.State {
	parked := n.States()[0]
	list := []state.State{{Set: parked.Set}}
	for _, c := range driving {
		positions := positionsOf(n, c)
		if len(positions) == 0 {
			continue
		}
		var next []state.State
		for _, s := range list {
			for _, p := range positions {
				next = append(next, s.With(c, p))
			}
		}
		list = next
	}
	for i := range len(list) {
		if isUsual(list[i]) {
			list = append(list, allOn(list[i]))
		}
	}
	for i := range list {
		list[i].Name = nameOf(list[i])
	}
	return list
}

// isUsual picks the settings parked, driving either way, and charging.
func isUsual(s state.State) bool {
	return isAt(s, model.Key, "off") && isAt(s, model.Pedal, "up") && isAt(s, model.Direction, "neutral") && isAt(s, model.TowRun, "run") ||
		mayDrive(s) && isAt(s, model.Pedal, "down")
}

func allOn(s state.State) state.State {
	for _, set := range switchedOn {
		s = s.With(set.Control, set.Position)
	}
	return s
}

// isSwitchedOn reports whether something is on in a setting that may be on at will.
func isSwitchedOn(s state.State) bool {
	return slices.ContainsFunc(switchedOn, func(set state.Setting) bool {
		at, there := s.Position(set.Control)
		return there && at == set.Position
	})
}

// positionsOf lists the positions that the parts of a sheet give a control.
func positionsOf(n *network.Network, c model.Control) []string {
	var list []string
	for i := range n.Sheet.Parts {
		d := n.Cat.Definition(n.Sheet.Parts[i].Kind)
		if d == nil || d.Control == nil || d.Control.Sets != c {
			continue
		}
		for _, p := range d.Control.Positions {
			if !slices.Contains(list, p) {
				list = append(list, p)
			}
		}
	}
	return list
}

// nameOf writes the positions in which a setting differs from a parked cart.
func nameOf(s state.State) string {
	rest := []string{"off", "no", "neutral", "up", "run", "closed"}
	var words []string
	for _, set := range s.Set {
		if set.Control != model.PackOn && !slices.Contains(rest, set.Position) {
			words = append(words, string(set.Control)+" "+set.Position)
		}
	}
	if len(words) == 0 {
		return "parked"
	}
	return strings.Join(words, ", ")
}

// isAt reports whether a control is at a position, or is not there at all.
func isAt(s state.State, c model.Control, position string) bool {
	p, ok := s.Position(c)
	return !ok || p == position
}

// mayDrive reports whether nothing speaks against motion in a setting.
func mayDrive(s state.State) bool {
	up, hasPedal := s.Position(model.Pedal)
	neutral, hasDirection := s.Position(model.Direction)
	return isAt(s, model.Key, "on") && isAt(s, model.TowRun, "run") && isAt(s, model.PluggedIn, "no") &&
		!(hasPedal && up == "up") && !(hasDirection && neutral == "neutral")
}

// mostCharged is a variation with every battery and pack at its voltage at the end of charge.
func mostCharged(n *network.Network) []network.Change {
	var list []network.Change
	for i := range n.Links() {
		l := &n.Links()[i]
		if !l.Is(model.SourceElement) {
			continue
		}
		rest, known := n.Figure(l.Part, l.Element.Volts)
		full, stated := n.Figure(l.Part, l.Element.MaxVolts)
		if known && stated && rest > 0 {
			list = append(list, network.Change{Link: l, Scale: full / rest})
		}
	}
	return list
}
