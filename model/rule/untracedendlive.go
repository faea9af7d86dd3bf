package rule

import "example.com/lugbook/model"

var untracedEndLive = Rule{
	ID: "untraced-end-live", Title: "A live wire goes out of sight",
	Family: Ends, Severity: Caution,
	About:  "Looks at each end that is recorded as untraced and speaks if the wire can be joined to the positive side of a source, in whatever state: what it feeds, and whether it is fused there, is not known.",
	Bad:    "a 16 AWG wire on sol.L1 disappears into the loom",
	Good:   "the wire is followed to its end",
	Basis:  Basis{"what a live wire feeds decides what may be disconnected", Practice},
	Remedy: "follow it, or open its source end and see what stops working",
	Run:    func(p *Pass) { p.reportLoose(model.Untraced) },
}
