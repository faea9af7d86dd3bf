package rule

import "fmt"

var standByDrain = Rule{
	ID: "stand-by-drain", Title: "The cart at rest empties its batteries",
	Family: Packs, Severity: Fault,
	About: "Computes what each part takes with the cart parked and how many days the battery that is empty first lasts until its usable " +
		"charge is gone. Less than a week is a fault, less than two months a caution. A note if only what may have a switch of its own makes it so.",
	Bad:    "a reducer whose wake lead is looped to its input: 45 mA for ever",
	Good:   "the wake lead is on the switched side of the key",
	Basis:  Basis{"a cart that is flat after a week's rest has a fault, one that does not last two months of winter deserves a word", Practice},
	Remedy: "put the drain behind key, tow switch or isolator, or switch the pack off when the cart is laid up",
	Run:    runStandByDrain,
}

// Days at rest that a cart should last. Our choice.
const (
	weekDays   = 7
	seasonDays = 60
)

// leastOfDrain is the share of the drain from which a part is named.
const leastOfDrain = 0.05

func runStandByDrain(p *Pass) {
	if p.unsound() {
		return
	}
	s := p.support().StandBy
	if s == nil || s.Days == 0 || s.Days >= seasonDays {
		return
	}
	f := Finding{Subjects: []Subject{OfPart(s.First)}}
	words := ""
	on := 0.0
	for _, draw := range s.Draws {
		if draw.IsOn {
			on += draw.Amps
		}
		if draw.Amps >= leastOfDrain*s.Amps {
			words += fmt.Sprintf(", %s %s", draw.Part, smallAmps(draw.Amps))
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
	case days >= seasonDays:
		f.Severity = Note
	case days >= weekDays:
		f.Severity = Caution
	}
	p.report(f)
}

// smallAmps writes a current that may be milliamperes.
func smallAmps(x float64) string {
	if x < 1 {
		return number(1000*x) + " mA"
	}
	return amps(x)
}
