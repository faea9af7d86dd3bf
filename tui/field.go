package tui

import (
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/lugbook/tui/line"
)

// fieldLayer is one value being typed. What was typed stays until it is right.
type fieldLayer struct {
	title  string
	about  string // what belongs here, and an example
	line   line.Line
	opened bool     // the line is as it was opened: letters replace it, all else edits it
	words  []string // that Tab puts in
	done   func(*desk, string) (tea.Cmd, error)

	word int
}

func (f *fieldLayer) place() place  { return inField }
func (f *fieldLayer) typed() string { return f.line.Text() }

func (f *fieldLayer) key(_ *desk, key tea.KeyMsg) (tea.Cmd, bool) {
	if f.opened && key.Type == tea.KeyRunes && !key.Alt {
		f.line = line.Line{}
	}
	took := f.line.Key(key)
	f.opened = f.opened && !took
	return nil, took
}

func (f *fieldLayer) entry(*desk) (lead string, l *line.Line, ghost string) {
	if f.opened {
		ghost = "   letters replace it, Backspace and arrows edit it"
	}
	return f.title + ":", &f.line, ghost
}

func (f *fieldLayer) reading(*desk) string { return f.about }

// keep hands the text over. If it is not right the layer stays, with the reason shown.
func (f *fieldLayer) keep(d *desk) tea.Cmd {
	d.pop()
	cmd, err := f.done(d, strings.TrimSpace(f.line.Text()))
	if err != nil {
		d.push(f)
		d.warn(explain(err))
	}
	return cmd
}

// ask opens a field.
func (d *desk) ask(title, about, was string, done func(*desk, string) (tea.Cmd, error)) *fieldLayer {
	f := &fieldLayer{title: title, about: about, line: line.Of(was), opened: was != "", done: done}
	d.push(f)
	return f
}

func fieldActions() []Action {
	in := []place{inField}
	only := func(d *desk) string {
		if _, ok := topOf[*fieldLayer](d); !ok {
			return "only while a value is typed"
		}
		return ""
	}
	return []Action{
		{ID: "field-keep", Title: "Keep the value that is typed", Keys: []string{"enter"}, Hint: "keep", In: in, When: only,
			Run: func(d *desk) tea.Cmd {
				f, _ := topOf[*fieldLayer](d)
				return f.keep(d)
			}},
		{ID: "field-word", Title: "Put in the next word that fits the value", Keys: []string{"tab"}, Hint: "next word", In: in,
			When: func(d *desk) string {
				if f, ok := topOf[*fieldLayer](d); !ok || len(f.words) == 0 {
					return "only where a value has a list of words"
				}
				return ""
			},
			Run: func(d *desk) tea.Cmd {
				f, _ := topOf[*fieldLayer](d)
				f.line, f.opened = line.Of(f.words[f.word%len(f.words)]), false
				f.word++
				return nil
			}},
	}
}
