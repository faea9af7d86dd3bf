package edit_test

import (
	"reflect"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	_ "example.com/lugbook/model/fixedseed"
	"example.com/lugbook/model/unit"
)

// The pools are small, so that random edits often meet the same thing. Now and then
// something is drawn that is not there or not right, so that edits are refused too.
var (
	sheets    = pool[model.SheetName]{right: []model.SheetName{model.AsFound, model.AsFound, model.AsFound, model.AsFound, model.AsFound, model.AsFound, model.Plan, model.AsBuilt}, wrong: "wish"}
	partIDs   = pool[model.PartID]{right: []model.PartID{"b1", "b2", "sol", "x1", "b3"}, wrong: "SOL"}
	wireIDs   = pool[model.WireID]{right: []model.WireID{"w1", "w2", "w3", "w4", "w5", "w6"}, wrong: "W1"}
	zoneIDs   = pool[model.ZoneID]{right: []model.ZoneID{"tray", "dash", "bay", ""}, wrong: "a.b"}
	kinds     = pool[string]{right: []string{"battery", "contactor", model.UnknownKind}, wrong: "gadget"}
	looseEnds = pool[model.Loose]{right: []model.Loose{model.Cut, model.Capped, model.Untraced}, wrong: "flapping"}
	judged    = pool[model.Judgement]{right: []model.Judgement{model.JudgedFrom, model.JudgedTo}, wrong: "mood"}
	sides     = pool[edit.Side]{right: []edit.Side{edit.From, edit.To}, wrong: "middle"}
	places    = pool[*model.Place]{right: []*model.Place{nil, {X: 1, Y: 2}, {}}, wrong: &model.Place{X: -1}}
	states    = pool[string]{right: []string{"parked", "pushed", "limp"}, wrong: "asleep"}
	shown     = pool[unit.Any]{right: []unit.Any{unit.V(8).Any(), unit.A(3).Any(), unit.Ohms(2).Any(), {}}, wrong: unit.W(3).Any()}
	reasons   = pool[string]{right: []string{"it is cut off next week"}, wrong: " "}
	inserted  = pool[model.PartID]{right: []model.PartID{"fu1", "fu2"}, wrong: "b1"}
	leads     = pool[model.WireID]{right: []model.WireID{"n1", "n2"}, wrong: "w1"}
	waived    = pool[string]{right: []string{"stack-order@b1.+", "stack-order@sol.L1/w1"}, wrong: "stack-order@b2.+"}
	landings  = pool[model.TerminalRef]{right: []model.TerminalRef{
		terminal("b1", "+"), terminal("b1", "-"), terminal("b2", "+"), terminal("b2", "-"), terminal("sol", "L1"), terminal("sol", "L2"), terminal("x1", "7"),
	}, wrong: terminal("b1", "L1")}
)

// Property names and texts that are often right for each other.
var settings = []struct{ field, text string }{
	{"note", "x"}, {"note", ""}, {"zone", "dash"}, {"kind", "battery"}, {"kind", "unknown"}, {"condition", "frayed, dirty"}, {"stack", "w1, w2"},
	{"stack", ""}, {"judged", "to"}, {"from", "b2.-"}, {"to", "cut in dash"}, {"to", "untraced"}, {"via", "tray, dash"}, {"colour", "RD/WH"},
	{"gauge", "6 AWG"}, {"photos", "a.jpg"}, {"system", "48 V"}, {"title", "other"}, {"taste", "sweet"}, {"photos", "../a.jpg"}, {"zone", "attic"},
}

// pool is what a random edit is made of.
type pool[T any] struct {
	right []T
	wrong T
}

func (p pool[T]) draw(t *rapid.T) T {
	if n := rapid.IntRange(0, 6*len(p.right)).Draw(t, "pick"); n > 0 {
		return p.right[n%len(p.right)]
	}
	return p.wrong
}

func anEnd(t *rapid.T) model.End {
	if rapid.IntRange(0, 3).Draw(t, "loose") == 0 {
		return model.End{Loose: looseEnds.draw(t), In: zoneIDs.draw(t)}
	}
	return model.End{At: landings.draw(t)}
}

