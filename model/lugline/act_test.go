package lugline_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/lugline"
)

func stackOf(w *walk, at string) []model.WireID {
	if t := w.sheet().Terminal(ref(w.t, at)); t != nil {
		return t.Stack
	}
	return nil
}

func TestANewWireTakesTheNextSeatHereAndNoneThere(t *testing.T) {
	w := newWalk(t)
	w.enter("b1.-", "k6? b2+? !cf @7 *loom ;bent")
	w.enter("b1.-", "r14")
	got := w.wire("w1")
	require.Equal(t, "6 AWG", got.Gauge.String())
	require.Equal(t, model.Colour{Body: "BK"}, got.Colour)
	require.Equal(t, model.On("b1", "-"), got.From)
	require.Equal(t, model.On("b2", "+"), got.To)
	require.ElementsMatch(t, []model.Judgement{model.JudgedTo, model.JudgedGauge}, got.Judged)
	require.Equal(t, []model.Condition{model.Frayed}, got.Condition, "strands belong to the wire")
	require.Equal(t, []string{"7", "loom", "bent"}, []string{got.Mark, got.Bundle, got.Note})
	require.Equal(t, []model.Condition{model.Corroded}, w.sheet().Terminal(ref(t, "b1.-")).Condition, "corrosion belongs to the joint")
	require.Equal(t, []model.WireID{"w1", "w2"}, stackOf(w, "b1.-"))
	require.Empty(t, stackOf(w, "b2.+"))
	require.Equal(t, []model.WireID{"w1"}, lugline.Expected(w.sheet(), ref(t, "b2.+")))
	name, _ := w.history.NextUndo()
	require.Equal(t, "add w2, b1.- to untraced", name)
}

func TestNotFollowedIsNotOutOfSight(t *testing.T) {
	w := newWalk(t)
	w.enter("b1.-", "k6")
	w.enter("b1.-", "k6 ?")
	for id, want := range map[string]model.Confidence{"w1": model.NotTraced, "w2": ""} {
		got := w.wire(id)
		require.Equal(t, model.LooseEnd(model.Untraced), got.To)
		require.Equal(t, want, got.Confidence)
	}
}

func TestAnUnreadTokenIsKept(t *testing.T) {
	w := newWalk(t)
	w.enter("b1.-", "k6 f1 zork ;bent")
	got := w.wire("w1")
	require.Equal(t, "bent; needs a look: f1 zork", got.Note)
	require.Equal(t, model.LooseEnd(model.Untraced), got.To, "nothing is chosen of two studs")
}

func TestSeenTakesASeat(t *testing.T) {
	for _, line := range []string{"+", "+ k6", "k6 b1-", "b1-"} {
		t.Run(line, func(t *testing.T) {
			w := newWalk(t)
			w.enter("b1.-", "k6 b2+")
			w.enter("b2.+", "r14 ?")
			w.enter("b2.+", line)
			require.Len(t, w.sheet().Wires, 2, "no second wire")
			require.Equal(t, []model.WireID{"w2", "w1"}, stackOf(w, "b2.+"))
			require.Empty(t, lugline.Expected(w.sheet(), ref(t, "b2.+")))
			require.Equal(t, "6 AWG", w.last.Gauge.String(), "a ditto copies what was seen")
		})
	}
}

// The list of steps says what was seen, and not how it is recorded.
func TestAVerdictNamesItsStep(t *testing.T) {
	w := newWalk(t)
	w.enter("b1.-", "k6 b2+")
	w.enter("b2.+", "+")
	w.enter("b2.-", "k6 b3+")
	w.enter("b3.+", "-")
	w.enter("b3.-", "%")
	require.Equal(t, []string{"add w1, b1.- to b2.+", "w1 seen at b2+", "add w2, b2.- to b3.+", "w2 is not at b3+", "nothing on b3-"}, w.history.Steps())
}

