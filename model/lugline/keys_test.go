package lugline_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model/lugline"
)

// twentyFive are the wires of an invented cart in the order in which a walk meets them:
// stud, look, far end.
var twentyFive = []struct{ at, look, far string }{
	{"b1.-", "k6", "b2.+"}, {"b2.-", "k6", "b3.+"}, {"b3.-", "k6", "b4.+"}, {"b4.-", "k6", "b5.+"}, {"b5.-", "k6", "b6.+"},
	{"b1.+", "r4", "sol.l"}, {"b1.+", "r16", "fuse.1"}, {"b6.-", "k4", "ctl.b-"}, {"b6.-", "k16", "fr.J"},
	{"sol.s", "r4", "ctl.b+"}, {"sol.c+", "b18", "ped.2"}, {"sol.c-", "k18", "ctl.k"},
	{"ctl.m-", "k4", "motor.a2"}, {"ctl.b+", "r4", "motor.a1"}, {"ctl.p", "w/k18", "ped.1"}, {"ctl.r", "y18", "tow.1"},
	{"motor.s1", "g6", "frs.1"}, {"motor.s2", "o6", "frs.2"},
	{"fuse.2", "r16", "key.1"}, {"key.2", "b18", "tow.2"}, {"key.2", "b18", "ped.1"}, {"tow.1", "b18", "ped.2"},
	{"chg.1", "r10", "b1.+"}, {"chg.2", "k10", "b6.-"}, {"key.1", "v18", "#"},
}

// keys counts key presses: one for each character, one more for Shift.
func keys(text string) int {
	n := 0
	for _, r := range text {
		n++
		if strings.ContainsRune(`"+?!#%@*>`, r) || r >= 'A' && r <= 'Z' {
			n++
		}
	}
	return n
}

// fewest types a wire with the fewest keys: spelled out, with ditto, or with Tab where the
// first candidate is right. It gives the line that stands there in the end.
func fewest(w *walk, look, far string) (line string, count int) {
	here := w.context()
	meant := lugline.Parse(look+" "+spelled(far), here)
	consider := func(typed, whole string, n int) {
		r := lugline.Parse(whole, here)
		same := r.Colour == meant.Colour && r.Gauge == meant.Gauge && r.Far == meant.Far && r.Confirms == "" && len(r.Unknown) == 0
		if same && (line == "" || n < count) {
			line, count = whole, n
		}
	}
	shortest := meant.Entry
	_, token, _ := strings.Cut(shortest.Line(here), " ")
	for _, start := range []string{"", look, "'"} {
		for _, end := range []string{"", token} {
			typed := strings.TrimSpace(start + " " + end)
			consider(typed, typed, keys(typed)+1)
			for i := range len(typed) + 1 {
				r := lugline.Parse(typed[:i], here)
				if list := r.Complete(); len(list) > 0 {
					consider(typed[:i], list[0].Line, keys(typed[:i])+2)
				}
			}
		}
	}
	return line, count
}

func spelled(far string) string {
	if strings.Contains(far, ".") {
		return ">" + far
	}
	return far
}

func TestKeysForTwentyFiveWires(t *testing.T) {
	w := newWalk(t)
	total, seen := 0, 0
	for _, wire := range twentyFive {
		w.goTo(wire.at)
		for range lugline.Expected(w.sheet(), w.at) {
			w.enter(wire.at, "+")
			seen++
		}
		line, n := fewest(w, wire.look, wire.far)
		require.NotEmpty(t, line, "%v cannot be entered", wire)
		w.enter(wire.at, line)
		total += n
		t.Logf("%-9s %-14s %d", wire.at, line, n)
	}
	require.Len(t, w.sheet().Wires, len(twentyFive))
	for i, wire := range twentyFive {
		got := w.sheet().Wires[i]
		far := got.Far(ref(t, wire.at)).String()
		require.Equal(t, wire.at, got.From.String())
		if wire.far != "#" {
			require.Equal(t, wire.far, far)
		}
	}
	t.Logf("%d keys for %d wires with Enter and Shift; %d expected wires seen on the way by one key each", total, len(twentyFive), seen)
	require.LessOrEqual(t, total, 175)
}
