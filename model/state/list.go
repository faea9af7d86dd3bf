package state

import (
	"slices"

	"example.com/lugbook/model"
)

// The names of the states.
const (
	Parked                 = "parked"
	KeyOn                  = "key-on"
	ForwardPedalUp         = "forward-pedal-up"
	DriveForward           = "drive-forward"
	DriveReverse           = "drive-reverse"
	NeutralPedalDown       = "neutral-pedal-down"
	Charging               = "charging"
	ChargingKeyOnPedalDown = "charging-key-on-pedal-down"
	Tow                    = "tow"
	LightsKeyOff           = "lights-key-off"
	PackAsleep             = "pack-asleep"
	Isolated               = "isolated"
)

// parked is every control as a cart in service stands with nobody on it.
var parked = []Setting{
	{model.Key, "off"},
	{model.TowRun, "run"},
	{model.Direction, "neutral"},
	{model.Pedal, "up"},
	{model.PluggedIn, "no"},
	{model.PackOn, "on"},
	{model.LightSwitch, "off"},
	{model.HornButton, "off"},
	{model.Isolator, "closed"},
	{model.BrakeSwitch, "up"},
}

var (
	keyOn   = Setting{model.Key, "on"}
	forward = Setting{model.Direction, "forward"}
	reverse = Setting{model.Direction, "reverse"}
	pressed = Setting{model.Pedal, "down"}
	plugged = Setting{model.PluggedIn, "yes"}
	drive   = []model.Control{model.Key, model.Direction, model.Pedal}
)

// candidate is a state that makes sense if the cart has what it changes.
type candidate struct {
	name, about string
	change      []Setting
	need        [][]model.Control // at least one control of each group
}

var candidates = []candidate{
	{name: Parked, about: "key off, neutral, pedal up, not plugged in"},
	{KeyOn, "key on, neutral, pedal up",
		[]Setting{keyOn}, [][]model.Control{{model.Key}}},
	{ForwardPedalUp, "key on, forward, pedal up",
		[]Setting{keyOn, forward}, [][]model.Control{{model.Direction}}},
	{DriveForward, "key on, forward, pedal down",
		[]Setting{keyOn, forward, pressed}, [][]model.Control{drive}},
	{DriveReverse, "key on, reverse, pedal down",
		[]Setting{keyOn, reverse, pressed}, [][]model.Control{{model.Direction}}},
	{NeutralPedalDown, "key on, neutral, pedal down",
		[]Setting{keyOn, pressed}, [][]model.Control{{model.Direction}, {model.Pedal}}},
	{Charging, "key off, charger plugged in",
		[]Setting{plugged}, [][]model.Control{{model.PluggedIn}}},
	{ChargingKeyOnPedalDown, "charger plugged in, key on, forward, pedal down",
		[]Setting{plugged, keyOn, forward, pressed}, [][]model.Control{{model.PluggedIn}, drive}},
	{Tow, "tow switch in tow, all else as parked",
		[]Setting{{model.TowRun, "tow"}}, [][]model.Control{{model.TowRun}}},
	{LightsKeyOff, "lights on, key off",
		[]Setting{{model.LightSwitch, "on"}}, [][]model.Control{{model.LightSwitch}}},
	{PackAsleep, "pack switched off, all else as parked",
		[]Setting{{model.PackOn, "off"}}, [][]model.Control{{model.PackOn}}},
	{Isolated, "main isolator open, key off, all else as parked",
		[]Setting{{model.Isolator, "open"}}, [][]model.Control{{model.Isolator}}},
}

// List derives the states of a sheet from the controls that its parts have. Parked is
// always the first. A state sets only controls that are there.
func List(s *model.Sheet, cat *model.Catalogue) []State {
	have := Controls(s, cat)
	var list []State
	for _, c := range candidates {
		if c.fits(have) {
			list = append(list, c.state(have))
		}
	}
	return list
}

// Find is the state of that name; false if the list has none.
func Find(list []State, name string) (State, bool) {
	i := slices.IndexFunc(list, func(s State) bool { return s.Name == name })
	if i < 0 {
		return State{}, false
	}
	return list[i], true
}

// Controls lists the controls that the parts of a sheet have, in the order of
// model.Control.Names.
func Controls(s *model.Sheet, cat *model.Catalogue) []model.Control {
	have := map[model.Control]bool{}
	for i := range s.Parts {
		if d := cat.Definition(s.Parts[i].Kind); d != nil && d.Control != nil {
			have[d.Control.Sets] = true
		}
	}
	var list []model.Control
	for _, name := range model.Control("").Names() {
		if have[model.Control(name)] {
			list = append(list, model.Control(name))
		}
	}
	return list
}

func (c candidate) fits(have []model.Control) bool {
	return !slices.ContainsFunc(c.need, func(group []model.Control) bool {
		return !slices.ContainsFunc(group, func(n model.Control) bool { return slices.Contains(have, n) })
	})
}

func (c candidate) state(have []model.Control) State {
	s := State{Name: c.name, About: c.about}
	all := State{Set: parked}
	for _, change := range c.change {
		all = all.With(change.Control, change.Position)
	}
	for _, set := range all.Set {
		if slices.Contains(have, set.Control) {
			s.Set = append(s.Set, set)
		}
	}
	return s
}
