package tui

import (
	"fmt"
	"reflect"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/field"
)

// editActions change what is selected, and undo.
func editActions() []Action {
	drawing := []place{onDrawing}
	return []Action{
		{ID: "card", Title: "Open the card: all fields of what is selected", Keys: []string{"e"}, Hint: "edit", In: drawing, When: onSomething, Run: openCard},
		{ID: "stack", Title: "Open the stack: the order of lugs on this stud", Keys: []string{"k"}, In: drawing, When: stackable, Run: openStack},
		{ID: "condition", Title: "Record how it was found", Keys: []string{"c"}, In: []place{onDrawing, inFindings}, When: hasField("condition"), Run: changeField("condition")},
		{ID: "confidence", Title: "Turn how well it is known: traced, assumed, untraced", Keys: []string{"C"}, In: []place{onDrawing, inFindings}, When: hasField("confidence"), Run: changeField("confidence")},
		{ID: "cover", Title: "Turn the terminal's cover: fitted, missing", Keys: []string{"v"}, In: []place{onDrawing, inFindings}, When: hasField("cover"), Run: changeField("cover")},
		{ID: "move", Title: "Move the part's box", Keys: []string{"m"}, In: drawing, When: movable, Run: startMove},
		{ID: "unpin", Title: "Let the part's box go where the program puts it", Keys: []string{"M"}, In: drawing, When: pinned, Run: unpin},
		{ID: "delete", Title: "Delete what is selected; wires of a part stay, cut", Keys: []string{"d"}, In: drawing, When: onSomething, Run: remove},
		{ID: "delete-with-wires", Title: "Delete the part and all wires on it", Keys: []string{"D"}, In: drawing, When: onPart, Run: removeWithWires},
		{ID: "undo", Title: "Undo the last step", Keys: []string{"u", "ctrl+z"}, Hint: "undo", In: everywhere, When: undoable, Run: undo},
		{ID: "redo", Title: "Redo what was undone", Keys: []string{"U", "ctrl+r"}, In: everywhere, When: redoable, Run: redo},
		{ID: "history", Title: "List all steps; choosing one goes back to it", Keys: []string{"h"}, In: everywhere, When: undoable, Run: steps},
	}
}

// hasField tells whether the selected thing has a field.
func hasField(name string) func(*desk) string {
	return func(d *desk) string {
		var subject any
		switch d.cursor.kind {
		case partThing:
			subject = &model.Part{}
		case terminalThing:
			subject = &model.Terminal{}
		case wireThing, looseThing:
			subject = &model.Wire{}
		default:
			return "nothing is selected"
		}
		if _, err := field.Get(subject, name); err != nil {
			return d.cursor.String() + " has no " + name
		}
		return ""
	}
}

// changeField changes one field of the selected thing without its card.
func changeField(name string) func(*desk) tea.Cmd {
	return func(d *desk) tea.Cmd {
		for _, r := range d.rows(d.cursor) {
			if r.name == name {
				return r.edit(d)
			}
		}
		return nil
	}
}

func onPart(d *desk) string {
	if d.cursor.kind != partThing {
		return "go to a part first"
	}
	return ""
}

func pinned(d *desk) string {
	if p := d.sheet().Part(d.cursor.at.Part); p == nil || p.Place == nil {
		return "no one has placed this box"
	}
	return ""
}

func unpin(d *desk) tea.Cmd {
	d.try(edit.PlacePart{Sheet: d.sheetName, ID: d.cursor.at.Part})
	return nil
}

// remove deletes the selected thing. A terminal belongs to its part and stays; what is
// recorded of it goes.
func remove(d *desk) tea.Cmd {
	t := d.cursor
	switch t.kind {
	case partThing:
		d.removed(edit.RemovePart{Sheet: d.sheetName, ID: t.at.Part}, thing{})
	case wireThing, looseThing:
		beside := thing{}
		if w := d.sheet().Wire(t.wire); !w.From.IsLoose() {
			beside = ofTerminal(w.From.At)
		}
		d.removed(edit.RemoveWire{Sheet: d.sheetName, ID: t.wire}, beside)
	case terminalThing:
		if w := d.litWire(); w != "" {
			d.removed(edit.RemoveWire{Sheet: d.sheetName, ID: w}, t)
			return nil
		}
		d.warn("a terminal belongs to its part; d on the part deletes it")
	}
	return nil
}

