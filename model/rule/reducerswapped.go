package rule

import (
	"fmt"

	"example.com/lugbook/model/network"
)

var reducerSwapped = Rule{
	ID: "reducer-swapped", Title: "The output of a reducer is joined to the pack",
	Family: Polarity, Severity: Danger,
	About: "Traces the output of each reducer to the positive pole of the pack: input and output swapped, or OUT+ tied to " +
		"the pack. A negative that input and output share is as it should be.",
	Bad:    "the reducer fuse goes to red.OUT+ and red.IN+ to the 12 V fuse block",
	Good:   "the reducer fuse goes to red.IN+ and red.OUT+ to the 12 V fuse block",
	Basis:  Basis{"the full pack voltage destroys the 12 V output stage, and whatever hangs on the output", Physics},
	Remedy: "do not connect it; find the lead from the pack on the output side and move it to IN+",
	Run:    runReducerSwapped,
}

func runReducerSwapped(p *Pass) {
	if p.survey().packReversed {
		return
	}
	for _, out := range p.sides() {
		if out.feed.Link.Kind != network.OutputLink {
			continue
		}
		for _, pack := range p.sides() {
			if pack.feed.String == nil || !pack.feed.Whole {
				continue
			}
			on := network.None
			for _, at := range []network.Node{out.feed.At, out.feed.Return} {
				if pack.sides.Of(at) == network.Plus {
					on = at
				}
			}
			if on != network.None {
				id := out.feed.Link.Part.ID
				p.report(Finding{
					Message:  fmt.Sprintf("%s leads to %s: the output of %s is on the pack", p.at(on), p.at(pack.feed.At), id),
					Subjects: []Subject{OfPart(id), p.terminal(on)},
				})
				break
			}
		}
	}
}
