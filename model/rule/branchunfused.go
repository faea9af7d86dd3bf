package rule

import (
	"fmt"

	"example.com/lugbook/model"
	"example.com/lugbook/model/basis"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/unit"
)

var branchUnfused = Rule{
	ID: "branch-unfused", Title: "Branches of the 12 V side have no fuse of their own",
	Family: Supply, Severity: Caution,
	About: "Looks at what leaves a reducer's output, and each fuse behind it or behind a tap on part of the string, up to the next fuse: devices, or their switches, that hang on one piece of wiring share " +
		"its protection. Speaks if two or more have no fuse at all, or if more of them share one than may. A fault if one of their wires carries less than the source or the shared fuse lets through " +
		"for long. What hangs behind one switch is one branch.",
	Why: "One fuse for all must be as large as the sum of the loads, and so it is too large for each thin lead by itself: a chafed 18 AWG lamp wire behind a 30 A fuse glows and the fuse holds. Without any " +
		"fuse it is the reducer that feeds the fault, at its full current, for as long as anybody lets it. And even where the wires stand it, one chafed wire takes horn, lamps and " +
		"brake lamp down together, at night as likely as not.",
	Tell: "Follow the 12 V feed from the reducer: the first thing that it meets should be a fuse block with one way for each device. Draw the fuses one by one and see what goes dark: each should take " +
		"one thing down.",
	Blind: "It does not know which devices may fairly share a fuse: a pair of lamps that are switched as one is one branch to it, two lamps with a lead each are two. Fuses inside a plug or behind a " +
		"radio that are not on the sheet are not seen. The wire from the source to the block is judged by other rules.",
	Bad:  "stereo and outlet are both spliced to the reducer's output lead",
	Good: "each has its own way in the fuse block",
	Wrong: Example{Of: twoOnReducer, But: []string{"wire a3", "wire a3 fb.IN st.+ gauge=18AWG insulation=80C length=500mm", "wire a5", "wire a5 fb.IN out.+ gauge=18AWG insulation=80C length=500mm",
		"part red", "part red reducer-isolated output-current=30A"}},
	Right: Example{Of: twoOnReducer},
	Basis: Basis{"each branch has a fuse of its own that its wire carries, at the point where it leaves the common feed",
		"33 CFR 183.455(a) and (b) for the fuse at the source of each conductor; one for each branch is common practice"},
	Remedy:   "fit a fuse block at the reducer and give each branch a way with a fuse that its wire carries",
	Explains: []string{"source-exceeds-wire", "fuse-too-large"},
	Run:      runBranchUnfused,
}

func runBranchUnfused(p *Pass) {
	entries := p.fusing().entries
	told := map[int]bool{}
	for i := range entries {
		e := &entries[i]
		if len(e.Limits) == 0 || !p.isTwelveVolts(e) || told[p.metal().Of(e.At)] {
			continue
		}
		if branches := p.branchesAt(e); len(branches) > 1 {
			told[p.metal().Of(e.At)] = true
			p.judgeBranches(e, branches)
		}
	}
}

// isTwelveVolts reports whether current that enters here comes from a reducer or from part of a
// string, and can't come from a whole string. What leaves part of a string without any fuse is
// told as a tap.
func (p *Pass) isTwelveVolts(e *network.Entry) bool {
	if e.Feed != nil {
		return e.Feed.Link.Kind == network.OutputLink
	}
	low := false
	for _, fs := range p.sides() {
		if side := fs.sides.Of(e.At); side == network.Neither || side == network.Minus {
			continue
		}
		if fs.feed.String != nil && fs.feed.Whole {
			return false
		}
		low = low || fs.feed.String != nil || fs.feed.Link.Kind == network.OutputLink
	}
	return low
}

// branchesAt lists the parts that current meets first on the metal of an entry: devices, and
// the switches and relays before them. Fuses stand for branches that have one.
func (p *Pass) branchesAt(e *network.Entry) []Subject {
	var links []*network.Link
	metal := p.metal()
	for _, at := range metal.Members(metal.Of(e.At)) {
		for _, l := range p.Net.LinksAt(at) {
			if e.Feed != nil && l.Part == e.Feed.Link.Part {
				continue
			}
			if takesPower(l) || l.Is(model.ContactElement) && l.Conducts() && l.Def.Family == model.Switchgear {
				links = append(links, l)
			}
		}
	}
	return partsOf(links)
}

// judgeBranches speaks about branches that share what protects them: too many of them, or
// wires that it does not protect.
func (p *Pass) judgeBranches(e *network.Entry, branches []Subject) {
	subject, name := OfPart(e.Limits[0].Part.ID), p.namesOf(e.Limits)
	if areDevices(e.Limits) {
		subject = p.deviceSubject(e.Limits[0])
	}
	f := Finding{
		Message:  fmt.Sprintf("%s share %s without a fuse of their own: what shorts in one of them takes all down", list(branches), name),
		Subjects: append([]Subject{subject}, branches...),
	}
	thin := p.thinnestBehind(e, &f)
	switch {
	case thin != nil:
		f.Severity = Fault
		f.Message = fmt.Sprintf("%s share %s without a fuse of their own: %s can last in %s, %s, %s",
			list(branches), name, amps(e.Amps), thin.wire.Wire.ID, thin.wire.Wire.Gauge, thin.carries)
		f.Figure = Figure{What: "current that can last in " + string(thin.wire.Wire.ID), Value: unit.A(e.Amps).Any(), Limit: unit.A(thin.carries.limit).Any(), Decides: "its ampacity"}
	case e.Feed == nil:
		most, source := p.limitFrom(basis.BranchesPerFuse)
		if float64(len(branches)) <= most.SI() {
			return
		}
		f.Basis = Basis{p.rule.Basis.Text, source}
		f.Figure = Figure{What: "branches behind one fuse", Value: unit.Pcs(len(branches)).Any(), Limit: most}
	}
	p.report(f)
}

// thinnestBehind is the wire that carries least of those that an entry overloads; nil if there
// is none. All of them become subjects of the finding.
func (p *Pass) thinnestBehind(e *network.Entry, f *Finding) *loaded {
	var thin *loaded
	for i := range p.fusing().loaded {
		w := &p.fusing().loaded[i]
		if w.entry != e {
			continue
		}
		f.Subjects = append(f.Subjects, OfWire(w.wire.Wire.ID))
		if thin == nil || w.carries.amps < thin.carries.amps {
			thin = w
		}
	}
	return thin
}
