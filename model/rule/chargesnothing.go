package rule

import (
	"fmt"
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/support"
	"example.com/lugbook/model/unit"
)

var chargesNothing = Rule{
	ID: "charges-nothing", Title: "A charger does not reach the pack while the cart stands",
	Family: Charging, Severity: Fault,
	About: "Computes the cart parked with the charger's AC on. Speaks if the charger gives no current to any pack or string, or only a trickle through a pre-charge resistor, and names the open contact " +
		"between them: most often the charger hangs on the load side of the contactor.",
	Why: "The contactor is open while a cart is parked, as it should be. A charger that is connected behind it sees only the controller: it finds no battery " +
		"voltage and does not start, or it charges as long as somebody keeps the key on, which keeps the cart ready to drive with its cord in.",
	Tell: "Key off, cord unplugged, meter on DC volts across the charger's two DC leads: full pack volts must stand there. Nothing there, and pack volts as soon as the " +
		"contactor clicks, is a charger on the wrong side. A pre-charge resistor lets pack volts through to a meter and no charge to the pack: follow the lead by eye as well.",
	Blind: "It takes fuses and isolators as the state has them. A charger whose own relay keeps it apart, or a pack that must first be woken, is not seen.",
	Bad:   "the charger's positive lands on sol.L2, behind the contactor",
	Good:  "the charger's positive lands on sol.L1, where the pack is",
	Wrong: Example{Of: chargeAhead, But: []string{"wire c2", "wire c2 fu2.out sol.L2 gauge=10AWG insulation=105C length=120mm", "stack sol.L1", ""}},
	Right: Example{Of: chargeAhead},
	Basis: Basis{"a cart is charged with its contactor open", Practice},

	Remedy: "move the charger's positive to the pack's side of the contactor, behind its own fuse",
	Run:    runChargesNothing,
}

// chargeAhead is a pack, a contactor and a charger on the pack's side of it.
const chargeAhead = `
part pack lithium-pack-16
part fu1 fuse-class-t fuse-rating=200A
part sol contactor-48v
part fu2 fuse-cartridge fuse-rating=40A
part chg charger-onboard-48v
wire w1 pack.POS fu1.in gauge=2AWG insulation=105C length=150mm
wire w2 fu1.out sol.L1 gauge=2AWG insulation=105C length=600mm
wire c1 chg.DC+ fu2.in gauge=10AWG insulation=105C length=900mm
wire c2 fu2.out sol.L1 gauge=10AWG insulation=105C length=120mm
wire c3 chg.DC- pack.NEG gauge=10AWG insulation=105C length=900mm
stack sol.L1 w2 c2
at pack.POS cover=fitted
at fu1.in cover=fitted
`

func runChargesNothing(p *Pass) {
	if p.unsound() {
		return
	}
	for _, c := range p.support().Charging {
		l := p.chargerLink(c.Charger)
		if chargesAll(c) || l == nil || p.reversedAtAll(l) || !p.wired(l.A) && !p.wired(l.B) {
			continue
		}
		f := Finding{State: "charging", Subjects: []Subject{OfPart(c.Charger)}}
		contact, lead := p.openBetween(l)
		pack, known := p.mainString()
		switch {
		case !known:
			continue
		case c.End > 0 && c.End < pack.Volts:
			f.Message = fmt.Sprintf("%s charges nothing: it goes up to %s, and the pack rests at %s", c.Charger, volts(c.End), volts(pack.Volts))
			f.Figure = Figure{What: "end voltage", Value: unit.V(c.End).Any(), Limit: unit.V(pack.Volts).Any(), Least: true, Decides: "the pack at rest"}
			f.Remedy = "fit a charger made for this pack, or set its curve"
			if c.End*classApart > pack.Volts && assumed(c.Assumptions, chargeRatings[Danger], c.Charger) {
				f.Severity = Caution
				f.Message += unconfirmed
			}
		case contact == nil && !p.couldReach(l):
			f.Message = fmt.Sprintf("%s charges nothing: no way leads from %s and %s to the two poles of a pack", c.Charger, p.at(l.A), p.at(l.B))
		case contact == nil:
			continue
		default:
			f.Message = fmt.Sprintf("%s charges nothing while the cart stands: between %s and the pack is the open contact of %s", c.Charger, p.at(l.A), contact.Part.ID)
			f.Subjects = append(f.Subjects, OfPart(contact.Part.ID))
			f.Fixes = p.aheadOf(contact, lead)
		}
		p.report(f)
	}
}

// chargesAll reports whether a charger reaches a pack. A way that at its own current would take
// all its voltage, such as one through a pre-charge resistor, is none.
func chargesAll(c support.Charging) bool { return len(c.Packs) > 0 && c.Drop <= c.End }

func (p *Pass) chargerLink(id model.PartID) *network.Link {
	for i := range p.Net.Links() {
		if l := &p.Net.Links()[i]; l.Is(model.ChargerElement) && l.Part.ID == id {
			return l
		}
	}
	return nil
}

// reversedAtAll reports whether a charger is turned round, which is a finding of its own.
func (p *Pass) reversedAtAll(l *network.Link) bool {
	verdict, _ := p.polarityOf(l)
	return verdict == network.Minus
}

// couldReach reports whether both poles of a charger can be joined to a pack at all.
func (p *Pass) couldReach(l *network.Link) bool { return p.feedAcross(l) != nil }

// openBetween is the first contact on the way from a charger's positive pole to that of a pack
// that is not joined to it in service, with the wire by which the way comes to it.
func (p *Pass) openBetween(l *network.Link) (contact, lead *network.Link) {
	passes := func(x *network.Link, _ network.Node) bool { return x.Firm() || x.Is(model.ContactElement) }
	reach := p.Net.Walk([]network.Node{l.A}, passes)
	for _, f := range p.protection().Feeds {
		if f.String == nil || !f.Whole || !reach.Has(f.At) {
			continue
		}
		path := reach.Path(f.At)
		at := slices.IndexFunc(path, func(x *network.Link) bool { return x.Is(model.ContactElement) && !x.Firm() })
		if at < 0 {
			return nil, nil
		}
		for _, before := range path[:at] {
			if before.Kind == network.WireLink {
				lead = before
			}
		}
		return path[at], lead
	}
	return nil, nil
}

// aheadOf moves the wire that comes to a contact to the contact's other side.
func (p *Pass) aheadOf(contact, lead *network.Link) []edit.Edit {
	if lead == nil {
		return nil
	}
	near := contact.A
	if lead.A != contact.A && lead.B != contact.A {
		near = contact.B
	}
	if lead.A != near && lead.B != near {
		return nil
	}
	from, to := p.Net.Point(near).At, p.Net.Point(contact.Other(near)).At
	return []edit.Edit{edit.ReEnd{
		Sheet: p.Sheet.Name, ID: lead.Wire.ID, Side: sideOf(lead.Wire, from), End: model.End{At: to}, Seat: edit.Outermost,
	}}
}
