package network

import (
	"math"
	"slices"

	"example.com/lugbook/model"
)

// exactReturn is the exposure of a wire of the return side: to each string, charger and
// output alone, which has its own way back, and to all strings together.
func (p *Protection) exactReturn(wire *Link) Exposure {
	var strings []Feed
	var worst Exposure
	for i, f := range p.Feeds {
		if f.String == nil {
			worst = larger(worst, p.comingBack([]Feed{f}, wire))
			continue
		}
		strings = append(strings, f)
		if f.Whole {
			worst = larger(worst, p.comingBack(stringOf(p.Feeds[i:], f.String), wire))
		}
	}
	return larger(worst, p.comingBack(strings, wire))
}

// stringOf lists the feeds of one string, which stand next to each other.
func stringOf(feeds []Feed, s *String) []Feed {
	n := 0
	for n < len(feeds) && feeds[n].String == s {
		n++
	}
	return feeds[:n]
}

// comingBack is the most that feeds can send back through a wire, with every part shorted
// inside.
func (p *Protection) comingBack(feeds []Feed, wire *Link) Exposure {
	f := newFlow(p.n.Size())
	var home []Node
	for _, feed := range feeds {
		f.feed(int(feed.At), feed.Limit, feed.Limits)
		home = append(home, feed.Return)
	}
	p.addReturnEdges(f, home, wire)
	back := p.n.Walk(home, func(l *Link, _ Node) bool {
		return l != wire && l.Conducts() && p.returns[l.A] && p.returns[l.B]
	})
	var worst Exposure
	for _, end := range [][2]Node{{wire.A, wire.B}, {wire.B, wire.A}} {
		enters, leaves := end[0], end[1]
		if back.Has(leaves) && !slices.Contains(home, enters) {
			worst = larger(worst, f.maximum(int(enters), nowhere))
		}
	}
	return worst
}

// addReturnEdges gives a flow network the links of the graph with every part shorted
// inside, but no way back to the feeding side, and none on from where the current of a
// source comes home to it.
func (p *Protection) addReturnEdges(f *flow, home []Node, without *Link) {
	f.expect(len(p.n.links))
	edge := func(from, to Node, amps float64, by *Link) {
		if !slices.Contains(home, from) && (!p.returns[from] || p.returns[to]) {
			f.edge(int(from), int(to), amps, by)
		}
	}
	for i := range p.n.links {
		l := &p.n.links[i]
		if l == without || l.Kind == OutputLink || l.Is(model.SourceElement) || l.Is(model.ChargerElement) {
			continue
		}
		amps, by := math.Inf(1), (*Link)(nil)
		if l.Is(model.FuseElement) {
			amps, by = p.n.deviceAmps(l), l
		}
		edge(l.A, l.B, amps, by)
		if !l.Is(model.DiodeElement) {
			edge(l.B, l.A, amps, by)
		}
	}
}
