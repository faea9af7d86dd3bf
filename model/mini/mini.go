// Package mini builds small jobs from a few lines of text: the examples of the rules, and
// the tests of what is computed from a sheet.
//
// A line is one thing, its first word says which:
//
//	part fu1 fuse-class-t fuse-rating=250A    a part with its kind; properties and ratings
//	wire w1 pack.POS fu1.in gauge=2AWG        a wire with its ends and properties
//	stack pack.POS w1 w2                      the order of lugs from the seat outward
//	at pack.POS cover=fitted                  a property of a terminal
//	run tray rear 0.8m                        the routed length between two zones
//	job system=48V                            a property of the job
//	opens fu1 100A 1s 3s                      a point of its curve: opens within 1 s to 3 s at 100 A
//	sheet plan                                from here on another sheet, which begins as the last one stands
//	no w1                                     takes a wire or a part off the sheet again
//
// An underscore in a value stands for a space.
package mini

import (
	"encoding"
	"fmt"
	"slices"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/field"
	"example.com/lugbook/model/unit"
)

// Label is the source of every rating that a text gives.
const Label = "label"

// A part or wire that is there already is replaced. Job reads a text into a job whose first
// sheet is as found. The system voltage is 48 V
// unless the text says otherwise. It fails on the first line that it cannot read.
func Job(text string) (*model.Job, error) {
	b := builder{job: &model.Job{Version: model.FileVersion, Title: "miniature", System: unit.V(48)}}
	b.job.Sheets = []model.Sheet{{Name: model.AsFound}}
	for line := range strings.SplitSeq(text, "\n") {
		words := strings.Fields(line)
		if len(words) == 0 || strings.HasPrefix(words[0], "//") {
			continue
		}
		if err := b.line(words[0], words[1:]); err != nil {
			return nil, fmt.Errorf("%s: %w", strings.TrimSpace(line), err)
		}
	}
	return b.job, nil
}

type builder struct{ job *model.Job }

// sheet is the sheet that lines go to: the last.
func (b builder) sheet() *model.Sheet { return &b.job.Sheets[len(b.job.Sheets)-1] }

// least is how many words each kind of line needs.
var least = map[string]int{"part": 2, "wire": 3, "stack": 2, "at": 2, "run": 3, "job": 1, "opens": 4, "sheet": 1, "no": 1}

func (b builder) line(kind string, words []string) error {
	need, known := least[kind]
	if !known || len(words) < need {
		return model.Expected("part, wire, stack, at, run, job, opens, sheet or no with all its words")
	}
	switch kind {
	case "part":
		return b.part(words)
	case "wire":
		return b.wire(words)
	case "stack":
		return b.stack(words)
	case "at":
		return b.at(words)
	case "run":
		return b.run(words)
	case "opens":
		return b.opens(words)
	case "sheet":
		b.job.Sheets = append(b.job.Sheets, b.sheet().CloneAs(model.SheetName(words[0])))
		return nil
	case "no":
		return b.without(words[0])
	}
	return each(words, func(name, text string) error { return field.Set(b.job, name, text) })
}

func (b builder) part(words []string) error {
	p := model.Part{ID: model.PartID(words[0]), Kind: words[1]}
	err := each(words[2:], func(name, text string) error {
		if name == "zone" {
			p.Zone = b.zone(text)
			return nil
		}
		if _, err := field.Get(&p, name); err == nil {
			return field.Set(&p, name, text)
		}
		value, err := unit.ParseAny(text)
		p.Ratings = append(p.Ratings, model.Rating{Name: name, Value: value, Source: Label})
		return err
	})
	if old := b.sheet().Part(p.ID); old != nil {
		*old = p
		return err
	}
	b.sheet().Parts = append(b.sheet().Parts, p)
	return err
}

func (b builder) wire(words []string) error {
	w := model.Wire{ID: model.WireID(words[0])}
	if err := w.From.UnmarshalText([]byte(words[1])); err != nil {
		return err
	}
	if err := w.To.UnmarshalText([]byte(words[2])); err != nil {
		return err
	}
	err := each(words[3:], func(name, text string) error { return field.Set(&w, name, text) })
	if old := b.sheet().Wire(w.ID); old != nil {
		*old = w
		return err
	}
	b.sheet().Wires = append(b.sheet().Wires, w)
	return err
}

func (b builder) terminal(name string) (*model.Terminal, error) {
	var at model.TerminalRef
	if err := at.UnmarshalText([]byte(name)); err != nil {
		return nil, err
	}
	if t := b.sheet().Terminal(at); t != nil {
		return t, nil
	}
	b.sheet().Terminals = append(b.sheet().Terminals, model.Terminal{At: at})
	return &b.sheet().Terminals[len(b.sheet().Terminals)-1], nil
}

func (b builder) stack(words []string) error {
	t, err := b.terminal(words[0])
	if err != nil {
		return err
	}
	t.Stack = nil
	for _, id := range words[1:] {
		t.Stack = append(t.Stack, model.WireID(id))
	}
	return nil
}

func (b builder) at(words []string) error {
	t, err := b.terminal(words[0])
	if err != nil {
		return err
	}
	return each(words[1:], func(name, text string) error { return field.Set(t, name, text) })
}

func (b builder) run(words []string) error {
	length, err := unit.ParseLength(words[2])
	b.job.Runs = append(b.job.Runs, model.Run{From: b.zone(words[0]), To: b.zone(words[1]), Length: length})
	return err
}

// opens adds a point to the maker's curve of a fuse or breaker.
func (b builder) opens(words []string) error {
	p := b.sheet().Part(model.PartID(words[0]))
	if p == nil {
		return model.Expected("a part that is on the sheet")
	}
	var point model.OpenPoint
	for i, read := range []encoding.TextUnmarshaler{&point.At, &point.Least, &point.Most} {
		if err := read.UnmarshalText([]byte(words[i+1])); err != nil {
			return err
		}
	}
	p.Opens = append(p.Opens, point)
	return nil
}

// without takes a wire or a part off the sheet. The wires of the part must be off already.
func (b builder) without(id string) error {
	s := b.sheet()
	wires, parts := len(s.Wires), len(s.Parts)
	s.Wires = slices.DeleteFunc(s.Wires, func(w model.Wire) bool { return string(w.ID) == id })
	s.Parts = slices.DeleteFunc(s.Parts, func(p model.Part) bool { return string(p.ID) == id })
	if len(s.Wires) == wires && len(s.Parts) == parts {
		return model.Expected("a wire or part that is on the sheet")
	}
	for i := range s.Terminals {
		s.Terminals[i].Stack = slices.DeleteFunc(s.Terminals[i].Stack, func(w model.WireID) bool { return string(w) == id })
	}
	s.Terminals = slices.DeleteFunc(s.Terminals, func(t model.Terminal) bool { return string(t.At.Part) == id || t.IsBlank() })
	return nil
}

// zone adds a zone to the job unless it is there.
func (b builder) zone(name string) model.ZoneID {
	id := model.ZoneID(name)
	if b.job.Zone(id) == nil {
		b.job.Zones = append(b.job.Zones, model.Zone{ID: id})
	}
	return id
}

// each gives the name=value words to set; a word without = sets a property to yes.
func each(words []string, set func(name, text string) error) error {
	for _, w := range words {
		name, text, stated := strings.Cut(w, "=")
		if !stated {
			text = "yes"
		}
		if err := set(name, strings.ReplaceAll(text, "_", " ")); err != nil {
			return err
		}
	}
	return nil
}
