package rule

import (
	"fmt"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/state"
)

var coilAlwaysFed = Rule{
	ID: "coil-always-fed", Title: "A contactor is held closed with the cart parked",
	Family: Chain, Severity: Danger,
	About: "Computes the parked cart, key off, neutral, pedal up, and speaks if the coil of a contactor is fed in it: its feed comes from the hot side. " +
		"A danger if the drive is behind its contact, a fault if something else is, such as a pump.",
	Why: "The contactor is the one switch that takes the drive off the pack. Fed past the key it stays closed day and night: its coil takes some " +
		"twenty watts and empties the pack in a week or three, it ages in the heat, and when the controller's output fails shorted, which is how " +
		"they fail, the cart drives off by itself and no key and no pedal stops it.",
	Tell: "Foot off and key off: by then a sound contactor has clicked open. With the key off measure between the two small studs of the contactor: " +
		"0 V is right, the pack's voltage is this danger. Warm by hand in the morning says the same.",
	Blind: "It takes every fuse as good and every contact as made for its rest position. A coil that a controller drives is fed when the controller says so; " +
		"whether the controller does so at rest is in its parameters. A contactor that is welded looks closed as well, with 0 V at its coil.",
	Bad:    "the lead of coil+ sits on the hot terminal of the key",
	Good:   "the lead of coil+ comes from the pedal switch, behind the key",
	Wrong:  Example{Of: seriesChain, But: []string{"wire k4", "wire k4 key.BAT sol.coil+ gauge=16AWG insulation=105C length=1.5m"}},
	Right:  Example{Of: seriesChain},
	Basis:  Basis{"a contactor opens with the key at the latest: it is what parts a failed drive from the pack", Practice},
	Remedy: "take the feed of the coil from behind key and pedal switch",
	Run:    runCoilAlwaysFed,

	Upsets: []string{"key-input-live", "drives-unasked", "stand-by-drain"},
}

func runCoilAlwaysFed(p *Pass) {
	parked := p.inState(state.Parked)
	if p.unsound() || parked == nil {
		return
	}
	told := map[model.PartID]bool{}
	for i := range p.Net.Links() {
		contact := &p.Net.Links()[i]
		if !contact.Is(model.ContactElement) || contact.Element.Coil == "" || !p.isTraction(contact.A) || told[contact.Part.ID] {
			continue
		}
		coil := p.coilOf(contact)
		if coil == nil || !parked.On(coil) {
			continue
		}
		told[contact.Part.ID] = true
		p.reportFedCoil(parked, contact, coil)
	}
}

func (p *Pass) reportFedCoil(parked *network.Solution, contact, coil *network.Link) {
	way := p.wayOfFeed(parked, coil)
	v, _ := parked.Voltage(coil.A, coil.B)
	f := Finding{
		State:    state.Parked,
		Message:  fmt.Sprintf("the coil of %s has %s with the cart parked", coil.Part.ID, volts(max(v, -v))),
		Subjects: []Subject{OfPart(coil.Part.ID)},
	}
	if len(way) > 0 {
		f.Message += ", fed through " + wayWords(way)
		f.Subjects = append(f.Subjects, waySubjects(way)...)
	}
	if !p.feedsDrive(contact) {
		f.Severity = Fault
	}
	p.report(f)
}

// wayOfFeed is the way from the positive end of the pack to the fed end of a coil in a
// solution; nil if nothing that conducts leads there.
func (p *Pass) wayOfFeed(in *network.Solution, coil *network.Link) []*network.Link {
	low, high, _ := p.poles()
	firm := p.firm()
	reach := p.Net.Walk([]network.Node{high}, func(l *network.Link, at network.Node) bool {
		return !firm.Same(l.Other(at), low) && carries(in, l)
	})
	for _, end := range []network.Node{coil.A, coil.B} {
		if reach.Has(end) {
			return reach.Path(end)
		}
	}
	return nil
}

// feedsDrive reports whether a controller or a motor can be joined to one end of a contact
// without passing it.
func (p *Pass) feedsDrive(contact *network.Link) bool {
	for _, end := range []network.Node{contact.A, contact.B} {
		reach := p.Net.Walk([]network.Node{end}, func(l *network.Link, _ network.Node) bool {
			return l != contact && (l.IsMetal() || l.Is(model.FuseElement))
		})
		for _, at := range reach.Order {
			if d := p.Net.DefinitionOf(p.Net.Point(at).At); d != nil && d.Family == model.Drive && p.isTraction(at) {
				return true
			}
		}
	}
	return false
}
