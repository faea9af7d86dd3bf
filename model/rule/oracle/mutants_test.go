package oracle

import (
	"math/rand/v2"

	"example.com/lugbook/model"
	"example.com/lugbook/model/conductor"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/unit"
)

// mutation makes one kind of mistake on a cart.
type mutation struct {
	name string
	make func(*shop) []edit.Edit // nil if the cart, or the dice, gave nothing to do it on
}

// shop is a cart on which a mistake is about to be made.
type shop struct {
	dice  *rand.Rand
	sheet *model.Sheet
	net   *network.Network
}

// mutations is the table of mistakes, from memory of what goes wrong on such carts.
var mutations = []mutation{
	{"two terminals swapped", swapTerminals},
	{"two wire ends swapped", swapEnds},
	{"end on any terminal", moveAnywhere},
	{"end on a neighbour", moveBeside},
	{"fuse bridged", bridgeFuse},
	{"fuse left out", leaveFuseOut},
	{"fuse of another size", rerateFuse},
	{"thinner wire", thinWire},
	{"contact bridged", bridgeContact},
	{"wire left out", leaveWireOut},
	{"end cut off", cutEnd},
	{"diode reversed", reverseDiode},
	{"other pack", otherPack},
	{"other charger", otherCharger},
	{"12 V load on the pack", loadOnPack},
	{"second feed", secondFeed},
	{"on the frame", joinFrame},
}

func pick[T any](s *shop, list []T) (T, bool) {
	if len(list) == 0 {
		var none T
		return none, false
	}
	return list[s.dice.IntN(len(list))], true
}

// links lists the links that a condition holds for.
func (s *shop) links(fit func(*network.Link) bool) []*network.Link {
	var list []*network.Link
	for i := range s.net.Links() {
		if l := &s.net.Links()[i]; fit(l) {
			list = append(list, l)
		}
	}
	return list
}

// ref is the terminal of a link's node.
func (s *shop) ref(at network.Node) model.TerminalRef { return s.net.Point(at).At }

func (s *shop) reEnd(id model.WireID, side edit.Side, to model.End) edit.Edit {
	return edit.ReEnd{Sheet: s.sheet.Name, ID: id, Side: side, End: to, Seat: edit.Outermost}
}

// landing is an end of a wire.
type landing struct {
	wire *model.Wire
	side edit.Side
	at   model.TerminalRef
}

// landings lists the ends of wires that are on a terminal that fits.
func (s *shop) landings(fit func(model.TerminalRef) bool) []landing {
	var list []landing
	for i := range s.sheet.Wires {
		w := &s.sheet.Wires[i]
		if !w.From.At.IsZero() && fit(w.From.At) {
			list = append(list, landing{w, edit.From, w.From.At})
		}
		if !w.To.At.IsZero() && fit(w.To.At) {
			list = append(list, landing{w, edit.To, w.To.At})
		}
	}
	return list
}

func anywhere(model.TerminalRef) bool { return true }

// moved puts every wire of one terminal on another.
func (s *shop) moved(from, to model.TerminalRef) []edit.Edit {
	var list []edit.Edit
	for _, l := range s.landings(func(at model.TerminalRef) bool { return at == from }) {
		list = append(list, s.reEnd(l.wire.ID, l.side, model.End{At: to}))
	}
	return list
}

func (s *shop) swapped(l *network.Link) []edit.Edit {
	a, b := s.ref(l.A), s.ref(l.B)
	return append(s.moved(a, b), s.moved(b, a)...)
}

// joined lays a wire between two terminals.
func (s *shop) joined(a, b model.TerminalRef, gauge unit.Gauge) []edit.Edit {
	id := model.FreeID("oops", func(id string) bool { return s.sheet.Wire(model.WireID(id)) != nil })
	return []edit.Edit{edit.AddWire{Sheet: s.sheet.Name, Wire: model.Wire{
		ID: model.WireID(id), From: model.End{At: a}, To: model.End{At: b}, Gauge: gauge,
		Insulation: unit.C(105), Length: unit.LengthFromMetres(0.3),
	}, FromSeat: edit.Outermost, ToSeat: edit.Outermost}}
}

