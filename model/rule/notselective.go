package rule

import (
	"fmt"

	"example.com/lugbook/model/opening"
)

var notSelective = Rule{
	ID: "not-selective", Title: "The fuse nearer the source opens first",
	Family: Protection, Severity: Note,
	About: "Compares the opening times of each two devices in series, up to the greatest fault behind the farther one. Speaks if the one " +
		"nearer the source is sure to open first at some current, or is no slower by every time that is known. Silent where the known " +
		"times leave it open.",
	Why: "When a lamp wire shorts, its own fuse should go and nothing else. If the fuse nearer the pack goes first, or both do, the cart stands: " +
		"no lights, no horn, perhaps no brake release, on a hill in the dark, for a lamp. And whoever looks for the fault looks at the wrong fuse.",
	Tell: "Write down the fuses from the pack to the load: each should be at least 1.6 times the one behind it for fuses of one family. After a " +
		"trip look which fuse opened, and whether the fault lay behind a smaller one.",
	Blind: "Compares promised times alone: those of a maker's curve or of the gates of a standard. Where they leave it open, as two fuses of unknown " +
		"make do, it is silent. At very large currents two fuses may go together whatever the curves say. A nuisance, not a danger: a note.",
	Bad:    "a 10 A gG fuse at the pack and a 16 A gG fuse in the dash",
	Good:   "a 160 A gG fuse at the pack and a 16 A gG fuse in the dash",
	Wrong:  Example{Of: twoInSeries, But: []string{"part fu1", "part fu1 fuse-cartridge fuse-rating=10A opening=iec-60269-gg", "part fu3", "part fu3 fuse-cartridge fuse-rating=16A opening=iec-60269-gg"}},
	Right:  Example{Of: twoInSeries},
	Basis:  Basis{"of two devices in series the farther one opens alone, or a fault in one circuit takes all the others with it", "IEC 60269-1 5.8, discrimination; from memory"},
	Remedy: "fit a smaller or faster fuse far from the source, or a larger one near it if its wires carry that",
	Run:    runNotSelective,
}

// twoInSeries is a fuse at the pack with a smaller one behind it.
const twoInSeries = `part pack lithium-pack-16
part fu1 fuse-class-t fuse-rating=63A opening=iec-60269-gg
part fu3 fuse-cartridge fuse-rating=16A opening=iec-60269-gg
part buz buzzer
wire k1 pack.POS fu1.in gauge=6AWG insulation=105C length=100mm
wire k2 fu1.out fu3.in gauge=6AWG insulation=105C length=1m
wire k3 fu3.out buz.+ gauge=14AWG insulation=105C length=2m
wire k4 buz.- pack.NEG gauge=14AWG insulation=105C length=2m
at pack.POS cover=fitted
at fu1.in cover=fitted`

func runNotSelective(p *Pass) {
	if p.misconnected() {
		return
	}
	for _, pair := range p.guard().Pairs() {
		if pair.Verdict.Answer != opening.No {
			continue
		}
		p.report(Finding{
			Message:  fmt.Sprintf("%s behind %s: %s", p.nameOf(pair.Down), p.nameOf(pair.Up), pair.Verdict.Why),
			Subjects: []Subject{p.deviceSubject(pair.Down), p.deviceSubject(pair.Up)},
		})
	}
}
