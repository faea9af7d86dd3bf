package rule

import (
	"fmt"
	"math"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/unit"
)

var notCopper = Rule{
	ID: "not-copper", Title: "A cable that is not copper is used like copper",
	Family: Conductors, Severity: Caution,
	About: "Speaks about wires recorded as aluminium or copper-clad aluminium. All other figures of a sheet take a wire for copper; this rule says what the metal really carries, about 78 % of it, and that it loses " +
		"1.6 times the voltage. A fault if its current or its fuse is above that.",
	Why: "Cheap cable, often sold for car audio, is aluminium with a skin of copper. Of the same size it has three fifths of the conductance. Its strands are soft: they creep under a lug, the joint loosens, air " +
		"turns the bare aluminium into an oxide that does not conduct, and the lug burns. Bending breaks it far sooner than copper.",
	Tell: "Scrape a strand with a knife: aluminium is silver inside. It weighs a third of copper: a metre of 2/0 copper cable is about 0.7 kg. A " +
		"strand that was cut off and is held in a flame, well away from the batteries and their gas, melts and drops; copper glows.",
	Blind: "A wire of which nobody recorded the metal counts as copper. Copper-clad cable is taken as aluminium; the skin helps a little. Drops and temperatures that other rules give for such a wire are too low.",
	Bad:   "a pump of 55 A over 8 AWG copper-clad aluminium", Good: "the same over copper",
	Wrong:  Example{Of: pumpCircuit, But: []string{"wire w3", "wire w3 sw.OUT pump.+ gauge=8AWG insulation=105C length=1m material=copper-clad-aluminium"}},
	Right:  Example{Of: pumpCircuit, But: []string{"wire w3", "wire w3 sw.OUT pump.+ gauge=8AWG insulation=105C length=1m material=copper"}},
	Basis:  Basis{"each conductor is insulated, stranded copper; aluminium has 61 % of its conductance, so the same heat at the root of that", "33 CFR 183.425(a); 61 % IACS for aluminium, from memory"},
	Remedy: "renew it in copper, with lugs made for copper",
	Run:    runNotCopper,
}

// aluminiumShare is the conductance of electrical aluminium over that of copper, 61 % IACS, from
// memory. NEC 310.16 lists copper-clad aluminium with it.
const aluminiumShare = 0.61

func runNotCopper(p *Pass) {
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if l.Kind == network.WireLink && (l.Wire.Material == model.Aluminium || l.Wire.Material == model.CopperClad) {
			p.judgeAluminium(l)
		}
	}
}

func (p *Pass) judgeAluminium(l *network.Link) {
	w := l.Wire
	f := Finding{Subjects: []Subject{OfWire(w.ID)}, Message: fmt.Sprintf("%s is %s", w.ID, materialWords(w.Material))}
	o := p.guard().Outline(l)
	if o.Capacity.Missing != "" || p.unsound() {
		f.Message += ": it carries 78 % of what copper of its size does, and loses 1.6 times the voltage"
		p.report(f)
		return
	}
	carries := o.Capacity.Amps * math.Sqrt(aluminiumShare)
	most := o.Capacity.Most * math.Sqrt(aluminiumShare)
	load := p.currents().Load(w)
	f.Message += fmt.Sprintf(", %s: it carries about %.0f A and not %s, and loses 1.6 times the voltage", w.Gauge, carries, amps(o.Capacity.Amps))
	switch {
	case load.Amps > carries:
		f.Severity, f.State = Fault, load.State
		f.Message += fmt.Sprintf("; %s flow for long (%s)", amps(load.Amps), load.State)
		f.Figure = Figure{What: "lasting current", Value: tenths(load.Amps), Limit: tenths(carries), Decides: "what aluminium of its size carries"}
	case areDevices(o.Exposure.Limits) && !o.Exposure.IsUnrated() && !p.exempt(l) && o.Exposure.Amps > most && o.Exposure.Amps <= o.Capacity.Most:
		f.Severity = Fault
		f.Subjects = append(f.Subjects, p.deviceSubjects(o.Exposure.Limits)...)
		f.Message += fmt.Sprintf("; %s is too large for it", p.namesOf(o.Exposure.Limits))
		f.Figure = Figure{What: "rating of the device", Value: unit.A(o.Exposure.Amps).Any(), Limit: tenths(most), Decides: "what aluminium of its size carries"}
	}
	p.report(f)
}

// materialWords is a metal as a sentence has it.
func materialWords(m model.Material) string {
	if m == model.CopperClad {
		return "copper-clad aluminium"
	}
	return string(m)
}

// tenths is a current as a quantity, to a tenth of an ampere.
func tenths(amps float64) unit.Any { return unit.A(math.Round(10*amps) / 10).Any() }
