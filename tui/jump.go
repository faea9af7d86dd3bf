package tui

import (
	"image"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/lugbook/tui/nav"
)

// jumpLayer shows letters beside everything in view; typing them goes there.
type jumpLayer struct {
	labels map[thing]string
	sofar  string
}

func (j *jumpLayer) place() place { return inJump }

func (j *jumpLayer) reading(*desk) string {
	return "type the letters beside the place to go to; Esc stays   " + j.sofar
}

// key takes a letter of a label.
func (j *jumpLayer) key(d *desk, key tea.KeyMsg) (tea.Cmd, bool) {
	if key.Type == tea.KeyBackspace && j.sofar != "" {
		j.sofar = j.sofar[:len(j.sofar)-1]
		return nil, true
	}
	if !printable(key) || key.Paste {
		return nil, false
	}
	next := j.sofar + strings.ToLower(string(key.Runes))
	begins := false
	for t, label := range j.labels {
		if label == next {
			d.pop()
			d.goOn(t)
			return nil, true
		}
		begins = begins || strings.HasPrefix(label, next)
	}
	if !begins {
		d.warn("no place has the letters " + next)
		return nil, true
	}
	j.sofar = next
	return nil, true
}

// goOn goes to a thing as the layer below means it: a walk stands there, a card shows it.
func (d *desk) goOn(t thing) {
	switch top := d.top().(type) {
	case *walkLayer:
		if t.kind == partThing && len(d.terminals(t.at.Part)) > 0 {
			t = ofTerminal(d.terminals(t.at.Part)[0])
		}
		if t.kind != terminalThing {
			d.warn("a walk goes to terminals; Esc leaves it first")
			return
		}
		top.goTo(d, t.at)
	case *cardLayer:
		top.of, top.at = t, 0
		d.goTo(t)
	default:
		d.goTo(t)
	}
}

// jump labels what is in view: everything, or terminals only where a wire looks for one.
func jump(d *desk) tea.Cmd {
	p := d.picture()
	shown := image.Rectangle{Min: d.view, Max: d.view.Add(d.plan.Canvas.Size())}
	onlyTerminals := d.here() == inPull || d.here() == inWalk
	var things []thing
	var rects []image.Rectangle
	from := -1
	for _, o := range p.objects {
		if !o.rect.Overlaps(shown) || onlyTerminals && o.kind != terminalThing {
			continue
		}
		if o.thing == d.cursor {
			from = len(things)
		}
		things = append(things, o.thing)
		rects = append(rects, o.rect)
	}
	j := &jumpLayer{labels: map[thing]string{}}
	for i, label := range nav.Labels(rects, from) {
		if label != "" {
			j.labels[things[i]] = label
		}
	}
	d.push(j)
	return nil
}
