package rule

import "example.com/lugbook/model"

var cappedEndLive = Rule{
	ID: "capped-end-live", Title: "A capped wire end is live",
	Family: Ends, Severity: Caution,
	About:  "Looks at each end that is recorded as capped and speaks if the wire can be joined to the positive side of a source, in whatever state.",
	Bad:    "the old sense lead is capped at the receptacle and still live from its fuse",
	Good:   "the old sense lead is off at both ends",
	Basis:  Basis{"a cap works loose or chafes through, and the next person takes a capped wire for dead", Practice},
	Remedy: "take the wire off at its source, or label the cap with what feeds it",
	Run:    func(p *Pass) { p.reportLoose(model.Capped) },
}
