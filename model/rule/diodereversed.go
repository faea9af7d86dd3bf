package rule

import (
	"fmt"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

var diodeReversed = Rule{
	ID: "diode-reversed", Title: "A suppression diode is reversed",
	Family: Polarity, Severity: Danger,
	About: "Looks at each diode that is a part of its own. It is reversed if its anode can be joined to the positive and its " +
		"cathode to the negative side of a source, or if it lies across a coil with its anode on the fed side.",
	Bad:    "the band of the diode is on sol.coil-",
	Good:   "the band of the diode is on sol.coil+",
	Basis:  Basis{"reversed, the diode conducts as soon as the coil is fed: a dead short through pedal switch and key", Physics},
	Remedy: "turn the diode round: band to coil+",
	Run:    runDiodeReversed,
}

func runDiodeReversed(p *Pass) {
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if !l.Is(model.DiodeElement) || l.Def.Family != model.Support {
			continue
		}
		for _, fs := range p.sides() {
			if fs.feed.Link.Is(model.ChargerElement) || p.survey().packReversed && fs.feed.String != nil {
				continue
			}
			if p.conducts(l, fs.sides) {
				p.report(Finding{
					Message: fmt.Sprintf("%s is on the positive side and %s on the negative side of %s: %s conducts when it is fed",
						p.at(l.A), p.at(l.B), p.at(fs.feed.At), l.Part.ID),
					Subjects: []Subject{OfPart(l.Part.ID), p.terminal(l.A), p.terminal(l.B)},
				})
				break
			}
		}
	}
}

// conducts reports whether a diode is a short across what a feed gives. Across a coil
// one side is enough: the other is closed by a driver that may not be known.
func (p *Pass) conducts(diode *network.Link, sides network.Sides) bool {
	anode, cathode := sides.Of(diode.A), sides.Of(diode.B)
	if anode == network.Plus && cathode == network.Minus {
		return true
	}
	if !p.acrossCoil(diode) {
		return false
	}
	return anode == network.Plus && cathode == network.Neither || anode == network.Neither && cathode == network.Minus
}

// acrossCoil reports whether metal joins both ends of a link with those of a coil.
func (p *Pass) acrossCoil(l *network.Link) bool {
	metal := p.metal()
	for i := range p.Net.Links() {
		coil := &p.Net.Links()[i]
		if !coil.Is(model.CoilElement) {
			continue
		}
		if metal.Same(coil.A, l.A) && metal.Same(coil.B, l.B) || metal.Same(coil.A, l.B) && metal.Same(coil.B, l.A) {
			return true
		}
	}
	return false
}

// metal groups what wires and bars join.
func (p *Pass) metal() *network.Groups {
	if p.shared.metal == nil {
		p.shared.metal = p.Net.Joined((*network.Link).IsMetal)
	}
	return p.shared.metal
}
