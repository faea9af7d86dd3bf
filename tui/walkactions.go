package tui

import (
	tea "github.com/charmbracelet/bubbletea"

	"example.com/lugbook/model/lugline"
)

// first is the first reason of several why something cannot be done.
func first(reasons ...func(*desk) string) func(*desk) string {
	return func(d *desk) string {
		for _, reason := range reasons {
			if why := reason(d); why != "" {
				return why
			}
		}
		return ""
	}
}

// walkActions are the keys of the entry of lugs. Those that are letters or signs act on
// an empty line only.
func walkActions() []Action {
	in := []place{inWalk}
	on := func(run func(*walkLayer, *desk)) func(*desk) tea.Cmd {
		return func(d *desk) tea.Cmd {
			if w, ok := topOf[*walkLayer](d); ok {
				run(w, d)
			}
			return nil
		}
	}
	walking := func(d *desk) string {
		if _, ok := topOf[*walkLayer](d); !ok {
			return "only at a stud; g goes there"
		}
		return ""
	}
	expecting := func(d *desk) string {
		w, ok := topOf[*walkLayer](d)
		if !ok {
			return walking(d)
		}
		if len(lugline.Expected(d.sheet(), w.at)) == 0 {
			return "no wire is expected here"
		}
		return ""
	}
	return []Action{
		{ID: "walk-keep", Title: "Keep the line; on an empty one go to the next stud", Keys: []string{"enter"}, Hint: "keep", In: in, When: walking,
			Run: on(func(w *walkLayer, d *desk) { w.keep(d) })},
		{ID: "walk-fill", Title: "Fill in the likeliest far end; again for the next", Keys: []string{"tab"}, Hint: "fill in", In: in, When: walking,
			Run: on((*walkLayer).offerNext)},
		{ID: "it-is-here", Title: "The expected wire is here", Keys: []string{"+"}, Hint: "it is here", In: in, When: expecting,
			Run: on(func(w *walkLayer, d *desk) { w.enter(d, string(lugline.Seen)) })},
		{ID: "it-is-not-here", Title: "The expected wire is not here", Keys: []string{"-"}, Hint: "it is not", In: in, When: expecting,
			Run: on(func(w *walkLayer, d *desk) { w.enter(d, string(lugline.NotHere)) })},
		{ID: "walk-next", Title: "Go to the next stud of the walk", Keys: []string{"."}, Hint: "next stud", In: in, When: walking,
			Run: on(func(w *walkLayer, d *desk) { w.walkOn(d, 1) })},
		{ID: "walk-back", Title: "Go back to the stud before", Keys: []string{","}, Hint: "back", In: in, When: walking,
			Run: on(func(w *walkLayer, d *desk) { w.walkOn(d, -1) })},
		{ID: "walk-undo", Title: "Take the last step back and stay at the stud", Keys: []string{"<", "ctrl+z"}, Hint: "take back", In: in, When: first(walking, undoable), Run: undo},
		{ID: "walk-recall", Title: "Bring the last line back to correct it", Keys: []string{"up"}, Hint: "last line", In: in, When: walking,
			Run: on((*walkLayer).recall)},
	}
}
