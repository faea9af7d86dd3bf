package rule

import (
	"cmp"
	"fmt"
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/basis"
	"example.com/lugbook/model/conductor"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/network"
)

var unequalParallels = Rule{
	ID: "unequal-parallels", Title: "Cables side by side share their current unevenly",
	Family: Conductors, Severity: Caution,
	About: "Finds wires that join the same two places and compares their resistances, by size, length and the condition of their joints. Speaks if " +
		"one is off by more than a tenth, unless the job has another limit, and tells what the better one carries. A fault if that is more than its ampacity.",
	Why: "Two cables side by side share the current by their resistances, not by halves: the thicker, the shorter or the one with the cleaner lugs takes most of it. " +
		"Two of the same size are often laid where one was too thin, and then one alone does the work and runs hot. When its lug gives way the other gets all of it at once.",
	Tell: "Put a clamp meter for DC round one cable and then round the other with the load on: the readings should be within a tenth of each other. " +
		"Without a clamp, measure the millivolts along the same length of each: they are the same where the currents are, for the same size.",
	Blind: "Silent about wires whose size or length is not recorded, but asks for them. It takes both for copper at the same temperature, and each joint for good unless its condition is recorded. " +
		"Packs or strings side by side are another matter.",
	Bad: "a 10 AWG and a 14 AWG wire side by side from a pump to the pack", Good: "two 10 AWG wires of the same length",
	Wrong: Example{Of: twinReturn, But: []string{"wire w5", "wire w5 pump.- pack.NEG gauge=14AWG insulation=105C length=1m"}},
	Right: Example{Of: twinReturn},
	Basis: Basis{"conductors in parallel are of the same length, material, size and insulation and end in the same way, so that they share the current",
		"NEC 310.10(G), from memory; the shares follow from the circuit"},
	Remedy: "lay one cable of the size that is needed, or two of the same size, length and lugs",
	Run:    runUnequalParallels,
}

// twinReturn is a pump of 55 A with two wires side by side on its return.
const twinReturn = `
part pack lithium-pack-16
part fu1 fuse-class-t fuse-rating=60A
part sw switch
part pump pump-motor current=55A
wire w1 pack.POS fu1.in gauge=6AWG insulation=105C length=150mm
wire w2 fu1.out sw.IN gauge=6AWG insulation=105C length=1m
wire w3 sw.OUT pump.+ gauge=6AWG insulation=105C length=1m
wire w4 pump.- pack.NEG gauge=10AWG insulation=105C length=1m
wire w5 pump.- pack.NEG gauge=10AWG insulation=105C length=1m
stack pack.NEG w4 w5
at pack.POS cover=fitted
at fu1.in cover=fitted`

func runUnequalParallels(p *Pass) {
	if p.unsound() {
		return
	}
	for _, g := range p.parallels() {
		p.judgeParallels(g)
	}
}

// parallels lists the wires that join the same two pieces of metal and carry current.
func (p *Pass) parallels() [][]*network.Link {
	bars := p.Net.Joined(func(l *network.Link) bool { return l.Is(model.JoinElement) })
	var order [][2]int
	of := map[[2]int][]*network.Link{}
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if l.Kind != network.WireLink || bars.Same(l.A, l.B) {
			continue
		}
		key := [2]int{bars.Of(l.A), bars.Of(l.B)}
		slices.Sort(key[:])
		if of[key] == nil {
			order = append(order, key)
		}
		of[key] = append(of[key], l)
	}
	var list [][]*network.Link
	for _, key := range order {
		if g := of[key]; len(g) > 1 && p.currents().Load(g[0].Wire).Amps >= leastShared {
			list = append(list, g)
		}
	}
	return list
}

// leastShared is the current in amperes below which nobody minds how wires share it. Our choice.
const leastShared = 0.5

