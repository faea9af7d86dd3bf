package rule

import (
	"fmt"

	"example.com/lugbook/model/network"
)

var fuseInNegativeOnly = Rule{
	ID: "fuse-in-negative-only", Title: "The main fuse is in the negative",
	Family: Protection, Severity: Caution,
	About: "Speaks if everything at the negative pole of a string passes a fuse or breaker while the traction path at the positive " +
		"pole has none. The loop is protected, the positive conductors are not from a fault that bypasses the negative cable, and they " +
		"stay live when the fuse has opened.",
	Bad:    "the main fuse sits between pack.NEG and the controller's B-",
	Good:   "the main fuse sits between pack.POS and the contactor",
	Basis:  Basis{"the device belongs into the ungrounded conductor at its source; a cart's practice is the positive", "33 CFR 183.455(a), (b)"},
	Remedy: "move the main fuse to the positive post",
	Run:    runFuseInNegativeOnly,
}

func runFuseInNegativeOnly(p *Pass) {
	for _, e := range p.fusing().entries {
		if e.Feed == nil || e.Feed.String == nil || !e.Feed.Whole || len(e.Limits) == 0 || len(e.Feed.String.Devices) > 0 {
			continue
		}
		trunk, _ := p.split(p.fusible(e.Lead.Open))
		if len(trunk) == 0 {
			continue
		}
		p.report(Finding{
			Message: fmt.Sprintf("%s is at %s; nothing protects %s at %s",
				p.namesOf(e.Limits), p.at(e.Feed.Return), list(wireSubjects(trunk)), p.at(e.At)),
			Subjects: append(p.deviceSubjects(e.Limits), wireSubjects([]*network.Link{trunk[0]})...),
		})
	}
}
