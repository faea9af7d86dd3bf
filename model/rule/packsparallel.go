package rule

import (
	"fmt"
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/protect"
	"example.com/lugbook/model/unit"
)

var packsParallel = Rule{
	ID: "packs-in-parallel", Title: "Packs in parallel without a fuse each",
	Family: Packs, Severity: Danger,
	About: "Finds packs and strings whose positive poles and whose negative poles are joined, contacts taken as closed. Each needs a fuse of its own between its " +
		"pole and where they meet, all of one rating and kind. A pack without one is a danger, unequal ones are a fault.",
	Why: "Two packs side by side level each other out. If one of them has a shorted cell, or was left empty for a month, the other drives hundreds or thousands of amperes " +
		"into it, and no load and no main fuse behind the joint sees anything of that. A fuse at each pack sees it. It must be the same at both: they share the load " +
		"by their resistances, and of two unequal fuses the smaller opens on a hill and leaves the other pack alone with all of it.",
	Tell: "Two packs with their positives on one bar or stud are in parallel. Follow each positive cable back from where they meet: it must pass a fuse before it " +
		"reaches the pack, and the numbers on them must be equal. Before they are joined, join the negatives and measure between the two positives, meter on DC " +
		"volts: no more than the packs' maker allows, often 0.1 to 0.2 V, from memory.",
	Blind: "Takes contacts as closed, so that two packs which a selector switch uses one at a time count as parallel. A BMS that opens its transistors is not counted as a fuse. " +
		"Batteries in parallel inside a pack are the maker's. How equally the packs share, and whether their BMS may be paralleled, is not judged.",
	Bad:   "two packs on one bar, p2 without a fuse of its own",
	Good:  "two packs, each with a fuse of 150 A at its post",
	Wrong: Example{Of: twoPacks, But: []string{"part fu2", "", "wire x1", "", "wire x2", "wire x2 p2.POS bar.2 gauge=2AWG insulation=105C length=300mm", "at fu2.in", ""}},
	Right: Example{Of: twoPacks},
	Basis: Basis{"each source in parallel has a device of its own, for the others feed a fault in it; an overload device sits in each battery conductor",
		"46 CFR 111.15-25(a); equal devices: common practice"},
	Remedy: "fit equal fuses, one at the positive post of each pack",
	Run:    runPacksParallel,

	Explains: []string{"no-main-fuse"}, Upsets: []string{"fuse-too-far"},
}

// twoPacks are two packs on a bar, each with its fuse.
const twoPacks = `part p1 lithium-pack-16
part p2 lithium-pack-16
part fu1 fuse-class-t fuse-rating=150A
part fu2 fuse-class-t fuse-rating=150A
part bar bus-bar-4
part ctrl controller-series
wire w1 p1.POS fu1.in gauge=2AWG insulation=105C length=150mm
wire w2 fu1.out bar.1 gauge=2AWG insulation=105C length=300mm
wire x1 p2.POS fu2.in gauge=2AWG insulation=105C length=150mm
wire x2 fu2.out bar.2 gauge=2AWG insulation=105C length=300mm
wire w3 bar.3 ctrl.B+ gauge=4/0AWG insulation=105C length=600mm
wire w4 ctrl.B- p1.NEG gauge=4/0AWG insulation=105C length=600mm
wire x4 p1.NEG p2.NEG gauge=2AWG insulation=105C length=300mm
stack p1.NEG w4 x4
at p1.POS cover=fitted
at p2.POS cover=fitted
at fu1.in cover=fitted
at fu2.in cover=fitted`

// beside is a string that lies parallel to others, with the device that is its own; nil if it
// has none.
type beside struct {
	string *network.String
	own    *network.Link
}

// pack is the designator of a string's first battery, by which it is named.
func (b beside) pack() model.PartID { return b.string.Cells[0].Link.Part.ID }

func runPacksParallel(p *Pass) {
	if p.misconnected() {
		return
	}
	for _, group := range p.parallel() {
		p.judgeParallel(group)
	}
}

