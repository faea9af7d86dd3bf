package rule

import (
	"fmt"
	"math"

	"example.com/lugbook/model/network"
)

var noMainFuse = Rule{
	ID: "no-main-fuse", Title: "No main fuse on the traction path",
	Family: Protection, Severity: Danger,
	About: "Follows everything that conducts from the positive pole of each string and each pack, contacts taken as closed, up to the " +
		"first fuse or breaker. Speaks if the traction cable reaches the contactor or the controller without one. A fuse " +
		"inside the string counts; so does one through which everything at the negative pole passes, which is a finding of " +
		"its own. Jumpers between batteries of a string are left alone: common practice accepts them unfused, for they are short, lie " +
		"between two posts, and are inside the main fuse's loop.",
	Bad:    "b8+ goes straight to sol.L1",
	Good:   "pack.POS goes to a fuse within 7 in, and from there to sol.L1",
	Basis:  Basis{"each ungrounded conductor has a fuse or breaker at its source; a pack's fault current burns any cable of a cart", "33 CFR 183.455(a)"},
	Remedy: "fit a main fuse with a DC rating above the full-charge voltage at the positive post, ahead of everything else",
	Run:    runNoMainFuse,
}

func runNoMainFuse(p *Pass) {
	for _, e := range p.fusing().entries {
		if e.Feed == nil || e.Feed.String == nil || !e.Feed.Whole || !math.IsInf(e.Amps, 1) {
			continue
		}
		trunk, _ := p.split(p.fusible(e.Lead.Open))
		if len(trunk) == 0 {
			continue
		}
		p.report(Finding{
			Message: fmt.Sprintf("nothing protects %s: no fuse or breaker between %s and %s%s",
				list(wireSubjects(trunk)), p.at(e.At), p.at(p.farEnd(e.Lead, trunk[len(trunk)-1])), p.faultWords(e.Feed)),
			Subjects: append([]Subject{p.terminal(e.At)}, wireSubjects(trunk)...),
		})
	}
}

// fusible leaves out the wires that practice leaves to something else than a fuse.
func (p *Pass) fusible(wires []*network.Link) []*network.Link {
	var list []*network.Link
	for _, l := range wires {
		if !p.exempt(l) {
			list = append(list, l)
		}
	}
	return list
}

// farEnd is the end of a wire that is farther from where current enters.
func (p *Pass) farEnd(lead *network.LeadIn, l *network.Link) network.Node {
	if lead.Reach.Via(l.A) == l {
		return l.A
	}
	return l.B
}

// faultWords says what a string can drive through a short, if its resistance is known.
func (p *Pass) faultWords(f *network.Feed) string {
	short := p.guard().ShortAmps(f)
	if math.IsInf(short, 1) || short <= 0 {
		return ""
	}
	return fmt.Sprintf("; a short there draws %s at full charge", aboutAmps(short))
}
