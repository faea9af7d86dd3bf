package rule

import (
	"fmt"

	"example.com/lugbook/model"
	"example.com/lugbook/model/basis"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/unit"
)

var underVoltage = Rule{
	ID: "under-voltage", Title: "A device gets too little voltage to work",
	Family: Voltage, Severity: Fault,
	About: "Compares the nominal voltage of the source that each load, coil and converter is fed from with the least that the device works " +
		"at or the coil pulls in at, or if that is not known with six tenths of its own nominal voltage. A coil that pulls in but is made for a higher class of " +
		"voltage is a caution.",
	Why: "A coil that gets less than its pull-in voltage does not move, or moves half way and lets its contact burn. A buzzer or radio made for the pack stays silent on 12 V, and a " +
		"controller below its least voltage sets a fault and does nothing. Nothing burns, and so the mistake is found late: the reverse buzzer is not missed until somebody " +
		"stands behind the cart.",
	Tell: "Measure at the device while it should work. The source's full voltage there, and no action, means that it is made for more: read its label. Well below the source's " +
		"voltage means that it is lost on the way, which is another finding.",
	Blind: "It compares with the nominal voltage of the source, so a pack near empty or a long thin wire is not in it. Where no least voltage is recorded six tenths of its own " +
		"nominal voltage is taken for it. A coil that a driver pulls in with a short full pulse is compared with the whole voltage.",
	Bad:  "the 48 V reverse buzzer hangs on the reducer's 12 V output",
	Good: "a 12 V buzzer hangs there",
	Wrong: Example{Of: packAndReducer, But: []string{"part usb", "part buz buzzer", "wire a5", "wire a5 fb.2 buz.+ gauge=16AWG insulation=105C length=1m",
		"wire a6", "wire a6 buz.- fb.NEG2 gauge=16AWG insulation=105C length=1m"}},
	Right: Example{Of: packAndReducer, But: []string{"part usb", "part buz buzzer-12v", "wire a5", "wire a5 fb.2 buz.+ gauge=16AWG insulation=105C length=1m",
		"wire a6", "wire a6 buz.- fb.NEG2 gauge=16AWG insulation=105C length=1m"}},
	Basis:  Basis{"a coil below its pull-in voltage chatters or stays open, electronics below their minimum do not start", Physics},
	Remedy: "feed it from the pack through a fuse, or fit one made for 12 V",
	Run:    runUnderVoltage,

	Explains: []string{"coil-marginal"},
}

// leastRating is the figure of the least voltage that a device works at.
const leastRating = "min-input-voltage"

func runUnderVoltage(p *Pass) {
	for _, fed := range p.fedDevices() {
		if !fed.nominal.OK {
			continue
		}
		nominal := p.Net.KnownFigure(fed.link.Part, fed.link.Element.Volts)
		needs, pullsIn := p.needs(fed, nominal)
		f := Finding{
			Message: fmt.Sprintf("%s gets %s from %s and needs %s%s",
				fed.link.Part.ID, volts(fed.nominal.Value), fed.by.Link.Part.ID, volts(needs), fed.misplaced(nominal)),
			Figure: Figure{What: "voltage at " + string(fed.link.Part.ID), Value: unit.V(fed.nominal.Value).Any(), Limit: unit.V(needs).Any(), Least: true,
				Decides: "the least that it works at"},
			Subjects: []Subject{OfPart(fed.link.Part.ID), OfPart(fed.by.Link.Part.ID)},
		}
		switch {
		case fed.nominal.Value < needs:
			p.report(f)
		case pullsIn && fed.nominal.Value < nominal.Value && fed.misplaced(nominal) != "":
			f.Severity = Caution
			f.Message = fmt.Sprintf("%s gets %s from %s%s; it pulls in at %s, which leaves little for an empty pack and the drop on the way",
				fed.link.Part.ID, volts(fed.nominal.Value), fed.by.Link.Part.ID, fed.misplaced(nominal), volts(needs))
			f.Figure.Limit, f.Figure.Decides = unit.V(nominal.Value).Any(), "what its coil is made for"
			p.report(f)
		}
	}
}

// needs is the least voltage that a device works at, and whether that is a coil's own pull-in.
func (p *Pass) needs(fed fedDevice, nominal network.Known) (least float64, pullsIn bool) {
	if pullIn := p.Net.KnownFigure(fed.link.Part, fed.link.Element.PullIn); fed.link.Is(model.CoilElement) && pullIn.OK {
		return pullIn.Value, true
	}
	if least := p.Net.KnownFigure(fed.link.Part, leastRating); least.OK {
		return least.Value, false
	}
	return p.limit(basis.LeastVoltage) * nominal.Value, false
}
