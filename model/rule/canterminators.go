package rule

import (
	"fmt"

	"example.com/lugbook/model"
	"example.com/lugbook/model/basis"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/unit"
)

var canTerminators = Rule{
	ID: "can-terminators", Title: "The CAN pair is not terminated at its two ends",
	Family: Packs, Severity: Fault,
	About: "Looks at each pair CAN-H and CAN-L that is wired between two devices or more, and reckons the resistance between the two from the terminators on the sheet and those that devices have " +
		"inside. Two of 120 ohm make 60. More than two are a fault; fewer are a caution as long as it is not recorded of each device what it has inside. Speaks as well if CAN-H of one device is wired to " +
		"CAN-L of another.",
	Why: "The bits on a CAN pair travel as waves and come back from an open end, so each end has a resistor that swallows them. Without it, or with one only, a short pair on a cart often works on the bench and drops out " +
		"when the motor runs: the display blinks, the charger stops because it no longer hears the pack, and the controller sets a fault that nobody can repeat. With three or more the " +
		"senders can no longer pull the pair apart far enough, and the same happens.",
	Tell: "Everything off and the pack asleep, meter on ohms between CAN-H and CAN-L at any plug: 60 ohm is right, 120 means that one is missing, 40 that there " +
		"is one too many, open that there is none. Awake, on DC volts, both wires sit near 2.5 V against the negative of the pair.",
	Blind: "It takes for absent what is not recorded: a BMS, display or controller often has one inside, some with a switch. Measure the device by itself and record it as its can-resistance. It does not know which devices stand at the " +
		"two ends, nor the length of stubs, and it is silent where only one device is on the pair.",
	Bad:    "three terminators on the pair from pack to display",
	Good:   "one at the pack and one at the display",
	Wrong:  Example{Of: canPair, But: []string{"+", "part t3 can-terminator\nwire n7 t3.CAN-H disp.CAN-H gauge=20AWG insulation=105C length=100mm\nwire n8 t3.CAN-L disp.CAN-L gauge=20AWG insulation=105C length=100mm"}},
	Right:  Example{Of: canPair},
	Basis:  Basis{"the pair has 120 ohm at each of its two ends and nowhere else", "ISO 11898-2, from memory"},
	Remedy: "leave one terminator at each end of the pair and take the others off",
	Run:    runCANTerminators,
}

// canRating is the resistance that a device has between its two CAN pins.
const canRating = "can-resistance"

// terminatorOhms is the resistance in ohm below which a device counts as having a terminator
// inside: one without has 10 kohm and more by ISO 11898-2, from memory. Our choice.
const terminatorOhms = 1000

// The names of the two conductors of a CAN pair.
const canHigh, canLow = "CAN-H", "CAN-L"

// canPairing is one pair with what hangs on it.
type canPairing struct {
	high, low int // groups of metal
	devices   []*model.Part
	unknown   []Subject // devices of which it is not recorded what they have inside
	resistors []*network.Link
	siemens   float64 // between the two, of all terminators
	count     int     // terminators
}

func runCANTerminators(p *Pass) {
	if p.reportCrossed() {
		return
	}
	for _, pair := range p.canPairs() {
		p.judgePair(&pair)
	}
}

// reportCrossed speaks if a conductor joins CAN-H of a device with CAN-L of another.
func (p *Pass) reportCrossed() bool {
	var words []string
	var subjects []Subject
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if l.Kind != network.WireLink {
			continue
		}
		a, b := p.Net.Point(l.A).At, p.Net.Point(l.B).At
		if a.Name == canHigh && b.Name == canLow || a.Name == canLow && b.Name == canHigh {
			words = append(words, fmt.Sprintf("%s joins %s with %s", l.Wire.ID, a, b))
			subjects = append(subjects, OfWire(l.Wire.ID))
		}
	}
	if len(words) == 0 {
		return false
	}
	p.report(Finding{Message: listWords(words) + ": nothing hears the other over a pair that is crossed", Subjects: subjects,
		Remedy: "wire CAN-H to CAN-H and CAN-L to CAN-L"})
	return true
}

// canPairs lists the pairs that are wired between two devices or more.
func (p *Pass) canPairs() []canPairing {
	var pairs []canPairing
	for i := range p.Sheet.Parts {
		part := &p.Sheet.Parts[i]
		high, low := p.Net.Node(model.TerminalRef{Part: part.ID, Name: canHigh}), p.Net.Node(model.TerminalRef{Part: part.ID, Name: canLow})
		if high == network.None || low == network.None || !p.wired(high) || !p.wired(low) || p.terminates(high, low) != nil {
			continue
		}
		pairs = p.addToPair(pairs, part, p.metal().Of(high), p.metal().Of(low))
	}
	var wired []canPairing
	for _, pair := range pairs {
		if len(pair.devices) > 1 {
			p.addResistors(&pair)
			wired = append(wired, pair)
		}
	}
	return wired
}

