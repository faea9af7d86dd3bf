package diagnose

import (
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

// shortOhms is the resistance of a short in ohms: less than the wiring around it.
const shortOhms = 5e-3

// idle lists converters, chargers, controllers and plain loads that do nothing.
func (l *lister) idle() {
	dead := func(id, text, do string, class class, link *network.Link, changes []network.Change) {
		l.add(Fault{ID: "dead:" + id, Family: Dead, Text: text, Do: do, variants: []int{l.change(changes...)}, class: class, at: link.A}, link.Part.Condition)
	}
	for _, kind := range []model.ElementKind{model.ConverterElement, model.ChargerElement} {
		l.each(kind, func(link *network.Link) {
			if !isController(link) {
				dead(elementID(link), l.name(link)+" gives nothing though it is fed", "unplug its output and read again; if it still gives nothing renew it",
					otherwise, link, []network.Change{{Link: link, Dead: true}})
			}
		})
	}
	var done []*model.Part
	l.each(model.LoadElement, func(link *network.Link) {
		switch {
		case isController(link) && !slices.Contains(done, link.Part):
			done = append(done, link.Part)
			dead(string(link.Part.ID), "controller "+string(link.Part.ID)+" does nothing though it is fed", "read its flash code, prove its throttle, then have it tested",
				controller, link, l.acts(link.Part))
		case link.Def.Family == model.Loads:
			dead(elementID(link), l.name(link)+" takes nothing though it is fed", "renew the lamp or the part", otherwise, link, []network.Change{{Link: link, Dead: true}})
		}
	})
}

// acts are the changes that leave a controller without what it does of its own accord.
func (l *lister) acts(p *model.Part) []network.Change {
	var list []network.Change
	links := l.n.Links()
	for i := range links {
		link := &links[i]
		if link.Part != p || link.Element == nil {
			continue
		}
		switch {
		case link.Is(model.ContactElement) && len(link.Element.Fed) > 0:
			list = append(list, network.Change{Link: link, Open: true})
		case link.Is(model.LoadElement) && len(link.Element.Fed) > 0, link.Is(model.ConverterElement):
			list = append(list, network.Change{Link: link, Dead: true})
		}
	}
	return list
}

// shorts lists outputs that are shorted: of converters, and of a controller toward its
// motor.
func (l *lister) shorts() {
	short := func(link *network.Link, a, b network.Node, what string) {
		if a == b || a == network.None || b == network.None {
			return
		}
		l.add(Fault{
			ID: "short:" + l.n.Point(a).String() + "-" + l.n.Point(b).String(), Family: Shorted, Text: what,
			Do:       "power off, take the lead off the output and ohm both sides: the side that still reads near 0 has the short",
			variants: []int{l.variant(variant{bridges: []network.Bridge{{A: a, B: b, Ohms: shortOhms}}, shorts: true})}, class: controller, at: a,
		}, link.Part.Condition)
	}
	links := l.n.Links()
	for i := range links {
		link := &links[i]
		if link.Kind == network.OutputLink && !isController(link) {
			short(link, link.A, link.B, "output of "+l.name(link)+" is shorted")
		}
	}
	for i := range l.sheet.Parts {
		p := &l.sheet.Parts[i]
		low, back := model.TerminalRef{Part: p.ID, Name: "M-"}, model.TerminalRef{Part: p.ID, Name: "B-"}
		for k := range links {
			if links[k].Part == p && isController(&links[k]) {
				short(&links[k], l.n.Node(low), l.n.Node(back), "output of controller "+string(p.ID)+" is shorted, M- to B-")
				break
			}
		}
	}
}

// leakOhms is the resistance of a leak to the frame in ohms: a chafed wire or a wet
// bracket. A meter of 10 Mohm shows all leaks below some 100 kohm alike. Our choice.
const leakOhms = 1e3

// leaks lists a leak from each group of nodes that metal, fuses and isolators join to the
// frame.
func (l *lister) leaks() {
	frame := l.n.Frame()
	if frame == network.None {
		return
	}
	firm := l.n.Joined((*network.Link).Firm)
	for g := range firm.Count() {
		at, fed := firm.Members(g)[0], false
		for _, member := range firm.Members(g) {
			t := l.n.TerminalDef(l.n.Point(member).At)
			fed = fed || t != nil && t.Serves != model.Mains && t.Metal == ""
		}
		if !fed || len(firm.Members(g)) < 2 || firm.Same(at, frame) {
			continue
		}
		l.add(Fault{
			ID: "leak:" + l.n.Point(at).String(), Family: Leak, Text: "leak from " + l.n.Point(at).String() + " and what is joined with it to the frame",
			Do:       "take branches off one by one until the frame reading falls; dry, sleeve or replace what it was",
			variants: []int{l.variant(variant{bridges: []network.Bridge{{A: at, B: frame, Ohms: leakOhms}}})}, at: at,
		})
	}
}

// asleep lists packs whose management system has them off.
func (l *lister) asleep() {
	l.each(model.SourceElement, func(link *network.Link) {
		if len(link.Element.ClosedIn) == 0 {
			return
		}
		changes := []network.Change{{Link: link, Dead: true}}
		l.add(Fault{
			ID: "asleep:" + string(link.Part.ID), Family: Asleep, Text: l.name(link) + " is asleep or has tripped",
			Do:       "wake it by its button or a charger; read from its display why it went off",
			variants: []int{l.change(changes...)}, class: pack, at: link.A,
		}, link.Part.Condition)
	})
}
