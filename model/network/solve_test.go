package network_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	"example.com/lugbook/model/mini"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/part"
	"example.com/lugbook/model/state"
)

func solve(t *testing.T, n *network.Network, name string) *network.Solution {
	t.Helper()
	s, ok := state.Find(n.States(), name)
	require.True(t, ok, name)
	solution, err := n.Solve(s)
	require.NoError(t, err)
	return solution
}

// motor completes the plan: series motor and direction switch.
const motor = plan + `
part motor motor-series
part dir direction-rotary
wire m1 ctrl.B+ motor.A1 gauge=4AWG length=600mm
wire m2 motor.A2 dir.X1 gauge=4AWG length=600mm
wire m3 dir.S1 motor.S1 gauge=4AWG length=600mm
wire m4 dir.S2 motor.S2 gauge=4AWG length=600mm
wire m5 dir.X2 ctrl.M- gauge=4AWG length=600mm
`

func TestStatesReadAsAMeterWould(t *testing.T) {
	n := build(t, motor)
	type reading struct {
		state, red, black string
		volts             float64
	}
	for _, r := range []reading{
		{state.Parked, "sol.L1", "pack.NEG", 53.3},
		{state.Parked, "key.BAT", "pack.NEG", 53.3},
		{state.Parked, "key.IGN", "pack.NEG", 0},
		{state.KeyOn, "key.IGN", "pack.NEG", 53.3},
		{state.KeyOn, "sol.coil+", "sol.coil-", 0},
		{state.DriveForward, "sol.coil+", "sol.coil-", 51},
		{state.DriveForward, "ctrl.B+", "ctrl.B-", 51},
	} {
		volts, ok := solve(t, n, r.state).Between(ref(r.red), ref(r.black))
		if r.volts == 0 && !ok {
			continue // an open switch leaves the wire behind it floating
		}
		require.True(t, ok, "%+v", r)
		require.InDelta(t, r.volts, volts, 0.8, "%+v", r)
	}
}

func TestDrivingCurrentGoesRoundTheLoop(t *testing.T) {
	n := build(t, motor)
	s := solve(t, n, state.DriveForward)
	into, ok := s.WireCurrent("w1")
	require.True(t, ok)
	back, _ := s.WireCurrent("w4")
	require.InDelta(t, into, back, 1, "all but the control current comes back on the main negative")
	require.InDelta(t, 150, into, 2, "the controller's continuous current")
	field, _ := s.WireCurrent("m3")
	backwards := solve(t, n, state.DriveReverse)
	reversed, _ := backwards.WireCurrent("m3")
	require.InDelta(t, field, -reversed, 0.5, "reverse turns the field round")
	_, ok = s.WireCurrent("none")
	require.False(t, ok)
}

func TestLiveFollowsTheSwitches(t *testing.T) {
	n := build(t, motor)
	live := func(name, at string) bool { return solve(t, n, name).Live()[node(t, n, at)] }
	require.True(t, live(state.Parked, "key.BAT"))
	require.False(t, live(state.Parked, "key.IGN"))
	require.True(t, live(state.KeyOn, "key.IGN"))
	require.True(t, live(state.Parked, "sol.L2"), "through the pre-charge resistor")
	require.False(t, live(state.Parked, "pack.NEG"))
	require.False(t, live(state.PackAsleep, "sol.L1"))
}

func TestIslandsHaveNoVoltageBetweenThem(t *testing.T) {
	n := build(t, plan+`
		part red reducer-isolated
		part lt lamp-12v
		wire r1 sol.L1 red.IN+
		wire r2 red.IN- pack.NEG
		wire r3 key.IGN red.WAKE
		wire r4 red.OUT+ lt.+
		wire r5 red.OUT- lt.-`)
	s := solve(t, n, state.KeyOn)
	_, ok := s.Between(ref("lt.+"), ref("pack.NEG"))
	require.False(t, ok)
	volts, ok := s.Between(ref("lt.+"), ref("lt.-"))
	require.True(t, ok)
	require.InDelta(t, 12, volts, 0.2)
	asleep, ok := solve(t, n, state.Parked).Between(ref("lt.+"), ref("lt.-"))
	require.True(t, ok)
	require.InDelta(t, 0, asleep, 1e-6)
}

func TestChatterNamesTheRelay(t *testing.T) {
	n := build(t, `
		part pack lithium-pack-16
		part rly relay-48v
		wire a pack.POS rly.30
		wire b rly.87a rly.86
		wire c rly.85 pack.NEG`)
	s, _ := state.Find(n.States(), state.Parked)
	_, err := n.Solve(s)
	var chatter *network.ChatterError
	require.ErrorAs(t, err, &chatter)
	require.Equal(t, "parked", chatter.State)
	require.NotEmpty(t, chatter.Links)
	for _, l := range chatter.Links {
		require.Equal(t, model.PartID("rly"), l.Part.ID)
	}
	require.ErrorContains(t, err, "rly")
}

func TestWireOhmsTellWhatIsAssumed(t *testing.T) {
	n := build(t, `
		part b1 lead-battery-6v
		part buz buzzer
		wire a b1.+ buz.+ gauge=16AWG length=1m
		wire b b1.- buz.-`)
	ohms, assumed := n.WireOhms(n.WireLink("a"))
	require.False(t, assumed)
	require.InDelta(t, 0.0134+0.0002, ohms, 0.0003, "NEC chapter 9 table 8 has 4.89 ohm per 1000 ft at 75 C for 16 AWG")
	_, assumed = n.WireOhms(n.WireLink("b"))
	require.True(t, assumed)
}

func TestABadJointAddsResistance(t *testing.T) {
	text := "part b1 lead-battery-6v\npart buz buzzer\nwire a b1.+ buz.+ gauge=4AWG length=1m"
	good, _ := build(t, text).WireOhms(build(t, text).WireLink("a"))
	n := build(t, text+"\nat b1.+ condition=corroded")
	bad, _ := n.WireOhms(n.WireLink("a"))
	require.Greater(t, bad, good+5e-3)
}

// interlocked has two relays, each fed through the other's closed contact.
const interlocked = `
part pack lithium-pack-16
part r1 relay-48v
part r2 relay-48v
wire a1 pack.POS r1.30 gauge=16AWG length=1m
wire a2 pack.POS r2.30 gauge=16AWG length=1m
wire b1 r1.87a r2.86 gauge=16AWG length=1m
wire b2 r2.87a r1.86 gauge=16AWG length=1m
wire c1 r1.85 pack.NEG gauge=16AWG length=1m
wire c2 r2.85 pack.NEG gauge=16AWG length=1m
`

func TestARaceOfRelaysIsToldApartFromChatter(t *testing.T) {
	_, err := build(t, interlocked).Solve(state.State{Name: state.Parked})
	var chatter *network.ChatterError
	require.ErrorAs(t, err, &chatter)
	require.True(t, chatter.Race)
	require.EqualError(t, err, "parked: where it comes to rest depends on which of r1, r2 is faster")
}

func TestABadFigureIsToldByItsPart(t *testing.T) {
	job, err := mini.Job("part pack lithium-pack-16\npart red reducer-isolated efficiency=900%\nwire a pack.POS red.IN+\nwire b pack.NEG red.IN-\nwire c pack.POS red.WAKE\n")
	require.NoError(t, err)
	n := network.Build(job, &job.Sheets[0], part.Library())
	_, err = n.Solve(n.States()[0])
	require.EqualError(t, err, "parked: red (converter) needs an efficiency above 0 and at most 1: correct its ratings")
}
