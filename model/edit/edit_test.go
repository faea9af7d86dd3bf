package edit_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/unit"
)

const sheet = model.AsFound

func TestNames(t *testing.T) {
	for want, e := range map[string]edit.Edit{
		"set title of the job to new":                   edit.SetJob{Field: "title", Text: "new"},
		"clear title of the job":                        edit.SetJob{Field: "title"},
		"start an empty plan sheet":                     edit.StartSheet{New: model.Plan},
		"start the plan sheet from as-found":            edit.StartSheet{New: model.Plan, Copy: sheet},
		"set note of the plan sheet to x":               edit.SetSheet{Sheet: model.Plan, Field: "note", Text: "x"},
		"add zone tray":                                 edit.AddZone{Zone: model.Zone{ID: "tray"}},
		"set length of the run from a to b to 1 m":      edit.SetRun{From: "a", To: "b", Length: quantity[unit.Length](t, "1 m")},
		"add b3 (battery)":                              edit.AddPart{Sheet: sheet, Part: model.Part{ID: "b3", Kind: "battery"}},
		"remove b1":                                     edit.RemovePart{Sheet: sheet, ID: "b1"},
		"rename b1 to b9":                               edit.RenamePart{From: "b1", To: "b9"},
		"set zone of b1 to dash":                        edit.SetPart{Sheet: sheet, ID: "b1", Field: "zone", Text: "dash"},
		"set voltage of b1 to 6 V":                      edit.RatePart{Sheet: sheet, ID: "b1", Rating: model.Rating{Name: "voltage", Value: quantity[unit.Any](t, "6 V")}},
		"place b1":                                      edit.PlacePart{Sheet: sheet, ID: "b1", Place: &model.Place{}},
		"unpin b1":                                      edit.PlacePart{Sheet: sheet, ID: "b1"},
		"reorder the stack on b1.+":                     edit.Restack{Sheet: sheet, At: terminal("b1", "+")},
		"set stud of b1.+ to M8":                        edit.SetTerminal{Sheet: sheet, At: terminal("b1", "+"), Field: "stud", Text: "M8"},
		"add w9, b2.- to cut":                           edit.AddWire{Sheet: sheet, Wire: model.Wire{ID: "w9", From: model.On("b2", "-"), To: model.LooseEnd(model.Cut)}},
		"remove w1":                                     edit.RemoveWire{Sheet: sheet, ID: "w1"},
		"rename w1 to w9":                               edit.RenameWire{From: "w1", To: "w9"},
		"move the to end of w1 to b2.-":                 edit.ReEnd{Sheet: sheet, ID: "w1", Side: edit.To, End: model.On("b2", "-")},
		"set gauge of w1 to 6 AWG":                      edit.SetWire{Sheet: sheet, ID: "w1", Field: "gauge", Text: "6 AWG"},
		"record 51.2 V on b1.+ against b1.-":            edit.AddReading{Reading: volts(t, "51.2 V")},
		"correct reading 3 to 8 V on b1.+ against b1.-": edit.UpdateReading{Index: 2, Reading: volts(t, "8 V")},
		"remove reading 1":                              edit.RemoveReading{},
		"set the meter to 0.5 % + 3 counts of 6000":     edit.SetMeter{Meter: &model.Meter{Accuracy: unit.Pct(0.5), Counts: 3, Display: 6000}},
		"forget the meter":                              edit.SetMeter{},
		"set the state limp":                            edit.SetState{State: model.OwnState{Name: "limp"}},
		"remove the state limp":                         edit.RemoveState{State: "limp"},
		"set the curve of b1":                           edit.SetOpens{Sheet: sheet, ID: "b1", Points: make([]model.OpenPoint, 1)},
		"forget the curve of b1":                        edit.SetOpens{Sheet: sheet, ID: "b1"},
		"several things":                                edit.Group{Title: "several things"},
	} {
		require.Equal(t, want, e.Name())
	}
}

