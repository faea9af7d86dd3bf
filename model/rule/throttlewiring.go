package rule

import (
	"fmt"
	"slices"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

var throttleWiring = Rule{
	ID: "throttle-wiring", Title: "The throttle is open, shorted or crossed",
	Family: Chain, Severity: Fault,
	About: "Follows each lead of a pedal's throttle through plain metal to the pins that a controller has for it, and speaks if a lead goes to no such pin, if two " +
		"leads are joined to each other, or if high end, wiper and low end go to pins made for another of the three.",
	Why: "The controller reads a resistance or a voltage from the pedal. An open lead reads as full speed or as a broken wire, a short as a foot " +
		"that is always off, crossed ends as full speed with the foot off. Good controllers refuse to drive and flash a code; old ones go.",
	Tell: "Key off, unplug the throttle and measure ohms on its leads: a two-wire one has 0 to 300 ohm with the foot off and 4.4 to 5.8 kohm with it " +
		"down (from memory; by the maker's sheet), smoothly between; each lead has open circuit to the frame. Then measure each lead end to end to " +
		"its pin.",
	Blind: "A sheet without a throttle says nothing of it. What kind of throttle a controller is set to read is in its parameters. Pedals with electronics, leads that go out of " +
		"sight or end on a pin of which nobody defined the inside, and pins that share a terminal with something else are left alone.",
	Bad:    "the lead of the wiper is missing",
	Good:   "high end, wiper and low end each go to their pin",
	Wrong:  Example{Of: throttleOnly, But: []string{"wire t2", ""}},
	Right:  Example{Of: throttleOnly},
	Basis:  Basis{"a controller drives by what it reads between its throttle pins", "the makers' wiring rules, from memory"},
	Remedy: "bring each lead of the throttle to its own pin; the pins are listed in the controller's manual",
	Run:    runThrottleWiring,

	Explains: []string{"does-not-drive"},
}

// throttleOnly is a throttle with its controller.
const throttleOnly = `
part ctrl controller-sepex
part thr throttle-3wire
wire t1 thr.high ctrl.throttle-high gauge=18AWG length=1m
wire t2 thr.wiper ctrl.throttle-wiper gauge=18AWG length=1m
wire t3 thr.low ctrl.throttle-low gauge=18AWG length=1m
`

// throttlePin begins what a definition says of a pin for the throttle; what follows the comma
// is the end of the throttle that belongs there.
const throttlePin = "throttle, "

func runThrottleWiring(p *Pass) {
	for i := range p.Sheet.Parts {
		part := &p.Sheet.Parts[i]
		if d := p.Net.Cat.Definition(part.Kind); d == nil || !isPotentiometer(d) {
			continue
		}
		if words, subjects := p.throttleFaults(part); len(words) > 0 {
			p.report(Finding{Message: strings.Join(words, "; "), Subjects: append([]Subject{OfPart(part.ID)}, subjects...)})
		}
	}
}

// throttleFaults tells what is wrong with the leads of a throttle, and with what else.
func (p *Pass) throttleFaults(part *model.Part) (words []string, subjects []Subject) {
	d := p.Net.Cat.Definition(part.Kind)
	metal := p.metal()
	var open []string
	for i, t := range d.Terminals {
		at := p.Net.Node(model.TerminalRef{Part: part.ID, Name: t.Name})
		for _, other := range d.Terminals[i+1:] {
			if metal.Same(at, p.Net.Node(model.TerminalRef{Part: part.ID, Name: other.Name})) {
				words = append(words, fmt.Sprintf("%s.%s and %s.%s are joined to each other", part.ID, t.Name, part.ID, other.Name))
			}
		}
		pin, means, unsure := p.throttlePinAt(at)
		switch {
		case unsure:
		case pin.IsZero():
			open = append(open, fmt.Sprintf("%s.%s", part.ID, t.Name))
		case crossed(t.Means, means):
			words = append(words, fmt.Sprintf("%s.%s, the %s, goes to %s, the pin of the %s", part.ID, t.Name, t.Means, pin, means))
			subjects = appendNew(subjects, OfTerminal(pin))
		}
		if !pin.IsZero() {
			subjects = appendNew(subjects, OfPart(pin.Part))
		}
	}
	if len(open) > 0 {
		words = append(words, fmt.Sprintf("%s %s to no throttle pin", listWords(open), goesOrGo(len(open))))
		subjects = appendNew(subjects, p.pinless(subjects)...)
	}
	return words, subjects
}

// pinless lists the controllers with throttle pins, unless some are among the subjects.
func (p *Pass) pinless(subjects []Subject) []Subject {
	if len(subjects) > 0 {
		return nil
	}
	var list []Subject
	for i := range p.Sheet.Parts {
		d := p.Net.Cat.Definition(p.Sheet.Parts[i].Kind)
		if d != nil && slices.ContainsFunc(d.Terminals, isThrottlePin) {
			list = append(list, OfPart(p.Sheet.Parts[i].ID))
		}
	}
	return list
}

func isThrottlePin(t model.TerminalDef) bool { return strings.HasPrefix(t.Means, throttlePin) }

// throttlePinAt is the throttle pin that plain metal joins to a node, with the end of the
// throttle that belongs there. It is unsure if there is none, and the lead goes out of sight or
// comes, over switches and resistors as well, to something that may lead on to a pin.
func (p *Pass) throttlePinAt(at network.Node) (pin model.TerminalRef, means string, unsure bool) {
	metal := p.metal()
	here := p.Net.Point(at).At.Part
	for _, n := range metal.Members(metal.Of(at)) {
		t := p.Net.TerminalDef(p.Net.Point(n).At)
		if t != nil && isThrottlePin(*t) {
			pin, means = p.Net.Point(n).At, strings.TrimPrefix(t.Means, throttlePin)
		}
	}
	if !pin.IsZero() {
		return pin, means, false
	}
	reach := p.Net.Walk([]network.Node{at}, func(l *network.Link, _ network.Node) bool {
		return l.IsMetal() || isPassage(l) && l.Part.ID != here
	})
	return pin, means, slices.ContainsFunc(reach.Order, func(n network.Node) bool {
		return p.Net.Point(n).At.Part != here && p.mayHavePin(n)
	})
}

// isPassage reports whether a link passes on what a throttle shows: a contact, a fuse or a
// resistor, but for those inside a drive.
func isPassage(l *network.Link) bool {
	return (l.Is(model.ContactElement) || l.Is(model.FuseElement) || l.Is(model.ResistanceElement)) && l.Def.Family != model.Drive
}

// mayHavePin reports whether a throttle's lead may go on unseen from a node to its pin: it goes
// out of sight, the inside of the part is not known there, or a track may have its voltage from
// there.
func (p *Pass) mayHavePin(at network.Node) bool {
	point := p.Net.Point(at)
	if point.At.IsZero() {
		return point.How == model.Untraced
	}
	d, t := p.Net.DefinitionOf(point.At), p.Net.TerminalDef(point.At)
	switch {
	case d == nil || t == nil:
		return true
	case isThrottlePin(*t):
		return true
	case slices.ContainsFunc(d.Terminals, isThrottlePin), d.Family == model.Joining,
		t.Serves == model.Traction, t.Serves == model.Charging, t.Serves == model.Mains:
		return false
	case slices.ContainsFunc(d.Elements, func(e model.Element) bool { return len(e.Out) > 0 && e.Out[0] == t.Name }):
		return true
	}
	return t.Pole == "" && !slices.ContainsFunc(d.Elements, func(e model.Element) bool {
		return slices.Contains(e.Between, t.Name) || slices.Contains(e.Out, t.Name)
	})
}

// crossed reports whether a pin is made for another end of a throttle. Pins that only have a
// number take either end.
func crossed(end, pin string) bool {
	ends := []string{"high end", "wiper", "low end"}
	return end != pin && slices.Contains(ends, end) && slices.Contains(ends, pin)
}

func goesOrGo(n int) string {
	if n == 1 {
		return "goes"
	}
	return "go"
}
