package tui

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	"example.com/lugbook/tui/theme"
)

func TestEveryActionIsWellFormed(t *testing.T) {
	seen := map[string]bool{}
	for _, a := range table() {
		require.False(t, seen[a.ID], "two actions are called %s", a.ID)
		seen[a.ID] = true
		require.Regexp(t, `^[a-z]+(-[a-z]+)*$`, a.ID)
		require.NotEmpty(t, a.Title, a.ID)
		require.LessOrEqual(t, len(a.Title), 76, a.ID)
		require.NotEmpty(t, a.In, a.ID)
		require.NotNil(t, a.Run, a.ID)
	}
}

func TestNoKeyDoesTwoThingsInOnePlace(t *testing.T) {
	for _, in := range allPlaces {
		taken := map[string]string{}
		for _, a := range table() {
			if !slices.Contains(a.In, in) {
				continue
			}
			for _, key := range a.Keys {
				require.Empty(t, taken[key], "%s in %s: %s and %s", key, in, taken[key], a.ID)
				taken[key] = a.ID
			}
		}
	}
}

// Every action can be done with plain keys: a letter, a sign, an arrow, Tab, Enter, Esc. A
// terminal may take Ctrl and Alt and the function keys for itself.
func TestNoActionNeedsControlAltOrFunctionKeys(t *testing.T) {
	fancy := func(key string) bool {
		return strings.HasPrefix(key, "ctrl+") || strings.HasPrefix(key, "alt+") || len(key) > 1 && key[0] == 'f' && key != "f"
	}
	for _, a := range table() {
		if len(a.Keys) > 0 {
			require.False(t, fancy(a.Keys[0]), "%s is hinted with %s", a.ID, a.Keys[0])
		}
	}
}

func TestEveryActionIsInTheCommandList(t *testing.T) {
	r := newRobot(t, Session{}, theme.NoEscapes, 80, 24)
	r.press(":")
	l, open := topOf[*listLayer](r.d)
	require.True(t, open)
	listed := l.shown(r.d)
	require.Len(t, listed, len(r.d.actions))
	for _, a := range r.d.actions {
		i := slices.IndexFunc(listed, func(c choice) bool { return c.more == a.ID })
		require.GreaterOrEqual(t, i, 0, a.ID)
		r.press(a.ID)
		c, any := l.chosen(r.d)
		require.True(t, any, a.ID)
		require.Equal(t, a.ID, c.more, "typing the command word finds the command")
		r.press(strings.Repeat("<backspace>", len(a.ID)))
	}
}

// A command that cannot be done says why, in the list and when it is chosen.
func TestDisabledCommandsSayWhy(t *testing.T) {
	r := newRobot(t, Session{}, theme.NoEscapes, 80, 24)
	r.press(":undo<enter>")
	require.Contains(t, r.d.notice.text, "nothing has been done yet")
	require.Equal(t, inList, r.d.here(), "the list stays open")
	r.press("<esc>u")
	require.Contains(t, r.d.notice.text, "nothing has been done yet")
	r.press("Y")
	require.Contains(t, r.d.notice.text, "does nothing here")
}

// From the list, a command runs in the place that is open below it.
func TestCommandsRunWhereTheListWasOpened(t *testing.T) {
	r := newRobot(t, Session{}, theme.NoEscapes, 80, 24)
	recordCart(r)
	wires := len(sheetOf(r, model.AsFound).Wires)
	r.press("/b3-<enter>gk6 ?<enter>:undo<enter>")
	require.Equal(t, inWalk, r.d.here())
	require.Len(t, sheetOf(r, model.AsFound).Wires, wires)
	r.press(":redo<enter>")
	require.Len(t, sheetOf(r, model.AsFound).Wires, wires+1)
	r.press(":<up>")
	l, _ := topOf[*listLayer](r.d)
	require.Equal(t, "redo", l.shown(r.d)[0].more, "what was run last comes first")
}

func TestHintsFitAndAlwaysShowTheCommands(t *testing.T) {
	r := newRobot(t, Session{}, theme.NoEscapes, 80, 24)
	recordCart(r)
	for in, keys := range map[place]string{
		onDrawing: "", inWalk: "g", inPull: "w", inMove: "m", inOverview: "-", inCard: "e", inStack: "k", inFindings: "n", inJump: ";", inList: "/", inField: "z", inRecords: "t", inReading: "tparked<enter>i", inPage: "ny",
	} {
		r.press("/sol.L2<enter>" + keys)
		require.Equal(t, in, r.d.here())
		for _, room := range []int{1, 9, 10, 40, 78} {
			hints := r.d.hints(room)
			used := -2
			for _, h := range hints {
				used += h.width() + 2
			}
			require.LessOrEqual(t, min(used, 99), max(room, 2))
			require.Equal(t, ":", hints[len(hints)-1].key)
			require.True(t, room < 78 || len(hints) > 1, "%s hints at more than the commands", in)
		}
		r.press("<esc>")
	}
}
