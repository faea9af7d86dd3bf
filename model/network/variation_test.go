package network_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/state"
)

// link finds an element of a part by kind, the first of them.
func link(t *testing.T, n *network.Network, part model.PartID, kind model.ElementKind) *network.Link {
	t.Helper()
	for i := range n.Links() {
		if l := &n.Links()[i]; l.Part != nil && l.Part.ID == part && l.Is(kind) {
			return l
		}
	}
	require.Fail(t, "no such element", "%s of %s", kind, part)
	return nil
}

// element finds an element of a part by its id.
func element(t *testing.T, n *network.Network, part model.PartID, id string) *network.Link {
	t.Helper()
	for i := range n.Links() {
		if l := &n.Links()[i]; l.Part != nil && l.Part.ID == part && l.Element.ID == id {
			return l
		}
	}
	require.Fail(t, "no such element", "%s of %s", id, part)
	return nil
}

func vary(t *testing.T, n *network.Network, name string, v network.Variation) *network.Solution {
	t.Helper()
	s, ok := state.Find(n.States(), name)
	require.True(t, ok, name)
	solution, err := n.SolveWith(s, v)
	require.NoError(t, err)
	return solution
}

func TestNoVariationIsTheSheetItself(t *testing.T) {
	n := build(t, motor)
	for _, s := range n.States() {
		plain, err := n.Solve(s)
		require.NoError(t, err)
		varied := vary(t, n, s.Name, network.Variation{Changes: []network.Change{{Link: n.WireLink("w1")}}})
		for i := range n.Links() {
			l := &n.Links()[i]
			require.Equal(t, plain.Current(l), varied.Current(l), s.Name)
		}
	}
}

func TestAChangeChangesWhatItSays(t *testing.T) {
	n := build(t, motor)
	main, coil := link(t, n, "sol", model.ContactElement), link(t, n, "sol", model.CoilElement)
	across := func(s *network.Solution) float64 {
		volts, _ := s.Between(ref("sol.coil+"), ref("sol.coil-"))
		return volts
	}
	traction := func(s *network.Solution) float64 { return s.Current(n.WireLink("w3")) }
	for name, c := range map[string]struct {
		state  string
		change network.Change
		reads  func(*network.Solution) float64
		want   float64
		within float64
	}{
		"as it is":              {state.DriveForward, network.Change{Link: main}, traction, 150, 2},
		"broken coil feed":      {state.DriveForward, network.Change{Link: n.WireLink("w8"), Open: true}, traction, 0, 0.2},
		"open coil":             {state.DriveForward, network.Change{Link: coil, Open: true}, traction, 0, 0.2},
		"blown control fuse":    {state.DriveForward, network.Change{Link: link(t, n, "fu3", model.FuseElement), Open: true}, traction, 0, 0.2},
		"contact does not move": {state.DriveForward, network.Change{Link: main, Open: true}, traction, 0, 0.2},
		"welded contact": {state.Parked, network.Change{Link: main, Closed: true}, func(s *network.Solution) float64 {
			volts, _ := s.Between(ref("sol.L1"), ref("sol.L2"))
			return volts
		}, 0, 0.01},
		"pack of 1.05 times":     {state.DriveForward, network.Change{Link: link(t, n, "pack", model.SourceElement), Scale: 1.05}, across, 53.3*1.05 - 2.4, 0.5},
		"dead controller":        {state.DriveForward, network.Change{Link: element(t, n, "ctrl", "drive"), Dead: true}, across, 53.3, 0.8},
		"poor joint in feed":     {state.DriveForward, network.Change{Link: n.WireLink("w8"), AddOhms: 140}, func(s *network.Solution) float64 { return s.Current(coil) }, 53.3 / 280, 0.01},
		"coil of twice the ohms": {state.KeyOn, network.Change{Link: coil, Scale: 2}, across, 0, 0.1},
	} {
		got := c.reads(vary(t, n, c.state, network.Variation{Changes: []network.Change{c.change}}))
		require.InDelta(t, c.want, got, c.within, name)
	}
}

func TestAReversedSuppressionDiodeShortsTheCoilFeed(t *testing.T) {
	n := build(t, motor)
	s := vary(t, n, state.DriveForward, network.Variation{Changes: []network.Change{{Link: link(t, n, "dio", model.DiodeElement), Reversed: true}}})
	amps, _ := s.WireCurrent("w8")
	require.Greater(t, amps, 100.0)
}

func TestABridgeReadsAsAMeter(t *testing.T) {
	n := build(t, motor)
	pack, key := node(t, n, "pack.NEG"), node(t, n, "key.IGN")
	meter := network.Bridge{A: key, B: pack, Ohms: 10e6}
	s := vary(t, n, state.Parked, network.Variation{Bridges: []network.Bridge{meter}})
	require.InDelta(t, 0, s.BridgeCurrent(0)*10e6, 1e-6, "behind an open switch")
	s = vary(t, n, state.KeyOn, network.Variation{Bridges: []network.Bridge{meter}})
	require.InDelta(t, 53.3, s.BridgeCurrent(0)*10e6, 0.1)

	ohmmeter := network.Bridge{A: node(t, n, "sol.coil+"), B: node(t, n, "sol.coil-"), Ohms: 1000, Volts: 0.3}
	s = vary(t, n, state.Parked, network.Variation{Dead: true, Bridges: []network.Bridge{ohmmeter}})
	amps := -s.BridgeCurrent(0)
	require.InDelta(t, 140, 0.3/amps-1000, 0.5, "the coil in its wires, the source apart")

	driven := network.Bridge{A: node(t, n, "sol.coil+"), B: node(t, n, "sol.coil-"), Amps: 1e-3}
	s = vary(t, n, state.Parked, network.Variation{Dead: true, Bridges: []network.Bridge{driven}})
	volts, ok := s.Between(ref("sol.coil+"), ref("sol.coil-"))
	require.True(t, ok)
	require.InDelta(t, 0.14, volts, 0.001)
	require.InDelta(t, -1e-3, s.BridgeCurrent(0), 1e-12)
}

func TestWarmCopperDropsMore(t *testing.T) {
	n := build(t, motor)
	drop := func(celsius float64) float64 {
		s := vary(t, n, state.DriveForward, network.Variation{Celsius: celsius})
		volts, _ := s.Between(ref("fu1.out"), ref("sol.L1"))
		amps, _ := s.WireCurrent("w2")
		return volts/amps - 0.2e-3 // without its two joints
	}
	require.InDelta(t, 1+0.00393*55, drop(75)/drop(20), 1e-6)
	require.False(t, math.IsNaN(drop(75)))
}

func TestAFaultDrivesWhatTheContactsLetThrough(t *testing.T) {
	n := build(t, motor)
	driving := solve(t, n, state.DriveForward)
	fault := network.Bridge{A: node(t, n, "ctrl.B+"), B: node(t, n, "pack.NEG")}
	s := vary(t, n, state.DriveForward, network.Variation{Held: driving, Bridges: []network.Bridge{fault}})
	// By hand: 53.3 V over 15 mohm in the pack, 0.3 in the fuse, 0.2 in the contact, and 1.05 m
	// of 2 AWG at 0.523 mohm/m with six good joints of 0.1 mohm.
	require.InDelta(t, 53.3/(15+0.3+0.2+1.05*0.523+0.6)*1000, s.BridgeCurrent(0), 5)

	parked := solve(t, n, state.Parked)
	s = vary(t, n, state.Parked, network.Variation{Held: parked, Bridges: []network.Bridge{fault}})
	require.InDelta(t, 53.3/470, s.BridgeCurrent(0), 1e-3, "the pre-charge resistor alone")
}
