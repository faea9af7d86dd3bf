package tui

import (
	"errors"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/lugbook/model"
	"example.com/lugbook/model/clean"
	"example.com/lugbook/model/store"
	"example.com/lugbook/tui/theme"
)

// fileActions save, export and leave.
func fileActions() []Action {
	saves := func(d *desk) string {
		switch {
		case d.saving:
			return "it is being saved"
		case d.session.Save == nil:
			return "this job has no file; S saves it under a name"
		case !d.unsaved():
			return "nothing has changed since it was saved"
		}
		return ""
	}
	return []Action{
		{ID: "save", Title: "Save the job", Keys: []string{"s", "ctrl+s"}, Hint: "save", In: everywhere, When: saves, Run: func(d *desk) tea.Cmd {
			return d.save(store.Options{})
		}},
		{ID: "save-as", Title: "Save the job under another name", Keys: []string{"S"}, In: everywhere, Run: saveAs,
			When: func(d *desk) string {
				if d.session.SaveAs == nil {
					return "saving is not possible here"
				}
				return ""
			}},
		{ID: "export", Title: "Write the drawing of this sheet to a file: text, ASCII, SVG", Keys: []string{"x"}, In: everywhere, Run: exports,
			When: func(d *desk) string {
				if d.session.Export == nil || len(d.session.Formats) == 0 {
					return "there is no place to write to"
				}
				return notEmpty(d)
			}},
		{ID: "suspend", Title: "Go to the shell for a while; fg comes back", In: allPlaces, Run: func(*desk) tea.Cmd { return tea.Suspend }},
		{ID: "quit", Title: "Quit; asks first if something is not saved", Keys: []string{"q"}, Hint: "quit", In: everywhere, Run: quit},
	}
}

// savedMsg is the result of a save.
type savedMsg struct {
	job     *model.Job
	as      string // the new path, if it was saved under another name
	over    bool   // another text, or a read-only one, was replaced on purpose
	outcome store.Outcome
	err     error
}

// save writes the job beside the screen.
func (d *desk) save(o store.Options) tea.Cmd {
	d.saving = true
	d.say("saving ...")
	job, drawn, save := d.job(), d.drawnJob(), d.session.Save
	return func() tea.Msg {
		outcome, err := save(drawn, o)
		return savedMsg{job: job, over: o != store.Options{}, outcome: outcome, err: err}
	}
}

// saveAs asks for a path.
func saveAs(d *desk) tea.Cmd {
	d.ask("save as", "path of the new file; a file that is there is not replaced", d.session.Path, func(d *desk, path string) (tea.Cmd, error) {
		if path == "" {
			return nil, errors.New("expected the path of a file")
		}
		return d.saveTo(path, false), nil
	})
	return nil
}

func (d *desk) saveTo(path string, replace bool) tea.Cmd {
	d.saving = true
	d.say("saving ...")
	job, drawn, save := d.job(), d.drawnJob(), d.session.SaveAs
	return func() tea.Msg {
		outcome, err := save(path, drawn, replace)
		return savedMsg{job: job, as: path, over: replace, outcome: outcome, err: err}
	}
}

// takeSaved shows how a save went. Nothing is lost if it failed: the job is still here.
func (d *desk) takeSaved(m savedMsg) tea.Cmd {
	d.saving = false
	if m.err != nil {
		d.quitting = false
		d.refused(m)
		return nil
	}
	d.saved = m.job
	if m.as != "" {
		d.session.Path = m.as
	}
	d.changed()
	text := "saved"
	if m.as != "" {
		text += " as " + m.as
	}
	if m.over && m.outcome.Previous != "" {
		text += "; the text before is kept in " + clean.Line(m.outcome.Previous)
	}
	d.say(text)
	if len(m.outcome.Warnings) > 0 || m.outcome.Assurance != store.Durable {
		d.notice = notice{"~ " + text + ", " + strings.Join(append([]string{m.outcome.Assurance.String()}, m.outcome.Warnings...), "; "), theme.Caution}
	}
	if d.quitting && !d.unsaved() {
		return tea.Quit
	}
	d.quitting = false
	return nil
}

