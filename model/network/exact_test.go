package network

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"example.com/lugbook/model"
	"example.com/lugbook/model/part"
)

// drawSheet wires parts of a cart with each other at random.
func drawSheet(t *rapid.T) *Network {
	job := &model.Job{Sheets: []model.Sheet{{Name: model.AsFound}}}
	s := &job.Sheets[0]
	kinds := []string{
		"lead-battery-6v", "lead-battery-12v", "fuse-cartridge", "fuse-inline", "isolator", "light-switch", "lamp-12v",
		"bus-bar-4", "reducer-common-negative", "charger-onboard-48v", "diode", "precharge-resistor", "shunt", "contactor-48v",
	}
	var ends []model.TerminalRef
	for i := range rapid.IntRange(2, 14).Draw(t, "parts") {
		p := model.Part{ID: model.PartID(fmt.Sprint("p", i)), Kind: rapid.SampledFrom(kinds).Draw(t, "kind")}
		require.NotNil(t, part.Library().Definition(p.Kind), p.Kind)
		s.Parts = append(s.Parts, p)
		for _, name := range part.Library().TerminalsOf(s, &p) {
			ends = append(ends, model.TerminalRef{Part: p.ID, Name: name})
		}
	}
	end := rapid.Custom(func(t *rapid.T) model.End { return model.End{At: rapid.SampledFrom(ends).Draw(t, "at")} })
	for i := range rapid.IntRange(1, 30).Draw(t, "wires") {
		s.Wires = append(s.Wires, model.Wire{ID: model.WireID(fmt.Sprint("w", i)), From: end.Draw(t, "from"), To: end.Draw(t, "to")})
	}
	return Build(job, s, part.Library())
}

// The oracle computes the flow through the whole graph, node by node, with the wire taken
// out, as the exposure is defined.
func TestExposuresAreTheFlowsThroughTheWholeGraph(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := drawSheet(t)
		p := n.Protect()
		for i := range n.links {
			if l := &n.links[i]; l.Kind == WireLink {
				want, have := p.byDefinition(l), p.Exact(l)
				require.InDelta(t, finite(want.Amps), finite(have.Amps), 1e-9*finite(want.Amps), "%s", l.Wire.ID)
				require.Equal(t, want.Limits, have.Limits, "%s", l.Wire.ID)
			}
		}
	})
}

func finite(amps float64) float64 { return min(amps, math.MaxFloat64) }

func (p *Protection) byDefinition(wire *Link) Exposure {
	if !p.returns[wire.A] && !p.returns[wire.B] {
		f := newFlow(p.n.Joined(func(*Link) bool { return false }))
		for _, feed := range slices.Concat(p.Feeds, p.Regenerators, p.Shorted) {
			if !p.returns[feed.At] {
				f.feed(feed.At, feed.Limit, feed.Limits)
			}
		}
		for i := range p.n.links {
			l := &p.n.links[i]
			if l == wire || l.A == l.B || p.returns[l.A] || p.returns[l.B] {
				continue
			}
			if l.Is(model.DiodeElement) {
				f.edge(l.A, l.B, math.Inf(1), nil)
			} else if amps := p.n.passes(l, p.most); amps > 0 {
				f.edge(l.A, l.B, amps, l)
				f.edge(l.B, l.A, amps, l)
			}
		}
		return larger(f.maximum(int(wire.A), nowhere), f.maximum(int(wire.B), nowhere))
	}
	var worst Exposure
	for _, h := range p.allHomings() {
		worst = larger(worst, h.byDefinition(wire))
	}
	return worst
}

func (h *homing) byDefinition(wire *Link) Exposure {
	f := newFlow(h.p.n.Joined(func(*Link) bool { return false }))
	for _, feed := range h.feeds {
		f.feed(feed.At, feed.Limit, feed.Limits)
	}
	edge := func(from, to Node, amps float64, by *Link) {
		if !h.isHome(from) && (!h.p.returns[from] || h.p.returns[to]) {
			f.edge(from, to, amps, by)
		}
	}
	for i := range h.p.n.links {
		l := &h.p.n.links[i]
		if l == wire || !h.carries(l) {
			continue
		}
		amps, by := math.Inf(1), (*Link)(nil)
		if l.Is(model.FuseElement) {
			amps, by = h.p.n.deviceAmps(l), l
		}
		edge(l.A, l.B, amps, by)
		if !l.Is(model.DiodeElement) {
			edge(l.B, l.A, amps, by)
		}
	}
	back := h.p.n.Walk(h.home, func(l *Link, _ Node) bool {
		return l != wire && l.Conducts() && h.p.returns[l.A] && h.p.returns[l.B]
	})
	var worst Exposure
	for _, end := range [][2]Node{{wire.A, wire.B}, {wire.B, wire.A}} {
		if enters, leaves := end[0], end[1]; back.Has(leaves) && !h.isHome(enters) {
			worst = larger(worst, f.maximum(int(enters), nowhere))
		}
	}
	return worst
}

// A link alone joins its ends if they are apart without it, and then one side has one of them.
func TestCutsAreWhatFallsApart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := drawSheet(t)
		c := n.cutsOf((*Link).Conducts)
		for i := range n.links {
			l := &n.links[i]
			without := n.Joined(func(o *Link) bool { return o != l && o.Conducts() })
			side, alone := c.cut(l)
			require.Equal(t, l.Conducts() && !without.Same(l.A, l.B), alone)
			if !alone {
				continue
			}
			require.NotEqual(t, side.has(l.A), side.has(l.B))
			for at := range n.points {
				if c.groups.Same(Node(at), l.A) {
					require.Equal(t, without.Same(Node(at), l.A) == side.has(l.A), side.has(Node(at)))
				}
			}
		}
	})
}
