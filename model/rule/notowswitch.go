package rule

import (
	"fmt"

	"example.com/lugbook/model"
	"example.com/lugbook/model/state"
)

var noTowSwitch = Rule{
	ID: "no-tow-switch", Title: "Nothing takes the logic supply off a drive that must be towed dead",
	Family: Chain, Severity: Fault,
	About: "Looks at drives with a logic supply of their own beside the key input, as separately excited ones have, and speaks if that supply is live with the " +
		"key off and either the sheet has no tow switch or the supply stays live in tow.",
	Why: "A separately excited motor is a generator as soon as it is rolled with its controller awake: the controller holds the field on to brake a cart that " +
		"rolls away. Towed like that the motor makes more voltage and current than controller, contactor and pack stand, and all three can " +
		"burn. The tow switch takes the logic supply away, so that the field stays dead.",
	Tell: "Look under the seat for the tow/run switch. In tow the logic pin of the controller must read 0 V against pack negative, in run the pack's voltage. No " +
		"switch, or voltage in both positions: the cart must not be towed, whatever the key says.",
	Blind: "It knows the logic supply by what the library says of the terminal. A drive whose key input is its logic supply, as on many AC drives, is " +
		"dead with the key off and is not spoken of; what its maker asks before towing is in its manual. A main isolator or pulling the control " +
		"fuse does the same by hand, and that is not counted.",
	Bad:    "the logic pin is fed straight from the control fuse",
	Good:   "the logic pin is fed through the tow switch",
	Wrong:  Example{Of: sepexLogic, But: []string{"wire k3", "wire k3 fu.out ctrl.logic gauge=16AWG insulation=105C length=1m"}},
	Right:  Example{Of: sepexLogic},
	Basis:  Basis{"a separately excited drive is towed with its logic supply off", Practice},
	Remedy: "fit a tow switch into the feed of the logic supply, and write at the hitch: tow in TOW only",
	Run:    runNoTowSwitch,

	Explains: []string{"drives-unasked"},
}

// sepexLogic is the supply of the logic of a separately excited drive.
const sepexLogic = `
part pack lithium-pack-16
part fu fuse-cartridge fuse-rating=10A
part tow tow-run
part key key-switch
part ctrl controller-sepex
wire k1 pack.POS fu.in gauge=16AWG insulation=105C length=100mm
wire k2 fu.out tow.1 gauge=16AWG insulation=105C length=0.5m
wire k3 tow.2 ctrl.logic gauge=16AWG insulation=105C length=1m
wire k4 tow.2 key.BAT gauge=16AWG insulation=105C length=1.5m
wire k5 key.IGN ctrl.KSI gauge=16AWG insulation=105C length=1.5m
wire k6 ctrl.B- pack.NEG gauge=16AWG insulation=105C length=1m
at pack.POS cover=fitted
`

// logicSupply begins what a definition says of the logic supply of a drive.
const logicSupply = "logic supply"

func runNoTowSwitch(p *Pass) {
	parked := p.inState(state.Parked)
	if p.unsound() || parked == nil {
		return
	}
	tow := p.inState(state.Tow)
	for _, at := range p.driveTerminals(logicSupply) {
		node := p.Net.Node(at)
		at := p.Net.Point(node).At
		switch live := p.levels(parked); {
		case !p.wired(node) || !live.isFed(node):
		case tow == nil:
			p.report(Finding{
				State: state.Parked, Subjects: []Subject{OfTerminal(at)},
				Message: fmt.Sprintf("%s has %s with the key off, and no tow switch takes it away", at, volts(live.at(node))),
			})
		case p.levels(tow).isFed(node):
			p.report(Finding{
				State: state.Tow, Subjects: append([]Subject{OfTerminal(at)}, p.controlsOf(model.TowRun)...),
				Message: fmt.Sprintf("%s keeps %s with the tow switch in tow", at, volts(p.levels(tow).at(node))),
			})
		}
	}
}
