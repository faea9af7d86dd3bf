package rule

import (
	"fmt"
	"math"

	"example.com/lugbook/model/network"
)

var tapUnfused = Rule{
	ID: "tap-unfused", Title: "A tap on the pack has no fuse",
	Family: Protection, Severity: Danger,
	About: "Follows everything that conducts from each positive pole, contacts taken as closed, up to the first fuse or breaker. Each " +
		"branch off the traction path that reaches a charger, reducer, key switch, meter or load without one is reported " +
		"once, with all its wires; so is a tap on a battery inside the string. Loose ends have rules of their own.",
	Bad:    "a 16 AWG wire runs from sol.L1 to the key switch without a fuse",
	Good:   "a 16 AWG wire runs from sol.L1 to a 10 A fuse within 7 in, and from there to the key switch",
	Basis:  Basis{"each ungrounded conductor has a fuse or breaker at its source", "33 CFR 183.455(a)"},
	Remedy: "fit a fuse that the wire carries within 7 in of where the tap leaves",
	Run:    runTapUnfused,
}

func runTapUnfused(p *Pass) {
	told := map[*network.Link]bool{}
	for _, e := range p.fusing().entries {
		if !math.IsInf(e.Amps, 1) || e.Feed != nil && e.Feed.String == nil {
			continue
		}
		wires := p.fusible(e.Lead.Open)
		if e.Feed == nil || e.Feed.Whole {
			_, wires = p.split(wires)
		}
		for _, branch := range p.branches(wires, p.hubs(e.At)) {
			if told[branch[0]] {
				continue
			}
			for _, l := range branch {
				told[l] = true
			}
			p.report(Finding{Message: p.tapMessage(&e, branch), Subjects: wireSubjects(branch)})
		}
	}
}

func (p *Pass) tapMessage(e *network.Entry, branch []*network.Link) string {
	first := branch[0]
	from, to := first.A, first.B
	if e.Lead.Reach.Via(first.A) == first {
		from, to = to, from
	}
	gauge := ""
	if !first.Wire.Gauge.IsZero() {
		gauge = ", " + first.Wire.Gauge.String() + ","
	}
	message := fmt.Sprintf("%s%s takes %s to %s with no fuse or breaker from %s on", first.Wire.ID, gauge, p.at(from), p.at(to), p.at(e.At))
	if len(branch) > 1 {
		message += fmt.Sprintf("; nor have %s behind it", list(wireSubjects(branch[1:])))
	}
	return message
}
