package rule

import "example.com/lugbook/model"

var cappedEndLive = Rule{
	ID: "capped-end-live", Title: "A capped wire end is live",
	Family: Ends, Severity: Caution,
	About: "Looks at each end that is recorded as capped and speaks if the wire can be joined to the positive side of a source, in whatever state.",
	Why: "A cap is a promise that nobody will need the wire and that nothing will rub the cap off. Tape lets go in heat and oil, a crimp cap " +
		"chafes through on an edge, and then it is a bare live end. Worse is the next person, who takes a capped wire for a dead one, cuts it to " +
		"length and holds both ends.",
	Tell: "Pack off, take the cap off and clip the red lead to the end, the black one to the last negative stud, meter on DC volts. Pack on: read it with the key " +
		"off and on. Pack off again, cap it, follow it back to what feeds it and write that on a label at the cap.",
	Blind: "Live means that contacts and fuses could join it to a source, each switch taken as closed. How good the cap is, and whether the end is " +
		"tied back, is not recorded. A capped wire on the negative side is left out.",
	Bad:    "the old sense lead is capped behind the dash and still on iso.out",
	Good:   "the old sense lead is off at both ends",
	Wrong:  Example{Of: studExample, But: []string{"+", "wire x1 iso.out capped gauge=16AWG insulation=105C", "stack iso.out", "stack iso.out w3 k1 x1"}},
	Right:  Example{Of: studExample},
	Basis:  Basis{"a cap works loose or chafes through, and the next person takes a capped wire for dead", Practice},
	Remedy: "pack off, take the wire off at its source, or label the cap with what feeds it and waive this with the reason",
	Run:    func(p *Pass) { p.reportLoose(model.Capped) },
}
