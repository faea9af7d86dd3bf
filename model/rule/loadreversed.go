package rule

var loadReversed = Rule{
	ID: "load-reversed", Title: "A device with a polarity is reversed",
	Family: Polarity, Severity: Fault,
	About: "Traces the two terminals of each polarised device (buzzer, LED lamp, outlet, stereo, encoder) to the terminals of its source, and where that does not tell " +
		"goes by the voltage that it sees in the states of the controls. Filament lamps have none.",
	Why: "LED lamps, buzzers and radios work one way only. Turned round they stay dark or silent, and many have a diode across their leads that then " +
		"conducts and blows the fuse of everything that shares it. An outlet that is reversed passes the mistake on to whatever is plugged in. " +
		"The reverse buzzer is a safety device: silent, it is as good as lost.",
	Tell: "Unplug the device and measure at its connector while it is switched on, red probe on the contact for its positive lead: the reading must be positive. A " +
		"minus sign says that the leads are swapped.",
	Blind: "It goes by which terminal the library calls positive. It is silent where contacts can feed a device either way and no state tells, where " +
		"its source is not on the sheet, and for what has no polarity. If the pack or a reducer's output is reversed as a whole, that is said instead.",
	Bad:    "the positive lead of the outlet is on the negative bus",
	Good:   "the positive lead of the outlet is on its fuse",
	Wrong:  Example{Of: packAndReducer, But: []string{"wire a5", "wire a5 fb.2 usb.- gauge=16AWG insulation=105C length=1m", "wire a6", "wire a6 usb.+ fb.NEG2 gauge=16AWG insulation=105C length=1m"}},
	Right:  Example{Of: packAndReducer},
	Basis:  Basis{"a reversed device does not work, and conducts freely if it has a protective diode", Physics},
	Remedy: "swap the two leads of the device",
	Run:    func(p *Pass) { p.reportReversed(loadRole) },
}
