package rule

import (
	"fmt"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/state"
)

var contactorClosesEarly = Rule{
	ID: "contactor-closes-early", Title: "The contactor closes with the pedal up or in neutral",
	Family: Chain, Severity: Fault,
	About: "Computes the cart with the key on, once with a direction chosen and the pedal up, once in neutral with the pedal down, and speaks if switches " +
		"alone hold the drive on the pack in one of them. A fault with the pedal up, a caution in neutral. Contactors that a driver of " +
		"the controller closes are left to it: separately excited and AC drives may close theirs with the key.",
	Why: "On a cart whose pedal switch works the contactor, the click under the pedal is a second brake: whatever the controller does, with the foot off " +
		"the cart is off the pack. If the contactor closes with the key already, only the controller's transistors hold the cart, and they " +
		"fail shorted. It also closes before the pre-charge is done, and wears out contacts by opening under load with the key.",
	Tell: "Lift the driven wheels. Key on, direction forward, foot off: no click may be heard. Between the small studs of the contactor 0 V is right; " +
		"the pack's voltage there says that its feed goes past the pedal switch. In neutral with the pedal down the same.",
	Blind: "It needs the pedal switch or the direction switch on the sheet; without it nothing is said. It does not know the makers' intent: a cart that was " +
		"built to close with the key, without a driver in its controller, is called at fault all the same; waive it with that reason. Contactors in " +
		"the negative alone are not looked at.",
	Bad:    "the lead of coil+ comes from the key, past the pedal switch",
	Good:   "the lead of coil+ comes from the pedal switch",
	Wrong:  Example{Of: seriesChain, But: []string{"wire k4", "wire k4 key.IGN sol.coil+ gauge=16AWG insulation=105C length=1.5m"}},
	Right:  Example{Of: seriesChain},
	Basis:  Basis{"with the foot off or in neutral the contactor of a cart with a switched chain is open", Practice},
	Remedy: "lead the feed of the coil through the pedal switch and the micro switch of the direction lever",
	Run:    runContactorClosesEarly,

	Explains: []string{"dead-end-lead"},
}

func runContactorClosesEarly(p *Pass) {
	if p.unsound() || !p.hasDrive() {
		return
	}
	if parked := p.inState(state.Parked); parked == nil || len(p.heldBySwitches(parked)) > 0 {
		return
	}
	for _, t := range []struct {
		state, words string
		needs        model.Control
		severity     Severity
	}{
		{state.ForwardPedalUp, "with the key on and the pedal up", model.Pedal, Fault},
		{state.KeyOn, "with the key on and the pedal up", model.Pedal, Fault},
		{state.NeutralPedalDown, "in neutral with the pedal down", model.Direction, Caution},
	} {
		in := p.inState(t.state)
		if in == nil || !p.hasSwitch(t.needs) {
			continue
		}
		held := p.heldBySwitches(in)
		if len(held) == 0 {
			continue
		}
		p.report(Finding{
			Severity: t.severity, State: t.state, Subjects: append(held, p.switchesOf(t.needs)...),
			Message: fmt.Sprintf("%s %s closed %s", list(held), isOrAre(len(held)), t.words),
		})
		return
	}
}

// heldBySwitches lists the contactors through which the drive stands on the pack in a
// solution; none if it does not, if there is no contactor on the way, or if a controller
// closes one of them.
func (p *Pass) heldBySwitches(in *network.Solution) []Subject {
	contacts, on := p.onPack(in)
	if !on {
		return nil
	}
	var held []Subject
	for _, c := range contacts {
		coil := p.coilOf(c)
		switch {
		case coil == nil || c.Element.Rest == model.RestClosed:
		case p.isDriven(coil):
			return nil
		default:
			held = appendNew(held, OfPart(c.Part.ID))
		}
	}
	return held
}

// isOrAre is the verb for a number of things.
func isOrAre(n int) string {
	if n == 1 {
		return "is"
	}
	return "are"
}
