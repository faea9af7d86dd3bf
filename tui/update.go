package tui

import (
	"unicode"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/lugbook/tui/frame"
	"example.com/lugbook/tui/input"
)

// Update takes what happened: a size, keys, the mouse, or something that was computed.
func (d *desk) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	cmds := []tea.Cmd{input.Resume(msg, d.mouse)}
	for _, one := range input.Split(msg) {
		cmds = append(cmds, d.take(one))
	}
	d.arrange()
	return d, tea.Batch(append(cmds, d.oversee())...)
}

func (d *desk) take(msg tea.Msg) tea.Cmd {
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		d.w, d.h = max(msg.Width, 1), max(msg.Height, 1)
		return d.refresh()
	case tea.KeyMsg:
		d.pointed = false
		return tea.Batch(d.key(msg), d.refresh())
	case tea.MouseMsg:
		d.pointed = true
		return tea.Batch(d.pointer(msg), d.refresh())
	case drawn:
		return d.takeDrawing(msg)
	case moved:
		return d.takeMoved(msg)
	case roomMade:
		return d.takeRoom(msg)
	case traced:
		return d.takeTraced(msg)
	case reduced:
		return d.takeReduced(msg)
	case forced:
		return d.takeForce(msg.force)
	case checked:
		return d.takeFindings(msg)
	case pageMade:
		d.takePage(msg)
	case judged:
		return d.takeJudged(msg)
	case *diagnosis:
		return d.takeDiagnosis(msg)
	case savedMsg:
		return d.takeSaved(msg)
	case exported:
		d.takeExported(msg)
	}
	return nil
}

// arrange divides the screen anew and keeps the cursor in view.
func (d *desk) arrange() {
	w, walking := topOf[*walkLayer](d)
	d.plan = frame.Arrange(d.w, d.h, d.wantsSide(), walking && !w.once)
	d.follow()
}

// key does what a key does where the keys are.
func (d *desk) key(key tea.KeyMsg) tea.Cmd {
	if key.Type == tea.KeyCtrlC {
		return quit(d)
	}
	d.notice = notice{}
	in := d.here()
	if in.types() && (printable(key) || key.Type == tea.KeyBackspace) && !d.lineEmpty() {
		cmd, _ := d.top().key(d, key)
		return cmd
	}
	if a := d.find(in, key.String()); a != nil && !key.Paste {
		return d.do(a)
	}
	if top := d.top(); top != nil {
		if cmd, took := top.key(d, key); took {
			return cmd
		}
	}
	if !in.types() && !key.Paste {
		d.warn(d.inVain(in, key.String()))
	}
	return nil
}

// inVain says what could be done about a key that does nothing here.
func (d *desk) inVain(in place, key string) string {
	if a := d.find(onDrawing, key); a != nil && in != onDrawing {
		return keyName(key) + " is a key of the drawing (" + a.Title + "); Esc goes back there"
	}
	return keyName(key) + " does nothing here; ? lists the keys, : all commands"
}

// printable reports whether a key is a letter or a paste of them.
func printable(key tea.KeyMsg) bool {
	if key.Type == tea.KeySpace {
		return true
	}
	return key.Type == tea.KeyRunes && !key.Alt && len(key.Runes) > 0 && (key.Paste || unicode.IsPrint(key.Runes[0]))
}

// typer is a layer with a line to type in.
type typer interface{ typed() string }

// lineEmpty reports whether nothing is typed in the topmost layer's line.
func (d *desk) lineEmpty() bool {
	t, ok := d.top().(typer)
	return !ok || t.typed() == ""
}
