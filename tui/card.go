package tui

import (
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/lugbook/tui/screen"
	"example.com/lugbook/tui/theme"
)

// cardLayer is the card of one thing with a row at hand; of no thing, it is the job's.
type cardLayer struct {
	of thing
	at int
}

func (c *cardLayer) place() place { return inCard }

func (c *cardLayer) stale(d *desk) bool {
	return c.of.kind != noThing && !c.of.on(d.sheet(), d.cat())
}

func (c *cardLayer) key(*desk, tea.KeyMsg) (tea.Cmd, bool) { return nil, false }

// row is one line of a card.
type row struct {
	name, value string
	about       string              // one sentence: what belongs here, or where the value is from
	edit        func(*desk) tea.Cmd // nil if it cannot be changed
	turn        func(*desk, int)    // to the next or previous word; nil if there are none
	remove      func(*desk)         // takes away what the row is about; nil if it stays
}

// openCard opens the card of the selected thing.
func openCard(d *desk) tea.Cmd {
	if _, open := topOf[*cardLayer](d); !open {
		d.push(&cardLayer{of: d.cursor, at: len(d.figureRows(d.cursor)) + len(d.readingRows(d.cursor))})
	}
	return nil
}

// row is the row that the keys are about; false if the card is empty.
func (c *cardLayer) row(d *desk) (row, bool) {
	rows := d.rows(c.of)
	if len(rows) == 0 {
		return row{}, false
	}
	c.at = min(c.at, len(rows)-1)
	return rows[c.at], true
}

func (c *cardLayer) reading(d *desk) string {
	r, any := c.row(d)
	if !any {
		return ""
	}
	return r.name + ": " + r.about
}

func (c *cardLayer) side(d *desk, s *screen.Surface) { d.drawCard(s, c.of, c.at) }

// drawCard draws the card of a thing; at is the row at hand, below 0 none.
func (d *desk) drawCard(s *screen.Surface, of thing, at int) {
	s.WriteIn(1, 0, s.W-1, d.title(of), d.theme.Prefix(theme.Title))
	rows := d.rows(of)
	width := 0
	for _, r := range rows {
		width = max(width, len(r.name))
	}
	width = min(width, s.W/2)
	first := scroll(at, len(rows), max(1, s.H-1))
	for i := first; i < min(len(rows), first+s.H-1); i++ {
		y, r := 1+i-first, rows[i]
		name, value := d.theme.Prefix(theme.Dim), d.theme.Prefix(theme.Text)
		if i == at {
			name, value = d.theme.Prefix(theme.Selected), d.theme.Prefix(theme.Selected)
			s.Write(0, y, ">", name)
		}
		s.WriteIn(1, y, width, r.name, name)
		s.WriteIn(2+width, y, s.W-3-width, r.value, value)
	}
}

// step goes to another row.
func (c *cardLayer) step(d *desk, by int) {
	c.at = max(0, min(c.at+by, len(d.rows(c.of))-1))
}

func cardActions() []Action {
	in := []place{inCard}
	open := func(d *desk) string {
		if _, ok := topOf[*cardLayer](d); !ok {
			return "only on a card; e opens it"
		}
		return ""
	}
	turns := func(d *desk) string {
		c, ok := topOf[*cardLayer](d)
		if !ok {
			return open(d)
		}
		if r, any := c.row(d); !any || r.turn == nil {
			return "this field has no list of words to turn through"
		}
		return ""
	}
	changes := func(d *desk) string {
		c, ok := topOf[*cardLayer](d)
		if !ok {
			return open(d)
		}
		if r, any := c.row(d); !any || r.edit == nil {
			return "this field is only shown"
		}
		return ""
	}
	act := func(id, title, hint, keys string, when func(*desk) string, run func(*cardLayer, *desk) tea.Cmd) Action {
		return Action{ID: id, Title: title, Hint: hint, Keys: strings.Fields(keys), In: in, When: when, Run: func(d *desk) tea.Cmd {
			c, _ := topOf[*cardLayer](d)
			return run(c, d)
		}}
	}
	step := func(by int) func(*cardLayer, *desk) tea.Cmd {
		return func(c *cardLayer, d *desk) tea.Cmd {
			c.step(d, by)
			return nil
		}
	}
	turn := func(by int) func(*cardLayer, *desk) tea.Cmd {
		return func(c *cardLayer, d *desk) tea.Cmd {
			if r, any := c.row(d); any {
				r.turn(d, by)
			}
			return nil
		}
	}
	removes := func(d *desk) string {
		c, ok := topOf[*cardLayer](d)
		if !ok {
			return open(d)
		}
		if r, any := c.row(d); !any || r.remove == nil {
			return "only a reading can be taken away here"
		}
		return ""
	}
	return []Action{
		act("card-remove", "Take the reading at hand away", "take away", "d", removes, func(c *cardLayer, d *desk) tea.Cmd {
			r, _ := c.row(d)
			r.remove(d)
			return nil
		}),
		act("card-change", "Change the field at hand", "change", "enter", changes, func(c *cardLayer, d *desk) tea.Cmd {
			r, _ := c.row(d)
			return r.edit(d)
		}),
		act("card-turn", "Turn the field to the next word", "next word", "right", turns, turn(1)),
		act("card-turn-back", "Turn the field to the word before", "", "left", turns, turn(-1)),
		act("card-down", "Next field", "next field", "down tab", open, step(1)),
		act("card-up", "Field above", "", "up shift+tab", open, step(-1)),
		act("card-page-down", "Ten fields down", "", "pgdown", open, step(10)),
		act("card-page-up", "Ten fields up", "", "pgup", open, step(-10)),
	}
}
