package rule

import (
	"fmt"

	"example.com/lugbook/model/basis"
	"example.com/lugbook/model/support"
	"example.com/lugbook/model/unit"
)

var standByDrain = Rule{
	ID: "stand-by-drain", Title: "The cart at rest empties its batteries",
	Family: Packs, Severity: Caution,
	About: "Computes what each part takes with the cart parked and how many days the battery that is empty first lasts until its usable " +
		"charge is gone. Less than a week is a fault, less than two months a caution. A note if only what may have a switch of its own makes it so.",
	Why: "A reducer left awake takes 45 mA, a tracker 30, a display 10, the pack's own electronics 15: together 2.4 Ah a day. A hundred ampere-hours of usable charge is gone in six " +
		"weeks, and a lithium pack that goes below its floor may not be charged again. Lead batteries that stand empty sulphate.",
	Tell: "Cart parked, key off, everything switched off, and the key in your pocket. A DC clamp meter that reads milliamperes, round the pack's negative cable, " +
		"is the safest. Without one clip a meter, on its 10 A range, from the pack's negative stud to the lug on it before the lug comes off. If that reads " +
		"less than 0.2 A, lay the lug back, change to the milliampere range and lift it again. Nothing is switched on or plugged in meanwhile, for all of it " +
		"would pass through the meter. Write down what it settles at after a minute. Divide the usable ampere-hours by it, and by 24.",
	Blind: "The figures of stand-by are mostly typical until somebody measures them. Self-discharge is left out: a few per cent a month. Loads with a switch of their own, that the " +
		"sheet does not show, are taken as on, and the finding says so.",
	Bad:   "the wake lead of the reducer is on the hot side of the key: awake day and night",
	Good:  "the wake lead is on the switched side of the key",
	Wrong: Example{Of: sleepingReducer, But: []string{"wire r4", "wire r4 fu5.out red.WAKE gauge=16AWG insulation=105C length=1m", "+", "stack fu5.out k1 r4"}},
	Right: Example{Of: sleepingReducer},
	Basis: Basis{"a cart that is flat after a week's rest has a fault, one that does not last two months of winter deserves a word", Practice},

	Remedy: "put the drain behind key, tow switch or isolator, or switch the pack off when the cart is laid up",
	Run:    runStandByDrain,
}

// sleepingReducer is a reducer whose wake lead is behind the key.
const sleepingReducer = `
part pack lithium-pack-16 capacity=60Ah
part fu4 fuse-cartridge fuse-rating=15A
part fu5 fuse-inline-80v fuse-rating=3A
part key key-switch
part red reducer-common-negative
wire r1 pack.POS fu4.in gauge=12AWG insulation=105C length=100mm
wire r2 fu4.out red.IN+ gauge=12AWG insulation=105C length=800mm
wire r3 red.NEG pack.NEG gauge=12AWG insulation=105C length=800mm
wire k0 pack.POS fu5.in gauge=16AWG insulation=105C length=100mm
wire k1 fu5.out key.BAT gauge=16AWG insulation=105C length=2m
wire r4 key.IGN red.WAKE gauge=16AWG insulation=105C length=1m
stack pack.POS r1 k0
at pack.POS cover=fitted
`

// leastOfDrain is the share of the drain from which a part is named.
const leastOfDrain = 0.05

func runStandByDrain(p *Pass) {
	if p.unsound() {
		return
	}
	s := p.support().StandBy
	if s == nil || s.Days == 0 || s.Days >= p.limit(basis.RestDaysCaution) {
		return
	}
	season := p.limit(basis.RestDaysCaution)
	f := Finding{State: s.State, Subjects: []Subject{OfPart(s.First)}, Figure: Figure{What: "days at rest", Value: wholeDays(s.Days), Limit: wholeDays(season), Least: true, Decides: "the battery that is empty first"}}
	words := ""
	on := 0.0
	for _, draw := range s.Draws {
		if draw.IsOn {
			on += draw.Amps
		}
		if draw.Amps >= leastOfDrain*s.Amps {
			words += fmt.Sprintf(", %s %s", draw.Part, shareOfDrain(s, draw))
			f.Subjects = appendNew(f.Subjects, OfPart(draw.Part))
		}
	}
	f.Message = fmt.Sprintf("at rest %s gives %s and its usable %s Ah are gone after %s days%s",
		s.First, smallAmps(s.Drain), number(s.Hours), number(s.Days), words)
	days := s.Days
	if on > 0 {
		days = s.Days / max(1e-9, 1-on/s.Amps)
		f.Message += "; what may have a switch of its own is taken as on"
	}
	switch {
	case days >= season:
		f.Severity = Note
	case days < p.limit(basis.RestDaysFault):
		f.Severity = Fault
	}
	p.report(f)
}

// shareOfDrain is what a part takes out of the battery that is empty first: its current where
// all of it flows through that battery, its share of the power where a part of the string gives
// more than the rest, for then the currents of the parts are not those of the battery.
func shareOfDrain(s *support.StandBy, draw support.Draw) string {
	if s.Drain > (1+leastOfDrain)*s.Amps {
		return fmt.Sprintf("%s %% of the power", number(100*draw.Amps/s.Amps))
	}
	return smallAmps(draw.Amps)
}

// wholeDays is a number of days, rounded down.
func wholeDays(days float64) unit.Any {
	d, err := unit.ParseAny(fmt.Sprintf("%d days", int(days)))
	if err != nil {
		return unit.Any{}
	}
	return d
}

// smallAmps writes a current that may be milliamperes.
func smallAmps(x float64) string {
	if x < 1 {
		return number(1000*x) + " mA"
	}
	return amps(x)
}
