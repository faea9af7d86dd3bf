package state_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	"example.com/lugbook/model/state"
)

func TestDerivedStatesAreThoseThatTheJobFileKnows(t *testing.T) {
	s, cat := sheetOf(everything()...)
	require.Equal(t, model.DerivedStates(), names(state.List(s, cat)))
}

func TestOwnStatesComeAfterTheDerivedOnes(t *testing.T) {
	s, cat := sheetOf(switching(model.Key, "off", "on"), switching(model.Pedal, "up", "down"))
	j := &model.Job{States: []model.OwnState{
		{Name: "pressed", Set: []model.Setting{{Control: model.Pedal, Position: "down"}}},
		{Name: "pressed-dark", About: "as if plugged in", From: state.Charging, Set: []model.Setting{
			{Control: model.LightSwitch, Position: "on"}, {Control: model.Key, Position: "on"},
		}},
		{Name: "third", From: "pressed", Set: []model.Setting{{Control: model.Key, Position: "on"}}},
	}}
	list := state.OfJob(j, s, cat)
	require.Equal(t, []string{"parked", "key-on", "drive-forward", "pressed", "pressed-dark", "third"}, names(list))
	require.Equal(t, state.State{Name: "pressed", About: "as parked, pedal down",
		Set: []state.Setting{{Control: model.Key, Position: "off"}, {Control: model.Pedal, Position: "down"}}}, list[3])
	require.Equal(t, state.State{Name: "pressed-dark", About: "as if plugged in",
		Set: []state.Setting{{Control: model.Key, Position: "on"}, {Control: model.Pedal, Position: "up"}}}, list[4],
		"from a state that the sheet does not ask about, without the lights that it has not")
	require.Equal(t, []state.Setting{{Control: model.Key, Position: "on"}, {Control: model.Pedal, Position: "down"}}, list[5].Set)
	parked, _ := state.Find(list, state.Parked)
	where, _ := parked.Position(model.Pedal)
	require.Equal(t, "up", where, "the state that another starts from stays as it is")
}

func TestAJobWithoutOwnStatesHasTheDerivedOnes(t *testing.T) {
	s, cat := sheetOf(everything()...)
	require.Equal(t, state.List(s, cat), state.OfJob(&model.Job{}, s, cat))
}
