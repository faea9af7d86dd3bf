package tui

import (
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/lugbook/model/edit"
	"example.com/lugbook/tui/nav"
)

// pointActions move the cursor and open what is under it.
func pointActions() []Action {
	in, about := []place{onDrawing}, []place{onDrawing, inOverview}
	run := func(f func(*desk)) func(*desk) tea.Cmd {
		return func(d *desk) tea.Cmd {
			f(d)
			return nil
		}
	}
	arrow := func(dir nav.Dir) func(*desk) tea.Cmd { return run(func(d *desk) { d.move(dir) }) }
	lugs := func(d *desk) string {
		if d.cursor.kind != terminalThing || d.litWire() == "" {
			return "go to a terminal with wires first"
		}
		return ""
	}
	wired := func(d *desk) string {
		if d.litWire() == "" {
			return "go to a wire, or to a terminal that has one"
		}
		return ""
	}
	return []Action{
		{ID: "go-inside", Title: "Go inside: part, terminal, wire, its card", Keys: []string{"enter"}, Hint: "inside", In: in, When: onSomething, Run: (*desk).inside},
		{ID: "back", Title: "Close what is open, or go out: wire, terminal, part", Keys: []string{"esc"}, In: allPlaces, Run: run(back)},
		{ID: "go-outside", Title: "Go out: wire, terminal, part", Keys: []string{"backspace"}, In: in, Run: run((*desk).outside)},
		{ID: "go-left", Title: "Go left", Keys: []string{"left"}, In: about, Run: arrow(nav.Left)},
		{ID: "go-right", Title: "Go right", Keys: []string{"right"}, In: about, Run: arrow(nav.Right)},
		{ID: "go-up", Title: "Go up", Keys: []string{"up"}, In: about, Run: arrow(nav.Up)},
		{ID: "go-down", Title: "Go down", Keys: []string{"down"}, In: about, Run: arrow(nav.Down)},
		{ID: "go-next", Title: "Next thing, as they are read", Keys: []string{"tab"}, In: about, Run: run(func(d *desk) { d.step(1) })},
		{ID: "go-previous", Title: "Thing before, as they are read", Keys: []string{"shift+tab"}, In: about, Run: run(func(d *desk) { d.step(-1) })},
		{ID: "follow", Title: "Follow the wire to its other end; again, and back", Keys: []string{"f"}, Hint: "follow", In: about, When: wired, Run: run((*desk).followWire)},
		{ID: "lug-out", Title: "Light the next lug outward", Keys: []string{"."}, In: in, When: lugs, Run: run(func(d *desk) { d.nextLug(1) })},
		{ID: "lug-in", Title: "Light the next lug towards the seat", Keys: []string{","}, In: in, When: lugs, Run: run(func(d *desk) { d.nextLug(-1) })},
		{ID: "jump", Title: "Jump to a place by its letters", Keys: []string{";"}, Hint: "jump", In: []place{onDrawing, inOverview, inWalk, inPull}, When: hasPicture, Run: jump},
		{ID: "find", Title: "Find a part, terminal or wire by name", Keys: []string{"/"}, Hint: "find", In: []place{onDrawing, inOverview, inWalk, inPull, inCard}, When: notEmpty, Run: findThing},
	}
}

// allPlaces are all places.
var allPlaces = []place{onDrawing, inWalk, inPull, inMove, inOverview, inCard, inStack, inFindings, inJump, inList, inRecords, inField, inReading, inPage}

func onSomething(d *desk) string {
	switch {
	case d.cursor.kind != noThing:
		return ""
	case d.empty():
		return "there is nothing to go to yet; a adds a part"
	}
	return "nothing is selected; an arrow or Tab goes to something"
}

func hasPicture(d *desk) string {
	if d.work.picture == nil {
		return "nothing is drawn yet"
	}
	return ""
}

func notEmpty(d *desk) string {
	if d.empty() {
		return "nothing is on this sheet yet"
	}
	return ""
}

// back closes the topmost layer; on the drawing it goes out one level. It never quits.
func back(d *desk) {
	switch top := d.top().(type) {
	case nil:
		d.outside()
		return
	case *walkLayer:
		top.putBy(d)
		if top.line.Text() != "" {
			d.say("the line is put by; it is here when you come back")
		}
	case *moveLayer:
		d.view = top.view
	case *pullLayer:
		d.view = top.view
		d.goTo(top.from)
	case *overviewLayer:
		top.leave(d)
		return
	case *findingsLayer:
		if top.was.on(d.sheet(), d.cat()) {
			d.goTo(top.was)
		}
	}
	d.pop()
}

// findThing lists everything on the sheet; typing narrows it down.
func findThing(d *desk) tea.Cmd {
	d.push(&listLayer{title: "find", lead: "find:", choices: func(d *desk) []choice {
		var list []choice
		add := func(t thing, right, more string) {
			list = append(list, choice{text: t.String(), right: right, more: more, exact: []string{t.String()}, pick: func(d *desk) tea.Cmd {
				d.goOn(t)
				return nil
			}})
		}
		s, cat := d.sheet(), d.cat()
		for i := range s.Parts {
			p := &s.Parts[i]
			add(ofPart(p.ID), shorten(p.Name, d.kindTitle(p.Kind)), p.Kind+" "+string(p.Zone)+" "+p.Note)
			for _, at := range d.terminals(p.ID) {
				means := ""
				if def := cat.TerminalOf(s, at); def != nil {
					means = def.Means
				}
				add(ofTerminal(at), shorten("", means), at.String())
			}
		}
		for i := range s.Wires {
			w := &s.Wires[i]
			add(ofWire(w.ID), shorten("", w.From.String()+" to "+w.To.String()), strings.Join([]string{w.Colour.Word(), w.Gauge.String(), w.Colour.String(), w.Mark, w.Bundle, w.Note}, " "))
			for _, side := range []edit.Side{edit.From, edit.To} {
				if t := ofEnd(w, side); t.kind == looseThing {
					add(t, shorten("", w.From.String()+" to "+w.To.String()), "")
				}
			}
		}
		return list
	}})
	return nil
}

// findRoom is the room at the right of the find list.
const findRoom = 22

// shorten is the first text that says something, cut to what a list has room for.
func shorten(texts ...string) string {
	for _, text := range texts {
		if letters := []rune(text); len(letters) > findRoom {
			return string(letters[:findRoom-1]) + "…"
		} else if text != "" {
			return text
		}
	}
	return ""
}
