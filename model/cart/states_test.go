package cart_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	"example.com/lugbook/model/cart"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/part"
	"example.com/lugbook/model/state"
)

func built(t *testing.T, name string, sheet model.SheetName) *network.Network {
	t.Helper()
	job := decoded(t, name).Job
	return network.Build(job, job.Sheet(sheet), part.Library())
}

// solved is a sheet's network in a state, with some controls set otherwise.
func solved(t *testing.T, n *network.Network, name string, set ...state.Setting) *network.Solution {
	t.Helper()
	s, ok := state.Find(n.States(), name)
	require.True(t, ok, "the cart has no state %s", name)
	for _, c := range set {
		s = s.With(c.Control, c.Position)
	}
	solution, err := n.Solve(s)
	require.NoError(t, err)
	return solution
}

// mainContact is the main contact of the cart's solenoid.
func mainContact(t *testing.T, n *network.Network) *network.Link {
	t.Helper()
	for _, l := range n.LinksAt(n.Node(model.TerminalRef{Part: "sol", Name: "L1"})) {
		if l.Is(model.ContactElement) {
			return l
		}
	}
	require.Fail(t, "the cart has no part sol with a main contact")
	return nil
}

func TestPlannedCartsDriveAndDoNotDriveWhileCharging(t *testing.T) {
	for _, name := range cart.Names() {
		t.Run(name, func(t *testing.T) {
			n := built(t, name, model.Plan)
			main := mainContact(t, n)
			for _, want := range []struct {
				state  string
				closed bool
			}{
				{state.DriveForward, true}, {state.DriveReverse, true},
				{state.Parked, false}, {state.Charging, false}, {state.ChargingKeyOnPedalDown, false},
			} {
				require.Equal(t, want.closed, solved(t, n, want.state).On(main), want.state)
			}
			for _, s := range n.States() {
				_, err := n.Solve(s)
				require.NoError(t, err, s.Name)
			}
		})
	}
}

func TestCartsAsFoundDriveWithThePlugIn(t *testing.T) {
	for _, name := range []string{"marina-shuttle", "festival-bowser", "quarry-inspection"} {
		t.Run(name, func(t *testing.T) {
			n := built(t, name, model.AsFound)
			require.True(t, solved(t, n, state.ChargingKeyOnPedalDown).On(mainContact(t, n)))
		})
	}
}

func TestTheOldReducerOfTheShuttleNeverSleeps(t *testing.T) {
	amps := func(sheet model.SheetName, wire model.WireID) float64 {
		a, ok := solved(t, built(t, "marina-shuttle", sheet), state.Parked).WireCurrent(wire)
		require.True(t, ok)
		return a
	}
	require.Greater(t, amps(model.AsFound, "r1"), 0.03, "awake with the key off")
	require.Less(t, amps(model.Plan, "r12"), 0.001, "asleep with the key off")
}

func TestThePumpOfTheBowserStopsWithTheKey(t *testing.T) {
	n := built(t, "festival-bowser", model.Plan)
	pumping := state.Setting{Control: model.OtherSwitch, Position: "on"}
	for name, want := range map[string]float64{state.KeyOn: 20, state.Parked: 0} {
		a, ok := solved(t, n, name, pumping).WireCurrent("q12")
		require.True(t, ok)
		require.InDelta(t, want, a, 3, name) // it takes more than its 20 A above 72 V
	}
}

func TestTheInspectionCartDropsDeadInItsSecondSpeed(t *testing.T) {
	n := built(t, "quarry-inspection", model.AsFound)
	amps := map[string]float64{}
	for _, step := range []string{"step-1", "step-2", "step-3", "down"} {
		s := solved(t, n, state.DriveForward, state.Setting{Control: model.Pedal, Position: step})
		a, ok := s.WireCurrent("m1")
		require.True(t, ok)
		amps[step] = a
	}
	require.InDelta(t, 0, amps["step-2"], 0.01, "its lead is burnt off at the coils")
	require.Greater(t, amps["step-1"], 20.0)
	require.Greater(t, amps["step-3"], amps["step-1"])
	require.Greater(t, amps["down"], amps["step-3"])
}
