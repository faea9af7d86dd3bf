package tui

import (
	"image"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/lugbook/diagram"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/lugline"
	"example.com/lugbook/tui/nav"
)

// pullLayer is a new wire, or a loose end, on its way to a terminal. The way that it would take
// is drawn as it goes, beside the screen.
type pullLayer struct {
	from  thing
	mouse bool        // it is pulled with the mouse
	hand  image.Point // cell that the mouse is on
	view  image.Point // of the drawing, when it was begun

	pull  *diagram.Pull // nil before it was begun
	busy  bool          // a way is being looked for
	asked bool          // a way was looked for
	of    pullTo        // that way
	way   []scene.Point // nil if there is none
}

// pullTo is where a wire is pulled to: a terminal, else a cell.
type pullTo struct {
	onto thing
	cell image.Point
}

func (p *pullLayer) place() place { return inPull }

func (p *pullLayer) stale(d *desk) bool { return !p.from.on(d.sheet(), d.cat()) }

// key opens the lug line with the first letter typed.
func (p *pullLayer) key(d *desk, key tea.KeyMsg) (tea.Cmd, bool) {
	if p.from.kind != terminalThing || !printable(key) {
		return nil, false
	}
	to := d.cursor
	d.pop()
	d.stand(p.from.at, true, farText(p.from, to)+string(key.Runes))
	return nil, true
}

// to is where the wire is pulled to now; false if it is still where it began.
func (p *pullLayer) to(d *desk) (pullTo, bool) {
	switch {
	case d.cursor.kind == terminalThing && d.cursor != p.from:
		return pullTo{onto: d.cursor}, true
	case p.mouse:
		return pullTo{cell: p.hand}, true
	}
	return pullTo{}, false
}

// traced is the way that a wire being pulled would take.
type traced struct {
	layer *pullLayer
	of    pullTo
	pull  *diagram.Pull
	way   []scene.Point
}

// trace starts to look for the way of the wire that is being pulled.
func (d *desk) trace() tea.Cmd {
	p, pulling := topOf[*pullLayer](d)
	if !pulling || p.busy || p.asked && p.pull == nil || d.work.picture == nil || d.work.pictureOf != d.stamp() {
		return nil
	}
	to, goes := p.to(d)
	if !goes || p.asked && p.of == to {
		return nil
	}
	p.busy = true
	out := traced{layer: p, of: to, pull: p.pull}
	job, sheet, lib, o := d.job(), d.sheetName, d.lib, d.byHand()
	return func() tea.Msg {
		_ = guarded(func() (err error) { // without a way none is shown
			switch {
			case out.pull != nil:
			case p.from.kind == looseThing:
				out.pull, err = diagram.PullEnd(job, sheet, lib, o, p.from.wire, p.from.flag())
			default:
				out.pull, err = diagram.PullFrom(job, sheet, lib, o, p.from.at)
			}
			if err != nil {
				out.pull = nil
				return err
			}
			if to.onto.kind == terminalThing {
				out.way = out.pull.Onto(to.onto.at)
			} else {
				out.way = out.pull.To(scene.Point{X: to.cell.X, Y: to.cell.Y})
			}
			return nil
		})
		return out
	}
}

// takeTraced shows the way of the wire that is being pulled. One of a wire that was let go is
// dropped.
func (d *desk) takeTraced(t traced) tea.Cmd {
	p, pulling := topOf[*pullLayer](d)
	if !pulling || p != t.layer {
		return nil
	}
	p.busy, p.asked, p.of, p.pull, p.way = false, true, t.of, t.pull, t.way
	return d.refresh()
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
		words := "from " + p.from.String() + " to " + d.cursor.String() + ": Enter takes it"
		if p.pull != nil && p.of == (pullTo{onto: d.cursor}) && p.way == nil {
			words += "; there is no free way yet, the drawing makes room"
		}
		return words
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
	d.push(&pullLayer{from: d.cursor, view: d.view})
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