func swapTerminals(s *shop) []edit.Edit {
	l, ok := pick(s, s.links(func(l *network.Link) bool {
		return l.Part != nil && l.Element.Polarised || l.Kind == network.OutputLink || l.Is(model.DiodeElement)
	}))
	if !ok {
		return nil
	}
	return s.swapped(l)
}

func swapEnds(s *shop) []edit.Edit {
	ends := s.landings(anywhere)
	one, _ := pick(s, ends)
	other, ok := pick(s, ends)
	if !ok || one.wire == other.wire || one.at == other.at {
		return nil
	}
	return []edit.Edit{s.reEnd(one.wire.ID, one.side, model.End{At: other.at}), s.reEnd(other.wire.ID, other.side, model.End{At: one.at})}
}

func moveAnywhere(s *shop) []edit.Edit {
	ends := s.landings(anywhere)
	one, _ := pick(s, ends)
	other, ok := pick(s, ends)
	if !ok || one.at == other.at {
		return nil
	}
	return []edit.Edit{s.reEnd(one.wire.ID, one.side, model.End{At: other.at})}
}

func moveBeside(s *shop) []edit.Edit {
	one, ok := pick(s, s.landings(anywhere))
	if !ok {
		return nil
	}
	d := s.net.DefinitionOf(one.at)
	if d == nil {
		return nil
	}
	to, ok := pick(s, d.Terminals)
	if !ok || to.Name == one.at.Name {
		return nil
	}
	return []edit.Edit{s.reEnd(one.wire.ID, one.side, model.On(one.at.Part, to.Name))}
}

func isFuse(l *network.Link) bool { return l.Is(model.FuseElement) }

func bridgeFuse(s *shop) []edit.Edit {
	l, ok := pick(s, s.links(isFuse))
	if !ok {
		return nil
	}
	return s.joined(s.ref(l.A), s.ref(l.B), s.gaugeAt(l.B))
}

// gaugeAt is the size of a wire on a terminal.
func (s *shop) gaugeAt(at network.Node) unit.Gauge {
	for _, l := range s.net.LinksAt(at) {
		if l.Kind == network.WireLink && !l.Wire.Gauge.IsZero() {
			return l.Wire.Gauge
		}
	}
	return unit.AWG(16)
}

func leaveFuseOut(s *shop) []edit.Edit {
	l, ok := pick(s, s.links(isFuse))
	if !ok {
		return nil
	}
	return s.moved(s.ref(l.B), s.ref(l.A))
}

func rerateFuse(s *shop) []edit.Edit {
	l, ok := pick(s, s.links(isFuse))
	size, _ := pick(s, conductor.FuseSizes())
	if !ok {
		return nil
	}
	return []edit.Edit{edit.RatePart{Sheet: s.sheet.Name, ID: l.Part.ID, Rating: model.Rating{
		Name: l.Element.Amps, Value: unit.A(size.Amperes).Any(), Source: "label",
	}}}
}

func thinWire(s *shop) []edit.Edit {
	l, ok := pick(s, s.links(func(l *network.Link) bool { return l.Kind == network.WireLink && !l.Wire.Gauge.IsZero() }))
	size, _ := pick(s, unit.AWGSizes())
	if !ok || size.Compare(l.Wire.Gauge) >= 0 {
		return nil
	}
	return []edit.Edit{edit.SetWire{Sheet: s.sheet.Name, ID: l.Wire.ID, Field: "gauge", Text: size.String()}}
}

func bridgeContact(s *shop) []edit.Edit {
	l, ok := pick(s, s.links(func(l *network.Link) bool { return l.Is(model.ContactElement) && l.Def.Family != model.Drive }))
	if !ok {
		return nil
	}
	return s.joined(s.ref(l.A), s.ref(l.B), s.gaugeAt(l.B))
}

func leaveWireOut(s *shop) []edit.Edit {
	w, ok := pick(s, s.sheet.Wires)
	if !ok {
		return nil
	}
	return []edit.Edit{edit.RemoveWire{Sheet: s.sheet.Name, ID: w.ID}}
}

func cutEnd(s *shop) []edit.Edit {
	one, ok := pick(s, s.landings(anywhere))
	if !ok {
		return nil
	}
	return []edit.Edit{s.reEnd(one.wire.ID, one.side, model.LooseEnd(model.Cut))}
}