func TestSeenAddsWhatWasNotRecorded(t *testing.T) {
	w := newWalk(t)
	w.enter("b1.-", "k b2+ ;bent")
	w.enter("b2.+", "+ 6? !sc @7 *loom ;kinked")
	got := w.wire("w1")
	require.Equal(t, "6 AWG", got.Gauge.String())
	require.Equal(t, []model.Judgement{model.JudgedGauge}, got.Judged)
	require.Equal(t, []model.Condition{model.Spliced}, got.Condition)
	require.Equal(t, []string{"7", "loom", "bent; kinked"}, []string{got.Mark, got.Bundle, got.Note})
	require.Equal(t, []model.Condition{model.Corroded}, w.sheet().Terminal(ref(t, "b2.+")).Condition)
	require.Len(t, w.history.Steps(), 2, "one line is one step")
}

func TestAWireThatDiffersIsAnotherWire(t *testing.T) {
	w := newWalk(t)
	w.enter("b1.-", "k6 b2+")
	w.enter("b2.+", "r6 b1-")
	require.Equal(t, []model.WireID{"w2"}, stackOf(w, "b2.+"))
	require.Equal(t, []model.WireID{"w1"}, lugline.Expected(w.sheet(), ref(t, "b2.+")), "still expected: a question, not an error")
}

func TestNotHereGoesOutOfSight(t *testing.T) {
	w := newWalk(t)
	w.enter("b1.-", "k6 b2+?")
	w.enter("b1.-", "r6 b2+")
	w.enter("b2.+", "- r")
	require.Equal(t, model.LooseEnd(model.Untraced), w.wire("w2").To)
	w.enter("b2.+", "-")
	require.Equal(t, model.LooseEnd(model.Untraced), w.wire("w1").To)
	require.Empty(t, w.wire("w1").Judged, "what was judged of the end goes with it")
	require.Equal(t, []model.WireID{"w1", "w2"}, stackOf(w, "b1.-"))
	w.goTo("b2.+")
	r := lugline.Parse("-", w.context())
	_, err := r.Edit("w9")
	require.ErrorContains(t, err, "no such wire is expected at b2+")
}

func TestAnEmptyStud(t *testing.T) {
	w := newWalk(t)
	w.enter("b1.-", "k6 b2+")
	w.enter("b2.+", "% !d ;boot gone")
	require.Equal(t, model.LooseEnd(model.Untraced), w.wire("w1").To)
	got := *w.sheet().Terminal(ref(t, "b2.+"))
	require.Equal(t, model.Terminal{At: got.At, Confidence: model.Traced, Condition: []model.Condition{model.Dirty}, Note: "boot gone"}, got)
	w.goTo("b1.-")
	r := lugline.Parse("%", w.context())
	_, err := r.Edit("w9")
	require.ErrorContains(t, err, "b1- carries w1 by this record")
}

func TestARemarkOnTheStudItself(t *testing.T) {
	w := newWalk(t)
	w.enter("b1.-", "!cf ;boot gone")
	w.enter("b1.-", "!c ;boot gone")
	require.Empty(t, w.sheet().Wires)
	got := w.sheet().Terminal(ref(t, "b1.-"))
	require.Equal(t, []model.Condition{model.Corroded, model.Frayed}, got.Condition)
	require.Equal(t, "boot gone", got.Note)
}

func TestAnEmptyLineIsNoEdit(t *testing.T) {
	r := lugline.Parse(" ' @ ", standing(t, "b1.-"))
	_, err := r.Edit("w1")
	require.ErrorContains(t, err, "nothing is entered")
}

func TestUndoTakesALineBackWhole(t *testing.T) {
	w := newWalk(t)
	before := w.history.Job()
	w.enter("b1.-", "k6 b2+ !c")
	w.history.Undo()
	require.Equal(t, before, w.history.Job())
}

func TestAnExistingOrderIsNotGuessed(t *testing.T) {
	w := newWalk(t)
	require.NoError(t, w.history.Do(edit.AddWire{Sheet: model.AsFound, Wire: model.Wire{ID: "w1", From: model.On("b1", "-"), To: model.On("b2", "+")}}))
	w.enter("b2.+", "r14 ?")
	order, known := w.sheet().StackOf(ref(t, "b2.+"))
	require.Equal(t, []model.WireID{"w2", "w1"}, order)
	require.False(t, known, "nobody saw w1 here yet")
}
