package tui

import (
	"slices"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/state"
)

// newState asks for the name of a state of the job's own, which starts from the one in
// force.
func newState(d *desk) tea.Cmd {
	from := state.Parked
	if s, in := d.state(); in {
		from = s.Name
	}
	d.ask("new state", "its name, such as pushed or pump-on; it starts from "+from, "", func(d *desk, text string) (tea.Cmd, error) {
		name := string(newZone(text).ID)
		if slices.Contains(d.job().StateNames(), name) {
			return nil, model.Expected("a name that no state has yet")
		}
		if err := d.act(edit.SetState{State: model.OwnState{Name: name, From: from}}); err != nil {
			return nil, err
		}
		d.stateName = name
		return changeState(d, name), nil
	})
	return nil
}

// changeState lists the controls of a state of the job's own; a choice turns one of them.
func changeState(d *desk, name string) tea.Cmd {
	d.push(&listLayer{title: name + " (Enter turns, Esc is done)", lead: "control:", stays: true, choices: func(d *desk) []choice {
		own := d.job().OwnState(name)
		now, ok := state.Find(d.states(), name)
		if own == nil || !ok {
			return nil
		}
		var list []choice
		for _, control := range state.Controls(d.sheet(), d.cat()) {
			list = append(list, d.controlChoice(own, now, control))
		}
		return append(list, fromChoice(own), aboutChoice(own))
	}})
	return nil
}

// controlChoice is the line of a control: its position, and a mark if that is the state's
// own.
func (d *desk) controlChoice(own *model.OwnState, now state.State, control model.Control) choice {
	all, position := d.positions(control, now)
	next := all[(slices.Index(all, position)+1)%len(all)]
	at := func(s model.Setting) bool { return s.Control == control }
	return choice{
		text: string(control), right: position, marked: slices.ContainsFunc(own.Set, at), exact: []string{string(control)},
		detail: "Enter turns it to " + next + "; * is set here, the rest is as in " + startOf(own),
		pick: func(d *desk) tea.Cmd {
			to := *own
			to.Set = slices.DeleteFunc(slices.Clone(own.Set), at)
			if from, ok := state.Find(d.states(), startOf(own)); !ok || !slices.Contains(from.Set, state.Setting{Control: control, Position: next}) {
				to.Set = append(to.Set, model.Setting{Control: control, Position: next})
			}
			d.try(edit.SetState{State: to})
			return nil
		},
	}
}

// positions lists the positions that the parts of the sheet give a control, and the one
// that the first of them has in a state.
func (d *desk) positions(control model.Control, in state.State) (list []string, now string) {
	for i := range d.sheet().Parts {
		def := d.cat().Definition(d.sheet().Parts[i].Kind)
		if def == nil || def.Control == nil || def.Control.Sets != control {
			continue
		}
		if now == "" {
			now = in.Of(def.Control)
		}
		for _, p := range def.Control.Positions {
			if !slices.Contains(list, p) {
				list = append(list, p)
			}
		}
	}
	return list, now
}

// startOf is the state that a state of the job's own starts from.
func startOf(own *model.OwnState) string {
	if own.From == "" {
		return state.Parked
	}
	return own.From
}

// fromChoice is the line of the state that another one starts from: any that is listed
// before it.
func fromChoice(own *model.OwnState) choice {
	return choice{text: "starts from", right: startOf(own), detail: "the state that all other controls are as in", pick: func(d *desk) tea.Cmd {
		d.push(&listLayer{title: own.Name + " starts from", lead: "state:", choices: func(d *desk) []choice {
			var list []choice
			for _, s := range d.states() {
				if s.Name == own.Name {
					break
				}
				list = append(list, choice{text: s.Name, detail: s.About, exact: []string{s.Name}, marked: s.Name == startOf(own), pick: func(d *desk) tea.Cmd {
					to := *own
					to.From = s.Name
					d.try(edit.SetState{State: to})
					return nil
				}})
			}
			return list
		}})
		return nil
	}}
}

// aboutChoice is the line of what a state is, for people.
func aboutChoice(own *model.OwnState) choice {
	const about = "what is set, in one line for a person; nothing lists the controls"
	return choice{text: "about", right: shorten(own.About), detail: about, pick: func(d *desk) tea.Cmd {
		d.ask("about "+own.Name, about, own.About, func(d *desk, text string) (tea.Cmd, error) {
			to := *own
			to.About = text
			return nil, d.act(edit.SetState{State: to})
		})
		return nil
	}}
}
