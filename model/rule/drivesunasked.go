package rule

import (
	"fmt"
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/meter"
	"example.com/lugbook/model/state"
)

var drivesUnasked = Rule{
	ID: "drives-unasked", Title: "The cart can drive when it must not",
	Family: Function, Severity: Danger,
	About: "Computes every setting of key, tow switch, direction, pedal, charge plug, isolator and pack switch, and speaks if traction " +
		"current flows in one in which a cart must stay: key off, tow, neutral, pedal up, plugged in. A contactor that a controller " +
		"closes with the key is no fault as long as the drive itself does not act.",
	Bad:    "the charger's interlock is bridged: with the plug in the cart drives off and tears the cord",
	Good:   "the key input passes the charger's interlock",
	Basis:  Basis{"a cart drives with the key on, in run, with a direction chosen, the pedal down and no plug in, and never else", Practice},
	Remedy: "wire the interlock that fails into the feed of the coil and of the controller's key input",
	Run:    runDrivesUnasked,
}

func runDrivesUnasked(p *Pass) {
	var order []state.Setting
	example := map[state.Setting]trial{}
	for _, t := range p.trials() {
		if !t.motion.Drives || t.motion.Must != meter.Stay {
			continue
		}
		against := forbidding(t.state)
		if len(against) != 1 {
			continue // another setting with fewer reasons to stay tells it
		}
		if _, told := example[against[0]]; !told {
			order = append(order, against[0])
			example[against[0]] = t
		}
	}
	for _, set := range order {
		t := example[set]
		rest := slices.DeleteFunc(slices.Clone(t.state.Set), func(s state.Setting) bool { return s == set || !asks(s.Control) })
		p.report(Finding{
			Message:  fmt.Sprintf("it drives with %s (%s)", stayWords(set), settingWords(rest)),
			Subjects: p.controlsOf(set.Control),
		})
	}
}

// stayWords is why a cart must stay in words.
func stayWords(set state.Setting) string {
	switch set.Control {
	case model.PluggedIn:
		return "the charger plugged in"
	case model.TowRun:
		return "the tow switch in tow"
	case model.Direction:
		return "no direction chosen"
	}
	return "the " + controlWord(set.Control) + " " + set.Position
}

// asks reports whether a control is one by which a driver asks for motion.
func asks(c model.Control) bool { return c == model.Key || c == model.Direction || c == model.Pedal }

// controlsOf lists the parts that set a control.
func (p *Pass) controlsOf(c model.Control) []Subject {
	var list []Subject
	for i := range p.Sheet.Parts {
		if d := p.Net.Cat.Definition(p.Sheet.Parts[i].Kind); d != nil && d.Control != nil && d.Control.Sets == c {
			list = append(list, OfPart(p.Sheet.Parts[i].ID))
		}
	}
	return list
}
