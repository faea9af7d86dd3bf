package tui

import (
	"cmp"
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"
)

// viewActions change what is seen, and list what can be done.
func viewActions() []Action {
	look := func(dx, dy int) func(*desk) tea.Cmd {
		return func(d *desk) tea.Cmd {
			d.look(dx, dy)
			return nil
		}
	}
	in := []place{onDrawing, inOverview}
	return []Action{
		{ID: "look-down", Title: "Move the drawing on by half a screen, downwards", Keys: []string{"pgdown", "]"}, In: in, When: hasPicture, Run: look(0, 1)},
		{ID: "look-up", Title: "Half a screen upwards", Keys: []string{"pgup", "["}, In: in, When: hasPicture, Run: look(0, -1)},
		{ID: "look-right", Title: "Half a screen to the right", Keys: []string{"shift+right", ">"}, In: in, When: hasPicture, Run: look(1, 0)},
		{ID: "look-left", Title: "Half a screen to the left", Keys: []string{"shift+left", "<"}, In: in, When: hasPicture, Run: look(-1, 0)},
		{ID: "open-terminals", Title: "Show or hide terminals without a wire", Keys: []string{"o"}, In: []place{onDrawing}, Run: func(d *desk) tea.Cmd {
			d.unwired = !d.unwired
			d.say(map[bool]string{true: "terminals without a wire are shown", false: "terminals without a wire are hidden on large parts"}[d.unwired])
			return nil
		}},
		{ID: "redraw", Title: "Draw the sheet afresh, with care; takes some seconds beside the work", Keys: []string{"T"}, In: []place{onDrawing}, When: notEmpty, Run: func(d *desk) tea.Cmd {
			d.say("drawing afresh; boxes that you placed stay")
			return d.redraw()
		}},
		{ID: "mouse", Title: "Give the mouse to the terminal, to select text; again to take it back", Keys: []string{"r"}, In: everywhere, Run: mouseSwitch},
		{ID: "help", Title: "List the keys of what is open", Keys: []string{"?"}, In: slices.Concat(everywhere, []place{inStack, inMove}), Run: help},
		{ID: "commands", Title: "List all commands; typing finds one by word or key", Keys: []string{":"}, In: allPlaces, Run: commands},
	}
}

func mouseSwitch(d *desk) tea.Cmd {
	d.mouse = !d.mouse
	if d.mouse {
		d.say("the mouse selects and scrolls here; r gives it back")
		return tea.EnableMouseCellMotion
	}
	d.say("the mouse is the terminal's: it selects text; r takes it back")
	return tea.DisableMouse
}

// help lists the keys of the place that is open.
func help(d *desk) tea.Cmd {
	in := d.here()
	d.push(&listLayer{title: "keys: " + string(in), lead: "?", choices: func(d *desk) []choice {
		var list []choice
		for i := range d.actions {
			if a := &d.actions[i]; slices.Contains(a.In, in) {
				list = append(list, d.command(a))
			}
		}
		return list
	}})
	return nil
}

// commands lists everything: what was done last first, then what can be done now, then what
// cannot, with the reason.
func commands(d *desk) tea.Cmd {
	if l, open := topOf[*listLayer](d); open && l.lead == commandLead {
		d.pop()
		return nil
	}
	d.push(&listLayer{title: "all commands", lead: commandLead, choices: func(d *desk) []choice {
		var list []choice
		for _, id := range d.recent {
			list = append(list, d.command(d.action(id)))
		}
		for i := range d.actions {
			if a := &d.actions[i]; !slices.Contains(d.recent, a.ID) {
				list = append(list, d.command(a))
			}
		}
		slices.SortStableFunc(list[len(d.recent):], func(a, b choice) int { return cmp.Compare(min(len(a.why), 1), min(len(b.why), 1)) })
		return list
	}})
	return nil
}

const commandLead = ":"

// action finds an action by its id; nil if there is none.
func (d *desk) action(id string) *Action {
	i := slices.IndexFunc(d.actions, func(a Action) bool { return a.ID == id })
	if i < 0 {
		return nil
	}
	return &d.actions[i]
}

// command is an action's line in a list. What it needs is judged as if the list were
// closed.
func (d *desk) command(a *Action) choice {
	under := *d
	under.layers = d.layers[:max(0, len(d.layers)-1)]
	keys := make([]string, len(a.Keys))
	for i, key := range a.Keys {
		keys[i] = keyName(key)
	}
	return choice{
		text: a.Title, right: strings.Join(keys[:min(2, len(keys))], " "), more: a.ID, exact: append([]string{a.ID}, a.Keys...), why: a.refusal(&under),
		detail: a.ID + ": " + a.Title + ". Keys: " + strings.Join(keys, ", "), pick: func(d *desk) tea.Cmd {
			d.recent = append([]string{a.ID}, slices.DeleteFunc(d.recent, func(id string) bool { return id == a.ID })...)
			return d.do(a)
		},
	}
}

// keyNames are keys by the words on the screen.
var keyNames = map[string]string{
	"enter": "Enter", "esc": "Esc", "tab": "Tab", "shift+tab": "Shift+Tab", "backspace": "Backspace", "up": "Up", "down": "Down", "left": "Left",
	"right": "Right", "pgup": "PgUp", "pgdown": "PgDn", "ctrl+r": "Ctrl+R", "ctrl+z": "Ctrl+Z", "shift+left": "Shift+Left", "shift+right": "Shift+Right", "shift+up": "Shift+Up",
	"shift+down": "Shift+Down", "ctrl+s": "Ctrl+S",
}

func keyName(key string) string {
	if name, ok := keyNames[key]; ok {
		return name
	}
	return key
}
