package model

import "slices"

// OwnState is a state that a person adds to those that follow from the cart's
// controls: some controls set otherwise than in the state that it starts from.
type OwnState struct {
	Name  string    `yaml:",key"`
	About string    `yaml:"about" doc:"what is set, in one line for a person"`
	From  string    `yaml:"from" doc:"state it starts from, derived or listed above; parked if not said"`
	Set   []Setting `yaml:"set,keyed,flow" doc:"what is set otherwise: positions by control"`
}

// Setting is one control in one position.
type Setting struct {
	Control  Control `yaml:",key"`
	Position string  `yaml:"position,required,scalar" doc:"position of the control, such as on"`
}

// derivedStates are the names that package state derives states under.
var derivedStates = []string{
	"parked", "key-on", "forward-pedal-up", "drive-forward", "drive-reverse", "neutral-pedal-down",
	"charging", "charging-key-on-pedal-down", "tow", "lights-key-off", "pack-asleep",
	"isolated",
}

// DerivedStates lists the names of the states that follow from a cart's controls, in
// the order in which they are asked about. Which of them a sheet has depends on its parts.
func DerivedStates() []string { return slices.Clone(derivedStates) }

// OwnState finds a state of the job's own by name; nil if it has none of that name.
func (j *Job) OwnState(name string) *OwnState {
	i := slices.IndexFunc(j.States, func(s OwnState) bool { return s.Name == name })
	if i < 0 {
		return nil
	}
	return &j.States[i]
}

// StateNames lists the names that a state of the job can have: the derived ones, then
// the job's own.
func (j *Job) StateNames() []string {
	names := DerivedStates()
	for i := range j.States {
		names = append(names, j.States[i].Name)
	}
	return names
}

func (s OwnState) clone() OwnState {
	s.Set = slices.Clone(s.Set)
	return s
}

func (c *checker) states() {
	seen := map[string]string{}
	for _, name := range derivedStates {
		seen[name] = name
	}
	known := DerivedStates()
	for i := range c.job.States {
		s := &c.job.States[i]
		path := []string{"states", s.Name}
		c.id(path, s.Name, seen)
		if s.From != "" && !slices.Contains(known, s.From) {
			c.report(Fault{Path: join(path, "from"), Text: s.From, Message: "no such state",
				Expected: "a state that follows from the controls, or one listed above this one", Known: known})
		}
		for _, set := range s.Set {
			c.setting(join(path, "set", string(set.Control)), set)
		}
		known = append(known, s.Name)
	}
}

// setting checks that some kind of part has the control with that position. Whether the
// cart has such a part is left open: sheets differ.
func (c *checker) setting(path []string, set Setting) {
	before := len(c.faults)
	words(c, path, set.Control)
	if set.Control == "" {
		c.report(Fault{Path: path, Message: "not a known word", Expected: "a control", Known: set.Control.Names()})
	}
	if len(c.faults) > before {
		return
	}
	if known := c.positions(set.Control); !slices.Contains(known, set.Position) {
		c.report(Fault{Path: path, Text: set.Position, Message: "no such position of " + string(set.Control),
			Expected: "a position that a part with this control has", Known: known})
	}
}

// positions lists the positions that the kinds of part give a control.
func (c *checker) positions(control Control) []string {
	var list []string
	for _, kind := range c.cat.Kinds() {
		sw := c.cat.Definition(kind).Control
		if sw == nil || sw.Sets != control {
			continue
		}
		for _, p := range sw.Positions {
			if !slices.Contains(list, p) {
				list = append(list, p)
			}
		}
	}
	return list
}
