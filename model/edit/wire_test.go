package edit_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/unit"
)

func newWire(from, to model.End) model.Wire { return model.Wire{ID: "w9", From: from, To: to} }

func TestSeats(t *testing.T) {
	b1, b2 := terminal("b1", "+"), terminal("b2", "+")
	for _, c := range []struct {
		name string
		at   model.TerminalRef
		seat edit.Seat
		want []model.WireID
	}{
		{"not looked at", b1, edit.SeatUnknown, []model.WireID{"w1", "w2"}},
		{"on the seat", b1, 1, []model.WireID{"w9", "w1", "w2"}},
		{"between", b1, 2, []model.WireID{"w1", "w9", "w2"}},
		{"next", b1, 3, []model.WireID{"w1", "w2", "w9"}},
		{"beyond", b1, 7, []model.WireID{"w1", "w2", "w9"}},
		{"outermost", b1, edit.Outermost, []model.WireID{"w1", "w2", "w9"}},
		{"below all numbers", b1, -5, []model.WireID{"w1", "w2", "w9"}},
		{"on top of a lug without a record", b2, edit.Outermost, []model.WireID{"w3", "w9"}},
		{"first that was seen", b2, 1, []model.WireID{"w9"}},
		{"alone", terminal("b2", "-"), edit.Outermost, []model.WireID{"w9"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			w := newWire(model.End{At: c.at}, model.LooseEnd(model.Cut))
			s := after(t, edit.AddWire{Sheet: sheet, Wire: w, FromSeat: c.seat})
			require.Equal(t, c.want, s.Terminal(c.at).Stack)
			s = after(t, edit.AddWire{Sheet: sheet, Wire: newWire(w.To, w.From), ToSeat: c.seat})
			require.Equal(t, c.want, s.Terminal(c.at).Stack)
		})
	}
}

func TestARecordWithoutAnOrderIsNoOrder(t *testing.T) {
	s := after(t,
		edit.SetTerminal{Sheet: sheet, At: terminal("b2", "+"), Field: "cover", Text: "missing"},
		edit.AddWire{Sheet: sheet, Wire: newWire(model.On("b2", "+"), model.LooseEnd(model.Cut)), FromSeat: edit.Outermost},
	)
	require.Equal(t, []model.WireID{"w3", "w9"}, s.Terminal(terminal("b2", "+")).Stack)
}

func TestRemovingAWire(t *testing.T) {
	s := after(t, edit.RemoveWire{Sheet: sheet, ID: "w1"})
	require.Nil(t, s.Wire("w1"))
	require.Equal(t, []model.WireID{"w2"}, s.Terminal(terminal("b1", "+")).Stack)
	require.Nil(t, s.Terminal(terminal("sol", "L1")), "its record was the stack alone")
}

func TestMovingAnEnd(t *testing.T) {
	lugged := []edit.Edit{
		edit.SetWire{Sheet: sheet, ID: "w1", Field: "from-lug", Text: "M8"},
		edit.SetWire{Sheet: sheet, ID: "w1", Field: "to-lug", Text: "M10"},
	}
	s := after(t, append(lugged, edit.ReEnd{Sheet: sheet, ID: "w1", Side: edit.To, End: model.On("b2", "+"), Seat: 1})...)
	w := s.Wire("w1")
	require.Equal(t, model.On("b2", "+"), w.To)
	require.Equal(t, []model.WireID{"w1"}, s.Terminal(terminal("b2", "+")).Stack)
	require.Nil(t, s.Terminal(terminal("sol", "L1")))
	require.Equal(t, "M8", w.FromLug.String(), "the other end is as it was")
	require.Equal(t, unit.Stud{}, w.ToLug, "the lug was that of the old end")
	require.Empty(t, w.Judged, "the judgement was on the old end")

	s = after(t, append(lugged, edit.SetWire{Sheet: sheet, ID: "w1", Field: "from", Text: "capped in dash"})...)
	w = s.Wire("w1")
	require.Equal(t, model.End{Loose: model.Capped, In: "dash"}, w.From)
	require.Equal(t, []model.WireID{"w2"}, s.Terminal(terminal("b1", "+")).Stack)
	require.True(t, w.IsJudged(model.JudgedTo))
	require.Equal(t, "M10", w.ToLug.String())
}

func TestSettingAWire(t *testing.T) {
	s := after(t, edit.SetWire{Sheet: sheet, ID: "w3", Field: "gauge", Text: "6"}, edit.SetWire{Sheet: sheet, ID: "w3", Field: "condition", Text: "melted, frayed"})
	require.Equal(t, "6 AWG", s.Wire("w3").Gauge.String())
	require.Equal(t, []model.Condition{model.Melted, model.Frayed}, s.Wire("w3").Condition)
}

// What an edit was made with may be used again by whoever made it.
func TestAnEditSharesNothingWithTheJob(t *testing.T) {
	h := newHistory(t)
	wire := newWire(model.On("b2", "-"), model.LooseEnd(model.Cut))
	wire.Judged = []model.Judgement{model.JudgedFrom}
	part := model.Part{ID: "b9", Kind: "battery", Condition: []model.Condition{model.Dirty}}
	place := &model.Place{X: 1}
	order := []model.WireID{"w2", "w1"}
	for _, e := range []edit.Edit{
		edit.AddWire{Sheet: sheet, Wire: wire}, edit.AddPart{Sheet: sheet, Part: part},
		edit.PlacePart{Sheet: sheet, ID: "b1", Place: place}, edit.Restack{Sheet: sheet, At: terminal("b1", "+"), Order: order},
	} {
		require.NoError(t, h.Do(e))
	}
	before := h.Job().Clone()
	wire.Judged[0], part.Condition[0], place.X, order[0] = model.JudgedTo, model.Burnt, 9, "w9"
	require.Equal(t, before, h.Job())
}