func aSeat(t *rapid.T) edit.Seat { return edit.Seat(rapid.IntRange(-2, 4).Draw(t, "seat")) }

func aWire(t *rapid.T) model.Wire {
	return model.Wire{
		ID: wireIDs.draw(t), From: anEnd(t), To: anEnd(t), Via: []model.ZoneID{zoneIDs.draw(t)}, Judged: []model.Judgement{judged.draw(t)},
	}
}

func setting(t *rapid.T) (field, text string) {
	s := settings[rapid.IntRange(0, len(settings)-1).Draw(t, "setting")]
	return s.field, s.text
}

func aReading(t *rapid.T) model.Reading {
	r := model.Reading{Sheet: sheets.draw(t), State: states.draw(t), Value: shown.draw(t)}
	r.Open = r.Value.IsZero()
	if r.Value.Dimension() == unit.Current {
		r.Wire = wireIDs.draw(t)
		return r
	}
	r.Red, r.Black = landings.draw(t), landings.draw(t)
	return r
}

// makers makes one random edit of each kind.
var makers = []func(*rapid.T) edit.Edit{
	func(t *rapid.T) edit.Edit {
		field, text := setting(t)
		return edit.SetJob{Field: field, Text: text}
	},
	func(t *rapid.T) edit.Edit { return edit.StartSheet{New: sheets.draw(t), Copy: sheets.draw(t)} },
	func(t *rapid.T) edit.Edit { return edit.StartSheet{New: sheets.draw(t)} },
	func(t *rapid.T) edit.Edit {
		field, text := setting(t)
		return edit.SetSheet{Sheet: sheets.draw(t), Field: field, Text: text}
	},
	func(t *rapid.T) edit.Edit { return edit.AddZone{Zone: model.Zone{ID: zoneIDs.draw(t)}} },
	func(t *rapid.T) edit.Edit {
		lengths := pool[unit.Length]{right: []unit.Length{quantity[unit.Length](t, "1 m")}}
		return edit.SetRun{From: zoneIDs.draw(t), To: zoneIDs.draw(t), Length: lengths.draw(t)}
	},
	func(t *rapid.T) edit.Edit {
		return edit.AddPart{Sheet: sheets.draw(t), Part: model.Part{ID: partIDs.draw(t), Kind: kinds.draw(t), Zone: zoneIDs.draw(t)}}
	},
	func(t *rapid.T) edit.Edit {
		return edit.RemovePart{Sheet: sheets.draw(t), ID: partIDs.draw(t), WithWires: rapid.Bool().Draw(t, "wires"), Leave: looseEnds.draw(t)}
	},
	func(t *rapid.T) edit.Edit { return edit.RenamePart{From: partIDs.draw(t), To: partIDs.draw(t)} },
	func(t *rapid.T) edit.Edit {
		field, text := setting(t)
		return edit.SetPart{Sheet: sheets.draw(t), ID: partIDs.draw(t), Field: field, Text: text}
	},
	func(t *rapid.T) edit.Edit {
		values := pool[unit.Any]{right: []unit.Any{{}, quantity[unit.Any](t, "6 V")}, wrong: quantity[unit.Any](t, "6 A")}
		return edit.RatePart{Sheet: sheets.draw(t), ID: partIDs.draw(t), Rating: model.Rating{Name: "voltage", Value: values.draw(t)}}
	},
	func(t *rapid.T) edit.Edit {
		return edit.PlacePart{Sheet: sheets.draw(t), ID: partIDs.draw(t), Place: places.draw(t)}
	},
	func(t *rapid.T) edit.Edit {
		order := rapid.Permutation(wireIDs.right[:2]).Draw(t, "order")
		return edit.Restack{Sheet: sheets.draw(t), At: landings.draw(t), Order: order[:rapid.IntRange(0, 2).Draw(t, "length")]}
	},
	func(t *rapid.T) edit.Edit {
		field, text := setting(t)
		return edit.SetTerminal{Sheet: sheets.draw(t), At: landings.draw(t), Field: field, Text: text}
	},
	func(t *rapid.T) edit.Edit {
		return edit.AddWire{Sheet: sheets.draw(t), Wire: aWire(t), FromSeat: aSeat(t), ToSeat: aSeat(t)}
	},
	func(t *rapid.T) edit.Edit {
		return edit.SwapTerminals{Sheet: sheets.draw(t), A: landings.draw(t), B: landings.draw(t)}
	},
	func(t *rapid.T) edit.Edit {
		return edit.InsertInWire{Sheet: sheets.draw(t), Wire: wireIDs.draw(t), Near: sides.draw(t), Part: model.Part{ID: inserted.draw(t), Kind: model.UnknownKind},
			In: "in", Out: "out", Lead: leads.draw(t)}
	},
	func(t *rapid.T) edit.Edit {
		key := waived.draw(t)
		return edit.Waive{Sheet: sheets.draw(t), Waiver: model.Waiver{Finding: key, Reason: reasons.draw(t), By: "bench two", Date: "2026-03-11", Severity: "fault",
			Subjects: []string{landings.draw(t).String()}}}
	},
	func(t *rapid.T) edit.Edit {
		return edit.Unwaive{Sheet: sheets.draw(t), Finding: waived.draw(t)}
	},
	func(t *rapid.T) edit.Edit { return edit.RemoveWire{Sheet: sheets.draw(t), ID: wireIDs.draw(t)} },
	func(t *rapid.T) edit.Edit { return edit.RenameWire{From: wireIDs.draw(t), To: wireIDs.draw(t)} },
	func(t *rapid.T) edit.Edit {
		return edit.ReEnd{Sheet: sheets.draw(t), ID: wireIDs.draw(t), Side: sides.draw(t), End: anEnd(t), Seat: aSeat(t)}
	},
	func(t *rapid.T) edit.Edit {
		field, text := setting(t)
		return edit.SetWire{Sheet: sheets.draw(t), ID: wireIDs.draw(t), Field: field, Text: text}
	},
}

