package network

import (
	"math"
	"slices"

	"example.com/lugbook/model"
)

// Entry is a place where current enters a piece of wiring that no device divides: a
// feed, or a device or limiting element with a feed behind it.
type Entry struct {
	At     Node
	Feed   *Feed   // set if a feed stands here
	Amps   float64 // the most that enters for long; infinite if nothing limits it
	Limits []*Link // what limits it
	Lead   *LeadIn // what leaves from here up to the next devices
}

// IsUnrated reports whether a device of unknown rating is among the limits.
func (e Entry) IsUnrated() bool { return e.Amps >= unrated && !math.IsInf(e.Amps, 1) }

// Entries lists all places where current enters, in the order of the feeds and then
// of the links. A device is an entry only for the side that it is fed toward: what is
// beyond it must have a feed without what is on this side.
func (p *Protection) Entries() []Entry {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.entries == nil {
		p.entries = p.findEntries()
	}
	return slices.Clone(p.entries)
}

func (p *Protection) findEntries() []Entry {
	var list []Entry
	for i := range p.Feeds {
		f := &p.Feeds[i]
		if !p.returns[f.At] {
			list = append(list, Entry{At: f.At, Feed: f, Amps: f.Limit, Limits: f.Limits})
		}
	}
	behind := map[[2]int]Exposure{}
	for i := range p.n.links {
		l := &p.n.links[i]
		list = p.enter(list, l, l.A, l.B, behind)
		if !l.Is(model.DiodeElement) {
			list = p.enter(list, l, l.B, l.A, behind)
		}
	}
	for i := range list {
		list[i].Lead = p.n.LeadIn(list[i].At, p.returns)
	}
	return list
}

// enter adds the entry through a link from one node to another, if current comes that way.
func (p *Protection) enter(list []Entry, l *Link, from, to Node, behind map[[2]int]Exposure) []Entry {
	a, b := p.zones.Of(from), p.zones.Of(to)
	if a == b || p.returns[from] || p.returns[to] {
		return list
	}
	amps := math.Inf(1)
	if !l.Is(model.DiodeElement) {
		amps = p.n.passes(l, p.most)
	}
	key := [2]int{a, b}
	fed, known := behind[key]
	if !known {
		fed = p.coarse.maximum(a, b)
		behind[key] = fed
	}
	if amps == 0 || fed.Amps == 0 {
		return list
	}
	if fed.Amps <= amps {
		return append(list, Entry{At: to, Amps: fed.Amps, Limits: fed.Limits})
	}
	return append(list, Entry{At: to, Amps: amps, Limits: []*Link{l}})
}