// parallel groups the strings whose poles are joined by what conducts, fuses included.
func (p *Pass) parallel() [][]beside {
	joined := p.Net.Joined(func(l *network.Link) bool { return l.Conducts() || l.Is(model.FuseElement) })
	apart := p.Net.Joined(func(l *network.Link) bool { return l.Conducts() })
	strings := p.Net.Strings()
	var groups [][]beside
	for i := range strings {
		s := &strings[i]
		if joined.Same(s.High, s.Low) {
			continue // shorted: other rules speak
		}
		same := func(g []beside) bool {
			return joined.Same(g[0].string.High, s.High) && joined.Same(g[0].string.Low, s.Low)
		}
		if at := slices.IndexFunc(groups, same); at >= 0 {
			groups[at] = append(groups[at], beside{string: s})
		} else {
			groups = append(groups, []beside{{string: s}})
		}
	}
	groups = slices.DeleteFunc(groups, func(g []beside) bool { return len(g) < 2 })
	for _, g := range groups {
		slices.SortFunc(g, func(a, b beside) int { return compareNatural(string(a.pack()), string(b.pack())) })
		for i := range g {
			g[i].own = p.ownDevice(g, g[i].string, apart)
		}
	}
	return groups
}

// ownDevice is the fuse or breaker that a string of a group has for itself: inside it, at its
// negative pole, or on every traction cable of its positive pole.
func (p *Pass) ownDevice(g []beside, s *network.String, apart *network.Groups) *network.Link {
	if len(s.Devices) > 0 {
		return s.Devices[0]
	}
	others := func(pole func(*network.String) network.Node) bool {
		return slices.ContainsFunc(g, func(b beside) bool { return b.string != s && apart.Same(pole(b.string), pole(s)) })
	}
	for i := range p.fusing().entries {
		e := &p.fusing().entries[i]
		if e.Feed == nil || e.Feed.String == nil || e.At != s.High {
			continue
		}
		if len(e.Limits) > 0 && areDevices(e.Limits) && !others(func(s *network.String) network.Node { return s.Low }) {
			return e.Limits[0]
		}
		if trunk, _ := p.split(e.Lead.Open); len(trunk) == 0 && !others(func(s *network.String) network.Node { return s.High }) {
			return p.deviceOut(g, s, e.Lead.Devices)
		}
	}
	return nil
}

// deviceOut is the largest of some devices at a string's positive pole that leads to another
// string.
func (p *Pass) deviceOut(g []beside, s *network.String, devices []network.Met) *network.Link {
	var largest *network.Link
	rating := -1.0
	for _, m := range devices {
		if amps, _ := p.Net.Figure(m.Device.Part, m.Device.Element.Amps); amps > rating && p.leadsToOther(m, g, s) {
			largest, rating = m.Device, amps
		}
	}
	return largest
}

// leadsToOther reports whether the far side of a device reaches the positive pole of another
// string of the group.
func (p *Pass) leadsToOther(m network.Met, g []beside, s *network.String) bool {
	reach := p.Net.Walk([]network.Node{m.Device.Other(m.At)}, func(next *network.Link, _ network.Node) bool {
		return (next.Conducts() || next.Is(model.FuseElement)) && next != m.Device
	})
	return slices.ContainsFunc(g, func(b beside) bool { return b.string != s && reach.Has(b.string.High) })
}

// judgeParallel reports a group once: the strings without a device of their own, else devices
// that differ.
func (p *Pass) judgeParallel(g []beside) {
	var all, bare []Subject
	for _, b := range g {
		s := OfPart(b.pack())
		all = append(all, s)
		if b.own == nil {
			bare = append(bare, s)
		}
	}
	if len(bare) > 0 {
		f := Finding{
			Message:  fmt.Sprintf("%s are in parallel; no fuse at %s limits what the rest drives into a fault in it", list(all), list(bare)),
			Subjects: appendNew(bare, all...),
		}
		if fix, ok := p.fuseEach(g); ok {
			f.Fixes = []edit.Edit{fix}
		}
		p.report(f)
		return
	}
	p.judgeEqual(g, all)
}

