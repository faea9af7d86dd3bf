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
		text:   severities[q.Worst].sign + " " + q.Subject.String() + ": " + q.Datum,
		detail: q.String() + ", which may turn out to be a " + string(q.Worst) + "\ndecides " + strings.Join(q.Decides, "\ndecides ") + "\nasked by " + strings.Join(q.Rules, ", "),
		exact:  []string{q.String()},
		pick: func(d *desk) tea.Cmd {
			at := ofSubject(q.Subject)
			d.goTo(at)
			for _, r := range d.rows(at) {
				if r.name == q.Field && r.edit != nil {
					return r.edit(d)
				}
			}
			d.say(unasked(q))
			return nil
		},
	}
}

// unasked says where the answer to a question goes that no row of a card takes.
func unasked(q rule.Question) string {
	switch q.Field {
	case "":
		return q.String() + ": look at it on the cart and record what is there; no single field holds it"
	case "opens":
		return q.String() + ": a curve has no field here; write it into the job file under " + q.Subject.String() + ", opens"
	}
	return q.String() + ": no field here takes it; write it into the job file under " + q.Subject.String() + ", " + q.Field
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