// recorders makes one random edit of each kind that records what was measured or is known of a device.
var recorders = []func(*rapid.T) edit.Edit{
	func(t *rapid.T) edit.Edit { return edit.AddReading{Reading: aReading(t)} },
	func(t *rapid.T) edit.Edit {
		return edit.UpdateReading{Index: rapid.IntRange(-1, 3).Draw(t, "index"), Reading: aReading(t)}
	},
	func(t *rapid.T) edit.Edit { return edit.RemoveReading{Index: rapid.IntRange(-1, 3).Draw(t, "index")} },
	func(t *rapid.T) edit.Edit {
		return edit.SetState{State: model.OwnState{Name: states.draw(t), From: states.draw(t)}}
	},
	func(t *rapid.T) edit.Edit { return edit.RemoveState{State: states.draw(t)} },
	func(t *rapid.T) edit.Edit {
		meters := pool[*model.Meter]{right: []*model.Meter{nil, {Accuracy: unit.Pct(0.5), Counts: 3, Display: 6000}}, wrong: &model.Meter{}}
		return edit.SetMeter{Meter: meters.draw(t)}
	},
	func(t *rapid.T) edit.Edit {
		curves := pool[[]model.OpenPoint]{right: [][]model.OpenPoint{nil, {{At: unit.A(2), Least: unit.S(1)}}}, wrong: make([]model.OpenPoint, 1)}
		return edit.SetOpens{Sheet: sheets.draw(t), ID: partIDs.draw(t), Points: curves.draw(t)}
	},
}

// anEdit makes an edit of any kind, groups included.
func anEdit(t *rapid.T) edit.Edit {
	makers := slices.Concat(makers, recorders)
	n := rapid.IntRange(0, len(makers)).Draw(t, "kind")
	if n < len(makers) {
		return makers[n](t)
	}
	return edit.Group{Title: "group", Edits: []edit.Edit{
		makers[rapid.IntRange(0, len(makers)-1).Draw(t, "first")](t), makers[rapid.IntRange(0, len(makers)-1).Draw(t, "second")](t),
	}}
}

// track is a history beside a plain list of the jobs that it must show.
type track struct {
	h    *edit.History
	jobs []*model.Job // copies, oldest first
	at   int          // the one that the history must show
}

