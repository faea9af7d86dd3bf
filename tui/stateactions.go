package tui

import (
	"slices"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/state"
)

// stateActions choose the state in force.
func stateActions() []Action {
	step := func(by int) func(*desk) tea.Cmd {
		return func(d *desk) tea.Cmd {
			d.stepState(by)
			return nil
		}
	}
	return []Action{
		{ID: "state", Title: "Choose the state in force: parked, key on, driving ... or none", Keys: []string{"t"}, In: everywhere, Run: states},
		{ID: "state-next", Title: "Next state in force: what is live in it, and what flows", Keys: []string{"l"}, In: everywhere, Run: step(1)},
		{ID: "state-back", Title: "State in force before; the one before the first is none", Keys: []string{"L"}, In: everywhere, Run: step(-1)},
	}
}

// states lists the states that the controls on the sheet allow, and those of the job's own.
func states(d *desk) tea.Cmd {
	d.push(&listLayer{title: "state in force", lead: "state:", in: inRecords, add: newState, choices: func(d *desk) []choice {
		_, in := d.state()
		list := []choice{{text: noState, detail: "wires in the colours of their insulation", exact: []string{noState}, marked: !in, pick: func(d *desk) tea.Cmd {
			d.putInForce(nil)
			return nil
		}}}
		for _, s := range d.states() {
			c := choice{text: s.Name, detail: s.About, more: s.About, exact: []string{s.Name}, marked: s.Name == d.stateName, pick: func(d *desk) tea.Cmd {
				d.putInForce(&s)
				return nil
			}}
			if d.job().OwnState(s.Name) != nil {
				c.right, c.detail = "own", c.detail+"; = changes it, - takes it away"
				c.change = func(d *desk) tea.Cmd { return changeState(d, s.Name) }
				c.remove = func(d *desk) { d.try(edit.RemoveState{State: s.Name}) }
			}
			list = append(list, c)
		}
		return append(list, choice{text: "a state of your own ...", more: "new add", detail: "starts from the state in force; then its controls are turned", pick: newState})
	}})
	return nil
}

// putInForce puts a state in force; none if it is nil.
func (d *desk) putInForce(s *state.State) {
	if s == nil {
		d.stateName, d.work.force = "", nil
		d.say("no state in force")
		return
	}
	d.stateName = s.Name
	d.say("state in force: " + s.Name + ", " + s.About)
}

// stepState goes to another state: after the last one comes none, then the first.
func (d *desk) stepState(by int) {
	list := d.states()
	at := slices.IndexFunc(list, func(s state.State) bool { return s.Name == d.stateName })
	n := len(list) + 1
	if at = (at + 1 + by + n) % n; at == 0 {
		d.putInForce(nil)
		return
	}
	d.putInForce(&list[at-1])
}
