package tui

import (
	"fmt"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/lugline"
)

// reading is the line in words, or else what is expected here or likely.
func (w *walkLayer) reading(d *desk) string {
	m := w.read(d)
	if text := m.reading.Text(); text != "" {
		return "reads as  " + text
	}
	if expected := lugline.Expected(d.sheet(), w.at); len(expected) > 0 {
		wire, more := d.sheet().Wire(expected[0]), ""
		if n := len(expected) - 1; n > 0 {
			more = fmt.Sprintf(" (then %d more)", n)
		}
		return fmt.Sprintf("expected here: %s from %s%s; + it is here, - it is not", wireWords(wire), lugline.Name(wire.Far(w.at).At), more)
	}
	if m.offered {
		return "Tab takes " + m.likely.Line + ", " + string(m.likely.Why) + "; or type what is here   Enter goes on"
	}
	return "what is on " + lugline.Name(w.at) + ", from the seat outward? such as k6 b2+   Enter goes on"
}

// noStud says of a word that it names no stud, and which ones the part has that it seems
// to name.
func (d *desk) noStud(word string) string {
	text := word + " names nothing on this sheet"
	part, folded := model.PartID(""), strings.ToLower(word)
	for i := range d.sheet().Parts {
		if id := d.sheet().Parts[i].ID; len(id) > len(part) && strings.HasPrefix(folded, strings.ToLower(string(id))) {
			part = id
		}
	}
	if part == "" {
		return text
	}
	p := d.sheet().Part(part)
	return text + ": " + string(part) + " has " + strings.Join(d.cat().TerminalsOf(d.sheet(), p), ", ")
}

// lugNames lists terminals by the names that a lug line takes.
func lugNames(ats []model.TerminalRef) string {
	names := make([]string, len(ats))
	for i, at := range ats {
		names[i] = lugline.Name(at)
	}
	return strings.Join(names, ", ")
}
