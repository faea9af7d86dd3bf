package rule

var reducerInputReversed = Rule{
	ID: "reducer-input-reversed", Title: "The input of a reducer is reversed",
	Family: Polarity, Severity: Danger,
	About:  "Traces the input of each reducer to the poles of the pack through everything that can close.",
	Bad:    "red.IN+ goes to the negative bus, red.IN- to the reducer fuse",
	Good:   "red.IN+ goes to the reducer fuse, red.IN- to the negative bus",
	Basis:  Basis{"a reversed input puts the pack across the input diode and blows the fuse, or what is behind it", Physics},
	Remedy: "swap the two input leads of the reducer",
	Run:    func(p *Pass) { p.reportReversed(reducerRole) },
}
