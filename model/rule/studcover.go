package rule

import (
	"fmt"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

var studCover = Rule{
	ID: "stud-cover", Title: "A live stud has no cover",
	Family: Studs, Severity: Caution,
	About: "Looks at the positive studs that are live with the cart parked: ahead of the first contact that opens then. A cover " +
		"recorded as missing is a caution. Where nothing is recorded, one note names all studs ahead of the first fuse.",
	Bad:  "the boot on pack.POS is missing",
	Good: "a boot is fitted on pack.POS",
	Basis: Basis{"an ungrounded stud that is always energised is protected by a device at its source or has a boot, nipple, cap, cover or " +
		"shield; practice boots every positive stud", "33 CFR 183.445(b)"},
	Remedy: "fit a boot or cover and record it",
	Run:    runStudCover,
}

func runStudCover(p *Pass) {
	if p.misconnected() {
		return
	}
	always, ahead := p.alwaysLive(false), p.alwaysLive(true)
	var silent []Subject
	for _, s := range p.studs() {
		switch {
		case s.cover == model.CoverMissing && always[s.node]:
			p.report(Finding{
				Message:  fmt.Sprintf("%s is live with the cart parked and has no cover", s.at),
				Subjects: []Subject{OfTerminal(s.at)},
			})
		case s.cover == "" && ahead[s.node]:
			silent = append(silent, OfTerminal(s.at))
		}
	}
	if len(silent) > 0 {
		p.missing(Gap{Datum: "the cover", Field: "cover", Decides: "whether a dropped tool can short the pack ahead of its fuse", Worst: Caution, Subjects: silent})
	}
}

// alwaysLive marks the nodes that metal, fuses and isolators join to the positive pole
// of a string; ahead leaves out what is behind a fuse.
func (p *Pass) alwaysLive(ahead bool) map[network.Node]bool {
	live := map[network.Node]bool{}
	for _, f := range p.protection().Feeds {
		if f.String == nil {
			continue
		}
		r := p.Net.Walk([]network.Node{f.At}, func(l *network.Link, at network.Node) bool {
			return l.Firm() && !p.protection().Returns(l.Other(at)) && !(ahead && !l.Conducts())
		})
		for _, at := range r.Order {
			live[at] = true
		}
	}
	return live
}
