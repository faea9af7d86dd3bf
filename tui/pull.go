package tui

import (
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/lugline"
	"example.com/lugbook/tui/nav"
)

// pullLayer is a new wire, or a loose end, on its way to a terminal.
type pullLayer struct{ from thing }

func (p *pullLayer) place() place { return inPull }

// key opens the lug line with the first letter typed.
func (p *pullLayer) stale(d *desk) bool { return !p.from.on(d.sheet(), d.cat()) }

func (p *pullLayer) key(d *desk, key tea.KeyMsg) (tea.Cmd, bool) {
	if p.from.kind != terminalThing || !printable(key) {
		return nil, false
	}
	to := d.cursor
	d.pop()
	d.stand(p.from.at, true, farText(p.from, to)+string(key.Runes))
	return nil, true
}

// farText is the far end as a lug line says it.
func farText(from, to thing) string {
	if to.kind != terminalThing || to == from {
		return ""
	}
	return ">" + lugline.Name(to.at) + " "
}

func (p *pullLayer) reading(d *desk) string {
	if d.cursor.kind == terminalThing && d.cursor != p.from {
		return "from " + p.from.String() + " to " + d.cursor.String() + ": Enter takes it"
	}
	return "from " + p.from.String() + " to where? Move there, or type its lug line, such as k6 b2+"
}

// accept takes the terminal that the cursor is on.
func (p *pullLayer) accept(d *desk) tea.Cmd {
	to := d.cursor
	if to.kind != terminalThing {
		d.warn("a wire ends on a terminal; Tab goes to the next one")
		return nil
	}
	d.pop()
	if p.from.kind == looseThing {
		d.try(edit.ReEnd{Sheet: d.sheetName, ID: p.from.wire, Side: p.from.side, End: model.End{At: to.at}})
		return nil
	}
	d.stand(p.from.at, true, farText(p.from, to))
	return nil
}

// pull starts a wire at the selected terminal or loose end.
func pull(d *desk) tea.Cmd {
	d.push(&pullLayer{from: d.cursor})
	return nil
}

// pullable is why no wire can start here.
func pullable(d *desk) string {
	switch d.cursor.kind {
	case terminalThing, looseThing:
		return ""
	case partThing:
		return "go to one of its terminals first: Enter"
	}
	return "go to a terminal first"
}

// hop moves among terminals only, in reading order.
func (p *pullLayer) hop(d *desk, by int) {
	pic := d.picture()
	if pic == nil {
		return
	}
	for range pic.order {
		if d.step(by); d.cursor.kind == terminalThing {
			return
		}
	}
}

func pullActions() []Action {
	in := []place{inPull}
	pulling := func(d *desk) string {
		if _, ok := topOf[*pullLayer](d); !ok {
			return "only while a wire is pulled; w starts one"
		}
		return ""
	}
	act := func(id, title, hint string, keys string, run func(*pullLayer, *desk) tea.Cmd) Action {
		return Action{ID: id, Title: title, Hint: hint, Keys: strings.Fields(keys), In: in, When: pulling, Run: func(d *desk) tea.Cmd {
			p, _ := topOf[*pullLayer](d)
			return run(p, d)
		}}
	}
	arrow := func(dir nav.Dir) func(*pullLayer, *desk) tea.Cmd {
		return func(_ *pullLayer, d *desk) tea.Cmd {
			d.moveAmong(terminalThing, dir)
			return nil
		}
	}
	hop := func(by int) func(*pullLayer, *desk) tea.Cmd {
		return func(p *pullLayer, d *desk) tea.Cmd {
			p.hop(d, by)
			return nil
		}
	}
	return []Action{
		act("pull-accept", "End the wire on the terminal at hand", "ends here", "enter", (*pullLayer).accept),
		act("pull-next", "Next terminal as they are read", "next", "tab", hop(1)),
		act("pull-back", "Terminal before", "", "shift+tab", hop(-1)),
		act("pull-left", "Terminal on the left", "", "left", arrow(nav.Left)),
		act("pull-right", "Terminal on the right", "", "right", arrow(nav.Right)),
		act("pull-up", "Terminal above", "", "up", arrow(nav.Up)),
		act("pull-down", "Terminal below", "", "down", arrow(nav.Down)),
	}
}
