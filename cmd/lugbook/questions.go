package main

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"example.com/lugbook/model"
	"example.com/lugbook/model/clean"
	"example.com/lugbook/model/rule"
)

func (c *cli) questionsCommand() *cobra.Command {
	var sheet string
	var asJSON, all bool
	cmd := &cobra.Command{
		Use:   "questions FILE",
		Short: "List what is not recorded and decides something, as a sheet to take to the cart",
		Long: "List what is not recorded and decides something: what may turn out gravest first. Each line has room for the answer.\n" +
			"Without --all, what would at most age or annoy is left out.",
		Example: "  lugbook questions --sheet as-found tug.yaml\n  lugbook questions --all tug.yaml | lpr",
		Args:    cobra.ExactArgs(1),
		RunE: func(_ *cobra.Command, args []string) error {
			o, name, err := c.openSheet(args[0], sheet)
			if err != nil {
				return err
			}
			report, err := rule.Judge(rule.All, o.job, name, o.lib)
			if err != nil {
				return err
			}
			questions := report.Questions
			if !all {
				questions = grave(questions)
			}
			if asJSON {
				return c.printQuestionsJSON(o.job, name, questions)
			}
			text := questionsText(o.job, name, questions)
			if left := len(report.Questions) - len(questions); left > 0 {
				text += fmt.Sprintf("\n%d more that would at most age or annoy: --all lists them\n", left)
			}
			_, err = io.WriteString(c.out, text)
			return err
		},
	}
	cmd.Flags().StringVar(&sheet, "sheet", "", "sheet to ask about: as-found, plan or as-built")
	cmd.Flags().BoolVar(&asJSON, "json", false, "print one JSON object")
	cmd.Flags().BoolVar(&all, "all", false, "list what would at most age or annoy too")
	return cmd
}

// grave leaves out the questions whose answer would at most age or annoy.
func grave(questions []rule.Question) []rule.Question {
	var list []rule.Question
	for _, q := range questions {
		if q.Worst == rule.Danger || q.Worst == rule.Fault {
			list = append(list, q)
		}
	}
	return list
}

// questionsText is the sheet to take to the cart: by what they may turn out to be, and what is
// asked of several things for the same reason asked once, with a blank for each.
func questionsText(j *model.Job, sheet model.SheetName, questions []rule.Question) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s, sheet %s: %d questions\n", clean.Line(j.Title), sheet, len(questions))
	var worst rule.Severity
	for first := 0; first < len(questions); {
		q := &questions[first]
		if q.Worst != worst {
			worst = q.Worst
			fmt.Fprintf(&b, "\nmay turn out to be a %s\n", worst)
		}
		next := first + 1
		for next < len(questions) && alike(q, &questions[next]) {
			next++
		}
		fmt.Fprintf(&b, "\n  %s\n", clean.Line(q.Datum))
		for _, d := range q.Decides {
			fmt.Fprintf(&b, "  decides %s\n", clean.Line(d))
		}
		writeBlanks(&b, questions[first:next])
		first = next
	}
	return b.String()
}

// alike reports whether two questions ask for one datum of two things for the same reasons.
func alike(a, b *rule.Question) bool {
	return a.Datum == b.Datum && a.Worst == b.Worst && slices.Equal(a.Decides, b.Decides)
}

// blanksPerLine is how many things stand on a line of the sheet, each with a blank.
const blanksPerLine = 3

// writeBlanks writes the names of things, each with room for the answer.
func writeBlanks(b *strings.Builder, questions []rule.Question) {
	for i := range questions {
		name := clean.Line(questions[i].Subject.String())
		switch {
		case len(questions) == 1:
			fmt.Fprintf(b, "    %s ______________________________\n", name)
			return
		case i%blanksPerLine == 0 && i > 0:
			b.WriteString("\n")
		}
		if i%blanksPerLine == 0 {
			b.WriteString("  ")
		}
		fmt.Fprintf(b, "  %-12s ________", name)
	}
	b.WriteString("\n")
}

type questionJSON struct {
	Datum   string        `json:"datum"`
	Subject string        `json:"subject"`
	Field   string        `json:"field,omitempty"`
	Worst   rule.Severity `json:"worst"`
	Decides []string      `json:"decides"`
	Rules   []string      `json:"rules"`
}

func (c *cli) printQuestionsJSON(j *model.Job, sheet model.SheetName, questions []rule.Question) error {
	out := struct {
		Job       string          `json:"job"`
		Sheet     model.SheetName `json:"sheet"`
		Questions []questionJSON  `json:"questions"`
	}{j.Title, sheet, []questionJSON{}}
	for _, q := range questions {
		out.Questions = append(out.Questions, questionJSON{q.Datum, q.Subject.String(), q.Field, q.Worst, q.Decides, q.Rules})
	}
	return c.printAsJSON(out)
}
