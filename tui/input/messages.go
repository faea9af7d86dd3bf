// Package input is the edge between a terminal and the program: what arrives above it is one message per key,
// per mouse report and per paste, whatever the link did to the bytes.
//
// A program uses all of it together:
//
//	colour, typed := input.AskBackground(os.Stdin, os.Stdout, 150*time.Millisecond)
//	program := tea.NewProgram(root,
//		tea.WithInput(input.Wrap(os.Stdin, typed)),
//		tea.WithFilter(input.StillMotion()),
//		tea.WithMouseCellMotion())
//	stop := input.OnHangup(program, journal.Flush)
//	_, err := program.Run()
//	hungUp := stop()
//
// and in Update ranges over [Split] of every message and returns [Resume] for it.
package input

import (
	tea "github.com/charmbracelet/bubbletea"

	_ "example.com/lugbook/tui/early" // has to be initialised before Bubble Tea
)

// Split returns the messages that a message stands for. Keys that arrive in one read are one message in Bubble
// Tea v1 ("jj" is no key of any table); here each becomes a message of its own. A paste stays whole, and so does
// everything that is not text.
func Split(msg tea.Msg) []tea.Msg {
	key, isKey := msg.(tea.KeyMsg)
	if !isKey || key.Type != tea.KeyRunes || key.Paste || len(key.Runes) < 2 {
		return []tea.Msg{msg}
	}
	split := make([]tea.Msg, len(key.Runes))
	for i, r := range key.Runes {
		split[i] = tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}, Alt: key.Alt}
	}
	return split
}

// StillMotion returns a filter for [tea.WithFilter] that drops mouse motion within one cell: the cell, and with
// it anything the program could show, has not changed since the last mouse message. Each program needs its own.
func StillMotion() func(tea.Model, tea.Msg) tea.Msg {
	var last tea.MouseMsg
	known := false
	return func(_ tea.Model, msg tea.Msg) tea.Msg {
		mouse, isMouse := msg.(tea.MouseMsg)
		if !isMouse {
			return msg
		}
		still := known && mouse.X == last.X && mouse.Y == last.Y &&
			mouse.Shift == last.Shift && mouse.Alt == last.Alt && mouse.Ctrl == last.Ctrl
		last, known = mouse, true
		if still && mouse.Action == tea.MouseActionMotion {
			return nil
		}
		return msg
	}
}

// Resume returns the command that a message calls for after the program was suspended: Bubble Tea v1 turns paste
// and focus reports back on, but not the mouse. It returns nil for every other message, and when the mouse is not
// in use.
func Resume(msg tea.Msg, mouse bool) tea.Cmd {
	if _, resumed := msg.(tea.ResumeMsg); resumed && mouse {
		return tea.EnableMouseCellMotion
	}
	return nil
}
