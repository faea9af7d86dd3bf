package tui

import (
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
)

// kindList lists the kinds of part by family.
func kindList(title string, pick func(*desk, string) tea.Cmd) *listLayer {
	return &listLayer{title: title, lead: "kind:", choices: func(d *desk) []choice {
		cat := d.cat()
		list := []choice{}
		for _, family := range model.Family("").Names() {
			for _, kind := range cat.Kinds() {
				def := cat.Definition(kind)
				if string(def.Family) != family {
					continue
				}
				list = append(list, choice{
					text: def.Title, thing: true, right: family, more: kind + " " + family + " " + def.Designator, exact: []string{kind},
					detail: def.About, pick: func(d *desk) tea.Cmd { return pick(d, kind) },
				})
			}
		}
		return append(list, choice{text: "not identified yet", more: model.UnknownKind, exact: []string{model.UnknownKind},
			detail: "a part that nobody has identified; its terminals are those that its wires name",
			pick:   func(d *desk) tea.Cmd { return pick(d, model.UnknownKind) }})
	}}
}

// pickZone asks for a zone, which may be a new one: then the edits that add it are
// handed over as well. The zone used last comes first.
func pickZone(d *desk, title string, take func(*desk, model.ZoneID, []edit.Edit) error) tea.Cmd {
	choose := func(id model.ZoneID, add []edit.Edit) func(*desk) tea.Cmd {
		return func(d *desk) tea.Cmd {
			if err := take(d, id, add); err != nil {
				d.warn(explain(err))
			}
			return nil
		}
	}
	d.push(&listLayer{title: title, lead: "zone:",
		choices: func(d *desk) []choice {
			var list []choice
			for _, z := range d.job().Zones {
				c := choice{text: string(z.ID), right: z.Name, more: z.Name, detail: z.Note, exact: []string{string(z.ID)}, pick: choose(z.ID, nil)}
				if z.ID == d.lastPart.Zone {
					list = slices.Insert(list, 0, c)
					continue
				}
				list = append(list, c)
			}
			return append(list, choice{text: "no zone", right: "none", detail: "type a new name to add a zone", pick: choose("", nil)})
		},
		fresh: func(text string) choice {
			z := newZone(text)
			return choice{text: "new zone: " + text, right: string(z.ID), detail: "adds the zone to the job", pick: choose(z.ID, []edit.Edit{edit.AddZone{Zone: z}})}
		},
	})
	return nil
}

// newZone is a zone of a name that was typed, with an id made from it.
func newZone(name string) model.Zone {
	id := strings.Map(func(r rune) rune {
		if r < 0x80 && model.ValidID(string(r)) {
			return r
		}
		return '-'
	}, strings.TrimSpace(name))
	if id == name {
		name = ""
	}
	return model.Zone{ID: model.ZoneID(id), Name: name}
}

// wordList lists the words of a property that may have several; each choice puts a word
// in or takes it out.
func wordList(title string, words []string, was string, set func(text string) edit.Edit) *listLayer {
	var now []string
	for word := range strings.SplitSeq(was, ",") {
		if word = strings.TrimSpace(word); word != "" {
			now = append(now, word)
		}
	}
	return &listLayer{title: title + " (Enter marks, Esc is done)", lead: title + ":", stays: true, choices: func(*desk) []choice {
		var list []choice
		for _, word := range words {
			list = append(list, choice{text: word, marked: slices.Contains(now, word), exact: []string{word}, pick: func(d *desk) tea.Cmd {
				next := slices.DeleteFunc(slices.Clone(now), func(w string) bool { return w == word })
				if len(next) == len(now) {
					next = append(next, word)
				}
				if err := d.act(set(strings.Join(next, ", "))); err != nil {
					d.warn(explain(err))
					return nil
				}
				now = next
				return nil
			}})
		}
		return list
	}}
}
