package tui

import (
	"errors"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/rule"
)

// waive asks for the reason, the name and, for a danger, the extra word that let the finding
// at hand stay. A finding that is waived has its word taken back.
func (f *findingsLayer) waive(d *desk) {
	at := *f.finding(d)
	if at.Waived != nil {
		d.try(edit.Unwaive{Sheet: d.sheetName, Finding: at.Key})
		return
	}
	d.ask("reason", "why "+at.Key+" may stay, for the next technician; it stays listed", "", func(d *desk, reason string) (tea.Cmd, error) {
		if reason == "" {
			return nil, errors.New("a waiver needs a reason")
		}
		d.ask("name", "who says so", d.job().Technician, func(d *desk, by string) (tea.Cmd, error) {
			if by == "" {
				return nil, errors.New("a waiver needs a name")
			}
			return nil, d.waiveAs(at, reason, by)
		})
		return nil, nil
	})
}

// waiveAs records the word, after the extra word if it is a danger.
func (d *desk) waiveAs(at rule.Finding, reason, by string) error {
	record := func(accepts model.Accepted) error {
		today := time.Now().Format(time.DateOnly)
		return d.act(edit.Waive{Sheet: d.sheetName, Waiver: rule.WaiverFor(&at, reason, by, today, accepts)})
	}
	if at.Severity != rule.Danger {
		return record("")
	}
	d.ask("danger", "this is a danger: type the word danger to let it stay all the same; Esc leaves it", "", func(d *desk, word string) (tea.Cmd, error) {
		if word != string(model.AcceptsDanger) {
			return nil, errors.New("only the word danger lets a danger stay; Esc leaves it as it is")
		}
		return nil, record(model.AcceptsDanger)
	})
	return nil
}
