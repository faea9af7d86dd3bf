package diagnose

import (
	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

// fuses lists blown fuses.
func (l *lister) fuses() {
	l.each(model.FuseElement, func(link *network.Link) {
		l.add(Fault{
			ID: "blown:" + elementID(link), Family: BlownFuse, Text: "fuse " + l.name(link) + " is blown",
			Do:       "find what blew it before a new one goes in; same rating, same voltage",
			variants: []int{l.change(network.Change{Link: link, Open: true})}, class: l.classOfFuse(link), at: link.A,
		}, link.Part.Condition)
	})
}

// contacts lists contacts that stay open, stay closed, or close badly.
func (l *lister) contacts() {
	l.each(model.ContactElement, func(link *network.Link) {
		name, class, where := l.name(link), classOfContact(link), link.Part.Condition
		id := elementID(link)
		if link.Conducts() {
			l.add(Fault{
				ID: "stuck:" + id, Family: StuckOpen, Text: "contact " + name + " does not close",
				Do: l.remedyOfContact(link), variants: []int{l.change(network.Change{Link: link, Open: true})}, class: class, at: link.A,
			}, where)
		}
		if felt := l.joint(link, l.most[l.number[link]]); felt != nil {
			l.add(Fault{
				ID: "worn:" + id, Family: PoorJoint, Text: "contact " + name + " is worn and drops volts",
				Do: "renew the contact or the part; filing does not last", variants: felt, class: class, at: link.A,
			}, where)
		}
		l.add(Fault{
			ID: "welded:" + id, Family: Welded, Text: "contact " + name + " stays closed",
			Do:       "renew the part: a contact that has welded once does so again",
			variants: []int{l.variant(variant{changes: []network.Change{{Link: link, Closed: true}}, shorts: true})}, class: class, at: link.A,
		}, where)
	})
}

// remedyOfContact says what to look at before a part is renewed.
func (l *lister) remedyOfContact(link *network.Link) string {
	switch {
	case link.Element.Coil != "":
		return "with the coil fed ohm the contact; renew the part if it stays open"
	case link.Def.Family == model.Drive:
		return "see what the maker's codes say; a driver inside a controller is not mended on the cart"
	}
	return "work the switch and see that its lever travels; then renew it"
}

// windings lists coils, motor windings and resistors that are open.
func (l *lister) windings() {
	open := func(link *network.Link, what string, class class) {
		l.add(Fault{
			ID: "open:" + elementID(link), Family: OpenPart, Text: what + " " + l.name(link) + " is open",
			Do:       "ohm it with its leads off, then renew it",
			variants: []int{l.change(network.Change{Link: link, Open: true})}, class: class, at: link.A,
		}, link.Part.Condition)
	}
	l.each(model.CoilElement, func(link *network.Link) { open(link, "coil", coil) })
	l.each(model.ResistanceElement, func(link *network.Link) {
		if len(l.n.LinksAt(link.A)) > 1 && len(l.n.LinksAt(link.B)) > 1 && !isController(link) {
			class := otherwise
			if link.Def.Family == model.Drive {
				class = motor
			}
			open(link, "winding or resistor", class)
		}
	})
}

// diodes lists diodes that are the wrong way round or shorted.
func (l *lister) diodes() {
	l.each(model.DiodeElement, func(link *network.Link) {
		name, where, class := l.name(link), link.Part.Condition, controller
		if link.Def.Family != model.Drive {
			class = coil
			l.add(Fault{
				ID: "reversed:" + elementID(link), Family: ReversedPart, Text: "diode " + name + " is the wrong way round",
				Do:       "turn it: the band goes to the positive side; see that it and what feeds it have survived",
				variants: []int{l.variant(variant{changes: []network.Change{{Link: link, Reversed: true}}, shorts: true})}, class: class, at: link.A,
			}, where)
		}
		l.add(Fault{
			ID: "shorted:" + elementID(link), Family: Shorted, Text: "diode " + name + " is shorted",
			Do:       "take one lead off, test it both ways, renew it",
			variants: []int{l.variant(variant{bridges: []network.Bridge{{A: link.A, B: link.B, Ohms: shortOhms}}, shorts: true})}, class: class, at: link.A,
		}, where)
	})
}

// isController reports whether a link is inside a part that decides by what is fed.
func isController(link *network.Link) bool {
	if link.Def.Family != model.Drive {
		return false
	}
	for i := range link.Def.Elements {
		if link.Def.Elements[i].Is == model.LoadElement && len(link.Def.Elements[i].Fed) > 0 {
			return true
		}
	}
	return false
}