func reverseDiode(s *shop) []edit.Edit {
	l, ok := pick(s, s.links(func(l *network.Link) bool { return l.Is(model.DiodeElement) && l.Def.Family == model.Support }))
	if !ok {
		return nil
	}
	return s.swapped(l)
}

// otherKind makes a part one of another class, with nothing left that was read off it.
func (s *shop) otherKind(fit func(*model.Definition) bool, kinds ...string) []edit.Edit {
	var parts []*model.Part
	for i := range s.sheet.Parts {
		if d := s.net.Cat.Definition(s.sheet.Parts[i].Kind); d != nil && fit(d) {
			parts = append(parts, &s.sheet.Parts[i])
		}
	}
	p, ok := pick(s, parts)
	kind, _ := pick(s, kinds)
	if !ok || p.Kind == kind {
		return nil
	}
	list := []edit.Edit{edit.SetPart{Sheet: s.sheet.Name, ID: p.ID, Field: "kind", Text: kind}}
	for _, r := range p.Ratings {
		list = append(list, edit.RatePart{Sheet: s.sheet.Name, ID: p.ID, Rating: model.Rating{Name: r.Name}})
	}
	return list
}

func otherPack(s *shop) []edit.Edit {
	if s.dice.IntN(2) == 0 {
		return s.otherKind(func(d *model.Definition) bool { return d.Terminal("POS") != nil }, "lithium-pack-12", "lithium-pack-16", "lithium-pack-24")
	}
	return s.otherKind(func(d *model.Definition) bool { return d.Family == model.Storage && d.Terminal("+") != nil },
		"lead-battery-6v", "lead-battery-8v", "lead-battery-12v")
}

func otherCharger(s *shop) []edit.Edit {
	return s.otherKind(func(d *model.Definition) bool { return d.Terminal("DC+") != nil },
		"charger-onboard-36v", "charger-onboard-48v", "charger-onboard-72v")
}

// isOnPack reports whether a terminal is joined by metal and fuses to the positive of the pack.
func (s *shop) isOnPack(at model.TerminalRef) bool {
	_, high, ok := s.net.Poles()
	return ok && s.net.Joined((*network.Link).Firm).Same(s.net.Node(at), high)
}

func loadOnPack(s *shop) []edit.Edit {
	l, ok := pick(s, s.links(func(l *network.Link) bool {
		v, known := 0.0, false
		if l.Is(model.LoadElement) {
			v, known = s.net.Figure(l.Part, l.Element.Volts)
		}
		return known && v <= 15
	}))
	if !ok {
		return nil
	}
	plus := s.ref(l.A)
	ends := s.landings(func(at model.TerminalRef) bool { return at == plus })
	end, ok := pick(s, ends)
	if !ok {
		return nil
	}
	hot, ok := pick(s, s.landings(s.isOnPack))
	if !ok {
		return nil
	}
	other := edit.From
	if end.side == edit.From {
		other = edit.To
	}
	return []edit.Edit{s.reEnd(end.wire.ID, other, model.End{At: hot.at})}
}

func secondFeed(s *shop) []edit.Edit {
	hot, _ := pick(s, s.landings(s.isOnPack))
	to, ok := pick(s, s.landings(anywhere))
	if !ok || hot.wire == nil || hot.at == to.at {
		return nil
	}
	gauge, _ := pick(s, []unit.Gauge{unit.AWG(10), unit.AWG(12), unit.AWG(16)})
	return s.joined(hot.at, to.at, gauge)
}

func joinFrame(s *shop) []edit.Edit {
	at, ok := pick(s, s.landings(anywhere))
	if !ok {
		return nil
	}
	for i := range s.sheet.Parts {
		if s.sheet.Parts[i].Kind == "frame-point" {
			return s.joined(at.at, model.TerminalRef{Part: s.sheet.Parts[i].ID, Name: "FRAME"}, unit.AWG(14))
		}
	}
	id := model.PartID(model.FreeID("fr", func(id string) bool { return s.sheet.Part(model.PartID(id)) != nil }))
	add := edit.AddPart{Sheet: s.sheet.Name, Part: model.Part{ID: id, Kind: "frame-point"}}
	return append([]edit.Edit{add}, s.joined(at.at, model.TerminalRef{Part: id, Name: "FRAME"}, unit.AWG(14))...)
}
