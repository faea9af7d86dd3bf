package network

import (
	"math"
	"sync"

	"example.com/lugbook/model"
)

// Exposure is the largest current that can persist in a conductor without any
// protective device opening.
type Exposure struct {
	Amps   float64 // infinite if nothing limits it
	Limits []*Link // what limits it: devices, limiting resistances, feeds; side by side, so their ratings add
}

// Protection answers how much current can reach each conductor from all feeds at
// once: the maximum flow through the network, with the rating of each device as its
// capacity (Ford and Fulkerson, "Maximal flow through a network", 1956).
type Protection struct {
	Feeds        []Feed
	Regenerators []Feed // drives that give current back while they brake
	Shorted      []Feed // batteries and packs whose poles are joined by metal: they are in no string

	n        *Network
	returns  []bool
	most     float64 // V, the highest of the feeds
	zones    *Groups // nodes that conduct freely to each other
	cuts     *cuts   // of the zones
	limiting []limiting
	limited  []Exposure
	done     []bool
	coarse   *flow
	homings  []*homing
	homeward *cuts // of what brings current back, once it is asked for
	entries  []Entry
	mu       sync.Mutex // several goroutines may ask
}

// limiting is a link that lets a limited current through, or any in one direction.
type limiting struct {
	*Link
	amps float64
}

// unrated stands for the capacity of a device whose rating is not known: more than
// any rating, less than infinite.
const unrated = 1e9

func (n *Network) protect() *Protection {
	p := &Protection{n: n, Feeds: n.Feeds(), Regenerators: n.Regenerators(), returns: n.Returns()}
	p.most = highest(p.Feeds)
	for _, l := range n.Shorted() {
		p.Shorted = append(p.Shorted, Feed{At: l.A, Return: l.B, Link: l, Limit: math.Inf(1)})
	}
	p.cuts = n.cutsOf(func(l *Link) bool { return !p.returns[l.A] && !p.returns[l.B] && l.Conducts() })
	p.zones = p.cuts.groups
	p.limited, p.done = make([]Exposure, p.zones.Count()), make([]bool, p.zones.Count())
	p.limiting = p.limits()
	p.coarse = newFlow(p.zones)
	p.addEdges(p.coarse)
	return p
}

// limits lists the links of the feeding side that limit what passes them.
func (p *Protection) limits() []limiting {
	var list []limiting
	for i := range p.n.links {
		l := &p.n.links[i]
		if l.Conducts() || p.returns[l.A] || p.returns[l.B] {
			continue
		}
		if amps := p.n.passes(l, p.most); amps > 0 || l.Is(model.DiodeElement) {
			list = append(list, limiting{l, amps})
		}
	}
	return list
}

// Returns reports whether a node is on the return side of a source.
func (p *Protection) Returns(at Node) bool { return at >= 0 && p.returns[at] }

// Exposure bounds the current in a wire from above: what can reach the metal that it
// is part of. It is zero for a wire that no feed reaches.
func (p *Protection) Exposure(wire *Link) Exposure {
	if p.returns[wire.A] || p.returns[wire.B] {
		return Exposure{}
	}
	p.mu.Lock()
	defer p.mu.Unlock()
	return p.zone(p.zones.Of(wire.A))
}

// zone is the exposure of a piece of wiring that no device divides.
func (p *Protection) zone(z int) Exposure {
	if !p.done[z] {
		p.limited[z], p.done[z] = p.coarse.maximum(z, nowhere), true
	}
	return p.limited[z]
}

// Exact is the exposure of the wire itself: the most that one of its ends can be fed
// without the wire, for a fault at its other end. A wire of the return side is fed by what
// stands before it, for a fault inside a part there.
func (p *Protection) Exact(wire *Link) Exposure {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.returns[wire.A] || p.returns[wire.B] {
		return p.exactReturn(wire)
	}
	z := p.zones.Of(wire.A)
	side, alone := p.cuts.cut(wire)
	if !alone {
		return p.zone(z)
	}
	p.coarse.divide(z, side)
	defer p.coarse.unite()
	first, second := z, p.coarse.spare()
	if side.has(wire.A) {
		first, second = second, first
	}
	return larger(p.coarse.maximum(first, nowhere), p.coarse.maximum(second, nowhere))
}

func larger(a, b Exposure) Exposure {
	if b.Amps > a.Amps {
		return b
	}
	return a
}

// IsUnrated reports whether a device of unknown rating is among the limits.
func (e Exposure) IsUnrated() bool { return e.Amps >= unrated && !math.IsInf(e.Amps, 1) }

// addEdges gives a flow network the feeds and what limits their currents.
func (p *Protection) addEdges(f *flow) {
	for _, list := range [...][]Feed{p.Feeds, p.Regenerators, p.Shorted} {
		for i := range list {
			if feed := &list[i]; !p.returns[feed.At] {
				f.feed(feed.At, feed.Limit, feed.Limits)
			}
		}
	}
	for _, l := range p.limiting {
		if l.Is(model.DiodeElement) {
			f.edge(l.A, l.B, math.Inf(1), nil)
		} else {
			f.edge(l.A, l.B, l.amps, l.Link)
			f.edge(l.B, l.A, l.amps, l.Link)
		}
	}
}

// passes is the current in amperes that a link lets through for long, at the highest of the
// voltages.
func (n *Network) passes(l *Link, volts float64) float64 {
	switch {
	case l.Conducts():
		return math.Inf(1)
	case l.Is(model.FuseElement):
		return n.deviceAmps(l)
	case l.Is(model.ResistanceElement), l.Is(model.CoilElement):
		ohms, known := n.Figure(l.Part, l.Element.Ohms)
		if !known || ohms <= 0 {
			return 0
		}
		return volts / ohms
	}
	return 0
}

// deviceAmps is the rating of a fuse or breaker.
func (n *Network) deviceAmps(l *Link) float64 {
	if amps, known := n.Figure(l.Part, l.Element.Amps); known {
		return amps
	}
	return unrated
}

// highest is the largest full-charge voltage of the feeds.
func highest(feeds []Feed) float64 {
	volts := 0.0
	for _, f := range feeds {
		volts = max(volts, f.Full.Value, f.Nominal.Value)
	}
	return volts
}