// terminates is the resistance that lies between two terminals of one part; nil if there is none.
func (p *Pass) terminates(high, low network.Node) *network.Link {
	for _, l := range p.Net.LinksAt(high) {
		if l.Is(model.ResistanceElement) && l.Other(high) == low {
			return l
		}
	}
	return nil
}

func (p *Pass) addToPair(pairs []canPairing, part *model.Part, high, low int) []canPairing {
	at := -1
	for i := range pairs {
		if pairs[i].high == high && pairs[i].low == low {
			at = i
		}
	}
	if at < 0 {
		pairs, at = append(pairs, canPairing{high: high, low: low}), len(pairs)
	}
	pairs[at].devices = append(pairs[at].devices, part)
	inside := p.Net.KnownFigure(part, canRating)
	if !inside.OK || inside.IsTypical() {
		pairs[at].unknown = append(pairs[at].unknown, OfPart(part.ID))
	}
	if inside.Value > 0 && inside.Value < terminatorOhms {
		pairs[at].siemens += 1 / inside.Value
		pairs[at].count++
	}
	return pairs
}

// addResistors adds the terminators on the sheet to a pair.
func (p *Pass) addResistors(pair *canPairing) {
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if !l.Is(model.ResistanceElement) {
			continue
		}
		a, b := p.metal().Of(l.A), p.metal().Of(l.B)
		ohms, ok := p.Net.Figure(l.Part, l.Element.Ohms)
		if ok && ohms > 0 && (a == pair.high && b == pair.low || a == pair.low && b == pair.high) {
			pair.resistors = append(pair.resistors, l)
			pair.siemens += 1 / ohms
			pair.count++
		}
	}
}

// judgePair compares the resistance between the two conductors with its limits.
func (p *Pass) judgePair(pair *canPairing) {
	var devices []Subject
	for _, part := range pair.devices {
		devices = append(devices, OfPart(part.ID))
	}
	least, source := p.limitFrom(basis.TerminatorLeast)
	most, _ := p.limitFrom(basis.TerminatorMost)
	f := Finding{Subjects: append(devices, partsOf(pair.resistors)...), Basis: Basis{p.rule.Basis.Text, source}}
	count := map[int]string{0: "no terminator", 1: "one terminator"}[pair.count]
	if count == "" {
		count = fmt.Sprintf("%d terminators", pair.count)
	}
	f.Message = fmt.Sprintf("the CAN pair of %s has %s", list(devices), count)
	ohms := 0.0
	if pair.siemens > 0 {
		ohms = 1 / pair.siemens
		f.Message += fmt.Sprintf(", %s ohm", number(ohms))
	}
	switch {
	case pair.siemens > 0 && ohms < least.SI():
		f.Figure = Figure{What: "resistance of the pair", Value: unit.Ohms(ohms).Any(), Limit: least, Least: true, Decides: "two of 120 ohm"}
	case pair.siemens == 0 || ohms > most.SI():
		if pair.siemens > 0 {
			f.Figure = Figure{What: "resistance of the pair", Value: unit.Ohms(ohms).Any(), Limit: most, Decides: "two of 120 ohm"}
		}
		f.Remedy = "fit a terminator at each end of the pair that has none, or record what the devices have inside as their can-resistance"
		if len(pair.unknown) > 0 {
			f.Severity = Caution
			f.Message += fmt.Sprintf("; what %s may have inside is not recorded", list(pair.unknown))
			p.missing(Gap{Datum: "the resistance between the CAN pins", Field: canRating, Decides: "whether the pair is terminated at both ends", Worst: Fault, Quiet: true, Subjects: pair.unknown})
		}
	default:
		return
	}
	p.report(f)
}

// canPair is a pack and its display on a pair with two terminators.
const canPair = `
part pack lithium-pack-16
part disp can-display
part t1 can-terminator
part t2 can-terminator
part fu fuse-inline-80v fuse-rating=1A
part key key-switch
wire k1 pack.POS fu.in gauge=18AWG insulation=105C length=100mm
wire k2 fu.out key.BAT gauge=18AWG insulation=105C length=2m
wire k3 key.IGN disp.supply+ gauge=18AWG insulation=105C length=300mm
wire k4 disp.supply- pack.NEG gauge=18AWG insulation=105C length=2m
wire n1 pack.CAN-H disp.CAN-H gauge=20AWG insulation=105C length=2m
wire n2 pack.CAN-L disp.CAN-L gauge=20AWG insulation=105C length=2m
wire n3 t1.CAN-H pack.CAN-H gauge=20AWG insulation=105C length=100mm
wire n4 t1.CAN-L pack.CAN-L gauge=20AWG insulation=105C length=100mm
wire n5 t2.CAN-H disp.CAN-H gauge=20AWG insulation=105C length=100mm
wire n6 t2.CAN-L disp.CAN-L gauge=20AWG insulation=105C length=100mm
at pack.POS cover=fitted
`
