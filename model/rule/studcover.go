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
	Why: "A bare positive stud is live with key, tow switch and everything else off. A wrench that bridges it to the frame, to the next " +
		"battery or to a negative stud carries the whole short-circuit current of the pack: thousands of amperes, enough to weld the wrench " +
		"in place and to throw molten metal. Ahead of the first fuse nothing ends that but the pack itself. A boot costs less than a nut.",
	Tell: "Key off, meter on DC volts, black probe on the last negative stud: every stud that shows battery voltage, 2 V or all of it, must have a boot, cap or " +
		"lid over it that a dropped tool can't get past. Look from above, where the tool would come from.",
	Blind: "A cover counts as recorded, not as good: a split boot is a condition to record. Negative studs are left out, for on a cart that " +
		"floats they are no danger by themselves, though two bare studs side by side are. Studs that are live only while driving are left out.",
	Bad:   "the boot on pack.POS is missing",
	Good:  "a boot is fitted on pack.POS",
	Wrong: Example{Of: studExample, But: []string{"at pack.POS", "at pack.POS cover=missing"}},
	Right: Example{Of: studExample},
	Basis: Basis{"an ungrounded stud that is always energised is protected by a device at its source or has a boot, nipple, cap, cover or " +
		"shield; practice boots every positive stud", "33 CFR 183.445(b)"},
	Remedy: "fit a boot or cover, look at it from above, and record it",
	Run:    runStudCover,
}

func runStudCover(p *Pass) {
	if p.misconnected() {
		return
	}
	always, ahead := p.alwaysLive(false), p.alwaysLive(true)
	var silent, bareAhead, bareBehind []Subject
	for _, s := range p.studs() {
		switch bare := s.cover == model.CoverMissing; {
		case bare && ahead[s.node]:
			bareAhead = append(bareAhead, OfTerminal(s.at))
		case bare && always[s.node]:
			bareBehind = append(bareBehind, OfTerminal(s.at))
		case s.cover == "" && ahead[s.node]:
			silent = append(silent, OfTerminal(s.at))
		}
	}
	p.reportBare(bareAhead, "nothing ahead of them opens if a tool shorts them")
	p.reportBare(bareBehind, "a fuse stands before them")
	if len(silent) > 0 {
		p.missing(Gap{Datum: "the cover", Field: "cover", Decides: "whether a dropped tool can short the pack ahead of its fuse", Worst: Caution, Subjects: silent})
	}
}

// reportBare reports the studs without a cover that stand before or behind the first fuse.
func (p *Pass) reportBare(studs []Subject, fused string) {
	if len(studs) > 0 {
		p.report(Finding{
			Message:  fmt.Sprintf("no cover on what is live with the cart parked: %s; %s", list(studs), fused),
			Subjects: studs,
		})
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
