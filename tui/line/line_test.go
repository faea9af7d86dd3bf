package line_test

import (
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	_ "example.com/lugbook/model/fixedseed"
	"example.com/lugbook/tui/line"
)

func key(typ tea.KeyType, letters string) tea.KeyMsg {
	return tea.KeyMsg{Type: typ, Runes: []rune(letters)}
}

func TestEditing(t *testing.T) {
	l := line.Of("k6 b2")
	require.True(t, l.Key(key(tea.KeyHome, "")))
	require.True(t, l.Key(key(tea.KeyRunes, "é")))
	require.True(t, l.Key(key(tea.KeySpace, " ")))
	require.Equal(t, "é k6 b2", l.Text())
	require.Equal(t, 2, l.Caret())
	l.Key(key(tea.KeyDelete, ""))
	l.Key(key(tea.KeyLeft, ""))
	l.Key(key(tea.KeyBackspace, ""))
	require.Equal(t, " 6 b2", l.Text())
	l.Key(key(tea.KeyEnd, ""))
	l.Key(key(tea.KeyCtrlU, ""))
	require.True(t, l.Empty())
	require.False(t, l.Key(key(tea.KeyEnter, "")))
	require.False(t, l.Key(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("x"), Alt: true}))
}

func TestAPasteBecomesOneCleanLine(t *testing.T) {
	var l line.Line
	l.Key(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("\x1b[31mred\n6 AWG\x07 "), Paste: true})
	require.Equal(t, "red 6 AWG", l.Text())
	l.Key(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(strings.Repeat("x", 2*line.Most)), Paste: true})
	require.Len(t, []rune(l.Text()), line.Most)
}

// The caret stays in the line, and a line agrees with one that is edited as plain letters.
func TestAnyKeysKeepTheCaretInTheLine(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var l line.Line
		var letters []rune
		caret := 0
		for range rapid.IntRange(0, 60).Draw(t, "keys") {
			switch rapid.IntRange(0, 4).Draw(t, "key") {
			case 0:
				l.Key(key(tea.KeyBackspace, ""))
				if caret > 0 {
					letters = append(letters[:caret-1:caret-1], letters[caret:]...)
					caret--
				}
			case 1:
				l.Key(key(tea.KeyLeft, ""))
				caret = max(0, caret-1)
			case 2:
				l.Key(key(tea.KeyRight, ""))
				caret = min(len(letters), caret+1)
			case 3:
				l.Key(key(tea.KeyDelete, ""))
				if caret < len(letters) {
					letters = append(letters[:caret:caret], letters[caret+1:]...)
				}
			default:
				r := rapid.SampledFrom([]rune("abc漢é+-?")).Draw(t, "letter")
				l.Key(key(tea.KeyRunes, string(r)))
				letters = append(letters[:caret:caret], append([]rune{r}, letters[caret:]...)...)
				caret++
			}
			if l.Text() != string(letters) || l.Caret() != caret {
				t.Fatalf("%q with the caret at %d, not %q at %d", l.Text(), l.Caret(), string(letters), caret)
			}
		}
	})
}
