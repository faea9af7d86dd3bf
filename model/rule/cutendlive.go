package rule

import "example.com/lugbook/model"

var cutEndLive = Rule{
	ID: "cut-end-live", Title: "A bare wire end is live",
	Family: Ends, Severity: Danger,
	About:  "Looks at each end that is recorded as cut. It is a danger if the wire can be joined to the positive side of a source, in whatever state, and a caution if it is joined to the negative side.",
	Bad:    "the old meter wire is on sol.L1 and ends bare behind the dash",
	Good:   "the old meter wire is taken off sol.L1",
	Basis:  Basis{"a bare live end finds the frame or another conductor sooner or later", Practice},
	Remedy: "take the wire off at its source; until then cap both ends and tie them back",
	Run:    func(p *Pass) { p.reportLoose(model.Cut) },
}
