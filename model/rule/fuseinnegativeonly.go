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
	Why: "A fuse opens the loop wherever it sits, but it protects only against faults whose current comes back through it. A positive cable " +
		"that touches the frame, where the charger's earth or a second fault joins the frame to the pack, drives its current past a fuse " +
		"in the negative. And once that has opened every positive stud still stands at pack voltage against the frame, under a cart that " +
		"looks dead.",
	Tell: "Find the main fuse and follow its cable: does it end at the pack's most negative post? Pull it with the cart off and measure from the " +
		"contactor's line stud to the pack's negative post: pack voltage says that the positive is live with the fuse out.",
	Blind: "Speaks of the traction path alone; a tap that leaves the positive without a fuse is covered by the same fuse and goes unsaid. A fuse " +
		"inside the string, and one at each pole, are no finding.",
	Bad:  "the main fuse sits between pack.NEG and the controller's B-",
	Good: "the main fuse sits between pack.POS and the contactor",
	Wrong: Example{Of: fusedPack, But: []string{"wire w1", "wire w1 pack.NEG fu1.in gauge=2AWG insulation=105C length=150mm",
		"wire w2", "wire w2 pack.POS iso.in gauge=2AWG insulation=105C length=600mm", "wire w4", "wire w4 ctrl.B- fu1.out gauge=2AWG insulation=105C length=700mm"}},
	Right:  Example{Of: fusedPack},
	Basis:  Basis{"the device belongs in the ungrounded conductor at its source; a cart's practice is the positive", "33 CFR 183.455(a), (b)"},
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
