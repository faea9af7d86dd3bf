package rule

import (
	"fmt"

	"example.com/lugbook/model/network"
)

var packReversed = Rule{
	ID: "pack-reversed", Title: "The whole pack is connected the wrong way round",
	Family: Polarity, Severity: Danger,
	About: "Speaks when every device on the pack that has a polarity, two or more, sees the pack the wrong way round. One " +
		"device alone is reported as reversed itself. Fusing and covers are judged once the pack is the right way round.",
	Why: "Every box of electronics on a cart has a capacitor and transistors at its input, and each transistor has a diode in it that conducts " +
		"when the supply is the wrong way round. Connected backwards, all of them short the pack at once: what has a fuse blows it, what has " +
		"none burns within a moment, and the controller is as a rule beyond repair. Cables that are of one colour, or were swapped when " +
		"the old string came out, make this the costliest mistake of a conversion.",
	Tell: "Leave both main cables off the pack and the fuse link out. Put the meter on volts DC, red probe on the stud that is marked positive: with " +
		"the pack awake the reading must be positive and near the pack's voltage. Read the mark beside the stud, not the colour of the boot. Then " +
		"follow both cables by hand: the one for that stud ends at the main fuse and the contactor, the other at the controller's B- or at the " +
		"shunt.",
	Blind: "It needs two devices with a polarity before it blames the pack; one alone is taken to be reversed itself. A pack whose studs are " +
		"marked wrongly, or whose cells were built in backwards, looks right on the sheet. Fusing and covers are not judged until it is mended.",
	Bad:  "pack.NEG goes to the fuse that feeds charger and reducer, pack.POS to their negatives",
	Good: "pack.POS goes to the fuse, pack.NEG to the negatives",
	Wrong: Example{Of: packAndTwo, But: []string{
		"wire w1", "wire w1 pack.NEG fu.in gauge=10AWG insulation=105C length=100mm",
		"wire w4", "wire w4 chg.DC- pack.POS gauge=10AWG insulation=105C length=600mm",
		"wire w5", "wire w5 red.NEG pack.POS gauge=10AWG insulation=105C length=600mm",
		"stack pack.NEG", "stack pack.POS w4 w5", "at pack.POS", "at pack.NEG cover=fitted"}},
	Right:  Example{Of: packAndTwo},
	Basis:  Basis{"controllers, chargers and reducers conduct through their capacitors and transistors when reversed, and burn", Physics},
	Remedy: "do not connect it; swap the two main cables at the pack",
	Run:    runPackReversed,
}

func runPackReversed(p *Pass) {
	if !p.survey().packReversed {
		return
	}
	s, _ := p.mainString()
	subjects := stringSubjects(s)
	var devices []Subject
	seen := map[Subject]bool{}
	for _, d := range p.survey().devices {
		if d.verdict == network.Minus && d.by != nil && d.by.String != nil && !seen[OfPart(d.link.Part.ID)] {
			seen[OfPart(d.link.Part.ID)] = true
			devices = append(devices, OfPart(d.link.Part.ID))
		}
	}
	f := Finding{
		Message:  fmt.Sprintf("%s is reversed against the cart: %s all see %s as positive", list(subjects), list(devices), p.at(s.Low)),
		Subjects: append(subjects, devices...),
	}
	if len(p.Net.Strings()) == 1 {
		f.Fixes = p.swapped(s.Low, s.High)
	}
	p.report(f)
}

// packAndTwo is a pack with a charger and a reducer behind one fuse.
const packAndTwo = `
part pack lithium-pack-16
part fu fuse-cartridge fuse-rating=30A
part chg charger-onboard-48v
part red reducer-common-negative
wire w1 pack.POS fu.in gauge=10AWG insulation=105C length=100mm
wire w2 fu.out chg.DC+ gauge=10AWG insulation=105C length=600mm
wire w3 fu.out red.IN+ gauge=10AWG insulation=105C length=600mm
wire w4 chg.DC- pack.NEG gauge=10AWG insulation=105C length=600mm
wire w5 red.NEG pack.NEG gauge=10AWG insulation=105C length=600mm
at pack.POS cover=fitted
at fu.in cover=fitted
stack fu.out w2 w3
stack pack.NEG w4 w5
`
