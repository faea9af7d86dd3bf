package tui

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/field"
	"example.com/lugbook/model/lugline"
)

// title is the head line of a thing's card.
func (d *desk) title(t thing) string {
	s := d.sheet()
	switch t.kind {
	case partThing:
		if p := s.Part(t.at.Part); p != nil {
			return string(p.ID) + "  " + d.kindTitle(p.Kind)
		}
	case terminalThing:
		if def := d.cat().TerminalOf(s, t.at); def != nil {
			return strings.TrimSpace(lugline.Name(t.at) + "  " + def.Means)
		}
	case wireThing, looseThing:
		if w := s.Wire(t.wire); w != nil {
			return fmt.Sprintf("%s  %s to %s", w.ID, w.From, w.To)
		}
	default:
		return "the job"
	}
	return t.String()
}

func (d *desk) kindTitle(kind string) string {
	if def := d.cat().Definition(kind); def != nil {
		return def.Title
	}
	return kind
}

// rows lists what a thing's card shows: figures of the state in force and readings, then
// its fields.
func (d *desk) rows(t thing) []row {
	return slices.Concat(d.figureRows(t), d.readingRows(t), d.propertyRows(t))
}

// propertyRows lists the fields of a thing's card.
func (d *desk) propertyRows(t thing) []row {
	s := d.sheet()
	switch t.kind {
	case partThing:
		if p := s.Part(t.at.Part); p != nil {
			return d.partRows(p)
		}
	case terminalThing:
		return d.terminalRows(t.at)
	case wireThing, looseThing:
		if w := s.Wire(t.wire); w != nil {
			return d.wireRows(w)
		}
	case noThing:
		return d.jobRows()
	}
	return nil
}

// jobRows are the fields of the job and of the sheet that is shown, and the cart's zones
// with the runs between them.
func (d *desk) jobRows() []row {
	job := d.job()
	rows := d.fieldRows(job, func(name, text string) edit.Edit { return edit.SetJob{Field: name, Text: text} })
	for _, r := range d.fieldRows(d.sheet(), func(name, text string) edit.Edit {
		return edit.SetSheet{Sheet: d.sheetName, Field: name, Text: text}
	}) {
		r.name = "sheet " + r.name
		rows = append(rows, r)
	}
	for _, z := range job.Zones {
		rows = append(rows, row{name: "zone", value: strings.TrimSpace(string(z.ID) + "  " + z.Name), about: "a place on the cart; z adds one"})
	}
	for _, r := range job.Runs {
		was := fmt.Sprintf("%s %s %s", r.From, r.To, r.Length)
		rows = append(rows, row{name: "run", value: was, about: "length along the route between two zones; R records one", edit: func(d *desk) tea.Cmd { return askRun(d, was) }})
	}
	return rows
}

func (d *desk) partRows(p *model.Part) []row {
	id := p.ID
	rows := []row{{name: "designator", value: string(id), about: "short name on every sheet; renames it on all of them", edit: func(d *desk) tea.Cmd {
		d.ask("designator", "letters, digits, - or _, such as sol or b3", string(id), func(d *desk, text string) (tea.Cmd, error) {
			if model.PartID(text) == id {
				return nil, nil
			}
			return nil, d.rename(edit.RenamePart{From: id, To: model.PartID(text)}, ofPart(model.PartID(text)))
		})
		return nil
	}}}
	rows = append(rows, d.fieldRows(p, func(name, text string) edit.Edit {
		return edit.SetPart{Sheet: d.sheetName, ID: id, Field: name, Text: text}
	})...)
	rows = append(rows, d.placeRow(p))
	return append(rows, d.ratingRows(p)...)
}

// placeRow says whether a person placed the box.
func (d *desk) placeRow(p *model.Part) row {
	r := row{name: "box", value: "placed by the program", about: "where its box stands on the drawing; m moves it"}
	if p.Place != nil {
		r.value = fmt.Sprintf("pinned at %d, %d", p.Place.X, p.Place.Y)
		r.about += ", M lets it go"
	}
	return r
}

// rename renames a thing and keeps the cursor and the card on it.
func (d *desk) rename(e edit.Edit, to thing) error {
	if err := d.history.Do(e); err != nil {
		return err
	}
	d.cursor = to
	if c, open := topOf[*cardLayer](d); open {
		c.of = to
	}
	d.changed()
	d.say(e.Name() + "; u undoes it")
	return nil
}

func (d *desk) terminalRows(at model.TerminalRef) []row {
	var t model.Terminal
	if known := d.sheet().Terminal(at); known != nil {
		t = *known
	}
	var rows []row
	if def := d.cat().TerminalOf(d.sheet(), at); def != nil {
		rows = append(rows, row{name: "form", value: strings.TrimSpace(string(def.Form) + " " + def.Stud.String()), about: "how conductors land on it, by the parts library"})
	}
	order, known := d.sheet().StackOf(at)
	for i, id := range order {
		name := "lug"
		if known {
			name = fmt.Sprintf("lug %d", i+1)
		}
		w := d.sheet().Wire(id)
		rows = append(rows, row{name: name, value: fmt.Sprintf("%s to %s", wireWords(w), w.Far(at)), about: "from the seat outward; Enter opens the stack", edit: openStack})
	}
	return append(rows, d.fieldRows(&t, func(name, text string) edit.Edit {
		return edit.SetTerminal{Sheet: d.sheetName, At: at, Field: name, Text: text}
	}, "stack")...)
}

