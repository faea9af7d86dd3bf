package rule

import (
	"fmt"

	"example.com/lugbook/model/opening"
)

var notSelective = Rule{
	ID: "not-selective", Title: "The fuse nearer the source opens first",
	Family: Protection, Severity: Note,
	About: "Compares the opening times of each two devices in series, up to the greatest fault behind the farther one. Speaks if the one " +
		"nearer the source is sure to open first at some current, or is no slower by every time that is known. Silent where the known " +
		"times leave it open.",
	Bad:    "a 10 A gG fuse at the pack and a 16 A gG fuse in the dash",
	Good:   "a 160 A gG fuse at the pack and a 16 A gG fuse in the dash",
	Basis:  Basis{"of two devices in series the farther one opens alone, or a fault in one circuit takes all the others with it", "IEC 60269-1 5.8, discrimination; from memory"},
	Remedy: "fit a smaller or faster fuse far from the source, or a larger one near it if its wires carry that",
	Run:    runNotSelective,
}

func runNotSelective(p *Pass) {
	if p.misconnected() {
		return
	}
	for _, pair := range p.guard().Pairs() {
		if pair.Verdict.Answer != opening.No {
			continue
		}
		p.report(Finding{
			Message:  fmt.Sprintf("%s behind %s: %s", p.nameOf(pair.Down), p.nameOf(pair.Up), pair.Verdict.Why),
			Subjects: []Subject{p.deviceSubject(pair.Down), p.deviceSubject(pair.Up)},
		})
	}
}
