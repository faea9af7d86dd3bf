package tui

import (
	"fmt"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
)

// sheetActions choose what is looked at.
func sheetActions() []Action {
	show := func(key string, name model.SheetName) Action {
		return Action{ID: "show-" + string(name), Title: "Show the " + string(name) + " sheet", Keys: []string{key}, In: everywhere,
			When: func(d *desk) string {
				switch {
				case d.job().Sheet(name) == nil:
					return "it is not started yet; p starts sheets"
				case d.sheetName == name:
					return "it is shown already"
				}
				return ""
			},
			Run: func(d *desk) tea.Cmd {
				d.show(name)
				return nil
			}}
	}
	return []Action{
		{ID: "findings", Title: "List what the rules found on this sheet", Keys: []string{"n", "!"}, Hint: "findings", In: []place{onDrawing, inCard}, Run: openFindings},
		{ID: "questions", Title: "Walk through what is not recorded and decides something", Keys: []string{"Q"}, In: []place{onDrawing, inCard, inFindings}, When: asked, Run: questions},
		{ID: "sheets", Title: "Sheets: show one, or start the plan from the as-found", Keys: []string{"p"}, In: everywhere, Run: sheets},
		show("1", model.AsFound), show("2", model.Plan), show("3", model.AsBuilt),
		{ID: "job", Title: "The job's own card: title, cart, system voltage", Keys: []string{"J"}, In: everywhere, Run: func(d *desk) tea.Cmd {
			d.push(&cardLayer{})
			return nil
		}},
	}
}

// show shows another sheet. What is open on the old one is closed but for an overview.
func (d *desk) show(name model.SheetName) {
	o := d.overview()
	d.sheetName = name
	d.layers = nil
	if o != nil {
		o.picture = nil
		d.push(o)
	}
	d.work.picture, d.work.pictureOf = nil, stamp{}
	d.work.findings, d.work.checkedYet = nil, false
	d.changed()
	d.say("the " + string(name) + " sheet")
}

// origins says which sheet another one starts from, if the job has it.
var origins = []struct {
	name model.SheetName
	from []model.SheetName // the first that the job has
}{
	{model.AsFound, nil},
	{model.Plan, []model.SheetName{model.AsFound}},
	{model.AsBuilt, []model.SheetName{model.Plan, model.AsFound}},
}

// sheets lists the three sheets: those that are there to show, the others to start.
func sheets(d *desk) tea.Cmd {
	d.push(&listLayer{title: "sheets", lead: "sheet:", choices: func(d *desk) []choice {
		var list []choice
		for _, o := range origins {
			c := choice{text: string(o.name), exact: []string{string(o.name)}, marked: o.name == d.sheetName}
			if s := d.job().Sheet(o.name); s != nil {
				c.right = fmt.Sprintf("%d parts, %d wires", len(s.Parts), len(s.Wires))
				c.detail = s.Note
				c.pick = func(d *desk) tea.Cmd {
					d.show(o.name)
					return nil
				}
				list = append(list, c)
				continue
			}
			start := edit.StartSheet{New: o.name}
			for _, from := range o.from {
				if d.job().Sheet(from) != nil {
					start.Copy = from
					break
				}
			}
			c.right, c.detail = "start it", start.Name()
			c.pick = func(d *desk) tea.Cmd { return d.start(start) }
			list = append(list, c)
		}
		return list
	}})
	return nil
}

// start starts a sheet and shows it.
func (d *desk) start(s edit.StartSheet) tea.Cmd {
	if err := d.apply(s); err != nil {
		d.warn(explain(err))
		return nil
	}
	d.show(s.New)
	d.say(s.Name() + "; u undoes it")
	return nil
}
