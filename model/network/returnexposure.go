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
	ways  []oneWay
	whole *flow
	split *flow
	known map[int]Exposure // by zone, with all wires there
}

// oneWay is how a link lets current from one zone to another.
type oneWay struct {
	from, to Node
	amps     float64
	by       *Link
}

func (p *Protection) homing(feeds []Feed) *homing {
	h := &homing{p: p, feeds: feeds, split: newFlow(0), known: map[int]Exposure{}}
	for _, f := range feeds {
		h.home = append(h.home, f.Return)
	}
	h.cuts = p.n.cutsOf(func(l *Link) bool {
		return h.carries(l) && !l.Is(model.FuseElement) && !l.Is(model.DiodeElement) &&
			p.returns[l.A] == p.returns[l.B] && !h.isHome(l.A) && !h.isHome(l.B)
	})
	h.zones = h.cuts.groups
	for i := range p.n.links {
		if l := &p.n.links[i]; h.carries(l) {
			h.addWays(l)
		}
	}
	h.whole = newFlow(h.zones.Count())
	h.addEdges(h.whole, h.zones.Of)
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
			h.ways = append(h.ways, oneWay{from, to, amps, by})
		}
	}
	add(l.A, l.B)
	if !l.Is(model.DiodeElement) {
		add(l.B, l.A)
	}
}

// addEdges gives a flow network the feeds and the ways. Nodes are merged as vertex says.
func (h *homing) addEdges(f *flow, vertex func(Node) int) {
	for i := range h.feeds {
		f.feed(vertex(h.feeds[i].At), h.feeds[i].Limit, h.feeds[i].Limits)
	}
	for i := range h.ways {
		w := &h.ways[i]
		if a, b := vertex(w.from), vertex(w.to); a != b {
			f.edge(a, b, w.amps, w.by)
		}
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
	beyond := h.zones.Count()
	h.split.clear(beyond + 1)
	vertex := func(n Node) int {
		if v := h.zones.Of(n); v != z || !side.has(n) {
			return v
		}
		return beyond
	}
	h.addEdges(h.split, vertex)
	return h.split.maximum(vertex(at), nowhere)
}
