package cart_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	"example.com/lugbook/model/state"
)

// pumpSwitchOn closes the switch that feeds the coil of the tug's pump solenoid.
var pumpSwitchOn = state.Setting{Control: model.OtherSwitch, Position: "on"}

// tugAmps is the current in a wire of the tug, whichever way it flows.
func tugAmps(t *testing.T, sheet model.SheetName, name string, wire model.WireID, set ...state.Setting) float64 {
	t.Helper()
	a, ok := solved(t, built(t, "greenhouse-tug", sheet), name, set...).WireCurrent(wire)
	require.True(t, ok, "no wire %s", wire)
	return math.Abs(a)
}

func TestTheReversedDiodeOfTheTugShortsThePumpSwitch(t *testing.T) {
	require.Greater(t, tugAmps(t, model.AsFound, state.KeyOn, "q8", pumpSwitchOn), 100.0, "nothing but copper limits it")
	require.Less(t, tugAmps(t, model.AsFound, state.KeyOn, "q4", pumpSwitchOn), 0.01, "and the pump stands still")
	require.InDelta(t, 0.38, tugAmps(t, model.Plan, state.KeyOn, "q18", pumpSwitchOn), 0.05, "the coil alone")
	require.InDelta(t, 26, tugAmps(t, model.Plan, state.KeyOn, "q4", pumpSwitchOn), 4)
}

func TestTheChargersContactTakesOverTheLockOutOfTheTug(t *testing.T) {
	for sheet, gate := range map[model.SheetName]model.WireID{model.AsFound: "k6", model.Plan: "k25"} {
		require.Greater(t, tugAmps(t, sheet, state.DriveForward, gate), 0.2, sheet)
		require.Less(t, tugAmps(t, sheet, state.ChargingKeyOnPedalDown, gate), 0.001, sheet)
		n := built(t, "greenhouse-tug", sheet)
		require.False(t, solved(t, n, state.ChargingKeyOnPedalDown).On(mainContact(t, n)), sheet)
	}
}

func TestTheReducerOfTheTugSleepsWithTheKeyOff(t *testing.T) {
	require.Greater(t, tugAmps(t, model.Plan, state.KeyOn, "r12"), 0.1, "the beacon turns")
	require.Less(t, tugAmps(t, model.Plan, state.Parked, "r12"), 0.001)
}
