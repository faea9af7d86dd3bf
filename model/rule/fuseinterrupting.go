package rule

import (
	"fmt"
	"math"

	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/unit"
)

var fuseInterrupting = Rule{
	ID: "fuse-interrupting", Title: "A fuse cannot break the fault current",
	Family: Protection, Severity: Danger,
	About: "Compares the interrupting rating of the first fuse or breaker on each way from a string or pack with the current of a dead " +
		"short right behind it, computed over all states with the batteries full, the copper cold, and what is not recorded of a " +
		"wire counting nothing. A device behind an adequate one is left to it. If a typical figure of the library decides, it is a caution.",
	Why: "A fuse element that melts leaves an arc, and the arc goes on conducting until the filling of the fuse has quenched it. What it can " +
		"quench is its interrupting rating. Above it the body bursts and sprays molten metal, or the arc stands and the fuse goes on as " +
		"a torch; a breaker's contacts weld. A lithium pack with its few milliohms drives far more than a lead string of the same " +
		"voltage does, so the old fuse that was good enough no longer is.",
	Tell: "Read AIC, IR or kA off the fuse itself, for DC, not off its holder. Blades have 1 kA, bolted strips 2 kA, class T about 20 kA, from " +
		"memory. Hold it against what the pack's paper gives as its short-circuit current, or compute: full-charge volts over the resistance " +
		"inside. Never try it.",
	Blind: "A device behind an adequate one is left to that. What is not recorded of a wire counts nothing, so that the current is rather too " +
		"high than too low; the inductance of the loop is left out. A BMS may cut the current short, which is not counted on. The voltage " +
		"rating is judged by a rule of its own: an interrupting rating holds up to that voltage alone.",
	Bad:   "a strip fuse that breaks 2000 A, right at a pack that drives 3800 A through a short",
	Good:  "a class T fuse that breaks 20 kA at the pack",
	Wrong: Example{Of: fusedPack, But: []string{"part fu1", "part fu1 fuse-holder fuse-rating=200A voltage-rating=80V interrupting-rating=2000A"}},
	Right: Example{Of: fusedPack},
	Basis: Basis{"a device that opens against more than its interrupting rating may burst or keep an arc; it must be at least the source's " +
		"short-circuit current", "ABYC E-11, interrupting capacity of main devices"},
	Remedy: "fit a fuse with a DC interrupting rating above the fault current as the first one on the pack",
	Run:    runFuseInterrupting,
}

func runFuseInterrupting(p *Pass) {
	told := map[model.PartID]bool{}
	for _, e := range p.fusing().entries {
		if e.Feed == nil || e.Feed.String == nil || !e.Feed.Whole {
			continue
		}
		var first []network.Met
		for _, l := range e.Limits {
			first = append(first, network.Met{Device: l})
		}
		for _, m := range append(first, e.Lead.Devices...) {
			if l := m.Device; l.Is(model.FuseElement) && !told[l.Part.ID] {
				told[l.Part.ID] = true
				p.judgeInterrupting(e.Feed, l, wiresOnWay(m.Path))
			}
		}
	}
}

// wiresOnWay picks the wires of a way.
func wiresOnWay(way []*network.Link) []*network.Link {
	var wires []*network.Link
	for _, l := range way {
		if l.Kind == network.WireLink {
			wires = append(wires, l)
		}
	}
	return wires
}

// judgeInterrupting judges a device of a source, with the wires that lead to it.
func (p *Pass) judgeInterrupting(f *network.Feed, l *network.Link, way []*network.Link) {
	inside, known := p.insideOf(f.String)
	if !known {
		p.missing(Gap{Datum: "the internal resistance", Field: "internal-resistance", Decides: "which fuses can break the fault current", Worst: Danger, Subjects: stringSubjects(*f.String)})
		return
	}
	d := p.guard().Device(l)
	if !d.Interrupting.OK {
		p.missing(Gap{Datum: "the interrupting rating", Field: "interrupting-rating", Decides: "whether it can break the fault current", Worst: Danger, Subjects: []Subject{OfPart(l.Part.ID)}})
		return
	}
	drives, at := d.Amps, p.terminal(f.At)
	where := fmt.Sprintf("a short right behind it drives %s at full charge (%s)", aboutAmps(drives), d.Fault.State)
	if d.Fault.IsNone() { // in the negative, or inside the string
		drives = p.guard().ShortAmps(f)
		where = fmt.Sprintf("a short of the whole drives %s at full charge", aboutAmps(drives))
	} else {
		at = p.terminal(d.Fault.At)
	}
	if drives <= d.Interrupting.Value {
		return
	}
	finding := Finding{
		Message: fmt.Sprintf("%s breaks %s; %s", p.partName(l), amps(d.Interrupting.Value), where),
		Figure: Figure{What: "interrupting rating", Value: unit.A(d.Interrupting.Value).Any(), Limit: twoFigures(drives), Least: true,
			Decides: "what the source drives through a short at full charge"},
		Subjects: append(appendNew([]Subject{OfPart(l.Part.ID)}, at), wireSubjects(way)...),
	}
	if fix, ok := p.refitFuse(l, p.fullVolts(f), drives); ok {
		finding.Fixes = []edit.Edit{fix}
	}
	if d.Interrupting.IsTypical() || inside {
		finding.Severity = Caution
		finding.Message += unconfirmed
	}
	p.report(finding)
}

// twoFigures is a computed current as it is good for.
func twoFigures(amperes float64) unit.Any {
	step := math.Pow(10, math.Floor(math.Log10(amperes))-1)
	return unit.A(math.Round(amperes/step) * step).Any()
}

// fullVolts is the full-charge voltage of a feed; none if it is not known.
func (p *Pass) fullVolts(f *network.Feed) float64 {
	if !f.Full.OK {
		return 0
	}
	return f.Full.Value
}

// insideOf reports whether the resistance inside every battery of a string is known, and
// whether one of them is a typical figure.
func (p *Pass) insideOf(s *network.String) (typical, known bool) {
	for _, cell := range s.Cells {
		inside := p.Net.SourceOhms(cell.Link)
		if !inside.OK {
			return false, false
		}
		typical = typical || inside.IsTypical()
	}
	return typical, true
}
