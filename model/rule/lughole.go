package rule

import (
	"fmt"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/conductor"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/unit"
)

var lugHole = Rule{
	ID: "lug-hole", Title: "A lug's hole does not suit its stud",
	Family: Studs, Severity: Fault,
	About: "Compares the hole of each recorded lug with its stud. Too small or more than one size larger is a fault, one size larger " +
		"a caution, and an inch lug on the neighbouring metric stud, or the reverse, a note: it passes with little play, but it is " +
		"another size. A lug whose size is not recorded on a stud that has several sizes in the cart is not guessed.",
	Why: "A ring that fits its stud bears on the whole face around the hole. A hole that is too wide leaves a narrow rim, shifts when the cable " +
		"is pushed and lies off centre, so that the washer bends it; a hole that is too small is filed open or forced, and then the barrel side " +
		"is thin. Inch and metric lie close together on a cart: M6 is 6.00 mm and 1/4 in 6.35 mm, M8 is 8.00 mm and 5/16 in 7.94 mm, M10 is " +
		"10.00 mm and 3/8 in 9.53 mm. The lug mostly goes over the wrong one of the pair; the nut never does, or worse, it starts for two turns.",
	Tell: "Pack off. Put the lug on the stud without the nut: it must drop to the seat by itself and must not move by more than about half a millimetre to either " +
		"side. Measure the stud over its thread with a caliper: 7.8 to 8.0 mm is M8, 7.7 to 7.9 mm is 5/16 in, so tell those two by the nut: M8 has one thread " +
		"in 1.25 mm, 5/16 in one in 1.41 mm (18 to the inch) or 1.06 mm (24 to the inch).",
	Blind: "Lugs and studs are judged by their nominal sizes: the hole is taken midway between the close and the usual clearance hole for that " +
		"bolt. Slotted and open lugs are taken for rings. A lug whose size is not recorded is passed over in silence.",
	Bad:    "a 3/8 in lug on the #10 coil stud",
	Good:   "a #10 lug on the #10 coil stud",
	Wrong:  Example{Of: holeExample, But: []string{"wire k3", "wire k3 key.IGN sol.coil+ gauge=16AWG insulation=105C length=1m to-lug=3/8_in"}},
	Right:  Example{Of: holeExample},
	Basis:  Basis{"a ring terminal is of the same nominal size as its stud", "ABYC E-11 11.14.6.10"},
	Remedy: "fit a lug made for that stud; the ready-made edit records that",
	Run:    runLugHole,
}

const holeExample = `
part pack lithium-pack-16
part fu1 fuse-cartridge fuse-rating=10A
part key key-switch
part sol contactor-48v
part dio diode
wire k1 pack.POS fu1.in gauge=16AWG insulation=105C length=100mm
wire k2 fu1.out key.BAT gauge=16AWG insulation=105C length=1m
wire k3 key.IGN sol.coil+ gauge=16AWG insulation=105C length=1m to-lug=#10
wire k4 sol.coil- pack.NEG gauge=16AWG insulation=105C length=1m from-lug=#10
wire d1 dio.cathode sol.coil+ gauge=18AWG insulation=105C length=60mm to-lug=#10
wire d2 dio.anode sol.coil- gauge=18AWG insulation=105C length=60mm to-lug=#10
stack sol.coil+ k3 d1
stack sol.coil- k4 d2
at pack.POS cover=fitted
`

func runLugHole(p *Pass) {
	for _, s := range p.studs() {
		for _, w := range s.wires {
			if lug := w.LugAt(s.at); !lug.IsZero() && s.size.IsZero() {
				p.missing(Gap{Datum: "the stud size", Field: "stud", Decides: "whether the lugs on it fit", Worst: Fault, Subjects: []Subject{OfTerminal(s.at)}})
				break
			}
			p.judgeLug(s, w)
		}
	}
}

func (p *Pass) judgeLug(s stud, w *model.Wire) {
	lug := w.LugAt(s.at)
	fit := conductor.FitOf(lug, s.size)
	severity := badFits[fit]
	if severity == "" {
		return
	}
	f := Finding{
		Severity: severity,
		Message:  fmt.Sprintf("the %s lug of %s on the %s stud %s: %s%s", lug, w.ID, s.size, s.at, fit, mixedSizes(lug, s.size)),
		Subjects: []Subject{OfTerminal(s.at), OfWire(w.ID)},
		Figure:   holeFigure(lug, s.size, fit),
	}
	if severity != Note {
		f.Fixes = p.newLugs(s)
	} else {
		f.Remedy = "check that lug, washer and nut are for one and the same stud, and record the size that is really there"
	}
	p.report(f)
}

// newLugs is the edit that gives every lug of a stud that does not suit it the size of the stud;
// none if lugs for one of the wires are not made with such a hole.
func (p *Pass) newLugs(s stud) []edit.Edit {
	var edits []edit.Edit
	for _, w := range s.wires {
		if severity := badFits[conductor.FitOf(w.LugAt(s.at), s.size)]; severity == "" || severity == Note {
			continue
		}
		if w.Gauge.IsZero() || !conductor.LugMade(w.Gauge, s.size) {
			return nil
		}
		edits = append(edits, p.setWire(w.ID, string(sideOf(w, s.at))+"-lug", s.size.String()))
	}
	return []edit.Edit{together(fmt.Sprintf("fit %s lugs on %s", s.size, s.at), edits...)}
}

// badFits is how grave each fit is.
var badFits = map[conductor.Fit]Severity{
	conductor.DoesNotPass: Fault, conductor.TooLarge: Fault, conductor.OneLarger: Caution, conductor.Measure: Caution, conductor.NearMatch: Note,
}

// mixedSizes says in words that a lug and a stud are of two systems of sizes, with both
// diameters.
func mixedSizes(lug, size unit.Stud) string {
	if isMetric(lug) == isMetric(size) {
		return ""
	}
	systems := map[bool]string{true: "metric", false: "inch"}
	return fmt.Sprintf("; %s lug, %s stud: %.2f mm on %.2f mm", systems[isMetric(lug)], systems[isMetric(size)], lug.DiameterMM(), size.DiameterMM())
}

func isMetric(s unit.Stud) bool { return strings.HasPrefix(s.String(), "M") }

// holeFigure is the hole of a lug against the stud: at least the stud, at most a size more.
func holeFigure(lug, size unit.Stud, fit conductor.Fit) Figure {
	tight, usual, ok := conductor.Holes(lug)
	if !ok {
		return Figure{}
	}
	f := Figure{
		What: "hole of the lug", Value: unit.LengthFromMetres((tight + usual) / 2000).Any(),
		Limit: unit.LengthFromMetres(size.DiameterMM() / 1000).Any(), Least: true, Decides: "the stud",
	}
	if fit == conductor.OneLarger || fit == conductor.TooLarge {
		f.Value, f.Least = unit.LengthFromMetres(tight/1000).Any(), false
		f.Limit = unit.LengthFromMetres(size.DiameterMM() * (1 + conductor.Slack) / 1000).Any()
	}
	return f
}