func (d *desk) wireRows(w *model.Wire) []row {
	id := w.ID
	rows := []row{{name: "number", value: string(id), about: "number or name on every sheet; renames it on all of them", edit: func(d *desk) tea.Cmd {
		d.ask("number", "letters, digits, - or _, such as w12", string(id), func(d *desk, text string) (tea.Cmd, error) {
			if model.WireID(text) == id {
				return nil, nil
			}
			return nil, d.rename(edit.RenameWire{From: id, To: model.WireID(text)}, ofWire(model.WireID(text)))
		})
		return nil
	}}}
	for _, r := range d.fieldRows(w, func(name, text string) edit.Edit {
		return edit.SetWire{Sheet: d.sheetName, ID: id, Field: name, Text: text}
	}) {
		if r.name == string(edit.From) || r.name == string(edit.To) {
			r = endRow(w, r)
		}
		rows = append(rows, r)
	}
	return rows
}

// endRow is the row of a wire's end, which takes short names as a lug line does.
func endRow(w *model.Wire, r row) row {
	r.about = "where this end is: short names do, such as b2+ or sol.L1; or cut, capped, untraced, which may add a zone: cut in dash"
	r.edit = func(d *desk) tea.Cmd {
		f := d.ask(r.name, r.about, r.value, func(d *desk, text string) (tea.Cmd, error) {
			end, err := d.fullEnd(w, text)
			if err != nil || end == r.value {
				return nil, err
			}
			return nil, d.act(edit.SetWire{Sheet: d.sheetName, ID: w.ID, Field: r.name, Text: end})
		})
		f.words = model.Loose("").Names()
		return nil
	}
	return r
}

// fullEnd completes a wire's end that was typed as on a lug line, such as b2+.
func (d *desk) fullEnd(w *model.Wire, text string) (string, error) {
	var end model.End
	if end.UnmarshalText([]byte(text)) == nil && (end.IsLoose() || ofTerminal(end.At).on(d.sheet(), d.cat())) {
		return text, nil
	}
	at := w.From.At
	if at.IsZero() {
		at = w.To.At
	}
	r := lugline.Parse(">"+text, lugline.Context{Sheet: d.sheet(), Catalogue: d.cat(), At: at})
	switch {
	case len(r.Among) > 0:
		return "", fmt.Errorf("%s fits %s; type more of it", text, lugNames(r.Among))
	case r.Far.At.IsZero():
		return "", errors.New(d.noStud(text))
	}
	return r.Far.String(), nil
}

// fieldRows are the rows of a struct's properties, but some.
func (d *desk) fieldRows(subject any, set func(name, text string) edit.Edit, but ...string) []row {
	var rows []row
	for _, info := range field.List(subject) {
		if slices.Contains(but, info.Name) || info.Name == "lugbook" {
			continue
		}
		was, err := field.Get(subject, info.Name)
		if err != nil {
			continue
		}
		rows = append(rows, d.fieldRow(info, was, func(text string) edit.Edit { return set(info.Name, text) }))
	}
	return rows
}

// fieldRow is the row of one property: a closed list of words turns, the rest is typed.
func (d *desk) fieldRow(info field.Info, was string, set func(text string) edit.Edit) row {
	about := info.About
	if info.Example != "" && !strings.Contains(about, "such as") {
		about += "; such as " + info.Example
	}
	r := row{name: info.Name, value: was, about: about}
	words := info.Choices
	switch {
	case info.Name == "zone":
		r.edit = func(d *desk) tea.Cmd {
			return pickZone(d, "zone", func(d *desk, zone model.ZoneID, add []edit.Edit) error {
				return d.act(together(set(string(zone)), add))
			})
		}
		return r
	case info.Name == "kind":
		r.edit = func(d *desk) tea.Cmd {
			d.push(kindList("kind of part", func(d *desk, kind string) tea.Cmd {
				d.try(set(kind))
				return nil
			}))
			return nil
		}
		return r
	case was == "yes" || was == "no":
		words = []string{"yes"}
	}
	switch {
	case len(words) > 0 && info.List:
		r.edit = func(d *desk) tea.Cmd {
			d.push(wordList(info.Name, words, was, set))
			return nil
		}
	case len(words) > 0:
		r.turn = func(d *desk, by int) { d.try(set(turned(words, was, by))) }
		r.edit = func(d *desk) tea.Cmd {
			r.turn(d, 1)
			return nil
		}
	default:
		r.edit = func(d *desk) tea.Cmd {
			d.ask(info.Name, about, was, func(d *desk, text string) (tea.Cmd, error) {
				if text == was {
					return nil, nil
				}
				return nil, d.act(set(withUnit(text, was, info.About)))
			})
			return nil
		}
	}
	return r
}

// turned is the word after a word; after the last comes none, then the first.
func turned(words []string, was string, by int) string {
	all := append([]string{""}, words...)
	at := max(0, slices.Index(all, was))
	return all[(at+by+len(all))%len(all)]
}

// together is an edit with others before it, as one step.
func together(e edit.Edit, before []edit.Edit) edit.Edit {
	if len(before) == 0 {
		return e
	}
	return edit.Group{Title: e.Name(), Edits: append(slices.Clone(before), e)}
}