func TestRefusedEditsSayWhyAndChangeNothing(t *testing.T) {
	lost := model.SheetName(model.Plan)
	for _, c := range []struct {
		say string
		e   edit.Edit
	}{
		{`no property "taste"`, edit.SetJob{Field: "taste", Text: "x"}},
		{"system:", edit.SetJob{Field: "system", Text: "strong"}},
		{"the as-found sheet is there already", edit.StartSheet{New: sheet}},
		{"no plan sheet", edit.StartSheet{New: model.AsBuilt, Copy: lost}},
		{"one of the sheets", edit.StartSheet{New: "wish"}},
		{"no plan sheet", edit.SetSheet{Sheet: lost, Field: "note", Text: "x"}},
		{`no property "taste"`, edit.SetSheet{Sheet: sheet, Field: "taste", Text: "x"}},
		{"zone tray is there already", edit.AddZone{Zone: model.Zone{ID: "tray"}}},
		{"id used twice", edit.AddZone{Zone: model.Zone{ID: "TRAY"}}},
		{"no such zone", edit.SetRun{From: "tray", To: "attic", Length: quantity[unit.Length](t, "1 m")}},
		{"b1 is taken", edit.AddPart{Sheet: sheet, Part: model.Part{ID: "b1", Kind: "battery"}}},
		{"id used twice", edit.AddPart{Sheet: sheet, Part: model.Part{ID: "B1", Kind: "battery"}}},
		{"no such kind", edit.AddPart{Sheet: sheet, Part: model.Part{ID: "b3", Kind: "gadget"}}},
		{"no plan sheet", edit.AddPart{Sheet: lost, Part: model.Part{ID: "b3", Kind: "battery"}}},
		{"not a known word", edit.AddPart{Sheet: sheet, Part: model.Part{ID: "b3", Kind: "battery", Confidence: "sure"}}},
		{"no part b9", edit.RemovePart{Sheet: sheet, ID: "b9"}},
		{"no plan sheet", edit.RemovePart{Sheet: lost, ID: "b1"}},
		{"not a known word", edit.RemovePart{Sheet: sheet, ID: "b1", Leave: "flapping"}},
		{"no part b9 on any sheet", edit.RenamePart{From: "b9", To: "b8"}},
		{"b2 is taken", edit.RenamePart{From: "b1", To: "b2"}},
		{"not a usable id", edit.RenamePart{From: "b1", To: "b 1"}},
		{"no part b9", edit.SetPart{Sheet: sheet, ID: "b9", Field: "note", Text: "x"}},
		{"no such zone", edit.SetPart{Sheet: sheet, ID: "b1", Field: "zone", Text: "attic"}},
		{"has no terminal", edit.SetPart{Sheet: sheet, ID: "b1", Field: "kind", Text: "contactor"}},
		{"condition: expected one of", edit.SetPart{Sheet: sheet, ID: "b1", Field: "condition", Text: "sad"}},
		{"no part b9", edit.RatePart{Sheet: sheet, ID: "b9"}},
		{"no such figure", edit.RatePart{Sheet: sheet, ID: "b1", Rating: model.Rating{Name: "vigour", Value: quantity[unit.Any](t, "6 V")}}},
		{"wrong kind of quantity", edit.RatePart{Sheet: sheet, ID: "b1", Rating: model.Rating{Name: "voltage", Value: quantity[unit.Any](t, "6 A")}}},
		{"no part b9", edit.PlacePart{Sheet: sheet, ID: "b9"}},
		{"expected a place on the drawing", edit.PlacePart{Sheet: sheet, ID: "b1", Place: &model.Place{X: -1}}},
		{"no plan sheet", edit.Restack{Sheet: lost, At: terminal("b1", "+")}},
		{"does not land on", edit.Restack{Sheet: sheet, At: terminal("b1", "+"), Order: []model.WireID{"w3"}}},
		{"wire twice", edit.Restack{Sheet: sheet, At: terminal("b1", "+"), Order: []model.WireID{"w1", "w1"}}},
		{"no plan sheet", edit.SetTerminal{Sheet: lost, At: terminal("b1", "+"), Field: "stud", Text: "M8"}},
		{"stud:", edit.SetTerminal{Sheet: sheet, At: terminal("b1", "+"), Field: "stud", Text: "big"}},
		{"has no terminal L9", edit.SetTerminal{Sheet: sheet, At: terminal("sol", "L9"), Field: "note", Text: "x"}},
		{"w1 is taken", edit.AddWire{Sheet: sheet, Wire: model.Wire{ID: "w1", From: model.On("b2", "-"), To: model.LooseEnd(model.Cut)}}},
		{"no plan sheet", edit.AddWire{Sheet: lost, Wire: model.Wire{ID: "w9"}}},
		{"no part", edit.AddWire{Sheet: sheet, Wire: model.Wire{ID: "w9"}}},
		{"both ends", edit.AddWire{Sheet: sheet, Wire: model.Wire{ID: "w9", From: model.On("b2", "-"), To: model.On("b2", "-")}}},
		{"no wire w9", edit.RemoveWire{Sheet: sheet, ID: "w9"}},
		{"no plan sheet", edit.RemoveWire{Sheet: lost, ID: "w1"}},
		{"no wire w9 on any sheet", edit.RenameWire{From: "w9", To: "w8"}},
		{"w2 is taken", edit.RenameWire{From: "w1", To: "w2"}},
		{"no wire w9", edit.ReEnd{Sheet: sheet, ID: "w9", Side: edit.To, End: model.LooseEnd(model.Cut)}},
		{"one of the ends", edit.ReEnd{Sheet: sheet, ID: "w1", Side: "middle", End: model.LooseEnd(model.Cut)}},
		{"both ends", edit.ReEnd{Sheet: sheet, ID: "w1", Side: edit.To, End: model.On("b1", "+")}},
		{"no wire w9", edit.SetWire{Sheet: sheet, ID: "w9", Field: "note", Text: "x"}},
		{"expected part.terminal", edit.SetWire{Sheet: sheet, ID: "w1", Field: "to", Text: "nowhere"}},
		{"gauge:", edit.SetWire{Sheet: sheet, ID: "w1", Field: "gauge", Text: "thick"}},
		{"no part b9", edit.AddReading{Reading: model.Reading{Sheet: sheet, State: "parked", Red: terminal("b9", "+"), Black: terminal("b1", "-"), Value: quantity[unit.Any](t, "8 V")}}},
		{"no reading 2: the job has 1", edit.UpdateReading{Index: 1, Reading: volts(t, "8 V")}},
		{"two probes read volts or ohms", edit.UpdateReading{Reading: volts(t, "8 W")}},
		{"no reading 0", edit.RemoveReading{Index: -1}},
		{"not a usable display", edit.SetMeter{Meter: &model.Meter{Accuracy: unit.Pct(1)}}},
		{"no such state", edit.SetState{State: model.OwnState{Name: "limp", From: "asleep"}}},
		{"id used twice", edit.SetState{State: model.OwnState{Name: "parked"}}},
		{"no state limp of its own", edit.RemoveState{State: "limp"}},
		{"no such state", edit.RemoveState{State: "pushed"}},
		{"no part b9", edit.SetOpens{Sheet: sheet, ID: "b9"}},
		{"out of order", edit.SetOpens{Sheet: sheet, ID: "b1", Points: []model.OpenPoint{{At: unit.A(2), Least: unit.S(1)}, {At: unit.A(1), Least: unit.S(1)}}}},
		{"no wire w9", edit.Group{Title: "two", Edits: []edit.Edit{edit.RemoveWire{Sheet: sheet, ID: "w1"}, edit.RemoveWire{Sheet: sheet, ID: "w9"}}}},
	} {
		t.Run(c.e.Name()+" "+c.say, func(t *testing.T) {
			h := newHistory(t)
			err := h.Do(c.e)
			require.ErrorContains(t, err, c.say)
			require.ErrorContains(t, err, c.e.Name()+": ", "the message begins with what was tried")
			require.Equal(t, job(), h.Job())
			require.Empty(t, h.Steps())
			require.Zero(t, h.Revision())
		})
	}
}

