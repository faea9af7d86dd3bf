package rule

import (
	"fmt"
	"slices"

	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/network"
)

var fuseTooLarge = Rule{
	ID: "fuse-too-large", Title: "A fuse is larger than its wire carries",
	Family: Protection, Severity: Danger,
	About: "Compares the device that limits the current in each wire with the wire's ampacity at its insulation class and " +
		"30 C. More than 150 % is a danger. From 50 V nominal up (a 16-cell pack has 51.2 V) the limit is the ampacity or " +
		"the next standard size, bundles of three and more carry less, and what lies between is a note. The house rule allows the " +
		"ampacity alone; what a job has chosen so is a caution. A wire below 18 AWG takes 5 A; up to 7.5 A before 20 AWG is a note. Says so if a thinner wire goes on from a thicker one.",
	Why: "A fuse is there for its wire. The load takes what it takes; a fault takes what the fuse lets through, for ever. A wire that carries " +
		"more than its ampacity gets hotter than its insulation stands: it softens, two conductors meet inside the loom, and the rest is a " +
		"fire behind the dash with a whole fuse. It happens where a blown fuse was replaced by the next larger one in the box, and where " +
		"somebody spliced a thin wire onto a thick one that had a fuse for the thick one.",
	Tell: "Read the number on the fuse, and the size printed on the thinnest wire behind it, up to the next fuse. 16 AWG of 105 C takes " +
		"25 A, 12 AWG 45 A, 10 AWG 60 A. Follow the wire past every splice, post and plug: what leaves thinner counts. If nothing " +
		"is printed, measure across the bare strands, twisted tight: about 1.5 mm is 16 AWG, 2.4 mm is 12.",
	Blind: "Goes by 30 C around the wire; a hot bay takes some off. An insulation class that is not recorded is not held against the wire: " +
		"it is asked for where it decides. The time that the fuse takes is another rule's matter. A short lead to another device is held against that device alone; the leads " +
		"of a resistor or diode hung on a stud, and motor leads behind a controller are left to practice.",
	Bad:   "a 60 A fuse feeds the key switch over 16 AWG",
	Good:  "a 10 A fuse feeds the key switch over 16 AWG",
	Wrong: Example{Of: fusedTap, But: []string{"part fu3", "part fu3 fuse-cartridge fuse-rating=60A"}},
	Right: Example{Of: fusedTap},
	Basis: Basis{"a device may be rated at 150 % of the conductor's ampacity in circuits under 50 V, and at the ampacity or the next " +
		"standard size, up to 150 %, from 50 V up; before 20 and 22 AWG a fuse of 5 A, before 20 AWG a breaker of 7.5 A", "33 CFR 183.455(c), with 183.425 table 5; FAA AC 43.13-1B table 11-3"},
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
	for i := 0; i < len(f.leads); {
		same := i + 1
		for same < len(f.leads) && slices.Equal(f.leads[same].limits, f.leads[i].limits) {
			same++
		}
		if !f.isTold(f.leads[i].limits) {
			p.reportTooLarge(f.leads[i].entry, f.leads[i:same], over)
		}
		i = same
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

// withLeads adds to some wires behind devices the leads before these that carry as little.
func (p *Pass) withLeads(devices, wires []*network.Link) []*network.Link {
	wires = slices.Clone(wires)
	for _, w := range p.fusing().leads {
		if slices.Equal(w.limits, devices) && !slices.Contains(wires, w.wire) {
			wires = append(wires, w.wire)
		}
	}
	return wires
}

// isTold reports whether some devices are too large for a wire behind them already.
func (f *fusing) isTold(devices []*network.Link) bool {
	return slices.ContainsFunc(f.loaded, func(w loaded) bool {
		return w.entry != nil && w.carries.load == over && slices.Equal(w.limits, devices)
	})
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
			Figure:   worst.carries.figure("rating", e.Amps),
			Subjects: append(p.deviceSubjects(e.Limits), wireSubjects(branch)...),
			Fixes:    p.smallerOrThicker(e, p.withLeads(e.Limits, branch)),
		}
		switch device := e.Limits[0]; {
		case how == strained:
			finding.Severity = worst.carries.strain()
		case p.typical(device, device.Element.Amps):
			finding.Severity = Caution
			finding.Message += unconfirmed
		}
		p.report(finding)
	}
}

func (p *Pass) tooLargeMessage(e *network.Entry, worst loaded, more int) string {
	message := fmt.Sprintf("%s protects %s, %s, %s", p.namesOf(e.Limits), worst.wire.Wire.ID, worst.wire.Wire.Gauge, worst.carries)
	if before, at := p.thickerBefore(e, worst.wire); before != nil {
		message = fmt.Sprintf("%s, %s, goes on from %s, %s, at %s without a smaller fuse: %s protects it, and it carries %s",
			worst.wire.Wire.ID, worst.wire.Wire.Gauge, before.Wire.ID, before.Wire.Gauge, p.at(at), p.namesOf(e.Limits), worst.carries)
	}
	if more > 0 {
		message += fmt.Sprintf("; %d more behind it", more)
	}
	if worst.carries.load != strained || worst.carries.thin {
		return message
	}
	message += fmt.Sprintf("; at %s nominal %s is the most", volts(p.nominalAt(worst.wire)), amps(worst.carries.limit))
	return message
}

// thickerBefore is the thicker wire that a wire goes on from over metal alone, such as a splice,
// a post or a plug, with the point where it does; nil if there is none.
func (p *Pass) thickerBefore(e *network.Entry, l *network.Link) (*network.Link, network.Node) {
	at := l.Other(p.farEnd(e.Lead, l))
	for from := at; ; {
		via := e.Lead.Reach.Via(from)
		switch {
		case via == nil || !via.IsMetal():
			return nil, at
		case via.Kind != network.WireLink:
			from = via.Other(from)
			continue
		case via.Wire.Gauge.IsZero() || via.Wire.Gauge.Compare(l.Wire.Gauge) <= 0:
			return nil, at
		}
		return via, at
	}
}

// smallerOrThicker are the ways out for a branch: the fuse that it allows in place of the one
// before it, or of its own where it leaves; or wire for the fuse that is there.
func (p *Pass) smallerOrThicker(e *network.Entry, branch []*network.Link) []edit.Edit {
	var fixes []edit.Edit
	smaller, ok := edit.Edit(nil), false
	if len(e.Limits) == 1 {
		smaller, ok = p.smallerFuse(e.Limits[0], branch)
	}
	if !ok {
		smaller, ok = p.tapFuseFor(e, branch)
	}
	if ok {
		fixes = append(fixes, smaller)
	}
	if fix, ok := p.thickEnough(branch, e.Amps, p.nominalAt); ok {
		fixes = append(fixes, fix)
	}
	return fixes
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