// refused offers what can be done about a save that failed.
func (d *desk) refused(m savedMsg) {
	text := clean.Line(m.err.Error())
	d.warn(text)
	again := func(o store.Options) func(*desk) tea.Cmd { return func(d *desk) tea.Cmd { return d.save(o) } }
	list := []choice{
		{text: "keep editing", detail: "nothing is lost; it is still unsaved", pick: func(*desk) tea.Cmd { return nil }},
		{text: "save under another name", detail: "the file stays as it is", pick: saveAs},
	}
	var changed *store.ChangedError
	var readOnly *store.ReadOnlyError
	var links *store.LinksError
	var exists *store.ExistsError
	switch {
	case errors.As(m.err, &changed):
		list = append(list, choice{text: "write over the other change", detail: "the other text is kept as a previous version", pick: again(store.Options{Overwrite: true})})
	case errors.As(m.err, &readOnly):
		list = append(list, choice{text: "write over the read-only file", detail: "its text is kept as a previous version", pick: again(store.Options{ReadOnly: true})})
	case errors.As(m.err, &links):
		list = append(list, choice{text: "leave the other names with the old text", pick: again(store.Options{Links: true})})
	case errors.As(m.err, &exists):
		list = append(list, choice{text: "replace that file", detail: "its text is kept as a previous version", pick: func(d *desk) tea.Cmd { return d.saveTo(m.as, true) }})
	case store.IsMachine(m.err):
		list = append(list, choice{text: "try again", detail: "nothing is lost meanwhile; make room or bring the drive back first", pick: again(store.Options{})})
	}
	for i := range list {
		if list[i].detail == "" {
			list[i].detail = text
		}
	}
	d.push(&listLayer{title: "not saved", lead: "choose:", choices: func(*desk) []choice { return list }})
}

// exported is the result of an export.
type exported struct {
	path string
	err  error
}

// exports lists the formats.
func exports(d *desk) tea.Cmd {
	title := "write the " + string(d.sheetName) + " drawing as"
	if shown := d.shown(); shown != nil {
		title = "write the " + string(d.sheetName) + " drawing in " + shown.Name + " as"
	}
	d.push(&listLayer{title: title, lead: "format:", choices: func(d *desk) []choice {
		var list []choice
		for _, f := range d.session.Formats {
			list = append(list, choice{text: f.Name, detail: f.About, exact: []string{f.Name}, pick: func(d *desk) tea.Cmd {
				job, sheet, export, shown := d.job(), d.sheetName, d.session.Export, d.shown()
				d.say("drawing with care ...")
				return func() tea.Msg {
					path, err := export(f.Name, job, sheet, shown)
					return exported{path, err}
				}
			}})
		}
		return list
	}})
	return nil
}

func (d *desk) takeExported(m exported) {
	if m.err != nil {
		d.warn(clean.Line(m.err.Error()))
		return
	}
	d.say("written: " + m.path)
}

// quit leaves, or asks first if something is not saved.
func quit(d *desk) tea.Cmd {
	if !d.unsaved() && !d.saving {
		return tea.Quit
	}
	list := []choice{
		{text: "save and quit", pick: func(d *desk) tea.Cmd {
			d.quitting = true
			if d.session.Save == nil {
				return saveAs(d)
			}
			return d.save(store.Options{})
		}},
		{text: "stay", pick: func(*desk) tea.Cmd { return nil }},
		{text: "discard the changes and quit", detail: "what was not saved is lost", pick: func(*desk) tea.Cmd { return tea.Quit }},
	}
	d.push(&listLayer{title: "not everything is saved", lead: "choose:", choices: func(*desk) []choice { return list }})
	return nil
}
