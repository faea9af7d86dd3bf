package tui

import (
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/lugbook/model/rule"
)

// questions lists what is not recorded and decides something. Enter goes there and asks for it;
// once it is answered the next question has its place in the list.
func questions(d *desk) tea.Cmd {
	d.push(&listLayer{title: "questions, gravest first", lead: "?", stays: true, choices: func(d *desk) []choice {
		list := make([]choice, 0, len(d.work.questions))
		for _, q := range d.work.questions {
			list = append(list, d.question(q))
		}
		return list
	}})
	return nil
}

// question is a question as a line of the list.
func (d *desk) question(q rule.Question) choice {
	return choice{
		text: strings.TrimSpace(severities[q.Worst].sign) + " " + q.String(), right: string(q.Worst),
		detail: "decides " + strings.Join(q.Decides, "\ndecides ") + "\nasked by " + strings.Join(q.Rules, ", "),
		exact:  []string{q.String()},
		pick: func(d *desk) tea.Cmd {
			at := ofSubject(q.Subject)
			d.goTo(at)
			for _, r := range d.rows(at) {
				if r.name == q.Field && r.edit != nil {
					return r.edit(d)
				}
			}
			d.say(q.String() + " has no field of its own: look at it on the cart, then wire or rate it")
			return nil
		},
	}
}

func asked(d *desk) string {
	switch {
	case !d.work.checkedYet:
		return "the sheet is being checked; once more in a moment"
	case len(d.work.questions) == 0:
		return "the rules ask nothing about this sheet"
	}
	return ""
}
