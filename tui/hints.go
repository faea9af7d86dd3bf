package tui

import (
	"slices"

	"example.com/lugbook/tui/screen"
	"example.com/lugbook/tui/theme"
)

// mostHints is how many keys are hinted besides the commands.
const mostHints = 8

// hint is a key and what it does now.
type hint struct{ key, word string }

func (h hint) width() int { return len(h.key) + 1 + len(h.word) }

// hints lists what the keys do now, as many as fit, and always the key of the commands.
func (d *desk) hints(room int) []hint {
	in := d.here()
	last := hint{":", "commands"}
	if room < last.width() {
		return []hint{{":", ""}}
	}
	left := room - last.width()
	var list []hint
	if in != onDrawing {
		back := hint{"Esc", "back"}
		if left >= back.width()+2 {
			list = append(list, back)
			left -= back.width() + 2
		}
	}
	for i := range d.actions {
		a := &d.actions[i]
		if a.Hint == "" || len(a.Keys) == 0 || len(list) >= mostHints || !slices.Contains(a.In, in) || a.refusal(d) != "" {
			continue
		}
		if h := (hint{keyName(a.Keys[0]), a.Hint}); left >= h.width()+2 {
			list = append(list, h)
			left -= h.width() + 2
		}
	}
	return append(list, last)
}

// drawHints writes the hints.
func (d *desk) drawHints(s *screen.Surface) {
	x := min(1, s.W-1)
	for _, h := range d.hints(s.W - 2) {
		x = s.Write(x, 0, h.key, d.theme.Prefix(theme.Key))
		x = s.Write(x+1, 0, h.word, d.theme.Prefix(theme.Dim)) + 2
	}
}
