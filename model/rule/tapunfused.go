package rule

import (
	"fmt"
	"math"
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/network"
)

var tapUnfused = Rule{
	ID: "tap-unfused", Title: "A tap on the pack has no fuse",
	Family: Protection, Severity: Danger,
	About: "Follows everything that conducts from each positive pole, contacts taken as closed, up to the first fuse or breaker. Each " +
		"branch off the traction path that reaches a charger, reducer, key switch, meter or load without one is reported " +
		"once, with all its wires; so is a tap on a battery inside the string.",
	Why: "A thin wire on the pack is a fuse wire without a holder. The pack drives as much into it as into the thickest cable, and a wire of " +
		"16 AWG glows through its insulation in less than a second, along its whole length, tied into the loom with all the others. Such " +
		"taps are added last, for a meter or a radio, and they are what burns carts.",
	Tell: "At every stud that is live with the key off, count the wires. Each thin one must come to a fuse within a hand's breadth. Pull the " +
		"fuse and measure behind it against the pack's negative: 0 V says that the fuse feeds it, pack voltage that the wire goes past it.",
	Blind: "Loose ends have rules of their own, and so has a fuse that sits too far along its wire. The leads of a resistor or diode on a stud " +
		"and motor leads behind a controller are left to practice. A fuse behind the main fuse that is too large for a tap is found as a " +
		"fuse larger than its wire.",
	Bad:    "a 16 AWG wire runs from the contactor to the key switch without a fuse, ahead of the main fuse",
	Good:   "a 10 A fuse a hand's breadth from the stud feeds the key switch",
	Wrong:  Example{Of: fusedTap, But: []string{"part fu3", "", "wire k1", "", "wire k2", "wire k2 pack.POS key.BAT gauge=16AWG insulation=105C length=2m", "at fu3.in", ""}},
	Right:  Example{Of: fusedTap},
	Basis:  Basis{"each ungrounded conductor has a fuse or breaker at its source", "33 CFR 183.455(a), (b)"},
	Remedy: "fit a fuse that the wire carries within 7 in of where the tap leaves",
	Run:    runTapUnfused,
}

// fusedTap is a key switch on a pack, with its fuse.
const fusedTap = `part pack lithium-pack-16
part fu3 fuse-cartridge fuse-rating=10A
part key key-switch
part sol contactor-48v
wire k1 pack.POS fu3.in gauge=16AWG insulation=105C length=100mm
wire k2 fu3.out key.BAT gauge=16AWG insulation=105C length=2m
wire k3 key.IGN sol.coil+ gauge=16AWG insulation=105C length=2m
wire k4 sol.coil- pack.NEG gauge=16AWG insulation=105C length=1m
part dio diode
wire d1 dio.cathode sol.coil+ gauge=18AWG insulation=105C length=60mm
wire d2 dio.anode sol.coil- gauge=18AWG insulation=105C length=60mm
stack sol.coil+ k3 d1
stack sol.coil- k4 d2
at pack.POS cover=fitted
at fu3.in cover=fitted`

func runTapUnfused(p *Pass) {
	told := map[*network.Link]bool{}
	for i := range p.fusing().entries {
		e := &p.fusing().entries[i]
		if !math.IsInf(e.Amps, 1) || e.Feed != nil && e.Feed.String == nil {
			continue
		}
		wires := p.fusible(e.Lead.Open)
		if e.Feed == nil || e.Feed.Whole {
			_, wires = p.split(wires)
		}
		wires = slices.DeleteFunc(wires, p.isJumper)
		for _, branch := range p.branches(wires, p.hubs(e.At)) {
			if told[branch[0]] {
				continue
			}
			for _, l := range branch {
				told[l] = true
			}
			f := Finding{Message: p.tapMessage(e, branch), Subjects: wireSubjects(branch)}
			if fix, ok := p.tapFuseFor(e, branch); ok {
				f.Fixes = []edit.Edit{fix}
			}
			p.report(f)
		}
	}
}

// isJumper reports whether a wire joins two batteries: it is part of a string and no tap on it.
func (p *Pass) isJumper(l *network.Link) bool {
	for _, e := range l.Wire.Ends() {
		if def := p.Net.DefinitionOf(e.At); def == nil || def.Family != model.Storage {
			return false
		}
	}
	return true
}

// tapFuseFor sets a fuse into a tap where it leaves; false if it leaves by more than one wire,
// or if no size fits both its wires and its load.
func (p *Pass) tapFuseFor(e *network.Entry, branch []*network.Link) (edit.Edit, bool) {
	first := branch[0]
	for _, l := range branch[1:] {
		if !p.comesThrough(e.Lead, l, first) {
			return nil, false
		}
	}
	flowing, peaks := p.carriedBy(branch)
	rating, fits := p.fuseBefore(branch, flowing, peaks)
	if !fits {
		return nil, false
	}
	return p.insertFuse(first, first.Other(p.farEnd(e.Lead, first)), rating)
}

func (p *Pass) tapMessage(e *network.Entry, branch []*network.Link) string {
	first := branch[0]
	from, to := first.A, first.B
	if e.Lead.Reach.Via(first.A) == first {
		from, to = to, from
	}
	gauge := ""
	if !first.Wire.Gauge.IsZero() {
		gauge = ", " + first.Wire.Gauge.String() + ","
	}
	message := fmt.Sprintf("%s%s takes %s to %s with no fuse or breaker from %s on", first.Wire.ID, gauge, p.at(from), p.at(to), p.at(e.At))
	if len(branch) > 1 {
		message += fmt.Sprintf("; nor have %s behind it", list(wireSubjects(branch[1:])))
	}
	return message
}
