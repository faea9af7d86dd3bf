package lugline_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	"example.com/lugbook/model/lugline"
)

func complete(w *walk, at, line string) []lugline.Candidate {
	w.goTo(at)
	r := lugline.Parse(line, w.context())
	return r.Complete()
}

func TestCompletionPutsTheExpectedWireFirst(t *testing.T) {
	w := newWalk(t)
	w.enter("b1.-", "k6 b2+")
	w.enter("sol.l", "r4 b2+")
	list := complete(w, "b2.+", "")
	require.Equal(t, []string{"k6 b1-", "r4 sl"}, []string{list[0].Line, list[1].Line})
	require.Equal(t, lugline.WireExpected, list[0].Why)
	require.Equal(t, "r4 sl", complete(w, "b2.+", "r4")[0].Line, "the one that agrees with what is typed")
	require.Equal(t, "k6 b1-", complete(w, "b2.+", "k6 ")[0].Line)
}

func TestCompletionCarriesASeriesOn(t *testing.T) {
	w := newWalk(t)
	w.enter("b1.-", "k6? b2+ !c")
	require.Equal(t, lugline.Candidate{At: ref(t, "b3.+"), Text: "k6? b3+", Line: "k6? b3+", Why: lugline.NextInSeries}, complete(w, "b2.-", "")[0])
	require.Equal(t, "' b3+", complete(w, "b2.-", "'")[0].Line)
	require.Equal(t, lugline.NextInSeries, complete(w, "b2.-", "' ")[0].Why)
	w.enter("b2.+", "+")
	require.Equal(t, "' b3+", complete(w, "b2.-", "'")[0].Line, "seen from the other end it is the same step")
	require.Empty(t, complete(w, "b6.-", ""), "there is no b7")
	require.Empty(t, complete(w, "sol.l", ""), "no series")
}

func TestCompletionRanksTheRest(t *testing.T) {
	w := newWalk(t)
	for i := range w.sheet().Parts {
		p := &w.sheet().Parts[i]
		p.Zone = "tray"
		if p.ID == "fuse" || p.ID == "key" {
			p.Zone = "dash"
		}
	}
	w.enter("tow.1", "k6 ctl.k")
	reasons := map[model.TerminalRef]lugline.Reason{}
	list := complete(w, "chg.1", "r16")
	for _, c := range list {
		reasons[c.At] = c.Why
	}
	require.Equal(t, ref(t, "ctl.b+"), list[0].At, "room, and the same part as before")
	require.NotContains(t, reasons, ref(t, "ctl.k"), "it has its lug")
	require.NotContains(t, reasons, ref(t, "chg.1"))
	list = complete(w, "fuse.1", "r16")
	require.Equal(t, "ctl", string(list[0].At.Part))
	var after []string
	for _, c := range list {
		if c.At.Part != "ctl" {
			after = append(after, c.At.String())
		}
	}
	require.Equal(t, []string{"key.1", "key.2", "b1.+"}, after[:3], "near before the alphabet")
}

func TestPinnedBoxesTellWhatIsNear(t *testing.T) {
	here := standing(t, "sol.l")
	place := func(id string, x, y int) {
		here.Sheet.Part(model.PartID(id)).Place = &model.Place{X: x, Y: y}
	}
	place("sol", 0, 0)
	place("ctl", 30, 0)
	place("tow", 0, 20)
	r := lugline.Parse("r4", here)
	list := r.Complete()
	require.Equal(t, "ctl", string(list[0].At.Part), "30 columns are nearer than 20 rows")
	require.Equal(t, lugline.HasRoom, list[0].Why)
}

func TestCompletionOfAnAmbiguousStud(t *testing.T) {
	w := newWalk(t)
	w.enter("b1.-", "k6 frs.2")
	list := complete(w, "b2.-", "k6 f1")
	require.Equal(t, []string{"k6 fr1", "k6 fu1"}, []string{list[0].Line, list[1].Line}, "the same part as before comes first")
	require.Len(t, list, 2)
	require.Empty(t, complete(w, "b2.-", "k6 fu1"), "it is settled")
	require.Empty(t, complete(w, "b2.-", "k6 ;"), "a note is free text")
	require.Empty(t, complete(w, "b2.-", "%"))
	require.Empty(t, complete(w, "b2.-", "k6 zork"))
}

func TestDittoCopiesTheCallOfTan(t *testing.T) {
	w := newWalk(t)
	w.enter("b1.-", "t6 b2+ !c")
	w.enter("b2.-", `" b3+`)
	w.enter("b3.-", "' b4+")
	require.Equal(t, "tan", w.wire("w3").Note)
	require.Equal(t, []model.Condition{model.Corroded}, w.sheet().Terminal(ref(t, "b2.-")).Condition)
	require.Nil(t, w.sheet().Terminal(ref(t, "b3.-")).Condition)
}

// The likeliest way on is the first of all ways, whatever the line.
func TestLikeliestIsTheFirstOfAll(t *testing.T) {
	w := newWalk(t)
	w.enter("b1.-", "k6 b2+")
	for _, at := range []string{"b2.-", "b2.+", "ctl.b+", "x1.7"} {
		w.goTo(at)
		for _, line := range []string{"", "k6 ", "k6", "k6 f", "k6 b", "+", "k6 b3+", "%", "zork", "k6 !c "} {
			r := lugline.Parse(line, w.context())
			all := r.Complete()
			likely, any := r.Likeliest()
			require.Equal(t, len(all) > 0, any, "%q at %s", line, at)
			if any {
				require.Equal(t, all[0], likely, "%q at %s", line, at)
			}
		}
	}
}
