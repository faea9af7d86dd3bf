package main

import (
	"fmt"
	"slices"
	"time"

	"github.com/spf13/cobra"

	"example.com/lugbook/model"
	"example.com/lugbook/model/clean"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/rule"
	"example.com/lugbook/model/store"
)

// word is what somebody says to let a finding stay.
type word struct {
	sheet, reason, by, date, accept string
	takeBack                        bool
}

func (c *cli) waiveCommand() *cobra.Command {
	var w word
	cmd := &cobra.Command{
		Use:   "waive FILE FINDING",
		Short: "Let a finding stay, with reason, name and date",
		Long: "Let a finding stay. It is still listed, marked as waived, and comes back when it gets worse: graver, about something\n" +
			"else as well, or with a worse figure. A danger takes --accept danger besides, still ends check with 1, and is\n" +
			"left out of nothing. FINDING is its rule and subject, such as lug-hole@pump.-, as check --json and --fix name it.",
		Example: "  lugbook waive --reason 'filed to fit' --by 'bench two' tug.yaml lug-hole@pump.-\n  lugbook waive --take-back tug.yaml lug-hole@pump.-",
		Args:    cobra.ExactArgs(2),
		RunE: func(cmd *cobra.Command, args []string) error {
			o, name, err := c.openSheet(args[0], w.sheet)
			if err != nil {
				return err
			}
			e, err := w.edit(o, name, args[1])
			if err != nil {
				return err
			}
			h := edit.NewHistory(o.job, o.lib)
			if err := h.Do(e); err != nil {
				return err
			}
			if o.file == nil {
				data, err := o.decoded.Encode(h.Job())
				if err != nil {
					return err
				}
				return c.write(stdio, data)
			}
			outcome, err := o.file.Save(h.Job(), store.Options{})
			if err != nil {
				return err
			}
			warn(cmd.ErrOrStderr(), outcome)
			_, err = fmt.Fprintln(c.out, clean.Line(e.Name()))
			return err
		},
	}
	flags := cmd.Flags()
	flags.StringVar(&w.sheet, "sheet", "", "sheet of the finding: as-found, plan or as-built; the latest if not said")
	flags.StringVar(&w.reason, "reason", "", "why it may stay, for the next technician")
	flags.StringVar(&w.by, "by", "", "who says so")
	flags.StringVar(&w.date, "date", "", "date as year-month-day; today if not said")
	flags.StringVar(&w.accept, "accept", "", "danger, without which no danger is waived")
	flags.BoolVar(&w.takeBack, "take-back", false, "take back the word on the finding")
	return cmd
}

// edit is the edit that records the word, or takes it back.
func (w *word) edit(o *opened, sheet model.SheetName, finding string) (edit.Edit, error) {
	if w.takeBack {
		return edit.Unwaive{Sheet: sheet, Finding: finding}, nil
	}
	report, err := rule.Judge(rule.All, o.job, sheet, o.lib)
	if err != nil {
		return nil, err
	}
	i := slices.IndexFunc(report.Findings, func(f rule.Finding) bool { return f.Key == finding })
	if i < 0 {
		return nil, fmt.Errorf("the %s sheet has no finding %s; lugbook check --json FILE names them", sheet, finding)
	}
	f := &report.Findings[i]
	if w.date == "" {
		w.date = time.Now().Format(time.DateOnly)
	}
	if _, err := time.Parse(time.DateOnly, w.date); err != nil {
		return nil, fmt.Errorf("--date %s: expected year-month-day, such as 2026-03-11", w.date)
	}
	if f.Severity == rule.Danger && w.accept != string(model.AcceptsDanger) {
		return nil, fmt.Errorf("%s is a danger: to let it stay all the same, add --accept danger", finding)
	}
	return edit.Waive{Sheet: sheet, Waiver: rule.WaiverFor(f, w.reason, w.by, w.date, model.Accepted(w.accept))}, nil
}
