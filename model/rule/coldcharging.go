package rule

import (
	"fmt"

	"example.com/lugbook/model"
	"example.com/lugbook/model/unit"
)

var coldCharging = Rule{
	ID: "cold-charging", Title: "A pack may be charged when it is too cold",
	Family: Charging, Severity: Fault,
	About: "Compares the coldest temperature in which the cart is charged with the pack's least charging temperature, and asks what keeps the charger off below it: the temperature at " +
		"which the pack's electronics or the charger refuse. A caution if nothing is recorded that keeps it off.",
	Why: "Below freezing the lithium of a charging cell plates onto the anode as metal instead of moving into it. Nothing is seen: the pack takes the charge and " +
		"gives a little less ever after; after some winters a cell shorts inside. Driving in the cold is no harm, charging is.",
	Tell: "Ask where the cart is charged in winter. Look in the pack's paper for a charge lock-out temperature; on a cold morning the pack's display must say that " +
		"charging waits. A pack with a heater warms itself first on the charger's current, for minutes to hours, and must not take charge until it is warm.",
	Blind: "The coldest temperature is what the job records, the lock-out what the pack's or charger's figures say. How warm the cells really are, and a heater, are not computed. " +
		"Silent where the coldest temperature is not recorded: it asks for it.",
	Bad:   "charged at -10 C, the pack must not be below 0 C, and nothing refuses until -20 C",
	Good:  "charged at -10 C; the pack's electronics refuse below 0 C",
	Wrong: Example{Of: winter, But: []string{"part pack", "part pack lithium-pack-16 charge-lockout-temperature=-20C min-charge-temperature=0C"}},
	Right: Example{Of: winter},
	Basis: Basis{"charging a LiFePO4 cell below freezing plates lithium; the pack's maker states the least temperature", "common practice, from memory; the maker's instructions stand above it"},

	Remedy: "set or fit a lock-out at the pack's least charging temperature, or charge it where it is warm",
	Run:    runColdCharging,
}

// winter is a pack and its charger in a cold place.
const winter = `
job coldest=-10C
part pack lithium-pack-16 charge-lockout-temperature=0C min-charge-temperature=0C
part fu2 fuse-cartridge fuse-rating=40A
part chg charger-onboard-48v
wire c1 pack.POS fu2.in gauge=10AWG insulation=105C length=150mm
wire c2 fu2.out chg.DC+ gauge=10AWG insulation=105C length=900mm
wire c3 chg.DC- pack.NEG gauge=10AWG insulation=105C length=900mm
at pack.POS cover=fitted
at fu2.in cover=fitted
`

// Ratings of packs and chargers about cold.
const (
	leastCharging = "min-charge-temperature"
	coldLockout   = "charge-lockout-temperature"
)

func runColdCharging(p *Pass) {
	if p.unsound() {
		return
	}
	for _, c := range p.support().Charging {
		for _, pack := range c.Packs {
			if !pack.MustBeWarm || !pack.IsLithium() {
				continue
			}
			if p.Job.Coldest.IsZero() {
				p.missing(Gap{Datum: "the coldest temperature in which it is charged", Decides: "whether something must keep the charger off " + string(pack.Name), Worst: Fault, Quiet: true, Subjects: []Subject{OfPart(pack.Name)}})
				continue
			}
			p.judgeCold(c.Charger, pack.Name, pack.Warm)
		}
	}
}

func (p *Pass) judgeCold(charger, pack model.PartID, least float64) {
	coldest := p.Job.Coldest.Degrees()
	if coldest >= least {
		return
	}
	typical := false
	refuses, by := -273.15, model.PartID("")
	for _, id := range []model.PartID{pack, charger} {
		part := p.Net.Part(id)
		if known := p.Net.KnownFigure(part, coldLockout); known.OK && known.Value > refuses {
			refuses, by, typical = known.Value, id, known.IsTypical()
		}
	}
	figure := Figure{What: "charged down to", Value: p.Job.Coldest.Any(), Limit: unit.C(least).Any(), Least: true, Decides: "the pack's least charging temperature"}
	switch {
	case by == "":
		p.report(Finding{Severity: Caution, Figure: figure, Subjects: []Subject{OfPart(pack), OfPart(charger)},
			Message: fmt.Sprintf("%s is charged at %s C and must not be below %s C; nothing is recorded that keeps %s off", pack, number(coldest), number(least), charger)})
	case refuses < least && coldest < least:
		p.report(Finding{Figure: figure, Subjects: []Subject{OfPart(pack), OfPart(charger)},
			Message: fmt.Sprintf("%s is charged at %s C and must not be below %s C; %s refuses only below %s C", pack, number(coldest), number(least), by, number(refuses))})
	case typical:
		p.missing(Gap{Datum: "the temperature below which it refuses charge", Field: coldLockout, Decides: fmt.Sprintf("whether it is charged at %s C, where it must not be below %s C", number(coldest), number(least)),
			Worst: Fault, Subjects: []Subject{OfPart(by)}})
	}
}
