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
	Why: "The diode across a coil is there to carry the coil's own current round when its switch opens, so it must block while the coil is fed: its band, " +
		"the cathode, belongs on the fed side. The other way round it is a piece of wire across the feed. At the first press of the pedal the " +
		"current of the control fuse goes through pedal switch, key and diode: the fuse blows, or the diode burns open, and from then on " +
		"nobody sees that the coil has lost its protection; or the switch welds.",
	Tell: "Look for the band: it is at coil+. Key off, control fuse out, one end of the diode off, for through the coil the meter reads the same " +
		"both ways: the diode test shows 0.5 to 0.7 V with red on the end without a band, and open the other way round. A control fuse that blows " +
		"at every press of the pedal is the other sign.",
	Blind: "It looks at diodes that are parts of their own. One that is moulded into a coil or a harness is not on the sheet; a part may be marked wrongly. If a " +
		"coil can be fed from either side, as in a reversing pair, tracing cannot tell and it is silent.",
	Bad:    "the band of the diode is on sol.coil-",
	Good:   "the band of the diode is on sol.coil+",
	Wrong:  Example{Of: coilAndDiode, But: []string{"wire d1", "wire d1 dio.anode sol.coil+ gauge=18AWG insulation=105C length=60mm", "wire d2", "wire d2 dio.cathode sol.coil- gauge=18AWG insulation=105C length=60mm"}},
	Right:  Example{Of: coilAndDiode},
	Upsets: []string{"does-not-drive", "fuse-opens", "fuse-too-small", "contact-overload", "wire-too-thin", "pack-current"},
	Basis:  Basis{"reversed, the diode conducts as soon as the coil is fed: a dead short through pedal switch and key", Physics},
	Remedy: "key off and control fuse out; turn the diode round, band to coil+, or fit a new one if it was fed that way",
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
					Message: fmt.Sprintf("%s is on the positive side and %s on the negative side of what %s feeds: %s conducts when it is fed",
						p.at(l.A), p.at(l.B), p.at(fs.feed.At), l.Part.ID),
					Subjects: []Subject{OfPart(l.Part.ID), p.terminal(l.A), p.terminal(l.B)},
					Fixes:    p.turnedRound(l.A, l.B),
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
func (p *Pass) metal() *network.Groups { return p.Net.MetalGroups() }

// coilAndDiode is a coil on the key with a diode across it.
const coilAndDiode = `
part pack lithium-pack-16
part fu3 fuse-inline-80v fuse-rating=10A
part key key-switch
part sol contactor-48v
part dio diode
wire k1 pack.POS fu3.in gauge=16AWG insulation=105C length=100mm
wire k2 fu3.out key.BAT gauge=16AWG insulation=105C length=2m
wire k3 key.IGN sol.coil+ gauge=16AWG insulation=105C length=2m
wire k4 sol.coil- pack.NEG gauge=16AWG insulation=105C length=1m
wire d1 dio.cathode sol.coil+ gauge=18AWG insulation=105C length=60mm
wire d2 dio.anode sol.coil- gauge=18AWG insulation=105C length=60mm
stack sol.coil+ k3 d1
stack sol.coil- k4 d2
at pack.POS cover=fitted
`