// judgeEqual reports devices of parallel strings that differ in rating or in when they open.
func (p *Pass) judgeEqual(g []beside, all []Subject) {
	var words []string
	var devices []Subject
	differ := false
	first := p.Net.KnownFigure(g[0].own.Part, g[0].own.Element.Amps)
	for _, b := range g {
		rated := p.Net.KnownFigure(b.own.Part, b.own.Element.Amps)
		if !rated.OK || !first.OK {
			return // fuse-too-large asks for the rating
		}
		words = append(words, p.nameOf(b.own))
		devices = appendNew(devices, p.deviceSubject(b.own))
		differ = differ || rated.Value != first.Value || protect.CurveOf(p.Net, b.own).Family != protect.CurveOf(p.Net, g[0].own).Family
	}
	if !differ {
		return
	}
	largest := slices.MaxFunc(g, func(a, b beside) int { return compareRating(p, a.own, b.own) })
	least := slices.MinFunc(g, func(a, b beside) int { return compareRating(p, a.own, b.own) })
	low, _ := p.Net.Figure(least.own.Part, least.own.Element.Amps)
	high, _ := p.Net.Figure(largest.own.Part, largest.own.Element.Amps)
	f := Finding{
		Severity: Fault,
		Message:  fmt.Sprintf("%s are in parallel and their fuses differ: %s; the one that opens first leaves the others with the whole load", list(all), listWords(words)),
		Subjects: append(devices, all...),
		Remedy:   "fit fuses of one rating and one kind",
	}
	if low < high {
		f.Figure = Figure{What: "rating", Value: unit.A(low).Any(), Limit: unit.A(high).Any(), Least: true, Decides: "the fuse of the other pack"}
	}
	p.report(f)
}

func compareRating(p *Pass, a, b *network.Link) int {
	x, _ := p.Net.Figure(a.Part, a.Element.Amps)
	y, _ := p.Net.Figure(b.Part, b.Element.Amps)
	switch {
	case x < y:
		return -1
	case x > y:
		return 1
	}
	return 0
}

// fuseEach sets a fuse into the one cable at the positive pole of each string that has none,
// equal to those of the others; false if such a pole has more than one cable, if the others
// differ, or if no size suits all cables.
func (p *Pass) fuseEach(g []beside) (edit.Edit, bool) {
	var cables []*network.Link
	var poles []network.Node
	kind, rating := "", 0.0
	for _, b := range g {
		if b.own == nil {
			cable, ok := p.onlyWire(b.string.High)
			if !ok {
				return nil, false
			}
			cables, poles = append(cables, cable), append(poles, b.string.High)
			continue
		}
		amps, _ := p.Net.Figure(b.own.Part, b.own.Element.Amps)
		if kind != "" && (b.own.Part.Kind != kind || amps != rating) || len(b.own.Def.Terminals) != 2 {
			return nil, false
		}
		kind, rating = b.own.Part.Kind, amps
	}
	fits := true
	if kind == "" {
		amperes, _ := p.carriedBy(cables)
		rating, fits = p.fuseBefore(cables, amperes, true)
		kind = kindFor(rating)
	}
	var edits []edit.Edit
	for i, l := range cables {
		most, known := p.fuseLimitBefore(l)
		one, ok := p.insertKind(l, poles[i], kind, rating, i)
		if !fits || !known || rating > most || !ok {
			return nil, false
		}
		edits = append(edits, one)
	}
	return together(fmt.Sprintf("fit a fuse of %s into %s", amps(rating), list(wireSubjects(cables))), edits...), true
}

// onlyWire is the wire that lands on a node; false if there is more than one, or none.
func (p *Pass) onlyWire(at network.Node) (*network.Link, bool) {
	var only *network.Link
	for _, l := range p.Net.LinksAt(at) {
		if l.Kind != network.WireLink {
			continue
		}
		if only != nil {
			return nil, false
		}
		only = l
	}
	return only, only != nil
}
