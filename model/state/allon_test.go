package state_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	"example.com/lugbook/model/part"
	"example.com/lugbook/model/state"
)

func TestAllOnSwitchesOnWhatIsOff(t *testing.T) {
	sheet := &model.Sheet{Parts: []model.Part{
		{ID: "ls", Kind: "light-switch"}, {ID: "hb", Kind: "horn-button"}, {ID: "bs", Kind: "brake-switch"},
		{ID: "sw", Kind: "switch"}, {ID: "cb", Kind: "breaker"}, {ID: "key", Kind: "key-switch"},
	}}
	parked, ok := state.Find(state.List(sheet, part.Library()), state.Parked)
	require.True(t, ok)
	on, differs := parked.AllOn(sheet, part.Library())
	require.True(t, differs)
	for c, want := range map[model.Control]string{
		model.LightSwitch: "on", model.HornButton: "on", model.BrakeSwitch: "down", model.OtherSwitch: "on", model.Key: "off",
	} {
		at, _ := on.Position(c)
		require.Equal(t, want, at, c)
	}
	again, differs := on.AllOn(sheet, part.Library())
	require.False(t, differs)
	require.Equal(t, on, again)
}

// A breaker rests closed: it is on already.
func TestAllOnOpensNoBreaker(t *testing.T) {
	sheet := &model.Sheet{Parts: []model.Part{{ID: "cb", Kind: "breaker"}}}
	_, differs := state.List(sheet, part.Library())[0].AllOn(sheet, part.Library())
	require.False(t, differs)
}

func TestWhatIsOnAtWill(t *testing.T) {
	require.True(t, state.AtWill(model.LightSwitch))
	require.False(t, state.AtWill(model.Key))
}
