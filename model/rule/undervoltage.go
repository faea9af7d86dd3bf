package rule

import (
	"fmt"

	"example.com/lugbook/model"
)

var underVoltage = Rule{
	ID: "under-voltage", Title: "A device gets too little voltage to work",
	Family: Voltage, Severity: Fault,
	About: "Compares the nominal voltage of the source that each load, coil and converter is fed from with the least that the device works " +
		"at or the coil pulls in at, or if that is not known with six tenths of its own nominal voltage.",
	Bad:    "the 48 V reverse buzzer hangs on the reducer's 12 V output",
	Good:   "the 48 V reverse buzzer is fed from the switched side of the key",
	Basis:  Basis{"a coil below its pull-in voltage chatters or stays open, electronics below their minimum do not start", Physics},
	Remedy: "feed it from the pack through a fuse, or fit one made for 12 V",
	Run:    runUnderVoltage,
}

// starved is the share of its nominal voltage below which a device counts as on the
// wrong supply: a contactor pulls in at 65 to 75 %. Our choice.
const starved = 0.6

// leastRating is the figure of the least voltage that a device works at.
const leastRating = "min-input-voltage"

func runUnderVoltage(p *Pass) {
	for _, fed := range p.fedDevices() {
		if !fed.nominal.OK {
			continue
		}
		least := p.Net.KnownFigure(fed.link.Part, leastRating)
		nominal := p.Net.KnownFigure(fed.link.Part, fed.link.Element.Volts)
		needs := least.Value
		if pullIn := p.Net.KnownFigure(fed.link.Part, fed.link.Element.PullIn); fed.link.Is(model.CoilElement) && pullIn.OK {
			needs = pullIn.Value
		} else if !least.OK {
			needs = starved * nominal.Value
		}
		if fed.nominal.Value >= needs {
			continue
		}
		p.report(Finding{
			Message: fmt.Sprintf("%s gets %s from %s and needs %s",
				fed.link.Part.ID, volts(fed.nominal.Value), fed.by.Link.Part.ID, volts(needs)),
			Subjects: []Subject{OfPart(fed.link.Part.ID), OfPart(fed.by.Link.Part.ID)},
		})
	}
}
