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
	Why: "Every control on a cart is there to say no: the key, the tow switch, neutral, the foot off, the plug. If the cart drives in spite of one, somebody is run over by a " +
		"cart that was off, or it pulls the charging cord out of the wall, with the socket and the live wires at its end. Conversions lose the charge " +
		"interlock first, since it lived in the old charger's receptacle or computer, and nobody misses it until that day.",
	Tell: "Driven wheels off the ground, chocked. Set one control at a time to no, all others to go, and press the pedal: no motion, 0 V across the " +
		"motor, and no click where the pedal works the contactor. Do it with the plug in as well, on a socket that you can switch off.",
	Blind: "It computes with contacts that do what the library says of them. What a controller refuses by its own logic, such as starting with the pedal down, is not " +
		"counted, nor are seat and brake switches. An interlock over a data bus between charger, pack and controller is not seen: record it in a note and waive the " +
		"finding. Up to two reasons to stay are tried at once.",
	Bad:    "the key feeds the pedal past the charger's interlock: with the plug in the cart drives off and tears the cord",
	Good:   "the key feeds the pedal through the charger's interlock",
	Wrong:  Example{Of: chargedChain, But: []string{"wire k3", "wire k3 key.IGN pedal.COM gauge=16AWG insulation=105C length=1.5m", "wire k7", ""}},
	Right:  Example{Of: chargedChain},
	Basis:  Basis{"a cart drives with the key on, in run, with a direction chosen, the pedal down and no plug in, and never else", Practice},
	Remedy: "wire the interlock that fails into the feed of the coil and of the controller's key input",
	Run:    runDrivesUnasked,
}

// chargedChain is the cart of the chain with a charger whose interlock is in the feed of the pedal
// switch.
const chargedChain = seriesChain + `
part chg charger-onboard-48v
part fu2 fuse-cartridge fuse-rating=30A
wire k3 chg.interlock-b pedal.COM gauge=16AWG insulation=105C length=1.5m
wire k7 key.IGN chg.interlock-a gauge=16AWG insulation=105C length=1.5m
wire c1 chg.DC+ fu2.in gauge=10AWG insulation=105C length=0.9m
wire c2 fu2.out sol.L1 gauge=10AWG insulation=105C length=120mm
wire c3 chg.DC- pack.NEG gauge=10AWG insulation=105C length=0.9m
stack pack.NEG w4 c3 k6
stack sol.L1 w2 c2
`

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
// follows it, what does is not wired, or the drive is fed past its contact.
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
	return fmt.Sprintf("the drive does not heed the contact of %s", list(wired))
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
