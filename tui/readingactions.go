package tui

import (
	tea "github.com/charmbracelet/bubbletea"
)

// readingActions take readings, list them, and change lists of records.
func readingActions() []Action {
	probing := func(d *desk) string {
		if _, ok := topOf[*probeLayer](d); !ok {
			return "only while a reading is typed; i starts one"
		}
		return ""
	}
	on := func(run func(*probeLayer, *desk)) func(*desk) tea.Cmd {
		return func(d *desk) tea.Cmd {
			if p, ok := topOf[*probeLayer](d); ok {
				run(p, d)
			}
			return nil
		}
	}
	entry, records := []place{inReading}, []place{inRecords}
	return []Action{
		{ID: "reading-keep", Title: "Record what is typed and compare it with what is expected", Keys: []string{"enter"}, Hint: "record", In: entry, When: probing, Run: on((*probeLayer).keep)},
		{ID: "reading-fill", Title: "Fill in where the black probe is; again for the next terminal", Keys: []string{"tab"}, Hint: "black", In: entry, When: probing, Run: on((*probeLayer).offerBlack)},
		{ID: "reading", Title: "Enter what a meter shows here, in the state in force", Keys: []string{"i"}, Hint: "reading", In: []place{onDrawing, inCard}, When: readable, Run: enterReading},
		{ID: "readings", Title: "List readings and suspects, and the next reading to take", Keys: []string{"I"}, In: everywhere, When: notEmpty, Run: readings},
		{ID: "record-add", Title: "Add to the list: a reading here, or a state", Keys: []string{"+"}, Hint: "add", In: records, When: recordList, Run: func(d *desk) tea.Cmd {
			l, _ := topOf[*listLayer](d)
			return l.add(d)
		}},
		{ID: "record-change", Title: "Change what the line at hand is about", Keys: []string{"="}, Hint: "change", In: records, When: ofRecord(func(c choice) bool { return c.change != nil }), Run: func(d *desk) tea.Cmd {
			l, _ := topOf[*listLayer](d)
			c, _ := l.chosen(d)
			return c.change(d)
		}},
		{ID: "record-remove", Title: "Take away what the line at hand is about", Keys: []string{"-"}, Hint: "take away", In: records, When: ofRecord(func(c choice) bool { return c.remove != nil }), Run: func(d *desk) tea.Cmd {
			l, _ := topOf[*listLayer](d)
			c, _ := l.chosen(d)
			c.remove(d)
			return nil
		}},
	}
}

// recordList is why nothing can be added to what is open.
func recordList(d *desk) string {
	if l, ok := topOf[*listLayer](d); !ok || l.add == nil {
		return "only in the list of readings or of states: I, t"
	}
	return ""
}

// ofRecord is why something cannot be done to the line at hand of a list of records.
func ofRecord(can func(choice) bool) func(*desk) string {
	return func(d *desk) string {
		if why := recordList(d); why != "" {
			return why
		}
		l, _ := topOf[*listLayer](d)
		if c, any := l.chosen(d); !any || !can(c) {
			return "only a reading, or a state of the job's own, can be changed"
		}
		return ""
	}
}
