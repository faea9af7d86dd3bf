package input

import (
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/require"
)

func TestSplit(t *testing.T) {
	keys := func(text string) tea.KeyMsg { return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(text)} }
	paste := tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("k6 b2+"), Paste: true}
	for _, c := range []struct {
		name string
		msg  tea.Msg
		want []tea.Msg
	}{
		{"three keys", keys("jjé"), []tea.Msg{keys("j"), keys("j"), keys("é")}},
		{"one key", keys("j"), []tea.Msg{keys("j")}},
		{"paste", paste, []tea.Msg{paste}},
		{"arrow", tea.KeyMsg{Type: tea.KeyUp}, []tea.Msg{tea.KeyMsg{Type: tea.KeyUp}}},
		{"no key", tea.WindowSizeMsg{Width: 80}, []tea.Msg{tea.WindowSizeMsg{Width: 80}}},
	} {
		t.Run(c.name, func(t *testing.T) { require.Equal(t, c.want, Split(c.msg)) })
	}
}

func TestStillMotion(t *testing.T) {
	at := func(x int, action tea.MouseAction) tea.MouseMsg {
		return tea.MouseMsg{X: x, Y: 3, Action: action, Button: tea.MouseButtonLeft}
	}
	withShift := at(6, tea.MouseActionMotion)
	withShift.Shift = true
	filter := StillMotion()
	for i, c := range []struct {
		msg  tea.Msg
		pass bool
	}{
		{at(0, tea.MouseActionMotion), true}, // the first one, even at the zero cell
		{at(5, tea.MouseActionPress), true},
		{at(5, tea.MouseActionMotion), false},
		{at(6, tea.MouseActionMotion), true},
		{tea.WindowSizeMsg{}, true},
		{at(6, tea.MouseActionMotion), false},
		{withShift, true},
		{at(6, tea.MouseActionRelease), true},
		{at(6, tea.MouseActionRelease), true},
	} {
		got := filter(nil, c.msg)
		if c.pass {
			require.Equal(t, c.msg, got, "message %d", i)
		} else {
			require.Nil(t, got, "message %d", i)
		}
	}
}

func TestResume(t *testing.T) {
	require.Equal(t, tea.EnableMouseCellMotion(), Resume(tea.ResumeMsg{}, true)())
	require.Nil(t, Resume(tea.ResumeMsg{}, false))
	require.Nil(t, Resume(tea.FocusMsg{}, true))
}

func TestPaste(t *testing.T) {
	for _, c := range []struct {
		name, pasted string
		lines        []string
		line         string
	}{
		{"plain", "k6 b2+", []string{"k6 b2+"}, "k6 b2+"},
		{"line ends of all systems", "r4 sl\r\nk6 b2+\rv18 #\nb4+\n\n", []string{"r4 sl", "k6 b2+", "v18 #", "b4+"}, "r4 sl k6 b2+ v18 # b4+"},
		{"separators of other scripts", "r4\u2028k6\u2029v18\u0085w2", []string{"r4", "k6", "v18", "w2"}, "r4 k6 v18 w2"},
		{"colours", "\x1b[1;31mr4\x1b[0m sl", []string{"r4 sl"}, "r4 sl"},
		{"title", "\x1b]0;r4\asl", []string{"sl"}, "sl"},
		{"controls", "k6\x00 \x08b2+\x7f\u009b", []string{"k6 b2+"}, "k6 b2+"},
		{"tabs", "\tk6\tb2+", []string{"k6 b2+"}, "k6 b2+"},
		{"wide spaces", "k6\u00a0b2+\u3000!c", []string{"k6 b2+ !c"}, "k6 b2+ !c"},
		{"unseen marks", "k6\u202e b2\u200b+\ufeff", []string{"k6 b2+"}, "k6 b2+"},
		{"beyond ASCII", "Ω é 😀", []string{"Ω é 😀"}, "Ω é 😀"},
		{"nothing", "\r\n \t", nil, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			require.Equal(t, c.lines, PasteLines([]rune(c.pasted)))
			require.Equal(t, c.line, PasteLine([]rune(c.pasted)))
		})
	}
}
