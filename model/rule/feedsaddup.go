package rule

import (
	"fmt"

	"example.com/lugbook/model/basis"
	"example.com/lugbook/model/unit"
)

var feedsAddUp = Rule{
	ID: "feeds-add-up", Title: "Several feeds together exceed what a wire carries",
	Family: Protection, Severity: Danger,
	About: "Computes the most that all sources together can keep up in a wire without any device opening, chargers and braking " +
		"drives among them, and speaks if that is more than 150 % of its ampacity while each device alone is within. A caution " +
		"if something that limits itself has part in it, or if only the share that the job or the house rule sets is exceeded.",
	Why: "Two fuses side by side are one large fuse. Each sees half of what flows and is content; the wire behind them carries both. It comes " +
		"about where a second feed is brought to a bar for more current, or where a charger and the pack meet on one thin wire.",
	Tell: "At every bar and stud ask how many wires can bring current to it, and whether one leaves it thinner than what their fuses add up to. " +
		"Pull one of the fuses: what still works has the other feed as well.",
	Blind: "Takes the sum that can last whatever is connected; whether a load ever asks for it is left open. What is more than a standard " +
		"size for circuits of 50 V allows but not more than 150 % goes unsaid, unless the job or the house rule has a stricter share.",
	Bad:   "two 40 A fuses feed one bus from which a 12 AWG wire leaves without a fuse of its own",
	Good:  "the 12 AWG wire has a 40 A fuse of its own at the bus",
	Wrong: Example{Of: twoFeeds, But: []string{"part fu3", "", "wire y3", "wire y3 bar.3 lt.+ gauge=12AWG insulation=105C length=2m", "wire y4", ""}},
	Right: Example{Of: twoFeeds},
	Basis: Basis{"a conductor is protected against what its devices let through together; 150 % of the ampacity is the most",
		"33 CFR 183.455(c), with 183.425 table 5"},
	Remedy: "give the wire a fuse of its own where the feeds meet",
	Run:    runFeedsAddUp,
}

// twoFeeds is a bar that two fuses feed, with a wire that has a fuse of its own.
const twoFeeds = `part pack lithium-pack-16
part fu1 fuse-class-t fuse-rating=40A
part fu2 fuse-class-t fuse-rating=40A
part bar bus-bar-4
part fu3 fuse-class-t fuse-rating=40A
part lt pump-motor
wire y1 pack.POS fu1.in gauge=8AWG insulation=105C length=100mm
wire y2 pack.POS fu2.in gauge=8AWG insulation=105C length=100mm
wire y5 fu1.out bar.1 gauge=8AWG insulation=105C length=300mm
wire y6 fu2.out bar.2 gauge=8AWG insulation=105C length=300mm
wire y3 bar.3 fu3.in gauge=12AWG insulation=105C length=100mm
wire y4 fu3.out lt.+ gauge=12AWG insulation=105C length=2m
wire y7 lt.- pack.NEG gauge=8AWG insulation=105C length=2m
at pack.POS cover=fitted
at fu1.in cover=fitted
at fu2.in cover=fitted`

func runFeedsAddUp(p *Pass) {
	for _, w := range p.fusing().loaded {
		if w.entry != nil {
			continue
		}
		f := Finding{
			Message: fmt.Sprintf("%s feed %s together, %s that last; it carries %s, %s",
				p.namesOf(w.limits), w.wire.Wire.ID, amps(w.amps), w.wire.Wire.Gauge, w.carries),
			Figure:   Figure{What: "sum that lasts", Value: unit.A(w.amps).Any(), Limit: unit.A(p.together(w.carries)).Any(), Decides: w.carries.String()},
			Subjects: append([]Subject{OfWire(w.wire.Wire.ID)}, p.deviceSubjects(w.limits)...),
		}
		if w.carries.load == strained || !areDevices(w.limits) && !p.devicesAlone(w.limits, w.carries) {
			f.Severity = Caution
		}
		p.report(f)
	}
}

// together is what all devices before a wire may let through: its ampacity times the share for
// circuits under 50 V.
func (p *Pass) together(c carrying) float64 {
	if c.thin {
		return c.limit
	}
	return p.limit(basis.FuseShare) * c.amps
}
