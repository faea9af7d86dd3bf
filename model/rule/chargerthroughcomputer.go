package rule

import (
	"fmt"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

var chargeComputerLeft = Rule{
	ID: "charge-computer-left", Title: "A lithium pack's current still goes through the old charge computer",
	Family: Charging, Severity: Fault,
	About: "Looks for a charge computer of the lead-acid days, a part of the charging gear with a thick negative through it and no charger of its own, on the way between " +
		"a lithium pack and its charger or controller.",
	Why: "The computer was made to fill lead batteries: it decides from the energy counted out and in when the old charger's relay opens, it locks the " +
		"drive while its plug is in, and it draws a few milliamperes day and night. With a lithium pack its count is wrong, its lock-out answers to a plug that " +
		"is gone, and a new charger wired through it can be cut off, or not, by a part that nobody can set.",
	Tell: "Follow the thick negative from the pack: it must go to the shunt or straight to the controller, not through a black box with a hole or two studs. Leads of " +
		"grey or thin wire from that box to the old receptacle are its sense and lock-out leads.",
	Blind: "It knows a computer by its kind in the library. One that was recorded as unknown, or as a mere bar, is not told. Where its lock-out is left open, does-not-drive says so.",
	Bad:   "the pack's negative still goes through the computer to the controller",
	Good:  "the computer is out; the pack's negative goes to the controller",
	Wrong: Example{Of: withComputer},
	Right: Example{Of: withComputer, But: []string{
		"part comp", "", "wire w4", "wire w4 ctrl.B- pack.NEG gauge=2AWG insulation=105C length=700mm", "wire w5", "",
		"wire k1", "", "wire c3", "wire c3 chg.DC- pack.NEG gauge=10AWG insulation=105C length=900mm", "stack comp.NEG-CART", "stack pack.NEG w4 c3", "stack fu2.out", "",
	}},
	Basis: Basis{"the computer was made for the old charger and for lead batteries; with both gone it has nothing to decide", Practice},

	Remedy: "take the computer out: join the thick negative past it, close or take over its lock-out, cap and label its thin leads at both ends or pull them",
	Run:    runChargeComputerLeft,
}

// withComputer is a lithium pack whose negative goes through a charge computer.
const withComputer = `
part pack lithium-pack-16
part fu1 fuse-class-t fuse-rating=200A
part sol contactor-48v
part pre precharge-resistor
part ctrl controller-series
part comp charge-computer-signal
part fu2 fuse-cartridge fuse-rating=40A
part chg charger-onboard-48v
wire w1 pack.POS fu1.in gauge=2AWG insulation=105C length=150mm
wire w2 fu1.out sol.L1 gauge=2AWG insulation=105C length=600mm
wire w3 sol.L2 ctrl.B+ gauge=2AWG insulation=105C length=300mm
wire w4 ctrl.B- comp.NEG-CART gauge=2AWG insulation=105C length=400mm
wire w5 comp.NEG-PACK pack.NEG gauge=2AWG insulation=105C length=300mm
wire p1 sol.L1 pre.a gauge=18AWG insulation=105C length=80mm
wire p2 sol.L2 pre.b gauge=18AWG insulation=105C length=80mm
wire c1 chg.DC+ fu2.in gauge=10AWG insulation=105C length=900mm
wire c2 fu2.out sol.L1 gauge=10AWG insulation=105C length=120mm
wire c3 chg.DC- comp.NEG-CART gauge=10AWG insulation=105C length=900mm
wire k1 fu2.out comp.supply gauge=16AWG insulation=105C length=100mm
stack sol.L1 w2 c2 p1
stack sol.L2 w3 p2
stack fu2.out c2 k1
stack comp.NEG-CART w4 c3
at pack.POS cover=fitted
at fu1.in cover=fitted
`

func runChargeComputerLeft(p *Pass) {
	if p.unsound() {
		return
	}
	lithium, ok := p.lithiumPack()
	if !ok {
		return
	}
	told := map[model.PartID]bool{}
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if !l.Is(model.JoinElement) || !isChargeComputer(l.Def) || told[l.Part.ID] {
			continue
		}
		if !p.wired(l.A) || !p.wired(l.B) {
			continue // its window is empty: what hangs on its thin leads is a matter of loose ends
		}
		told[l.Part.ID] = true
		p.report(Finding{
			Message:  fmt.Sprintf("the negative of %s goes through %s, %s to %s: it was made for the old charger and lead batteries", lithium, l.Part.ID, p.at(l.A), p.at(l.B)),
			Subjects: []Subject{OfPart(l.Part.ID), OfPart(lithium)},
		})
	}
}

// isChargeComputer tells a charge computer: charging gear with a thick conductor through it
// and no charger in it.
func isChargeComputer(d *model.Definition) bool {
	if d.Family != model.ChargeGear {
		return false
	}
	through := false
	for _, e := range d.Elements {
		if e.Is == model.ChargerElement {
			return false
		}
		through = through || e.Is == model.JoinElement
	}
	return through
}

// lithiumPack is the first pack of lithium cells on the sheet: 2.5 V and more a cell.
func (p *Pass) lithiumPack() (model.PartID, bool) {
	for _, f := range p.protection().Feeds {
		if f.String == nil || !f.Whole {
			continue
		}
		part := f.Link.Part
		cells, counted := p.Net.Figure(part, "cells")
		volts, known := p.Net.Figure(part, network.NominalRating)
		if counted && known && cells > 0 && volts/cells > lithiumCell {
			return part.ID, true
		}
	}
	return "", false
}

// lithiumCell is the nominal voltage of a cell above which it is no lead cell: 2 V against
// 3.2 V and more.
const lithiumCell = 2.5
