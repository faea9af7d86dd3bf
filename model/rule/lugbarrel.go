package rule

import (
	"fmt"
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/basis"
	"example.com/lugbook/model/conductor"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/unit"
)

var lugBarrel = Rule{
	ID: "lug-barrel", Title: "A lug's barrel does not fit the wire in it",
	Family: Studs, Severity: Fault,
	About: "Compares the conductor that the barrel of each recorded lug is made for with the wire in it. They may differ by a quarter of the " +
		"area, less than one gauge number, so that a metric lug on its AWG neighbour passes; barrels up to 10 AWG take the range of sizes that " +
		"crimp terminals are sold for. A lug that is recorded as the wrong one is reported too if its hole and barrel do not say why.",
	Why: "A crimp works because the barrel is squeezed until the strands flow into one solid mass without air. In a barrel that is too wide the " +
		"strands are only held at two sides: it passes a tug by hand, but acid and air get in between, the joint's resistance climbs from a " +
		"tenth of a milliohm to ten, and at 200 A that is 400 W in the lug. In one that is too narrow the wire goes in only with strands cut " +
		"off, and then it is a thinner wire there than anywhere else.",
	Tell: "Read the size stamped on the lug's tongue and the print on the jacket. Cut a spare crimp of the same make through: you must see copper without holes. " +
		"Look into the barrel from the lug's end, or through its inspection hole: strands up to the end, none cut, none folded back. After a hard run, pack " +
		"off, hold the back of the hand near each barrel and then on it: it must not be warmer than the cable a hand's breadth away.",
	Blind: "It goes by the sizes that were recorded, and says nothing of lugs without one. Two wires crimped into one barrel, filler strands, the " +
		"wrong die and solder in a crimp can't be recorded as such: write a note. Aluminium in a barrel made for copper is not judged here.",
	Bad:    "the 4 AWG cable to the pump has a lug made for 2 AWG",
	Good:   "its lug is made for 4 AWG",
	Wrong:  Example{Of: studExample, But: []string{"wire w3", "wire w3 iso.out pump.+ gauge=4AWG insulation=105C length=600mm to-barrel=2AWG"}},
	Right:  Example{Of: studExample, But: []string{"wire w3", "wire w3 iso.out pump.+ gauge=4AWG insulation=105C length=600mm to-barrel=4AWG"}},
	Basis:  Basis{"a crimped joint is at least as strong as the wire, which a barrel of another size does not give", "FAA AC 43.13-1B 11-174"},
	Remedy: "cut the lug off, strip back to clean copper, and crimp a lug of the wire's size with the die of its maker; the ready-made edit records that",
	Run:    runLugBarrel,
}

func runLugBarrel(p *Pass) {
	for i := range p.Sheet.Wires {
		w := &p.Sheet.Wires[i]
		told := false
		for k, barrel := range []unit.Gauge{w.FromBarrel, w.ToBarrel} {
			switch {
			case barrel.IsZero():
			case w.Gauge.IsZero():
				p.missing(Gap{Datum: "the gauge", Field: "gauge", Decides: "whether its lugs are made for it", Worst: Fault, Subjects: []Subject{OfWire(w.ID)}})
			case !p.barrelFits(barrel, w.Gauge):
				told = true
				p.reportBarrel(w, w.Ends()[k], barrel)
			}
		}
		if !told && slices.Contains(w.Condition, model.WrongLug) && !p.holeIsWrong(w) {
			p.report(Finding{
				Message:  fmt.Sprintf("%s is recorded with the wrong lug; hole and barrel as recorded do not say why", w.ID),
				Subjects: []Subject{OfWire(w.ID)},
			})
		}
	}
}

// rangeGauge is the thickest conductor that crimp terminals are sold for by ranges.
var rangeGauge = unit.AWG(10)

// barrelFits reports whether a wire can be crimped into a barrel made for another size.
func (p *Pass) barrelFits(barrel, wire unit.Gauge) bool {
	spread := 1 + p.limit(basis.BarrelSpread)
	most := spread
	if barrel.Compare(rangeGauge) <= 0 {
		most = p.limit(basis.BarrelRange)
	}
	share := barrel.AreaMM2() / wire.AreaMM2()
	return share <= most && share*spread >= 1
}

func (p *Pass) reportBarrel(w *model.Wire, end model.End, barrel unit.Gauge) {
	narrow := barrel.Compare(w.Gauge) < 0
	how := "the crimp leaves it loose"
	if narrow {
		how = "it goes in only with strands cut off"
	}
	f := Finding{
		Message:  fmt.Sprintf("the lug of %s, %s, at %s is made for %s: %s", w.ID, w.Gauge, end, barrel, how),
		Subjects: []Subject{OfWire(w.ID)},
		Figure:   Figure{What: "size of the barrel", Value: barrel.Any(), Limit: w.Gauge.Any(), Least: narrow, Decides: "the wire in it"},
	}
	if !slices.Contains(w.Condition, model.WrongLug) {
		f.Fixes = []edit.Edit{p.newBarrels(w)}
	}
	if !end.IsLoose() {
		f.Subjects = append(f.Subjects, OfTerminal(end.At))
	}
	p.report(f)
}

// newBarrels is the edit that gives each lug of a wire that does not fit it a barrel of its size.
func (p *Pass) newBarrels(w *model.Wire) edit.Edit {
	var edits []edit.Edit
	for k, barrel := range []unit.Gauge{w.FromBarrel, w.ToBarrel} {
		if !barrel.IsZero() && !p.barrelFits(barrel, w.Gauge) {
			edits = append(edits, p.setWire(w.ID, []string{"from-barrel", "to-barrel"}[k], w.Gauge.String()))
		}
	}
	return together(fmt.Sprintf("crimp lugs for %s on %s", w.Gauge, w.ID), edits...)
}

// holeIsWrong reports whether the hole of a lug of the wire does not suit its stud.
func (p *Pass) holeIsWrong(w *model.Wire) bool {
	return slices.ContainsFunc(p.studs(), func(s stud) bool {
		return w.LandsOn(s.at) && badFits[conductor.FitOf(w.LugAt(s.at), s.size)] != ""
	})
}
