package rule

import (
	"fmt"
	"math"
	"slices"

	"example.com/lugbook/model/conductor"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/protect"
	"example.com/lugbook/model/unit"
)

var fuseTooFar = Rule{
	ID: "fuse-too-far", Title: "A fuse sits too far from its source",
	Family: Protection, Severity: Fault,
	About: "Measures along the conductors that lead to a fuse or breaker and are not protected by anything before it: from the " +
		"post, or from where a tap leaves a larger conductor. Up to 7 in is allowed, up to 40 in if they are sheathed all the way; " +
		"72 in from a battery post in a sheath is a note, and by the house rule a fault.",
	Why: "Whatever lies between the source and the fuse has no fuse. A cable that chafes through there burns as if there were none, and " +
		"behind the fuse it would only have blown it. A hand's breadth is what can be seen and held; a metre of cable runs past " +
		"brackets, frame edges and moving parts.",
	Tell: "Lay a tape along the conductor, not through the air, from the stud to the fuse's terminal: 7 in, 178 mm, is the most. In a conduit or " +
		"a loom sheath from end to end it is 40 in. A fuse in the dash whose wire starts at the battery protects the dash alone.",
	Blind: "Measures a length only where somebody recorded it, or where the zones of both ends have a run between them; else it asks. A wire " +
		"that an earlier fuse protects anyway is left alone, and so is the output of a charger or reducer that limits itself. It takes the " +
		"word of the record for a sheath.",
	Bad:   "the main fuse sits 30 in along an open cable from pack.POS",
	Good:  "the main fuse sits 6 in along the cable from pack.POS",
	Wrong: Example{Of: fusedPack, But: []string{"wire w1", "wire w1 pack.POS fu1.in gauge=2AWG insulation=105C length=30in"}},
	Right: Example{Of: fusedPack},
	Basis: Basis{"the device sits at the source, or within 7 in of it along the conductor, or within 40 in in a sheath or enclosure",
		"33 CFR 183.455(b)"},
	Remedy: "move the fuse to the source, or sheathe the cable if 40 in are enough",
	Run:    runFuseTooFar,
}

func runFuseTooFar(p *Pass) {
	told := map[string]bool{}
	for i := range p.fusing().entries {
		e := &p.fusing().entries[i]
		if e.Feed != nil && e.Feed.String == nil {
			continue
		}
		open := map[*network.Link]bool{}
		for _, l := range e.Lead.Open {
			open[l] = true
		}
		for _, m := range p.waysTo(e) {
			a := p.approach(e, m, open)
			key := p.deviceSubject(m.Device).String() + " " + list(wireSubjects(a.wires))
			if len(a.wires) == 0 || told[key] {
				continue
			}
			told[key] = true
			p.judgeApproach(e, m, a)
		}
	}
}

// waysTo lists the devices that end an entry's lead-in with the way there, and a way more for each
// further wire that lands on a device from nearer the source.
func (p *Pass) waysTo(e *network.Entry) []network.Met {
	list := slices.Clone(e.Lead.Devices)
	reach := e.Lead.Reach
	for _, m := range e.Lead.Devices {
		for _, l := range p.Net.LinksAt(m.At) {
			from := l.Other(m.At)
			if l.Kind == network.WireLink && l != reach.Via(m.At) && l != reach.Via(from) && reach.Has(from) && from != m.At && reach.Metres(from) <= reach.Metres(m.At) {
				list = append(list, network.Met{Device: m.Device, At: m.At, Path: append(reach.Path(from), l)})
			}
		}
	}
	return list
}

// approach is the unprotected way to a device.
type approach struct {
	wires     []*network.Link // from the source to the device
	metres    float64
	unknown   []*network.Link // wires whose length is not recorded
	sheathed  bool
	fromStart bool // the way begins where current enters
}

// approach follows the way back from a device as far as the wires on it lead to
// devices alone and are not protected by what is before.
func (p *Pass) approach(e *network.Entry, m network.Met, open map[*network.Link]bool) approach {
	a := approach{sheathed: true, fromStart: true}
	for i := len(m.Path) - 1; i >= 0; i-- {
		l := m.Path[i]
		if l.Kind != network.WireLink {
			continue
		}
		if open[l] || !p.unprotected(e, l) {
			a.fromStart = false
			break
		}
		a.wires = append([]*network.Link{l}, a.wires...)
		a.sheathed = a.sheathed && l.Wire.Sheathed
		if length, known := p.Net.Length(l.Wire); known {
			a.metres += length
		} else {
			a.unknown = append(a.unknown, l)
		}
	}
	return a
}

// unprotected reports whether an entry lets more into a wire than it carries.
func (p *Pass) unprotected(e *network.Entry, l *network.Link) bool {
	if math.IsInf(e.Amps, 1) {
		return true
	}
	return !e.IsUnrated() && p.loadOf(l.Wire, e.Amps, p.nominalAt(l)).load == over
}

func (p *Pass) judgeApproach(e *network.Entry, m network.Met, a approach) {
	battery := a.fromStart && e.Feed != nil && e.Feed.String != nil
	allowed := protect.Placement(p.Job, a.sheathed, battery)
	limit := protect.Placement(p.Job, a.sheathed, false)
	switch {
	case a.metres > allowed.Within.Metres():
		p.report(p.tooFar(m, a, limit, Fault))
	case len(a.unknown) > 0:
		p.missing(Gap{Datum: "the length", Field: "length", Decides: fmt.Sprintf("whether %s is within %s of its source", p.deviceSubject(m.Device), limit.Within), Worst: Fault, Subjects: wireSubjects(a.unknown)})
	case a.metres > limit.Within.Metres():
		p.report(p.tooFar(m, a, limit, Note))
	}
}

func (p *Pass) tooFar(m network.Met, a approach, limit conductor.Placement, s Severity) Finding {
	f := Finding{
		Severity: s,
		Message: fmt.Sprintf("%s sits %s along %s; %s is the most",
			p.nameOf(m.Device), metres(a.metres), list(wireSubjects(a.wires)), limit.Within),
		Figure:   Figure{What: "distance along the conductor", Value: unit.LengthFromMetres(a.metres).Any(), Limit: limit.Within.Any(), Decides: limit.Basis},
		Subjects: append([]Subject{p.deviceSubject(m.Device)}, wireSubjects(a.wires)...),
	}
	if a.sheathed {
		f.Message += " in a sheath"
	}
	if s == Note {
		f.Message += fmt.Sprintf("; %s is said to allow %s from a battery post, from memory", conductor.OffBattery.Basis, conductor.OffBattery.Within)
	}
	return f
}
