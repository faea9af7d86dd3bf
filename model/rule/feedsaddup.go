package rule

import (
	"fmt"

	"example.com/lugbook/model/network"
)

var feedsAddUp = Rule{
	ID: "feeds-add-up", Title: "Several feeds together exceed what a wire carries",
	Family: Fusing, Severity: Danger,
	About: "Adds the ratings of all devices that feed a wire side by side, and speaks if the sum is more than 150 % of its " +
		"ampacity while each alone is within. Sources that limit themselves are not added.",
	Bad:  "two 40 A fuses feed one bus from which a 12 AWG wire leaves without a fuse of its own",
	Good: "the 12 AWG wire has a 40 A fuse of its own at the bus",
	Basis: Basis{"a conductor is protected against what its devices let through together; 150 % of the ampacity is the most",
		"33 CFR 183.455(c), with 183.425 table 5"},
	Remedy: "give the wire a fuse of its own where the feeds meet",
	Run:    runFeedsAddUp,
}

func runFeedsAddUp(p *Pass) {
	for _, w := range p.fusing().loaded {
		if len(w.entries) < 2 {
			continue
		}
		var limits []*network.Link
		for _, e := range w.entries {
			limits = append(limits, e.Limits...)
		}
		p.report(Finding{
			Message: fmt.Sprintf("%s feed %s together, %s; it carries %s, %s",
				p.namesOf(limits), w.wire.Wire.ID, amps(w.amps), w.wire.Wire.Gauge, w.carries),
			Subjects: append([]Subject{OfWire(w.wire.Wire.ID)}, p.deviceSubjects(limits)...),
		})
	}
}
