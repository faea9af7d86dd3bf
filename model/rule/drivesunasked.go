package rule

import (
	"fmt"
	"slices"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/state"
)

var drivesUnasked = Rule{
	ID: "drives-unasked", Title: "The cart can drive when it must not",
	Family: Chain, Severity: Danger,
	About: "Computes the settings of key, tow switch, direction, pedal, charge plug, isolator and pack switch with up to two reasons to " +
		"stay, and speaks if traction current flows in one: key off, tow, neutral, pedal up, plugged in. A contactor that a controller " +
		"closes with the key is no fault as long as the drive itself does not act. Silent if the sheet has none of these controls.",
	Bad:    "the charger's interlock is bridged: with the plug in the cart drives off and tears the cord",
	Good:   "the key input passes the charger's interlock",
	Basis:  Basis{"a cart drives with the key on, in run, with a direction chosen, the pedal down and no plug in, and never else", Practice},
	Remedy: "wire the interlock that fails into the feed of the coil and of the controller's key input",
	Run:    runDrivesUnasked,
}

// breach is a setting in which a cart drives, with what of it says that it must not.
type breach struct {
	trial   trial
	against []state.Setting
}

func runDrivesUnasked(p *Pass) {
	var breaches []breach
	for _, t := range p.trials() {
		against := forbidding(t.state)
		if t.motion.Asks && len(against) > 0 {
			breaches = append(breaches, breach{t, against})
		}
	}
	for i, b := range breaches {
		if slices.ContainsFunc(breaches[:i], b.repeats) || slices.ContainsFunc(breaches, b.follows) {
			continue
		}
		var words, says []string
		var subjects []Subject
		for _, set := range b.against {
			words = append(words, stayWords(set))
			says = append(says, p.unheard(set))
			subjects = append(subjects, p.controlsOf(set.Control)...)
		}
		asked := slices.DeleteFunc(slices.Clone(b.trial.state.Set), func(s state.Setting) bool {
			return slices.Contains(b.against, s) || !asks(s.Control)
		})
		does := "drives"
		if !b.trial.motion.Drives {
			does = "asks for current"
		}
		p.report(Finding{
			Message:  fmt.Sprintf("it %s with %s (%s): %s", does, listWords(words), settingWords(asked), strings.Join(says, ", and ")),
			State:    settingWords(slices.DeleteFunc(slices.Clone(b.trial.state.Set), func(s state.Setting) bool { return !asks(s.Control) && !slices.Contains(b.against, s) })),
			Subjects: subjects,
		})
	}
}

// repeats reports whether the same speaks against another breach.
func (b breach) repeats(other breach) bool { return slices.Equal(b.against, other.against) }

// follows reports whether less speaks against another breach, so that this one follows.
func (b breach) follows(other breach) bool {
	return len(other.against) < len(b.against) &&
		!slices.ContainsFunc(other.against, func(s state.Setting) bool { return !slices.Contains(b.against, s) })
}

// unheard tells why a control that is set so that the cart must stay does not keep it: nothing
// follows it, what does is not wired, or the drive is fed past it.
func (p *Pass) unheard(set state.Setting) string {
	var moved, wired []Subject
	for i := range p.Sheet.Parts {
		part := &p.Sheet.Parts[i]
		d := p.Net.Cat.Definition(part.Kind)
		if d == nil || d.Control == nil || d.Control.Sets != set.Control || isPotentiometer(d) {
			continue
		}
		for _, l := range p.switchLinks(part) {
			moved = appendNew(moved, OfPart(part.ID))
			if p.wired(l.A) && p.wired(l.B) {
				wired = appendNew(wired, OfPart(part.ID))
			}
		}
	}
	switch {
	case len(moved) == 0:
		return "no contact on the sheet follows " + theControl(set.Control)
	case len(wired) == 0:
		return fmt.Sprintf("no contact of %s is wired at both ends", list(moved))
	}
	return fmt.Sprintf("the drive is fed past %s", list(wired))
}

// theControl is a control with its article: the plug, the key.
func theControl(c model.Control) string {
	if c == model.PluggedIn {
		return "the charge plug"
	}
	return "the " + controlWord(c)
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
