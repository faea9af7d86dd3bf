package rule

import (
	"fmt"
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/support"
	"example.com/lugbook/model/unit"
)

var chargerMismatch = Rule{
	ID: "charger-mismatch", Title: "A charger does not suit the pack",
	Family: Charging, Severity: Danger,
	About: "Compares each charger with the pack or string that it charges: cells, the voltage that it goes up to, the current that it gives. " +
		"Overcharging is a danger, too much current a fault, never reaching the full charge a caution; a caution if typical figures " +
		"decide and the voltages are less than 10 % apart.",
	Why: "A lead battery forgives a charger that is a volt high: it gasses and loses water. A lithium cell does not. Above 3.65 V its electrolyte breaks down " +
		"and lithium plates onto the anode; the pack's own electronics are the last fence, and a charger made for lead leans on that fence every night " +
		"until it gives way. A charger that is too low never finishes: the pack is never balanced, its gauge never right.",
	Tell: "Read the end voltage on the charger's label and the cells on the pack's: 3.65 V a cell is full, 43.8 V for 12 cells, 58.4 V for 16, 87.6 V for 24. With the " +
		"charger on a pack that is nearly full, watch the DC volts at the pack's studs until it shuts off, and unplug it at once if they pass that figure. A charger whose selector says lead, AGM or gel " +
		"is set for lead.",
	Blind: "It takes the charger's label and the pack's record at their word: a selector switch inside, a curve set by wire, or a charger that asks the pack over " +
		"its bus is not seen. What the AC circuit carries is branch-circuit's matter, cold is cold-charging's.",
	Bad:   "a charger for 24 cells of lead, up to 58.8 V, on a pack of 15 cells of lithium, full at 54.8 V",
	Good:  "a charger of 54.8 V on the pack of 15 cells",
	Wrong: Example{Of: fifteenCells, But: []string{"part chg", "part chg charger-onboard-48v cells=24_cells charge-voltage=58.8V charge-current=18A"}},
	Right: Example{Of: fifteenCells},
	Basis: Basis{"a LiFePO4 cell is full at 3.65 V and must not be charged beyond; the pack's maker states voltage and current", "common practice, from memory; the makers' instructions stand above it"},

	Remedy: "leave it unplugged; fit a charger made for this pack, or set its curve",
	Run:    runChargerMismatch,
}

// fifteenCells is a pack of 15 cells with a charger set for it.
const fifteenCells = `
part pack lithium-pack-16 cells=15_cells voltage=48V full-voltage=54.8V charge-voltage=54.8V charge-current=50A
part fu2 fuse-cartridge fuse-rating=40A
part chg charger-onboard-48v cells=15_cells charge-voltage=54.8V charge-current=18A
wire c1 pack.POS fu2.in gauge=10AWG insulation=105C length=150mm
wire c2 fu2.out chg.DC+ gauge=10AWG insulation=105C length=900mm
wire c3 chg.DC- pack.NEG gauge=10AWG insulation=105C length=900mm
at pack.POS cover=fitted
at fu2.in cover=fitted
`

// classApart is how far the end voltages must differ for no label to make up for it. Our
// choice.
const classApart = 1.10

// chargeRatings are the figures that decide about a charger: its voltage is a danger, its
// current a fault.
var chargeRatings = map[Severity][]string{Danger: {"charge-voltage", "full-voltage", "cells"}, Fault: {"charge-current"}}

func runChargerMismatch(p *Pass) {
	if p.unsound() {
		return
	}
	for _, c := range p.support().Charging {
		judgements := againstPacks(c)
		parts := []model.PartID{c.Charger}
		apart := false
		for _, pack := range c.Packs {
			if len(pack.Reversed) > 0 {
				judgements = nil // the battery that is reversed is a finding of its own
			}
			parts = append(parts, pack.Name)
			apart = apart || pack.End > 0 && c.End > classApart*pack.End
		}
		var subjects []Subject
		for _, id := range parts {
			subjects = append(subjects, OfPart(id))
		}
		for _, g := range bySeverity(worse(judgements)) {
			f := Finding{
				Severity: g.severity, Message: fmt.Sprintf("%s: %s", c.Charger, g.text), State: "charging",
				Figure: chargeFigure(&c, g.severity), Subjects: subjects, Fixes: p.otherCharger(&c, g.severity),
			}
			if f.Severity != Caution && !apart && assumed(c.Assumptions, chargeRatings[f.Severity], parts...) {
				f.Severity = Caution
				f.Message += unconfirmed
			}
			p.report(f)
		}
	}
}

// bySeverity joins judgements of one severity: what is wrong with one charger in one way is one
// finding.
func bySeverity(list []graded) []graded {
	var joined []graded
	for _, g := range list {
		if i := slices.IndexFunc(joined, func(j graded) bool { return j.severity == g.severity }); i >= 0 {
			joined[i].text += "; " + g.text
			continue
		}
		joined = append(joined, g)
	}
	return joined
}

// chargeFigure is what a charger gives against what its pack takes.
func chargeFigure(c *support.Charging, of Severity) Figure {
	pack := c.Packs[0]
	if of == Fault {
		return Figure{What: "charging current", Value: unit.A(c.Amps / float64(len(c.Packs))).Any(), Limit: unit.A(pack.Charge).Any(), Decides: "the pack's charging limit"}
	}
	return Figure{What: "end voltage", Value: unit.V(c.End).Any(), Limit: unit.V(pack.End).Any(), Least: of == Caution, Decides: "the pack's full charge"}
}

// chargerFor lists the kinds of charger by the cells that they are made for.
var chargerFor = map[int]string{12: "charger-onboard-36v", 16: "charger-onboard-48v", 24: "charger-onboard-72v"}

// otherCharger is the exchange of a charger that overcharges for one of the library that is
// made for as many cells, what was read off the old label left behind.
func (p *Pass) otherCharger(c *support.Charging, of Severity) []edit.Edit {
	part := p.Net.Part(c.Charger)
	kind, known := chargerFor[c.Packs[0].Cells]
	if of != Danger || !known || len(c.Packs) > 1 || !c.Packs[0].IsLithium() || part.Kind == kind && len(part.Ratings) == 0 {
		return nil
	}
	was := p.Net.Cat.Definition(part.Kind)
	is := p.Net.Cat.Definition(kind)
	if was == nil || is == nil || !sameTerminals(was, is) {
		return nil
	}
	var edits []edit.Edit
	for _, r := range part.Ratings {
		edits = append(edits, p.rate(c.Charger, r.Name, unit.Any{}))
	}
	edits = append(edits, edit.SetPart{Sheet: p.Sheet.Name, ID: c.Charger, Field: "kind", Text: kind})
	return []edit.Edit{together(fmt.Sprintf("fit a %s for %s", kind, c.Charger), edits...)}
}

// sameTerminals reports whether one kind of part can take the place of another wire by wire.
func sameTerminals(a, b *model.Definition) bool {
	for _, t := range a.Terminals {
		if b.Terminal(t.Name) == nil {
			return false
		}
	}
	return true
}

// againstPacks are the judgements of a charger without that of the AC circuit, which is
// the last and rests on a circuit that nobody recorded.
func againstPacks(c support.Charging) []support.Judgement {
	if len(c.Packs) == 0 {
		return nil // that it charges nothing is a finding of its own
	}
	if c.AC != nil && c.Branch.Assumed {
		return c.Judgements[:len(c.Judgements)-1]
	}
	return c.Judgements
}
