package rule

import (
	"fmt"
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

var fuseInterrupting = Rule{
	ID: "fuse-interrupting", Title: "A fuse cannot break the fault current",
	Family: Fusing, Severity: Danger,
	About: "Compares the interrupting rating of the first fuse or breaker on each way from a string or pack with what a dead short " +
		"right behind it would draw, by the resistance of the batteries and the wires before it. A device behind an " +
		"adequate one is left to it. If a typical figure of the library decides, it is a caution.",
	Bad:  "a blade fuse that breaks 1000 A, right at a pack that drives 3550 A through a short",
	Good: "a class T fuse that breaks 20 kA at the pack",
	Basis: Basis{"a device that opens against more than its interrupting rating may burst or keep an arc; it must be at least the source's " +
		"short-circuit current", "ABYC E-11, interrupting capacity of main devices"},
	Remedy: "fit a fuse with a DC interrupting rating above the fault current as the first one on the pack",
	Run:    runFuseInterrupting,
}

// interruptingRating is the figure that the library gives the breaking capacity of a device.
const interruptingRating = "interrupting-rating"

func runFuseInterrupting(p *Pass) {
	told := map[model.PartID]bool{}
	for _, e := range p.fusing().entries {
		if e.Feed == nil || e.Feed.String == nil || !e.Feed.Whole {
			continue
		}
		devices := slices.Clone(e.Lead.Devices)
		for _, d := range e.Limits {
			devices = append(devices, network.Met{Device: d})
		}
		for _, m := range devices {
			if !told[m.Device.Part.ID] {
				told[m.Device.Part.ID] = true
				p.judgeInterrupting(e.Feed, m)
			}
		}
	}
}

func (p *Pass) judgeInterrupting(f *network.Feed, m network.Met) {
	rated := p.Net.KnownFigure(m.Device.Part, interruptingRating)
	if !rated.OK {
		p.missing("the interrupting rating", "whether it can break the fault current", OfPart(m.Device.Part.ID))
		return
	}
	fault := p.faultCurrent(f, m.Path)
	if !fault.OK {
		p.missing("the internal resistance", "which fuses can break the fault current", stringSubjects(*f.String)...)
		return
	}
	if fault.Value <= rated.Value {
		return
	}
	finding := Finding{
		Message: fmt.Sprintf("%s breaks %s; a short behind it draws %s from %s",
			p.partName(m.Device), amps(rated.Value), aboutAmps(fault.Value), p.at(f.At)),
		Subjects: []Subject{OfPart(m.Device.Part.ID), p.terminal(f.At)},
	}
	if rated.IsTypical() || fault.IsTypical() {
		finding.Severity = Caution
		finding.Message += unconfirmed
	}
	p.report(finding)
}
