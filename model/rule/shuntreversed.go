package rule

import (
	"fmt"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

var shuntReversed = Rule{
	ID: "shunt-reversed", Title: "A shunt or its sense pair is reversed",
	Family: Packs, Severity: Fault,
	About: "Looks at which side of a shunt is joined to the pack's negative by metal: it must be BATT. Then at the sense pair of each " +
		"meter on it: sense+ belongs to the LOAD side.",
	Why: "A shunt meter adds up the current that passes the shunt, with its direction. Turned round it counts what leaves the pack as charge: the display climbs while " +
		"the cart drives and stands at full when the pack is empty. The driver believes it, and the first true sign is the BMS that opens on the road.",
	Tell: "Watch the display while a lamp is on and no charger: the current must show as discharge. Or measure the sense pair in DC millivolts, red probe on " +
		"sense+, black on sense-: positive while the lamp is on.",
	Blind: "It goes by the marks BATT and LOAD and by the names of the sense leads. A meter whose direction can be set in a menu may be right in spite of it: " +
		"waive the finding and say so. A shunt that no metal joins to a pole of the pack is not judged.",
	Bad:  "pack.NEG goes to shunt.LOAD and the reducer's negative to shunt.BATT",
	Good: "pack.NEG goes to shunt.BATT and the reducer's negative to shunt.LOAD",
	Wrong: Example{Of: shuntAndMeter, But: []string{"wire w5", "wire w5 shunt.LOAD pack.NEG gauge=6AWG insulation=105C length=200mm",
		"wire r3", "wire r3 red.IN- shunt.BATT gauge=12AWG insulation=105C length=800mm", "wire s5", "wire s5 meter.supply- shunt.BATT gauge=18AWG insulation=105C length=2m",
		"stack shunt.LOAD", "stack shunt.BATT r3 s5"}},
	Right:  Example{Of: shuntAndMeter},
	Basis:  Basis{"the meter then counts discharge as charge and calls an empty pack full", Physics},
	Remedy: "swap the two cables on the shunt, or the two sense leads",
	Run:    runShuntReversed,
}

func runShuntReversed(p *Pass) {
	low, _, ok := p.Net.Poles()
	if !ok {
		return
	}
	metal := p.metal()
	for i := range p.Net.Links() {
		shunt := &p.Net.Links()[i]
		if !isShunt(shunt) || metal.Same(shunt.A, shunt.B) {
			continue
		}
		if metal.Same(shunt.B, low) && !metal.Same(shunt.A, low) {
			p.report(Finding{
				Message:  fmt.Sprintf("%s is joined to %s, so %s counts the wrong way", p.at(shunt.B), p.at(low), shunt.Part.ID),
				Subjects: []Subject{OfPart(shunt.Part.ID), p.terminal(shunt.A), p.terminal(shunt.B)},
				Fixes:    p.swapped(shunt.A, shunt.B),
			})
		}
		p.judgeSense(shunt)
	}
}

// judgeSense looks for a sense pair that lies on a shunt the wrong way round.
func (p *Pass) judgeSense(shunt *network.Link) {
	metal := p.metal()
	for i := range p.Net.Links() {
		sense := &p.Net.Links()[i]
		if sense == shunt || !sense.Is(model.ResistanceElement) || sense.Def.Family != model.Metering {
			continue
		}
		if metal.Same(sense.A, shunt.A) && metal.Same(sense.B, shunt.B) {
			p.report(Finding{
				Message:  fmt.Sprintf("%s is on the pack's side of %s and %s on the cart's side", p.at(sense.A), shunt.Part.ID, p.at(sense.B)),
				Subjects: []Subject{OfPart(sense.Part.ID), p.terminal(sense.A), p.terminal(sense.B)},
				Fixes:    p.turnedRound(sense.A, sense.B),
			})
		}
	}
}

// shuntAndMeter is a reducer whose current a shunt meter counts.
const shuntAndMeter = `
part pack lithium-pack-16
part fu4 fuse-cartridge fuse-rating=15A
part fu6 fuse-inline-80v fuse-rating=1A
part red reducer-isolated
part shunt shunt
part meter soc-meter
wire r1 pack.POS fu4.in gauge=12AWG insulation=105C length=100mm
wire s3 pack.POS fu6.in gauge=16AWG insulation=105C length=100mm
wire r2 fu4.out red.IN+ gauge=12AWG insulation=105C length=800mm
wire r3 red.IN- shunt.LOAD gauge=12AWG insulation=105C length=800mm
wire w5 shunt.BATT pack.NEG gauge=6AWG insulation=105C length=200mm
wire s1 shunt.sense+ meter.sense+ gauge=18AWG insulation=105C length=2m
wire s2 shunt.sense- meter.sense- gauge=18AWG insulation=105C length=2m
wire s4 fu6.out meter.supply+ gauge=18AWG insulation=105C length=2m
wire s5 meter.supply- shunt.LOAD gauge=18AWG insulation=105C length=2m
stack pack.POS r1 s3
stack shunt.LOAD r3 s5
at pack.POS cover=fitted
at fu4.in cover=fitted
`
