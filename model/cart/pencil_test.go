package cart_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	"example.com/lugbook/model/state"
)

// TestTheTugByPencil works three numbers of the plan of the greenhouse tug out by hand.
//
// At rest: the charger leaks 5 mA, the meter takes 10 mA and the sleeping reducer 0.5 mA,
// together 15.5 mA through the main cable. The pack's own 15 mA stay inside it.
//
// Driving: the controller takes its 110 A and the pump none; with coil, logic and the
// reducer's idling that is 110.7 A. The pack of 53.3 V and 13 mohm falls to
// 53.3 - 0.013 x 110.7 = 51.86 V.
//
// The coil then: the main cable to the bus, 0.70 m of 2 AWG at 1.7241e-8 x 1.02 / 33.63e-6
// = 0.523 mohm/m, six joints of 0.1, the fuse 0.3 and the isolator 0.2 are 1.47 mohm, at
// 110.7 A 0.163 V. The chain, 5.02 m of 16 AWG at 13.43 mohm/m, twelve joints, the fuse 3
// and four contacts of 20 are 152 mohm, at 0.44 A 0.067 V. The way back, 0.45 m of 2 AWG,
// four joints and the shunt of 0.1 are 0.735 mohm, at 110.7 A 0.081 V, and 0.8 m of 16 AWG
// 0.004 V. That leaves 51.86 - 0.163 - 0.067 - 0.081 - 0.004 = 51.55 V, and over 132 ohm
// 0.391 A.
func TestTheTugByPencil(t *testing.T) {
	n := built(t, "greenhouse-tug", model.Plan)
	volts := func(name, red, black string) float64 {
		v, ok := solved(t, n, name).Between(terminal(t, red), terminal(t, black))
		require.True(t, ok)
		return v
	}
	amps := func(name string, wire model.WireID) float64 {
		a, ok := solved(t, n, name).WireCurrent(wire)
		require.True(t, ok)
		return a
	}
	require.InDelta(t, 15.5e-3, amps(state.Parked, "w11"), 0.05e-3)
	require.InDelta(t, 51.86, volts(state.DriveForward, "pack.POS", "pack.NEG"), 0.005)
	require.InDelta(t, 51.55, volts(state.DriveForward, "sol.coil+", "sol.coil-"), 0.005)
	require.InDelta(t, 0.3905, amps(state.DriveForward, "k26"), 0.0005)
}

func terminal(t *testing.T, text string) model.TerminalRef {
	t.Helper()
	var at model.TerminalRef
	require.NoError(t, at.UnmarshalText([]byte(text)))
	return at
}
