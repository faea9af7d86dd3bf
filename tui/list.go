package tui

import (
	"cmp"
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/sahilm/fuzzy"

	"example.com/lugbook/tui/line"
	"example.com/lugbook/tui/screen"
	"example.com/lugbook/tui/theme"
)

// choice is a line of a list.
type choice struct {
	text   string // what is shown, and searched
	right  string // shown at the right: a key, a count
	more   string // searched too, and not shown in the line
	detail string // shown below the list while the choice is at hand
	why    string // why it cannot be chosen; empty if it can
	marked bool
	thing  bool     // text is a thing's title: those that the filter names come first
	exact  []string // texts that mean this choice and no other
	pick   func(*desk) tea.Cmd
	change func(*desk) tea.Cmd // of a record; nil if it cannot be changed here
	remove func(*desk)         // of a record; nil if it cannot be taken away here
}

// listLayer is a list that typing narrows down.
type listLayer struct {
	title   string
	lead    string // before the filter
	choices func(*desk) []choice
	fresh   func(text string) choice // what a filter that is no choice would make; nil if nothing
	stays   bool                     // open after a choice
	in      place                    // inList if empty
	add     func(*desk) tea.Cmd      // another record; nil if it is no list of records

	filter line.Line
	at     int // in what is shown
	memo   listMemo
}

// listMemo keeps what a filter left, and what it was made from.
type listMemo struct {
	text  string
	of    stamp
	news  int // what was computed since
	shown []choice
}

func (l *listLayer) place() place  { return cmp.Or(l.in, inList) }
func (l *listLayer) typed() string { return l.filter.Text() }

func (l *listLayer) key(_ *desk, key tea.KeyMsg) (tea.Cmd, bool) {
	took := l.filter.Key(key)
	if took {
		l.at = 0
	}
	return nil, took
}

// shown lists the choices that fit the filter, best first.
func (l *listLayer) shown(d *desk) []choice {
	text, of := strings.TrimSpace(l.filter.Text()), d.stamp()
	if l.memo.shown == nil || l.memo.text != text || l.memo.of != of || l.memo.news != d.work.news {
		was := l.memo
		l.memo = listMemo{text, of, d.work.news, l.filtered(d, text)}
		if was.text == text && was.news != d.work.news && l.at < len(was.shown) {
			l.at = placeOfChoice(l.memo.shown, was.shown[l.at], l.at)
		}
	}
	return l.memo.shown
}

// placeOfChoice is where a choice is in a list that was computed anew; at if it has gone.
func placeOfChoice(list []choice, c choice, at int) int {
	if len(c.exact) > 0 {
		for i := range list {
			if len(list[i].exact) > 0 && list[i].exact[0] == c.exact[0] {
				return i
			}
		}
	}
	return at
}

func (l *listLayer) filtered(d *desk, text string) []choice {
	all := l.choices(d)
	if text == "" {
		return all
	}
	fit := fitting(all, text)
	means := func(c choice) bool { return slices.Contains(c.exact, text) }
	if i := slices.IndexFunc(all, means); i >= 0 {
		fit = append([]choice{all[i]}, slices.DeleteFunc(fit, means)...)
	} else if l.fresh != nil {
		fit = append(fit, l.fresh(text))
	}
	return fit
}

// fitting lists the choices that hold every word of a text: those that it names, those that begin
// with it, then those where words begin with its words, then the others. If there are none, it
// lists those that hold its letters in order.
func fitting(all []choice, text string) []choice {
	var named, first, next, rest []choice
	words := strings.Fields(strings.ToLower(text))
	for _, c := range all {
		in := " " + strings.ToLower(c.text+" "+c.more)
		lacks := func(before string) bool {
			return slices.ContainsFunc(words, func(w string) bool { return !strings.Contains(in, before+w) })
		}
		switch {
		case c.thing && names(strings.ToLower(c.text), words):
			named = append(named, c)
		case strings.HasPrefix(in, " "+strings.ToLower(text)):
			first = append(first, c)
		case !lacks(" "):
			next = append(next, c)
		case !lacks(""):
			rest = append(rest, c)
		}
	}
	if fit := slices.Concat(named, first, next, rest); len(fit) > 0 {
		return fit
	}
	var fit []choice
	for _, m := range fuzzy.FindFrom(text, searched(all)) {
		fit = append(fit, all[m.Index])
	}
	return fit
}

// names reports whether words end what a title calls its thing, before what it says of it after a
// comma or in brackets: motor names an "AC motor, three phases", but no "Motor encoder".
func names(title string, words []string) bool {
	head, _, _ := strings.Cut(title, ",")
	head, _, _ = strings.Cut(head, " (")
	called := strings.Fields(head)
	return len(called) >= len(words) && slices.Equal(called[len(called)-len(words):], words)
}

