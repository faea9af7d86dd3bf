package network

import (
	"math"
	"slices"

	"example.com/lugbook/model"
)

// exactReturn is the exposure of a wire of the return side: to each string, charger and
// output alone, which has its own way back, and to all strings together.
func (p *Protection) exactReturn(wire *Link) Exposure {
	if p.homings == nil {
		p.homeward = p.n.cutsOf(func(l *Link) bool { return l.Conducts() && p.returns[l.A] && p.returns[l.B] })
		p.homings = p.allHomings()
	}
	var worst Exposure
	for _, h := range p.homings {
		worst = larger(worst, h.comingBack(wire))
	}
	return worst
}

// allHomings are the feeds that current comes back to, as they are looked at together.
func (p *Protection) allHomings() []*homing {
	var strings []Feed
	var list []*homing
	for i, f := range p.Feeds {
		if f.String == nil {
			list = append(list, p.homing([]Feed{f}))
			continue
		}
		strings = append(strings, f)
		if f.Whole {
			list = append(list, p.homing(stringOf(p.Feeds[i:], f.String)))
		}
	}
	return append(list, p.homing(strings))
}

// stringOf lists the feeds of one string, which stand next to each other.
func stringOf(feeds []Feed, s *String) []Feed {
	n := 0
	for n < len(feeds) && feeds[n].String == s {
		n++
	}
	return feeds[:n]
}

// homing is the network as the current of some feeds finds it on its way back: every part
// shorted inside, but no way back to the feeding side, and none on from where the current
// of a source comes home to it.
type homing struct {
	p     *Protection
	feeds []Feed
	home  []Node
	zones *Groups // nodes that conduct freely to each other
	cuts  *cuts   // of the zones
	whole *flow
	known map[int]Exposure // by zone, with all wires there
}

func (p *Protection) homing(feeds []Feed) *homing {
	h := &homing{p: p, feeds: feeds, known: map[int]Exposure{}}
	for _, f := range feeds {
		h.home = append(h.home, f.Return)
	}
	h.cuts = p.n.cutsOf(func(l *Link) bool {
		return h.carries(l) && !l.Is(model.FuseElement) && !l.Is(model.DiodeElement) &&
			p.returns[l.A] == p.returns[l.B] && !h.isHome(l.A) && !h.isHome(l.B)
	})
	h.zones = h.cuts.groups
	h.whole = newFlow(h.zones)
	for _, f := range feeds {
		h.whole.feed(f.At, f.Limit, f.Limits)
	}
	for i := range p.n.links {
		if l := &p.n.links[i]; h.carries(l) {
			h.addWays(l)
		}
	}
	return h
}

// carries reports whether a link carries current that comes back.
func (h *homing) carries(l *Link) bool {
	return l.Kind != OutputLink && !l.Is(model.SourceElement) && !l.Is(model.ChargerElement)
}

func (h *homing) isHome(at Node) bool { return slices.Contains(h.home, at) }

// addWays adds the ways over a link that is not of a zone.
func (h *homing) addWays(l *Link) {
	amps, by := math.Inf(1), (*Link)(nil)
	if l.Is(model.FuseElement) {
		amps, by = h.p.n.deviceAmps(l), l
	}
	if h.cuts.by(l) {
		return
	}
	add := func(from, to Node) {
		if !h.isHome(from) && (!h.p.returns[from] || h.p.returns[to]) {
			h.whole.edge(from, to, amps, by)
		}
	}
	add(l.A, l.B)
	if !l.Is(model.DiodeElement) {
		add(l.B, l.A)
	}
}

// comingBack is the most that the feeds can send back through a wire.
func (h *homing) comingBack(wire *Link) Exposure {
	var worst Exposure
	for _, end := range [][2]Node{{wire.A, wire.B}, {wire.B, wire.A}} {
		enters, leaves := end[0], end[1]
		if !h.isHome(enters) && h.leadsHome(leaves, wire) {
			worst = larger(worst, h.into(enters, wire))
		}
	}
	return worst
}

// leadsHome reports whether current comes home from a node without a wire.
func (h *homing) leadsHome(from Node, without *Link) bool {
	c := h.p.homeward
	side, alone := c.cut(without)
	return slices.ContainsFunc(h.home, func(home Node) bool {
		return home == from || c.groups.Same(home, from) && (!alone || side.has(home) == side.has(from))
	})
}

// into is the most that the feeds can send to a node without a wire. What enters a home
// goes nowhere, and where something lies beside the wire that does not matter: then it is
// what they can send to the zone.
func (h *homing) into(at Node, without *Link) Exposure {
	z := h.zones.Of(at)
	side, alone := h.cuts.cut(without)
	if !alone {
		known, done := h.known[z]
		if !done {
			known = h.whole.maximum(z, nowhere)
			h.known[z] = known
		}
		return known
	}
	h.whole.divide(z, side)
	defer h.whole.unite()
	if side.has(at) {
		return h.whole.maximum(h.whole.spare(), nowhere)
	}
	return h.whole.maximum(z, nowhere)
}