func (p *Pass) judgeParallels(g []*network.Link) {
	ohms := map[*network.Link]float64{}
	var unknown []Subject
	for _, l := range g {
		var assumed bool
		if ohms[l], assumed = p.Net.WireOhms(l); assumed {
			unknown = append(unknown, OfWire(l.Wire.ID))
		}
	}
	if len(unknown) > 0 {
		p.askSizes(unknown, "how the wires side by side share the current")
		return
	}
	byOhms := func(a, b *network.Link) int { return cmp.Compare(ohms[a], ohms[b]) }
	best, worst := slices.MinFunc(g, byOhms), slices.MaxFunc(g, byOhms)
	limit, source := p.limitFrom(basis.ParallelSpread)
	spread := ohms[worst]/ohms[best] - 1
	if spread <= limit.SI() {
		return
	}
	load, total := p.currents().Load(best.Wire), 0.0
	for _, l := range g {
		total += p.currents().Load(l.Wire).Amps
	}
	subjects := []Subject{OfWire(best.Wire.ID)}
	f := Finding{
		Message: fmt.Sprintf("%s lie side by side: %s takes %.0f %% of %s", p.sized(g), best.Wire.ID, 100*load.Amps/total, amps(total)),
		State:   load.State, Subjects: appendNew(subjects, wireSubjects(g)...), Fixes: p.evenOut(g, limit.SI()),
		Figure: Figure{What: "spread of their resistances", Value: share(spread), Limit: limit, Decides: source},
	}
	p.weighShare(&f, best, load.Amps)
	p.report(f)
}

// weighShare compares what the better wire takes with what it carries.
func (p *Pass) weighShare(f *Finding, best *network.Link, takes float64) {
	carries := p.guard().Outline(best).Capacity
	switch {
	case carries.Missing != "" || carries.Assumed:
		return
	case takes <= carries.Amps:
		f.Message += fmt.Sprintf(", %s of the %s that it carries", amps(takes), amps(carries.Amps))
		return
	}
	f.Message += fmt.Sprintf(", %s, %.0f %% over the %s that it carries", amps(takes), 100*(takes/carries.Amps-1), amps(carries.Amps))
	f.Severity = Fault
	if p.drivesByMemory(p.currents().Load(best.Wire)) {
		f.Severity = Caution
		f.Message += unconfirmed
	}
}

// sized names wires with their sizes and lengths.
func (p *Pass) sized(g []*network.Link) string {
	var words []string
	for _, l := range g {
		metres, _ := p.Net.Length(l.Wire)
		words = append(words, fmt.Sprintf("%s (%s, %.0f mm)", l.Wire.ID, l.Wire.Gauge, 1000*metres))
	}
	return listWords(words)
}

// evenOut is the edit that makes the thinner of several wires as thick as the thickest, if they
// then share the current.
func (p *Pass) evenOut(g []*network.Link, limit float64) []edit.Edit {
	thickest := slices.MaxFunc(g, func(a, b *network.Link) int { return a.Wire.Gauge.Compare(b.Wire.Gauge) }).Wire.Gauge
	least, most := 0.0, 0.0
	var edits []edit.Edit
	for i, l := range g {
		ohms, _ := p.Net.WireOhms(l)
		metres, _ := p.Net.Length(l.Wire)
		now, _ := conductor.OhmsPerMetre(l.Wire.Gauge, roomCelsius)
		then, _ := conductor.OhmsPerMetre(thickest, roomCelsius)
		ohms += (then - now) * metres
		least, most = min(least, ohms), max(most, ohms)
		if i == 0 {
			least = ohms
		}
		if l.Wire.Gauge.Compare(thickest) < 0 {
			edits = append(edits, p.setWire(l.Wire.ID, "gauge", thickest.String()))
		}
	}
	if len(edits) == 0 || most/least-1 > limit {
		return nil
	}
	return []edit.Edit{together(fmt.Sprintf("make them all %s", thickest), edits...)}
}

// roomCelsius is the temperature at which resistances of wires are compared.
const roomCelsius = 20