type searched []choice

func (s searched) String(i int) string { return s[i].text + " " + s[i].more }
func (s searched) Len() int            { return len(s) }

// chosen is the choice at hand; false if nothing fits.
func (l *listLayer) chosen(d *desk) (choice, bool) {
	shown := l.shown(d)
	if len(shown) == 0 {
		return choice{}, false
	}
	l.at = min(l.at, len(shown)-1)
	return shown[l.at], true
}

// step moves to another choice.
func (l *listLayer) step(d *desk, by int) {
	if n := len(l.shown(d)); n > 0 {
		l.at = max(0, min(l.at+by, n-1))
	}
}

// choose takes the choice at hand.
func (l *listLayer) choose(d *desk) tea.Cmd {
	l.memo = listMemo{} // what can be done may have changed since
	c, any := l.chosen(d)
	switch {
	case !any:
		d.warn("nothing fits " + l.filter.Text())
		return nil
	case c.why != "":
		d.warn(c.text + ": " + c.why)
		return nil
	case !l.stays:
		d.pop()
	}
	return c.pick(d)
}

func (l *listLayer) entry(*desk) (string, *line.Line, string) { return l.lead, &l.filter, "" }

func (l *listLayer) reading(d *desk) string {
	c, any := l.chosen(d)
	switch {
	case !any:
		return "nothing fits; Backspace widens"
	case c.why != "":
		return "not now: " + c.why
	}
	return strings.TrimSpace(c.text + "  " + c.right)
}

// side draws the list with the choice at hand in view, and its detail below.
func (l *listLayer) side(d *desk, s *screen.Surface) {
	shown := l.shown(d)
	s.WriteIn(1, 0, s.W-1, l.title, d.theme.Prefix(theme.Title))
	var detail []string
	if c, any := l.chosen(d); any {
		detail = fold(c.detail, s.W-2)
	}
	below := min(len(detail), s.H*2/5)
	if below > 0 {
		below++
	}
	rows := max(1, s.H-1-below)
	first := scroll(l.at, len(shown), rows)
	for i := first; i < min(len(shown), first+rows); i++ {
		l.row(d, s, 1+i-first, shown[i], i == l.at)
	}
	for i := 1; i < below; i++ {
		s.WriteIn(1, s.H-below+i, s.W-2, detail[i-1], d.theme.Prefix(theme.Dim))
	}
}

func (l *listLayer) row(d *desk, s *screen.Surface, y int, c choice, at bool) {
	role := theme.Text
	switch {
	case at:
		role = theme.Selected
	case c.why != "":
		role = theme.Dim
	}
	prefix := d.theme.Prefix(role)
	if at {
		s.Write(0, y, ">", prefix)
	}
	text := c.text
	if c.marked {
		text = "* " + text
	}
	right := len([]rune(c.right))
	s.WriteIn(1, y, s.W-3-right, text, prefix)
	if right > 0 && right < s.W-4 {
		s.Write(s.W-1-right, y, c.right, d.theme.Prefix(theme.Key))
	}
}

// scroll is the first of the rows to show so that one of them is in view.
func scroll(at, of, rows int) int {
	return max(0, min(at-rows/2, of-rows))
}

func listActions() []Action {
	in := []place{inList, inRecords}
	step := func(by int) func(*desk) tea.Cmd {
		return func(d *desk) tea.Cmd {
			if l, ok := topOf[*listLayer](d); ok {
				l.step(d, by)
			}
			return nil
		}
	}
	only := func(d *desk) string {
		if _, ok := topOf[*listLayer](d); !ok {
			return "only in a list"
		}
		return ""
	}
	return []Action{
		{ID: "list-choose", Title: "Take the choice at hand", Keys: []string{"enter"}, Hint: "choose", In: in, When: only,
			Run: func(d *desk) tea.Cmd {
				l, _ := topOf[*listLayer](d)
				return l.choose(d)
			}},
		{ID: "list-down", Title: "Next line of the list", Keys: []string{"down", "tab"}, Hint: "next", In: in, When: only, Run: step(1)},
		{ID: "list-up", Title: "Line above in the list", Keys: []string{"up", "shift+tab"}, In: in, When: only, Run: step(-1)},
		{ID: "list-page-down", Title: "Ten lines down the list", Keys: []string{"pgdown"}, In: in, When: only, Run: step(10)},
		{ID: "list-page-up", Title: "Ten lines up the list", Keys: []string{"pgup"}, In: in, When: only, Run: step(-10)},
	}
}