func TestEditsOfTheJob(t *testing.T) {
	h := newHistory(t)
	metre := quantity[unit.Length](t, "1 m")
	for _, e := range []edit.Edit{
		edit.SetJob{Field: "system", Text: "48 V"},
		edit.StartSheet{New: model.AsBuilt},
		edit.StartSheet{New: model.Plan, Copy: sheet},
		edit.SetSheet{Sheet: model.Plan, Field: "note", Text: "lithium"},
		edit.AddZone{Zone: model.Zone{ID: "bay"}},
		edit.SetRun{From: "tray", To: "bay", Length: metre},
		edit.SetRun{From: "bay", To: "dash", Length: metre},
		edit.SetRun{From: "bay", To: "tray", Length: quantity[unit.Length](t, "2 m")},
		edit.SetRun{From: "dash", To: "bay"},
	} {
		require.NoError(t, h.Do(e))
	}
	j := h.Job()
	require.Equal(t, "48 V", j.System.String())
	require.Equal(t, []model.SheetName{model.AsFound, model.Plan, model.AsBuilt}, []model.SheetName{j.Sheets[0].Name, j.Sheets[1].Name, j.Sheets[2].Name})
	require.Equal(t, "lithium", j.Sheets[1].Note)
	require.Equal(t, j.Sheets[0].Wires, j.Sheets[1].Wires)
	require.Empty(t, j.Sheets[2].Parts)
	require.Equal(t, []model.Run{{From: "bay", To: "tray", Length: quantity[unit.Length](t, "2 m")}}, j.Runs, "one run each way, none without length")
}

