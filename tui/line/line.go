// Package line is a one-line text field: letters with a caret among them.
package line

import (
	tea "github.com/charmbracelet/bubbletea"

	"example.com/lugbook/tui/input"
)

// Most is the number of letters that a line holds.
const Most = 400

// Line is a text being typed. The zero value is empty.
type Line struct {
	letters []rune
	caret   int // letters before it
}

// Of is a line with a text, the caret behind it.
func Of(text string) Line {
	var l Line
	l.insert([]rune(input.PasteLine([]rune(text))))
	return l
}

// Text is what stands in the line.
func (l *Line) Text() string { return string(l.letters) }

// Empty reports whether nothing is typed.
func (l *Line) Empty() bool { return len(l.letters) == 0 }

// Caret is the number of letters before the caret.
func (l *Line) Caret() int { return l.caret }

// Key takes a key that edits the line, or a paste; false if it is none.
func (l *Line) Key(key tea.KeyMsg) bool {
	switch key.Type {
	case tea.KeyRunes, tea.KeySpace:
		if key.Alt {
			return false
		}
		l.typed(key)
	case tea.KeyBackspace:
		l.cut(l.caret-1, l.caret)
	case tea.KeyDelete:
		l.cut(l.caret, l.caret+1)
	case tea.KeyLeft:
		l.caret = max(l.caret-1, 0)
	case tea.KeyRight:
		l.caret = min(l.caret+1, len(l.letters))
	case tea.KeyHome:
		l.caret = 0
	case tea.KeyEnd:
		l.caret = len(l.letters)
	case tea.KeyCtrlU:
		l.cut(0, l.caret)
	default:
		return false
	}
	return true
}

// typed takes letters. The spaces around a paste go, those that are typed stay.
func (l *Line) typed(key tea.KeyMsg) {
	letters := key.Runes
	switch {
	case key.Type == tea.KeySpace:
		letters = []rune{' '}
	case key.Paste || len(letters) != 1 || letters[0] != ' ':
		letters = []rune(input.PasteLine(letters))
	}
	l.insert(letters)
}

func (l *Line) insert(letters []rune) {
	letters = letters[:min(len(letters), Most-len(l.letters))]
	tail := append([]rune(nil), l.letters[l.caret:]...)
	l.letters = append(append(l.letters[:l.caret:l.caret], letters...), tail...)
	l.caret += len(letters)
}

// cut removes the letters from one place up to another.
func (l *Line) cut(from, to int) {
	from, to = max(from, 0), min(to, len(l.letters))
	if from >= to {
		return
	}
	l.letters = append(l.letters[:from:from], l.letters[to:]...)
	l.caret = from
}
