package rule

import (
	"fmt"

	"example.com/lugbook/model"
	"example.com/lugbook/model/basis"
	"example.com/lugbook/model/unit"
)

var underVoltage = Rule{
	ID: "under-voltage", Title: "A device gets too little voltage to work",
	Family: Voltage, Severity: Fault,
	About: "Compares the nominal voltage of the source that each load, coil and converter is fed from with the least that the device works " +
		"at or the coil pulls in at, or if that is not known with six tenths of its own nominal voltage.",
	Why: "A coil that gets less than its pull-in voltage does not move, or moves half way and lets its contact burn. A buzzer or radio made for the pack stays silent on 12 V, and a " +
		"controller below its least voltage sets a fault and does nothing. Nothing burns, and so the mistake is found late: the reverse buzzer is not missed until somebody " +
		"stands behind the cart.",
	Tell: "Measure at the device while it should work. The source's full voltage there, and no action, means that it is made for more: read its label. Well below the source's " +
		"voltage means that it is lost on the way, which is another finding.",
	Blind: "It compares with the nominal voltage of the source, so a pack near empty or a long thin wire is not in it. Where no least voltage is recorded six tenths of its own " +
		"nominal voltage is taken for it. A coil that a driver pulls in with a short full pulse is compared with the whole voltage.",
	Bad:    "the 48 V reverse buzzer hangs on the reducer's 12 V output",
	Good:   "a 12 V buzzer hangs there",
	Wrong:  Example{Of: packAndReducer, But: []string{"part usb", "part usb buzzer"}},
	Right:  Example{Of: packAndReducer, But: []string{"part usb", "part usb buzzer-12v"}},
	Basis:  Basis{"a coil below its pull-in voltage chatters or stays open, electronics below their minimum do not start", Physics},
	Remedy: "feed it from the pack through a fuse, or fit one made for 12 V",
	Run:    runUnderVoltage,
}

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
			needs = p.limit(basis.LeastVoltage) * nominal.Value
		}
		if fed.nominal.Value >= needs {
			continue
		}
		p.report(Finding{
			Message: fmt.Sprintf("%s gets %s from %s and needs %s%s",
				fed.link.Part.ID, volts(fed.nominal.Value), fed.by.Link.Part.ID, volts(needs), fed.misplaced(nominal)),
			Figure: Figure{What: "voltage at " + string(fed.link.Part.ID), Value: unit.V(fed.nominal.Value).Any(), Limit: unit.V(needs).Any(), Least: true,
				Decides: "the least that it works at"},
			Subjects: []Subject{OfPart(fed.link.Part.ID), OfPart(fed.by.Link.Part.ID)},
		})
	}
}
