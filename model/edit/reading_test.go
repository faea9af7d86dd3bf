package edit_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/unit"
)

// done is the job after the edits, each of which must be accepted.
func done(t *testing.T, edits ...edit.Edit) *model.Job {
	t.Helper()
	h := newHistory(t)
	for _, e := range edits {
		require.NoError(t, h.Do(e))
	}
	return h.Job()
}

func TestReadingsAreKeptInTheirOrder(t *testing.T) {
	first := job().Readings[0]
	j := done(t, edit.AddReading{Reading: volts(t, "8 V")}, edit.AddReading{Reading: volts(t, "7 V")})
	require.Equal(t, []model.Reading{first, volts(t, "8 V"), volts(t, "7 V")}, j.Readings)
	j = done(t, edit.AddReading{Reading: volts(t, "8 V")}, edit.UpdateReading{Index: 0, Reading: volts(t, "6 V")}, edit.RemoveReading{Index: 1})
	require.Equal(t, []model.Reading{volts(t, "6 V")}, j.Readings)
}

func TestReadingsFollowWhatTheyAreOf(t *testing.T) {
	onB1 := edit.AddReading{Reading: volts(t, "8 V")}
	j := done(t, onB1, edit.RenamePart{From: "b1", To: "front"}, edit.RenameWire{From: "w1", To: "main"})
	require.Equal(t, model.WireID("main"), j.Readings[0].Wire)
	require.Equal(t, terminal("front", "+"), j.Readings[1].Red)
	require.Equal(t, terminal("front", "-"), j.Readings[1].Black)
	require.Equal(t, []model.Reading{volts(t, "8 V")}, done(t, onB1, edit.RemoveWire{Sheet: sheet, ID: "w1"}).Readings)
	require.Equal(t, job().Readings, done(t, onB1, edit.RemovePart{Sheet: sheet, ID: "b1"}).Readings)
	require.Empty(t, done(t, onB1, edit.RemovePart{Sheet: sheet, ID: "b1", WithWires: true}).Readings)
	both := done(t, edit.StartSheet{New: model.Plan, Copy: sheet}, onB1, edit.RemovePart{Sheet: model.Plan, ID: "b1", WithWires: true})
	require.Len(t, both.Readings, 2, "readings of another sheet stay")
}

func TestOwnStatesAreReplacedByName(t *testing.T) {
	limp := model.OwnState{Name: "limp", From: "pushed"}
	j := done(t, edit.SetState{State: limp}, edit.SetState{State: model.OwnState{Name: "pushed", About: "by hand"}})
	require.Equal(t, []model.OwnState{{Name: "pushed", About: "by hand"}, limp}, j.States)
	require.Equal(t, job().States, done(t, edit.SetState{State: limp}, edit.RemoveState{State: "limp"}).States)
}

func TestRecordsOfAMeterAndACurveShareNothing(t *testing.T) {
	meter := &model.Meter{Accuracy: unit.Pct(0.5), Counts: 3, Display: 6000}
	points := []model.OpenPoint{{At: unit.A(2), Least: unit.S(1)}}
	j := done(t, edit.SetMeter{Meter: meter}, edit.SetOpens{Sheet: sheet, ID: "b1", Points: points})
	meter.Counts, points[0].At = 9, unit.A(3)
	require.Equal(t, 3, j.Meter.Counts)
	require.Equal(t, unit.A(2), j.Sheets[0].Part("b1").Opens[0].At)
	require.Nil(t, done(t, edit.SetMeter{Meter: meter}, edit.SetMeter{}).Meter)
}
