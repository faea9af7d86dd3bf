package rule

import (
	"fmt"

	"example.com/lugbook/model/network"
)

var fuseTooLarge = Rule{
	ID: "fuse-too-large", Title: "A fuse is larger than its wire carries",
	Family: Protection, Severity: Danger,
	About: "Compares the device that limits the current in each wire with the wire's ampacity at its insulation class and " +
		"30 C. More than 150 % is a danger. From 50 V nominal up (a 16-cell pack has 51.2 V) the limit is the ampacity or " +
		"the next standard size, bundles of three and more carry less, and what lies between is a note. Silent about a short lead to " +
		"another device, the leads of a resistor or diode hung on a stud, and motor leads behind a controller.",
	Bad:  "a 60 A fuse feeds the key switch over 16 AWG",
	Good: "a 10 A fuse feeds the key switch over 16 AWG",
	Basis: Basis{"a device may be rated at 150 % of the conductor's ampacity in circuits under 50 V, and at the ampacity or the next " +
		"standard size, up to 150 %, from 50 V up", "33 CFR 183.455(c), with 183.425 table 5"},
	Remedy: "fit a fuse that the thinnest wire behind it carries, or a thicker wire",
	Run:    runFuseTooLarge,
}

func runFuseTooLarge(p *Pass) {
	f := p.fusing()
	for i := range f.entries {
		e := &f.entries[i]
		if !areDevices(e.Limits) {
			continue
		}
		for _, grave := range []load{over, strained} {
			p.reportTooLarge(e, f.loadedBy(e, grave), grave)
		}
	}
	for _, w := range f.unsized {
		p.missing(Gap{Datum: "the gauge", Field: "gauge", Decides: "whether " + p.namesOf(w.entry.Limits) + " protects the wire", Worst: Danger, Subjects: wireSubjects(w.wires)})
	}
	for _, w := range f.unclassd {
		p.missing(Gap{Datum: "the insulation class", Field: "insulation", Decides: "whether " + p.namesOf(w.entry.Limits) + " protects the wire", Worst: Fault, Subjects: wireSubjects(w.wires)})
	}
	for _, l := range f.unrated {
		p.missing(Gap{Datum: "the rated current", Field: "fuse-rating", Decides: "whether it protects the wires behind it", Worst: Danger, Subjects: []Subject{p.deviceSubject(l)}})
	}
}

// loadedBy lists the wires that one entry alone loads that far.
func (f *fusing) loadedBy(e *network.Entry, how load) []loaded {
	var list []loaded
	for _, w := range f.loaded {
		if w.entry == e && w.carries.load == how {
			list = append(list, w)
		}
	}
	return list
}

// reportTooLarge reports the wires of one device branch by branch, each by the wire that
// carries least.
func (p *Pass) reportTooLarge(e *network.Entry, wires []loaded, how load) {
	byWire := map[*network.Link]loaded{}
	var links []*network.Link
	for _, w := range wires {
		byWire[w.wire] = w
		links = append(links, w.wire)
	}
	for _, branch := range p.byBranch(links) {
		worst := byWire[branch[0]]
		for _, l := range branch {
			if byWire[l].carries.amps < worst.carries.amps {
				worst = byWire[l]
			}
		}
		finding := Finding{
			Message:  p.tooLargeMessage(e, worst, len(branch)-1),
			Subjects: append(p.deviceSubjects(e.Limits), wireSubjects(branch)...),
		}
		switch device := e.Limits[0]; {
		case how == strained:
			finding.Severity = Note
		case p.typical(device, device.Element.Amps):
			finding.Severity = Caution
			finding.Message += unconfirmed
		}
		p.report(finding)
	}
}

func (p *Pass) tooLargeMessage(e *network.Entry, worst loaded, more int) string {
	message := fmt.Sprintf("%s protects %s, %s, %s", p.namesOf(e.Limits), worst.wire.Wire.ID, worst.wire.Wire.Gauge, worst.carries)
	if more > 0 {
		message += fmt.Sprintf(", and %d more", more)
	}
	if worst.carries.load != strained {
		return message
	}
	message += fmt.Sprintf("; at %s nominal %s is the most", volts(p.nominalAt(worst.wire)), amps(worst.carries.limit))
	return message
}

// byBranch parts wires into the traction path and single taps.
func (p *Pass) byBranch(links []*network.Link) [][]*network.Link {
	trunk, rest := p.split(links)
	branches := p.branches(rest, p.hubs())
	if len(trunk) > 0 {
		branches = append([][]*network.Link{trunk}, branches...)
	}
	return branches
}