func removeWithWires(d *desk) tea.Cmd {
	d.removed(edit.RemovePart{Sheet: d.sheetName, ID: d.cursor.at.Part, WithWires: true}, thing{})
	return nil
}

// removed makes an edit that takes the selected thing away, and goes to what was beside it.
func (d *desk) removed(e edit.Edit, beside thing) {
	p, was, alike := d.work.picture, d.cursor, d.alike(d.cursor)
	d.try(e)
	if beside.kind == noThing && d.cursor.kind == noThing && p != nil {
		beside = p.neighbour(was, alike)
	}
	d.goTo(beside)
}

// alike are the things that the cursor may go to when a thing was deleted: other ends or
// wires, and of parts those of its own kind. So a key that is held too long does not go on
// with parts of another kind.
func (d *desk) alike(of thing) func(thing) bool {
	kindOf := ""
	if p := d.sheet().Part(of.at.Part); of.kind == partThing && p != nil {
		kindOf = p.Kind
	}
	return func(t thing) bool {
		if !t.on(d.sheet(), d.cat()) {
			return false
		}
		return t.kind != partThing || d.sheet().Part(t.at.Part).Kind == kindOf
	}
}

// neighbour is the thing nearest in reading order, of those that are still there.
func (p *picture) neighbour(of thing, there func(thing) bool) thing {
	at := 0
	for i, o := range p.order {
		if p.objects[o].thing == of {
			at = i
		}
	}
	for away := range p.order {
		for _, i := range []int{at - away, at + away} {
			if i >= 0 && i < len(p.order) && p.objects[p.order[i]].kind == of.kind && there(p.objects[p.order[i]].thing) {
				return p.objects[p.order[i]].thing
			}
		}
	}
	return thing{}
}

func undoable(d *desk) string {
	if _, ok := d.history.NextUndo(); !ok {
		return "nothing has been done yet"
	}
	return ""
}

func redoable(d *desk) string {
	if _, ok := d.history.NextRedo(); !ok {
		return "nothing was undone"
	}
	return ""
}

func undo(d *desk) tea.Cmd {
	was := d.job()
	name, _ := d.history.Undo()
	again := "U"
	if d.here().types() {
		again = ":redo"
	}
	d.restored(was, "undone: "+name+"; "+again+" does it again")
	return nil
}

func redo(d *desk) tea.Cmd {
	was := d.job()
	name, _ := d.history.Redo()
	d.restored(was, "done again: "+name)
	return nil
}

// restored shows a job that undo or redo brought back, on a sheet that has changed.
func (d *desk) restored(was *model.Job, text string) {
	d.changed()
	if name := elsewhere(was, d.job(), d.sheetName); name != "" {
		d.show(name)
	}
	d.say(text)
}

// elsewhere is the last sheet on which two jobs differ, if they have the one that is shown
// alike; empty if there is none.
func elsewhere(was, is *model.Job, shown model.SheetName) model.SheetName {
	var name model.SheetName
	for i := range is.Sheets {
		s := &is.Sheets[i]
		if old := was.Sheet(s.Name); old != nil && reflect.DeepEqual(old, s) {
			continue
		}
		if s.Name == shown {
			return ""
		}
		name = s.Name
	}
	return name
}

// closeStale closes layers about things that are no longer as they were, with all
// above them.
func (d *desk) closeStale() {
	for i, l := range d.layers {
		if about, ok := l.(interface{ stale(*desk) bool }); ok && about.stale(d) {
			d.layers = d.layers[:i]
			return
		}
	}
}

// steps lists what was done, last first; choosing a step takes back all after it.
func steps(d *desk) tea.Cmd {
	names := d.history.Steps()
	d.push(&listLayer{title: "steps, last first", lead: "step:", choices: func(*desk) []choice {
		var list []choice
		for i := len(names); i >= 0; i-- {
			text, back := "the start", len(names)-i
			if i > 0 {
				text = fmt.Sprintf("%d  %s", i, names[i-1])
			}
			list = append(list, choice{text: text, detail: fmt.Sprintf("Enter goes back to here: %s undone, U does again", counted(back, "step")), pick: func(d *desk) tea.Cmd {
				was := d.job()
				for range back {
					d.history.Undo()
				}
				d.restored(was, "back at: "+strings.TrimSpace(text))
				return nil
			}})
		}
		return list
	}})
	return nil
}
