package tui

import (
	"fmt"
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/lugline"
	"example.com/lugbook/tui/screen"
	"example.com/lugbook/tui/theme"
)

// stackLayer is the order of the lugs on a stud, being put right. Nothing changes until
// it is kept.
type stackLayer struct {
	on    model.TerminalRef
	order []model.WireID // from the seat outward
	at    int
}

func (s *stackLayer) place() place { return inStack }

// stale reports whether other wires are on the stud now.
func (s *stackLayer) stale(d *desk) bool {
	now, _ := d.sheet().StackOf(s.on)
	mine := slices.Clone(s.order)
	slices.Sort(now)
	slices.Sort(mine)
	return len(now) == 0 || !slices.Equal(now, mine)
}

func (s *stackLayer) key(*desk, tea.KeyMsg) (tea.Cmd, bool) { return nil, false }

func (s *stackLayer) reading(*desk) string {
	return fmt.Sprintf("%s, lug %d of %d from the seat outward", lugline.Name(s.on), s.at+1, len(s.order))
}

// openStack shows the lugs of the selected stud.
func openStack(d *desk) tea.Cmd {
	order, _ := d.sheet().StackOf(d.cursor.at)
	at := max(0, slices.Index(order, d.litWire()))
	d.push(&stackLayer{on: d.cursor.at, order: slices.Clone(order), at: at})
	return nil
}

// stackable is why there is no stack to see.
func stackable(d *desk) string {
	if d.cursor.kind != terminalThing {
		return "go to a stud first"
	}
	if order, _ := d.sheet().StackOf(d.cursor.at); len(order) == 0 {
		return "nothing is on " + lugline.Name(d.cursor.at)
	}
	return ""
}

// step goes to another lug.
func (s *stackLayer) step(d *desk, by int) {
	s.at = max(0, min(s.at+by, len(s.order)-1))
	d.lug = s.order[s.at]
}

// shift moves the lug towards the seat or outward.
func (s *stackLayer) shift(d *desk, by int) {
	to := s.at + by
	if to < 0 || to >= len(s.order) {
		return
	}
	s.order[s.at], s.order[to] = s.order[to], s.order[s.at]
	s.at = to
	d.lug = s.order[to]
}

// keep records the order.
func (s *stackLayer) keep(d *desk) {
	d.pop()
	d.try(edit.Restack{Sheet: d.sheetName, At: s.on, Order: s.order})
}

// side draws the stack from the seat outward.
func (s *stackLayer) side(d *desk, out *screen.Surface) {
	dim := d.theme.Prefix(theme.Dim)
	out.WriteIn(1, 0, out.W-1, "stack on "+lugline.Name(s.on), d.theme.Prefix(theme.Title))
	out.WriteIn(1, 1, out.W-1, "== seat", dim)
	_, known := d.sheet().StackOf(s.on)
	rows := max(1, out.H-3)
	first := scroll(s.at, len(s.order), rows)
	for i := first; i < min(len(s.order), first+rows); i++ {
		y, prefix := 2+i-first, d.theme.Prefix(theme.Text)
		if i == s.at {
			prefix = d.theme.Prefix(theme.Selected)
			out.Write(0, y, ">", prefix)
		}
		w := d.sheet().Wire(s.order[i])
		out.WriteIn(1, y, out.W-2, fmt.Sprintf("%d  %s to %s", i+1, wireWords(w), w.Far(s.on)), prefix)
	}
	last := "nut side"
	if !known {
		last = "nut side   (order not recorded yet)"
	}
	out.WriteIn(1, min(out.H-1, 2+len(s.order)), out.W-1, last, dim)
}

func stackActions() []Action {
	in := []place{inStack}
	stacking := func(d *desk) string {
		if _, ok := topOf[*stackLayer](d); !ok {
			return "only in the stack of a stud; k opens it"
		}
		return ""
	}
	act := func(id, title, hint, keys string, run func(*stackLayer, *desk)) Action {
		return Action{ID: id, Title: title, Hint: hint, Keys: strings.Fields(keys), In: in, When: stacking, Run: func(d *desk) tea.Cmd {
			s, _ := topOf[*stackLayer](d)
			run(s, d)
			return nil
		}}
	}
	step := func(by int) func(*stackLayer, *desk) { return func(s *stackLayer, d *desk) { s.step(d, by) } }
	shift := func(by int) func(*stackLayer, *desk) { return func(s *stackLayer, d *desk) { s.shift(d, by) } }
	return []Action{
		act("stack-keep", "Record this order of lugs", "record", "enter", (*stackLayer).keep),
		act("stack-in", "Move the lug towards the seat", "seatward", "left i", shift(-1)),
		act("stack-out", "Move the lug outward", "outward", "right o", shift(1)),
		act("stack-down", "Next lug outward", "next lug", "down tab .", step(1)),
		act("stack-up", "Next lug towards the seat", "", "up shift+tab ,", step(-1)),
	}
}
