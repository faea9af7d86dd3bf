package rule

import "fmt"

var feedsAddUp = Rule{
	ID: "feeds-add-up", Title: "Several feeds together exceed what a wire carries",
	Family: Protection, Severity: Danger,
	About: "Computes the most that all sources together can keep up in a wire without any device opening, chargers and braking " +
		"drives among them, and speaks if that is more than 150 % of its ampacity while each device alone is within. A caution " +
		"if something that limits itself has part in it.",
	Bad:  "two 40 A fuses feed one bus from which a 12 AWG wire leaves without a fuse of its own",
	Good: "the 12 AWG wire has a 40 A fuse of its own at the bus",
	Basis: Basis{"a conductor is protected against what its devices let through together; 150 % of the ampacity is the most",
		"33 CFR 183.455(c), with 183.425 table 5"},
	Remedy: "give the wire a fuse of its own where the feeds meet",
	Run:    runFeedsAddUp,
}

func runFeedsAddUp(p *Pass) {
	for _, w := range p.fusing().loaded {
		if w.entry != nil {
			continue
		}
		f := Finding{
			Message: fmt.Sprintf("%s feed %s together, %s that last; it carries %s, %s",
				p.namesOf(w.limits), w.wire.Wire.ID, amps(w.amps), w.wire.Wire.Gauge, w.carries),
			Subjects: append([]Subject{OfWire(w.wire.Wire.ID)}, p.deviceSubjects(w.limits)...),
		}
		if !areDevices(w.limits) {
			f.Severity = Caution
		}
		p.report(f)
	}
}
