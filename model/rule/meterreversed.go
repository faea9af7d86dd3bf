package rule

var meterReversed = Rule{
	ID: "meter-reversed", Title: "A meter is reversed",
	Family: Polarity, Severity: Fault,
	About:  "Traces the supply of each meter and voltmeter that has a polarity to the poles of its source.",
	Bad:    "the - tab of the voltmeter is on the switched side of the key",
	Good:   "the + tab of the voltmeter is on the switched side of the key",
	Basis:  Basis{"a reversed meter shows nothing or is damaged", Physics},
	Remedy: "swap the two leads of the meter",
	Run:    func(p *Pass) { p.reportReversed(meterRole) },
}
