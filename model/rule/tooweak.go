package rule

import (
	"fmt"

	"example.com/lugbook/model"
	"example.com/lugbook/model/conductor"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/protect"
	"example.com/lugbook/model/size"
	"example.com/lugbook/model/unit"
)

var wireTooWeak = Rule{
	ID: "wire-too-weak", Title: "A wire is too thin to last where it lies",
	Family: Conductors, Severity: Caution,
	About: "Speaks about wires of a circuit of 1 A and more that are thinner than 16 AWG by themselves, or than 18 AWG in a sheath or bundle, whatever current they could carry. " +
		"Pigtails up to 7 in, the leads of a resistor or diode on a stud, and circuits of less than 1 A such as sense, throttle and signal leads may be thinner.",
	Why: "A thin wire does not fail by current but by hand and by shaking: it is pulled when something near it is worked on, it sways between two ties, its few strands break one " +
		"by one behind the crimp. The circuit then comes and goes with the bumps, which is the hardest of all faults to find.",
	Tell: "Measure the bare strands: 16 AWG is about 1.3 mm across at the least, 18 AWG 1.0 mm, 20 AWG 0.8 mm. Hold the wire a hand's breadth from its terminal and move it while a helper watches the " +
		"lamp or the meter: nothing may flicker.",
	Blind: "It goes by the current that was computed for the circuit, so a wire that carries nothing in any state is passed over. What lies in a sheath is taken from the " +
		"record of the wire or its bundle; that 18 AWG sticks out of it by 30 in at most is not checked.",
	Bad: "a lamp of 2 A over 20 AWG", Good: "the same lamp over 16 AWG",
	Wrong: Example{Of: beaconCircuit, But: []string{"wire w3", "wire w3 lt1.- b1.- gauge=20AWG insulation=105C length=2m"}},
	Right: Example{Of: beaconCircuit},
	Basis: Basis{"a conductor installed separately is at least 16 AWG, one in a sheath at least 18 AWG; electronic circuits below 1 A and pigtails below 7 in are left out",
		"33 CFR 183.425(d), (e) and (g)"},
	Remedy: "renew it in 16 AWG, or take it into a sheath or loom in 18 AWG and record that",
	Run:    runWireTooWeak,
}

// beaconCircuit is a lamp of 2 A on a battery of 12 V.
const beaconCircuit = `
job system=12V
part b1 lead-battery-12v
part fu1 fuse-inline fuse-rating=5A
part lt1 lamp-12v current=2A
wire w1 b1.+ fu1.in gauge=16AWG insulation=105C length=100mm
wire w2 fu1.out lt1.+ gauge=16AWG insulation=105C length=2m
wire w3 lt1.- b1.- gauge=16AWG insulation=105C length=2m
at b1.+ cover=fitted`

// What 33 CFR 183.425(g) leaves out: pigtails shorter than 7 in, circuits below 1 A.
var (
	pigtail      = unit.Inches(7)
	electronicsA = 1.0
)

func runWireTooWeak(p *Pass) {
	if p.unsound() {
		return
	}
	type kind struct {
		gauge unit.Gauge
		loom  bool
	}
	var order []kind
	groups := map[kind][]*network.Link{}
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if l.Kind != network.WireLink || l.Wire.Gauge.IsZero() || p.mayBeThin(l) {
			continue
		}
		k := kind{l.Wire.Gauge, inLoom(l.Wire)}
		if groups[k] == nil {
			order = append(order, k)
		}
		groups[k] = append(groups[k], l)
	}
	for _, k := range order {
		p.reportWeak(groups[k], conductor.LeastGauge(k.loom))
	}
}

// inLoom reports whether a wire lies in a sheath or with others in a bundle.
func inLoom(w *model.Wire) bool { return w.Sheathed || w.Bundle != "" }

// mayBeThin reports whether a wire is thick enough, or left out by 33 CFR 183.425(g).
func (p *Pass) mayBeThin(l *network.Link) bool {
	if l.Wire.Gauge.Compare(conductor.LeastGauge(inLoom(l.Wire))) >= 0 {
		return true
	}
	if metres, known := p.Net.Length(l.Wire); known && metres <= pigtail.Metres() {
		return true
	}
	hung, _ := protect.IsHungLead(p.Net, l)
	return hung || p.currents().Load(l.Wire).Amps < electronicsA
}

func (p *Pass) reportWeak(g []*network.Link, least unit.Gauge) {
	w := g[0].Wire
	load := p.currents().Load(w)
	lies := "by itself"
	if inLoom(w) {
		lies = "in a loom"
	}
	f := Finding{
		Message: fmt.Sprintf("%s, %s, carries %s and lies %s: %s is the least there", w.ID, w.Gauge, amps(load.Amps), lies, least),
		State:   load.State, Subjects: wireSubjects(g),
		Figure: Figure{What: "conductor size", Value: w.Gauge.Any(), Limit: least.Any(), Least: true, Decides: "strength"},
	}
	if len(g) > 1 {
		f.Message += "; as well " + list(f.Subjects[1:])
	}
	fit := thinnestOf(size.SeriesOf(w.Gauge), least)
	var edits []edit.Edit
	for _, l := range g {
		edits = append(edits, p.setWire(l.Wire.ID, "gauge", fit.String()))
	}
	f.Fixes = []edit.Edit{together(fmt.Sprintf("renew %s in %s", list(f.Subjects), fit), edits...)}
	p.report(f)
}

// thinnestOf is the thinnest size of a series that is not thinner than another.
func thinnestOf(s size.Series, least unit.Gauge) unit.Gauge {
	for _, g := range s.Sizes() {
		if g.Compare(least) >= 0 {
			return g
		}
	}
	return least
}
