package state_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	"example.com/lugbook/model/state"
)

func switching(c model.Control, positions ...string) model.Definition {
	return model.Definition{Kind: string(c), Control: &model.Switching{Sets: c, Positions: positions, Rest: positions[0]}}
}

func sheetOf(defs ...model.Definition) (*model.Sheet, *model.Catalogue) {
	s := &model.Sheet{Name: model.AsFound}
	for _, d := range defs {
		s.Parts = append(s.Parts, model.Part{ID: model.PartID("p-" + d.Kind), Kind: d.Kind})
	}
	return s, model.NewCatalogue(defs)
}

func names(list []state.State) []string {
	var out []string
	for _, s := range list {
		out = append(out, s.Name)
	}
	return out
}

func everything() []model.Definition {
	return []model.Definition{
		switching(model.Isolator, "open", "closed"),
		switching(model.Pedal, "up", "down"),
		switching(model.Direction, "neutral", "forward", "reverse"),
		switching(model.Key, "off", "on"),
		switching(model.TowRun, "tow", "run"),
		switching(model.PluggedIn, "no", "yes"),
		switching(model.PackOn, "off", "on"),
		switching(model.LightSwitch, "off", "on"),
	}
}

func TestListNamesEveryQuestionOfAFullCart(t *testing.T) {
	s, cat := sheetOf(everything()...)
	require.Equal(t, []string{
		"parked", "key-on", "forward-pedal-up", "drive-forward", "drive-reverse", "neutral-pedal-down",
		"charging", "charging-key-on-pedal-down", "tow", "lights-key-off", "pack-asleep", "isolated",
	}, names(state.List(s, cat)))
}

func TestListAsksOnlyWhatTheControlsAllow(t *testing.T) {
	for _, tt := range []struct {
		name string
		have []model.Definition
		want []string
	}{
		{"nothing", nil, []string{"parked"}},
		{"key alone", []model.Definition{switching(model.Key, "off", "on")}, []string{"parked", "key-on", "drive-forward"}},
		{"charger alone", []model.Definition{switching(model.PluggedIn, "no", "yes")}, []string{"parked", "charging"}},
		{"isolator and key", []model.Definition{switching(model.Isolator, "open", "closed"), switching(model.Key, "off", "on")},
			[]string{"parked", "key-on", "drive-forward", "isolated"}},
		{"pedal and plug", []model.Definition{switching(model.Pedal, "up", "down"), switching(model.PluggedIn, "no", "yes")},
			[]string{"parked", "drive-forward", "charging", "charging-key-on-pedal-down"}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			s, cat := sheetOf(tt.have...)
			require.Equal(t, tt.want, names(state.List(s, cat)))
		})
	}
}

func TestStateSetsOnlyControlsThatAreThereInFixedOrder(t *testing.T) {
	s, cat := sheetOf(switching(model.Pedal, "up", "down"), switching(model.Key, "off", "on"))
	drive, ok := state.Find(state.List(s, cat), state.DriveForward)
	require.True(t, ok)
	require.Equal(t, []state.Setting{{Control: model.Key, Position: "on"}, {Control: model.Pedal, Position: "down"}}, drive.Set)
	_, ok = drive.Position(model.TowRun)
	require.False(t, ok)
}

func TestOfPutsAPartIntoService(t *testing.T) {
	s, cat := sheetOf(everything()...)
	list := state.List(s, cat)
	parked, _ := state.Find(list, state.Parked)
	tow, _ := state.Find(list, state.Tow)
	isolator := &model.Switching{Sets: model.Isolator, Positions: []string{"open", "closed"}, Rest: "open"}
	require.Equal(t, "closed", parked.Of(isolator))
	require.Equal(t, "closed", state.State{}.Of(isolator), "closed even in a state that does not know of it")
	towRun := &model.Switching{Sets: model.TowRun, Positions: []string{"tow", "run"}, Rest: "tow"}
	require.Equal(t, "run", parked.Of(towRun))
	require.Equal(t, "tow", tow.Of(towRun))
	twoWay := &model.Switching{Sets: model.Direction, Positions: []string{"forward", "reverse"}, Rest: "forward"}
	require.Equal(t, "forward", parked.Of(twoWay), "no neutral: at rest")
	other := &model.Switching{Sets: model.OtherSwitch, Positions: []string{"a", "b"}, Rest: "b"}
	require.Equal(t, "b", parked.Of(other))
}

func TestIsolatedOpensTheIsolatorAndNothingElse(t *testing.T) {
	s, cat := sheetOf(everything()...)
	list := state.List(s, cat)
	isolated, ok := state.Find(list, state.Isolated)
	require.True(t, ok)
	parked, _ := state.Find(list, state.Parked)
	at, _ := isolated.Position(model.Isolator)
	require.Equal(t, "open", at)
	require.Equal(t, parked.Set, isolated.With(model.Isolator, "closed").Set)
}

func TestWithLeavesTheStateItCameFromAlone(t *testing.T) {
	s, cat := sheetOf(everything()...)
	tow, _ := state.Find(state.List(s, cat), state.Tow)
	keyed := tow.With(model.Key, "on")
	was, _ := tow.Position(model.Key)
	is, _ := keyed.Position(model.Key)
	require.Equal(t, "off", was)
	require.Equal(t, "on", is)
	require.Equal(t, model.Key, keyed.Set[0].Control, "kept in the order of the controls")
}

func TestFindKnowsWhatIsMissing(t *testing.T) {
	_, ok := state.Find(nil, "parked")
	require.False(t, ok)
}