func (k *track) do(t *rapid.T, lib *model.Catalogue) {
	e := anEdit(t)
	if err := k.h.Do(e); err != nil {
		require.Equal(t, k.jobs[k.at], k.h.Job(), "a refused edit changes nothing: %v", err)
		return
	}
	require.Empty(t, k.h.Job().Check(lib), e.Name())
	k.jobs = append(k.jobs[:k.at+1], k.h.Job().Clone())
	k.at++
	name, ok := k.h.NextUndo()
	require.True(t, ok)
	require.Equal(t, e.Name(), name)
}

func (k *track) undo(t *rapid.T) {
	_, ok := k.h.Undo()
	require.Equal(t, k.at > 0, ok)
	k.at = max(0, k.at-1)
	require.Equal(t, k.jobs[k.at], k.h.Job())
}

func (k *track) redo(t *rapid.T) {
	_, ok := k.h.Redo()
	require.Equal(t, k.at < len(k.jobs)-1, ok)
	k.at = min(len(k.jobs)-1, k.at+1)
	require.Equal(t, k.jobs[k.at], k.h.Job())
}

func TestRandomEditsUndoAndRedo(t *testing.T) {
	lib := library(t)
	rapid.Check(t, func(t *rapid.T) {
		k := &track{h: newHistory(t), jobs: []*model.Job{job()}}
		require.Equal(t, job(), k.h.Job())
		for range rapid.IntRange(1, 40).Draw(t, "steps") {
			before := k.h.Revision()
			switch rapid.IntRange(0, 7).Draw(t, "act") {
			case 0:
				k.undo(t)
			case 1:
				k.redo(t)
			default:
				k.do(t, lib)
			}
			require.GreaterOrEqual(t, k.h.Revision(), before)
			require.Len(t, k.h.Steps(), k.at)
		}
		for k.at > 0 {
			k.undo(t)
		}
		require.Equal(t, job(), k.h.Job())
		for k.at < len(k.jobs)-1 {
			k.redo(t)
		}
		require.Equal(t, k.jobs[len(k.jobs)-1], k.h.Job())
	})
}

// Every kind of edit is accepted now and then, so that the property above says something.
func TestRandomEditsOfEveryKindAreAccepted(t *testing.T) {
	accepted := map[reflect.Type]int{}
	tried := 0
	rapid.Check(t, func(t *rapid.T) {
		h := newHistory(t)
		for range 60 {
			e := anEdit(t)
			tried++
			if h.Do(e) == nil {
				accepted[reflect.TypeOf(e)]++
			}
		}
	})
	if testing.Short() {
		return // fewer edits are tried
	}
	const kindsOfEdit = 30 // two makers make StartSheet; groups come on top
	require.Len(t, accepted, kindsOfEdit)
	total := 0
	for _, n := range accepted {
		total += n
	}
	t.Logf("%d of %d random edits accepted", total, tried)
}

func TestHistory(t *testing.T) {
	original := job()
	h := edit.NewHistory(original, library(t))
	original.Title = "changed outside"
	require.Equal(t, "sample", h.Job().Title, "the history keeps its own copy")
	_, ok := h.Undo()
	require.False(t, ok)
	_, ok = h.NextUndo()
	require.False(t, ok)
	first := h.Job()
	require.NoError(t, h.Do(edit.SetJob{Field: "title", Text: "a"}))
	require.NoError(t, h.Do(edit.SetJob{Field: "title", Text: "b"}))
	require.Equal(t, "sample", first.Title, "a job that was handed out stays as it was")
	require.Equal(t, []string{"set title of the job to a", "set title of the job to b"}, h.Steps())
	name, _ := h.Undo()
	require.Equal(t, "set title of the job to b", name)
	name, _ = h.NextRedo()
	require.Equal(t, "set title of the job to b", name)
	require.Equal(t, 3, h.Revision())
	require.NoError(t, h.Do(edit.SetJob{Field: "title", Text: "c"}))
	_, ok = h.Redo()
	require.False(t, ok, "a new step ends what could be redone")
}
