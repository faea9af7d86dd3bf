package rule

var loadReversed = Rule{
	ID: "load-reversed", Title: "A device with a polarity is reversed",
	Family: Polarity, Severity: Fault,
	About:  "Traces the two terminals of each polarised device (buzzer, LED lamp, outlet, stereo) to the terminals of its source. Filament lamps have none.",
	Bad:    "the red lead of the reverse buzzer is on pack negative",
	Good:   "the red lead of the reverse buzzer is on the reverse contact",
	Basis:  Basis{"a reversed device does not work, and conducts freely if it has a protective diode", Physics},
	Remedy: "swap the two leads of the device",
	Run:    func(p *Pass) { p.reportReversed(loadRole) },
}
