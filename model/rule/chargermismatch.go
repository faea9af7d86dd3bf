package rule

import (
	"fmt"
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/support"
)

var chargerMismatch = Rule{
	ID: "charger-mismatch", Title: "A charger does not suit the pack",
	Family: Charging, Severity: Danger,
	About: "Compares each charger with the pack or string that it charges: cells, the voltage that it goes up to, the current that it gives. " +
		"Overcharging is a danger, too much current or none at all at rest a fault, never reaching the full charge a caution; a caution if typical figures " +
		"decide and the voltages are less than 10 % apart. The AC circuit is judged by the support command, for no sheet records it.",
	Bad:    "a charger that goes up to 58.8 V for lead on a 15-cell pack of 54.8 V",
	Good:   "a charger of 58.4 V on a pack of 16 cells",
	Basis:  Basis{"a LiFePO4 cell is full at 3.65 V and must not be charged beyond; the pack's maker states voltage and current", "common practice, from memory; the makers' instructions stand above it"},
	Remedy: "fit a charger made for this pack, or set its curve",
	Run:    runChargerMismatch,
}

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
		if len(c.Packs) == 0 {
			p.reportIdle(c)
			continue
		}
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
		for _, g := range worse(judgements) {
			f := Finding{Severity: g.severity, Message: fmt.Sprintf("%s: %s", c.Charger, g.text), Subjects: subjects}
			if f.Severity != Caution && !apart && assumed(c.Assumptions, chargeRatings[f.Severity], parts...) {
				f.Severity = Caution
				f.Message += unconfirmed
			}
			p.report(f)
		}
	}
}

// reportIdle speaks of a charger that charges nothing though a lead of it is on the sheet.
func (p *Pass) reportIdle(c support.Charging) {
	pack, ok := p.mainString()
	l := p.chargerOf(c.Charger)
	if !ok || l == nil || !p.wired(l.A) && !p.wired(l.B) || p.isReversed(l) {
		return
	}
	f := Finding{
		Severity: Fault, Message: fmt.Sprintf("%s charges nothing while it is plugged in and the cart is parked", c.Charger),
		Subjects: append([]Subject{OfPart(c.Charger)}, stringSubjects(pack)...),
		Remedy:   "follow both leads of the charger to the poles of the pack",
	}
	if c.End > 0 && c.End < pack.Volts {
		f.Message += fmt.Sprintf(": it goes up to %s, and the pack rests at %s", volts(c.End), volts(pack.Volts))
		f.Remedy = ""
		if c.End*classApart > pack.Volts && assumed(c.Assumptions, chargeRatings[Danger], c.Charger) {
			f.Severity = Caution
			f.Message += unconfirmed
		}
	}
	p.report(f)
}

// chargerOf is the link of a charger; nil if the part is none.
func (p *Pass) chargerOf(id model.PartID) *network.Link {
	for i := range p.Net.Links() {
		if l := &p.Net.Links()[i]; l.Is(model.ChargerElement) && l.Part.ID == id {
			return l
		}
	}
	return nil
}

// isReversed reports whether a device is a finding of the polarity rules.
func (p *Pass) isReversed(l *network.Link) bool {
	return slices.ContainsFunc(p.survey().reversed(chargerRole), func(d device) bool { return d.link == l })
}

// againstPacks are the judgements of a charger without that of the AC circuit, which is
// the last and rests on a circuit that nobody recorded.
func againstPacks(c support.Charging) []support.Judgement {
	if c.AC != nil && c.Branch.Assumed {
		return c.Judgements[:len(c.Judgements)-1]
	}
	return c.Judgements
}