func TestEditsOfAPart(t *testing.T) {
	six := model.Rating{Name: "voltage", Value: quantity[unit.Any](t, "6 V"), Source: "label"}
	s := after(t,
		edit.AddPart{Sheet: sheet, Part: model.Part{ID: "b3", Kind: "battery"}},
		edit.SetPart{Sheet: sheet, ID: "b3", Field: "zone", Text: "dash"},
		edit.RatePart{Sheet: sheet, ID: "b3", Rating: model.Rating{Name: "voltage", Value: quantity[unit.Any](t, "12 V")}},
		edit.RatePart{Sheet: sheet, ID: "b3", Rating: six},
		edit.PlacePart{Sheet: sheet, ID: "b3", Place: &model.Place{X: 3, Y: 4}},
		edit.PlacePart{Sheet: sheet, ID: "b1", Place: &model.Place{}},
		edit.PlacePart{Sheet: sheet, ID: "b1"},
	)
	require.Equal(t, &model.Part{ID: "b3", Kind: "battery", Zone: "dash", Ratings: []model.Rating{six}, Place: &model.Place{X: 3, Y: 4}}, s.Part("b3"))
	require.Nil(t, s.Part("b1").Place)
	s = after(t, edit.RatePart{Sheet: sheet, ID: "b1", Rating: six}, edit.RatePart{Sheet: sheet, ID: "b1", Rating: model.Rating{Name: "voltage"}})
	require.Empty(t, s.Part("b1").Ratings)
}

func TestRemovingAPart(t *testing.T) {
	s := after(t, edit.RemovePart{Sheet: sheet, ID: "b1"})
	cut := model.End{Loose: model.Cut, In: "tray"}
	require.Equal(t, []model.End{cut, cut, cut}, []model.End{s.Wire("w1").From, s.Wire("w2").To, s.Wire("w3").From}, "ends stay where the part was")
	require.Nil(t, s.Part("b1"))
	require.Nil(t, s.Terminal(terminal("b1", "+")))
	require.Equal(t, []model.WireID{"w1"}, s.Terminal(terminal("sol", "L1")).Stack)

	s = after(t, edit.RemovePart{Sheet: sheet, ID: "sol", Leave: model.Capped})
	require.Equal(t, model.LooseEnd(model.Capped), s.Wire("w1").To)
	require.Empty(t, s.Wire("w1").Judged, "nothing is judged of an end that was cut off")

	s = after(t, edit.RemovePart{Sheet: sheet, ID: "b1", WithWires: true})
	require.Empty(t, s.Wires)
	require.Empty(t, s.Terminals)
}

func TestRenamingOnEverySheet(t *testing.T) {
	h := newHistory(t)
	for _, e := range []edit.Edit{
		edit.StartSheet{New: model.Plan, Copy: sheet}, edit.RenamePart{From: "b1", To: "B1"},
		edit.RenamePart{From: "B1", To: "front"}, edit.RenameWire{From: "w1", To: "main"},
	} {
		require.NoError(t, h.Do(e))
	}
	for _, s := range h.Job().Sheets {
		require.Equal(t, model.On("front", "+"), s.Wire("main").From)
		require.Equal(t, model.On("front", "+"), s.Wire("w2").To)
		require.Equal(t, []model.WireID{"main", "w2"}, s.Terminal(terminal("front", "+")).Stack)
	}
}

func TestEditsOfATerminal(t *testing.T) {
	s := after(t,
		edit.SetTerminal{Sheet: sheet, At: terminal("b2", "-"), Field: "stud", Text: "M8"},
		edit.Restack{Sheet: sheet, At: terminal("b1", "+"), Order: []model.WireID{"w2", "w1"}},
		edit.SetTerminal{Sheet: sheet, At: terminal("sol", "L1"), Field: "stack"},
	)
	require.Equal(t, "M8", s.Terminal(terminal("b2", "-")).Stud.String())
	require.Equal(t, []model.WireID{"w2", "w1"}, s.Terminal(terminal("b1", "+")).Stack)
	require.Nil(t, s.Terminal(terminal("sol", "L1")), "a record of nothing goes")
	s = after(t, edit.Restack{Sheet: sheet, At: terminal("b1", "+")})
	require.Equal(t, "boot gone", s.Terminal(terminal("b1", "+")).Note, "the order is forgotten, the note stays")
}
