package edit_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/unit"
)

// quantity reads a value that the test knows to be right.
func quantity[T any, P interface {
	*T
	UnmarshalText([]byte) error
}](t require.TestingT, text string) T {
	var v T
	require.NoError(t, P(&v).UnmarshalText([]byte(text)))
	return v
}

func library(t require.TestingT) *model.Catalogue {
	battery := model.Definition{
		Kind: "battery", Title: "battery", Designator: "b",
		Terminals: []model.TerminalDef{{Name: "+", Form: model.StudForm}, {Name: "-", Form: model.StudForm}},
		Ratings:   []model.Rating{{Name: "voltage", Value: quantity[unit.Any](t, "8 V")}},
	}
	contactor := model.Definition{
		Kind: "contactor", Title: "contactor", Designator: "sol",
		Terminals: []model.TerminalDef{{Name: "L1", Form: model.StudForm}, {Name: "L2", Form: model.StudForm}},
	}
	return model.NewCatalogue([]model.Definition{battery, contactor})
}

// job has two batteries, a contactor, and on b1.+ a stack of w1 and w2.
func job() *model.Job {
	return &model.Job{
		Version: model.FileVersion, Title: "sample",
		Zones:    []model.Zone{{ID: "tray"}, {ID: "dash"}},
		States:   []model.OwnState{{Name: "pushed"}},
		Readings: []model.Reading{{Sheet: model.AsFound, State: "pushed", Wire: "w1", Value: unit.A(3).Any()}},
		Sheets: []model.Sheet{{
			Name: model.AsFound, Note: "as it came",
			Parts: []model.Part{
				{ID: "b1", Kind: "battery", Zone: "tray"}, {ID: "b2", Kind: "battery"}, {ID: "sol", Kind: "contactor"},
				{ID: "x1", Kind: model.UnknownKind},
			},
			Wires: []model.Wire{
				{ID: "w1", From: model.On("b1", "+"), To: model.On("sol", "L1"), Judged: []model.Judgement{model.JudgedTo}},
				{ID: "w2", From: model.On("x1", "7"), To: model.On("b1", "+")},
				{ID: "w3", From: model.On("b1", "-"), To: model.On("b2", "+")},
			},
			Terminals: []model.Terminal{
				{At: model.TerminalRef{Part: "b1", Name: "+"}, Stack: []model.WireID{"w1", "w2"}, Note: "boot gone"},
				{At: model.TerminalRef{Part: "sol", Name: "L1"}, Stack: []model.WireID{"w1"}},
			},
		}},
	}
}

// volts is a reading across b1.
func volts(t require.TestingT, value string) model.Reading {
	return model.Reading{Sheet: sheet, State: "parked", Red: terminal("b1", "+"), Black: terminal("b1", "-"), Value: quantity[unit.Any](t, value)}
}

func newHistory(t require.TestingT) *edit.History { return edit.NewHistory(job(), library(t)) }

// after is the as-found sheet after the edits, each of which must be accepted.
func after(t *testing.T, edits ...edit.Edit) *model.Sheet {
	t.Helper()
	h := newHistory(t)
	for _, e := range edits {
		require.NoError(t, h.Do(e))
	}
	return h.Job().Sheet(model.AsFound)
}

func terminal(part model.PartID, name string) model.TerminalRef {
	return model.TerminalRef{Part: part, Name: name}
}
