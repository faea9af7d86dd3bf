package tui

import (
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/unit"
)

// recordActions put things on the sheet.
func recordActions() []Action {
	return []Action{
		{ID: "add-part", Title: "Add a part from the parts library", Keys: []string{"a"}, Hint: "add part", In: []place{onDrawing}, Run: addPart},
		{ID: "add-another", Title: "Add another part like the last one", Keys: []string{"A"}, In: []place{onDrawing}, Run: addAnother,
			When: func(d *desk) string {
				if d.lastPart.Kind == "" {
					return "no part was added yet; a adds one"
				}
				return ""
			}},
		{ID: "wire", Title: "Pull a wire from this terminal, or this loose end to a terminal", Keys: []string{"w"}, Hint: "wire", In: []place{onDrawing}, When: pullable, Run: pull},
		{ID: "wire-by-form", Title: "Add a wire to this terminal and fill in its card", Keys: []string{"W"}, In: []place{onDrawing}, Run: wireByForm,
			When: func(d *desk) string {
				if d.cursor.kind != terminalThing {
					return "go to a terminal first"
				}
				return ""
			}},
		{ID: "walk", Title: "Walk from stud to stud and enter their lugs", Keys: []string{"g"}, Hint: "walk", In: []place{onDrawing}, When: walkable, Run: walk},
		{ID: "add-zone", Title: "Add a zone of the cart", Keys: []string{"z"}, In: []place{onDrawing}, Run: addZone},
		{ID: "run", Title: "Record the length of a run between two zones", Keys: []string{"R"}, In: []place{onDrawing}, Run: setRun,
			When: func(d *desk) string {
				if len(d.job().Zones) < 2 {
					return "a run needs two zones; z adds one"
				}
				return ""
			}},
	}
}

func walkable(d *desk) string {
	if len(d.route()) == 0 {
		return "no part with terminals is on this sheet yet; a adds one"
	}
	return ""
}

// walk stands at the selected terminal, or at the first of the selected part or sheet.
func walk(d *desk) tea.Cmd {
	at := d.cursor.at
	if d.cursor.kind == partThing {
		at = model.TerminalRef{}
		for _, stop := range d.route() {
			if stop.Part == d.cursor.at.Part {
				at = stop
				break
			}
		}
	}
	if at.Name == "" {
		at = d.route()[0]
	}
	d.stand(at, false, "")
	return nil
}

// wireByForm adds a wire whose far end is not traced, outermost on the selected terminal,
// and opens its card at the far end.
func wireByForm(d *desk) tea.Cmd {
	w := model.Wire{ID: d.freeWire(), From: model.End{At: d.cursor.at}, To: model.LooseEnd(model.Untraced)}
	if err := d.act(edit.AddWire{Sheet: d.sheetName, Wire: w, FromSeat: edit.Outermost}); err != nil {
		d.warn(explain(err))
		return nil
	}
	d.goTo(ofWire(w.ID))
	const farEnd = 2 // below the number and the from end
	d.push(&cardLayer{of: d.cursor, at: farEnd})
	return nil
}

// parseRun reads two zones and a length.
func parseRun(text string) (edit.SetRun, error) {
	words := strings.Fields(text)
	if len(words) < 3 {
		return edit.SetRun{}, model.Expected("two zones and a length, such as tray dash 0.8 m")
	}
	length, err := unit.ParseLength(strings.Join(words[2:], " "))
	if err != nil {
		return edit.SetRun{}, err
	}
	return edit.SetRun{From: model.ZoneID(words[0]), To: model.ZoneID(words[1]), Length: length}, nil
}
