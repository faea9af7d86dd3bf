package rule

import (
	"fmt"
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/opening"
)

var returnOverload = Rule{
	ID: "return-overload", Title: "A return wire carries less than what can come back through it",
	Family: Protection, Severity: Danger,
	About: "Computes the most that can come back through each wire of the negative side and last: the sum of all devices whose circuits " +
		"end before it, with a short inside every part on the way. Negatives that are chained through one wire add up. More than 150 % of what " +
		"the wire carries is a danger, between that and the rule for the circuit's voltage a note; a caution if a typical rating decides, or " +
		"if the job or the house rule has chosen the stricter rule.",
	Why: "What goes out comes back. Every fuse sits on the positive side, so a short lets its whole rating come home through whatever negative the " +
		"circuit has; where several negatives are chained from part to part, the last piece carries the sum. It is the wire that nobody " +
		"thinks of as fused, thin because it only grounds a lamp, and it burns like any other.",
	Tell: "At each part count the negative wires. Two on one terminal mean a chain: follow it to the bus, and add up the fuses of everything that " +
		"hangs on it. Hold the sum against the thinnest piece. With a clamp meter for DC on the last piece and all lamps on, the reading is the " +
		"sum of the loads.",
	Blind: "Computes the most that lasts with every part of a circuit shorted inside, two in a row as well, which a cart may never see. Where nothing limits the current it is " +
		"silent, for other rules speak of the missing fuse. The frame as a return is another rule's. Motor leads, and the leads from a shunt to its meter, " +
		"are left out, and a lead between a part and the switch in its return is taken to carry no more than the part takes.",
	Bad:    "what a 10 A fuse feeds over 16 AWG goes home through 22 AWG",
	Good:   "it goes home through a wire as thick as its positive",
	Wrong:  Example{Of: fusedTap, But: []string{"wire k4", "wire k4 sol.coil- pack.NEG gauge=22AWG insulation=105C length=1m"}},
	Right:  Example{Of: fusedTap},
	Basis:  Basis{"a conductor is protected against what its devices let through, on its way back as well", "33 CFR 183.455(c), with 183.425 table 5"},
	Remedy: "fit a return wire as thick as the wires that feed it together, or bring each negative to the bus by itself",
	Run:    runReturnOverload,
}

// returning is a return wire that carries too little.
type returning struct {
	wire    *network.Link
	limits  []*network.Link
	amps    float64
	carries carrying
}

func runReturnOverload(p *Pass) {
	if p.misconnected() {
		return
	}
	for _, grave := range []load{over, strained} {
		var groups [][]returning
		for _, r := range p.returning(grave) {
			same := func(g []returning) bool { return slices.Equal(g[0].limits, r.limits) }
			if i := slices.IndexFunc(groups, same); i >= 0 {
				groups[i] = append(groups[i], r)
			} else {
				groups = append(groups, []returning{r})
			}
		}
		for _, g := range groups {
			p.reportReturning(g)
		}
	}
}

// returning lists the return wires that are loaded so far.
func (p *Pass) returning(how load) []returning {
	var list []returning
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if l.Kind != network.WireLink || p.isSenseLead(l) {
			continue
		}
		c := p.guard().Outline(l)
		if !c.Returns || len(c.Exposure.Limits) == 0 || c.Exposure.IsUnrated() || c.Protected() == opening.Yes {
			continue
		}
		if k := p.loadOf(l.Wire, c.Exposure.Amps, c.Nominal); k.load == how {
			list = append(list, returning{l, c.Exposure.Limits, c.Exposure.Amps, k})
		}
	}
	return list
}

// isSenseLead reports whether a wire runs between a shunt and its meter: no more drives a
// current through it than the millivolts of the shunt.
func (p *Pass) isSenseLead(l *network.Link) bool {
	metering := func(at network.Node) bool {
		d := p.Net.DefinitionOf(p.Net.Point(at).At)
		return d != nil && d.Family == model.Metering
	}
	return metering(l.A) && metering(l.B)
}

// reportReturning reports the wires that the same devices load, by the one that carries
// least.
func (p *Pass) reportReturning(g []returning) {
	worst := g[0]
	var wires []*network.Link
	for _, r := range g {
		wires = append(wires, r.wire)
		if r.carries.amps < worst.carries.amps {
			worst = r
		}
	}
	f := Finding{
		Message: fmt.Sprintf("%s can come back through %s, %s, %s: from %s",
			amps(worst.amps), worst.wire.Wire.ID, worst.wire.Wire.Gauge, worst.carries, p.namesOf(worst.limits)),
		Figure:   worst.carries.figure("what can come back", worst.amps),
		Subjects: append(wireSubjects(wires), p.deviceSubjects(worst.limits)...),
	}
	if fix, ok := p.thickEnough(wires, worst.amps, func(l *network.Link) float64 { return p.guard().Outline(l).Nominal }); ok {
		f.Fixes = []edit.Edit{fix}
	}
	if len(g) > 1 {
		f.Message += fmt.Sprintf(", and through %d more", len(g)-1)
	}
	typical := func(l *network.Link) bool { return p.typical(l, l.Element.Amps) }
	switch {
	case worst.carries.load == strained:
		f.Severity = worst.carries.strain()
	case slices.ContainsFunc(worst.limits, typical):
		f.Severity = Caution
		f.Message += unconfirmed
	}
	p.report(f)
}
