package support

import (
	"fmt"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

// bridged tells whether metal or next to no resistance leads round a contact whose
// capacitor it should keep from a live source.
func (d *desk) bridged(contact, capacitor *network.Link) (PreCharge, bool) {
	beside := func(l *network.Link) bool { return l != contact && l.Firm() && !l.Is(model.ContactElement) }
	metal := d.n.Joined(beside)
	if !metal.Same(contact.A, contact.B) || contact.A == contact.B {
		return PreCharge{}, false
	}
	for _, s := range d.before(contact) {
		live := groups(d.n, s, nil)
		fed := live.Same(contact.A, capacitor.A) && !live.Same(contact.A, capacitor.B) || live.Same(contact.A, capacitor.B) && !live.Same(contact.A, capacitor.A)
		if full := volts(s, capacitor.A, capacitor.B); fed && full > leftVolts {
			p := PreCharge{
				Line: d.n.Point(contact.A).At, Load: d.n.Point(contact.B).At, Controller: capacitor.Part.ID,
				Bridged: true, State: s.State.Name, LeftIn: s.State.Name, Volts: full, Full: full,
			}
			b := &basis{n: d.n}
			p.Farads, _ = b.figure(capacitor.Part, capacitor.Element.Farads)
			p.Joules = Joules(p.Farads, full)
			p.Paths = []Path{bridge(d.n.Walk([]network.Node{contact.A}, func(l *network.Link, _ network.Node) bool { return beside(l) }).Path(contact.B), b)}
			p.judgeBridge(contact.Part.ID)
			p.Assumptions = b.lines
			return p, true
		}
	}
	return PreCharge{}, false
}

// bridge is the way round a contact that resists next to nothing.
func bridge(links []*network.Link, b *basis) Path {
	path := Path{links: links, Parts: []model.PartID{}}
	for _, l := range links {
		if l.Part == nil || l.IsMetal() {
			continue
		}
		path.Parts = append(path.Parts, l.Part.ID)
		ohms, _ := b.figure(l.Part, l.Element.Ohms)
		path.Ohms += ohms
	}
	return path
}

func (p *PreCharge) judgeBridge(contactor model.PartID) {
	by := "a wire"
	if len(p.Paths[0].Parts) > 0 {
		by = fmt.Sprintf("%s (%s)", pathNames(p.Paths), si(p.Paths[0].Ohms, "ohm"))
	}
	p.Judgements = []Judgement{{Danger, fmt.Sprintf("%s bridges %s: %s is always live, whether the contact is open or closed", by, contactor, p.Controller)}}
}
