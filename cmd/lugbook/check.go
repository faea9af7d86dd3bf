package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"example.com/lugbook/model"
	"example.com/lugbook/model/clean"
	"example.com/lugbook/model/rule"
)

func (c *cli) checkCommand() *cobra.Command {
	var sheet string
	var asJSON bool
	cmd := &cobra.Command{
		Use:   "check FILE",
		Short: "Check a sheet: polarity, fusing, heat, function, charging, stack order",
		Long: "Check a sheet: polarity, fusing, heat and drop, whether it drives when it must and only then, pre-charge and\n" +
			"charging, stack order. Every state of the controls is computed. Without --sheet the latest sheet is checked.\n" +
			"It judges what the file says and names what it could not judge; it never says that a cart is safe.",
		Example: "  lugbook check tug.yaml\n  lugbook check --sheet as-found --json tug.yaml",
		Args:    cobra.ExactArgs(1),
		RunE: func(_ *cobra.Command, args []string) error {
			o, name, err := c.openSheet(args[0], sheet)
			if err != nil {
				return err
			}
			findings, err := rule.Check(o.job, name, o.lib)
			if err != nil {
				return err
			}
			if err := c.printFindings(o.job, name, findings, asJSON); err != nil {
				return err
			}
			return verdict(findings)
		},
	}
	cmd.Flags().StringVar(&sheet, "sheet", "", "sheet to check: as-found, plan or as-built")
	cmd.Flags().BoolVar(&asJSON, "json", false, "print one JSON object")
	return cmd
}

// verdict is errFound if any finding is worse than a caution.
func verdict(findings []rule.Finding) error {
	for _, f := range findings {
		if f.Severity == rule.Danger || f.Severity == rule.Fault {
			return errFound
		}
	}
	return nil
}

func (c *cli) printFindings(j *model.Job, sheet model.SheetName, findings []rule.Finding, asJSON bool) error {
	if asJSON {
		return c.printJSON(j, sheet, findings)
	}
	_, err := fmt.Fprint(c.out, findingsText(j, sheet, findings))
	return err
}

// findingsText is the findings for a person to read.
func findingsText(j *model.Job, sheet model.SheetName, findings []rule.Finding) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s, sheet %s: %s\n", clean.Line(j.Title), sheet, countsText(findings))
	for _, f := range findings {
		fmt.Fprintf(&b, "\n%-8s%s [%s]\n", f.Severity, clean.Line(f.Message), f.Rule)
		fmt.Fprintf(&b, "        at:     %s\n", strings.Join(subjects(f), ", "))
		fmt.Fprintf(&b, "        remedy: %s\n", clean.Line(f.Remedy))
		fmt.Fprintf(&b, "        basis:  %s (%s)\n", clean.Line(f.Basis.Text), clean.Line(f.Basis.Source))
	}
	return b.String()
}

func subjects(f rule.Finding) []string {
	names := make([]string, len(f.Subjects))
	for i, s := range f.Subjects {
		names[i] = s.String()
	}
	return names
}

func counts(findings []rule.Finding) map[rule.Severity]int {
	n := map[rule.Severity]int{}
	for _, s := range rule.Severities() {
		n[s] = 0
	}
	for _, f := range findings {
		n[f.Severity]++
	}
	return n
}

func countsText(findings []rule.Finding) string {
	n := counts(findings)
	words := make([]string, 0, len(n))
	for _, s := range rule.Severities() {
		plural := "s"
		if n[s] == 1 {
			plural = ""
		}
		words = append(words, fmt.Sprintf("%d %s%s", n[s], s, plural))
	}
	return strings.Join(words, ", ")
}

type findingJSON struct {
	Rule     string        `json:"rule"`
	Severity rule.Severity `json:"severity"`
	Subjects []string      `json:"subjects"`
	Message  string        `json:"message"`
	Basis    basisJSON     `json:"basis"`
	Remedy   string        `json:"remedy"`
}

type basisJSON struct {
	Text   string `json:"text"`
	Source string `json:"source"`
}

type checkJSON struct {
	Job      string                `json:"job"`
	Sheet    model.SheetName       `json:"sheet"`
	Findings []findingJSON         `json:"findings"`
	Counts   map[rule.Severity]int `json:"counts"`
}

func (c *cli) printJSON(j *model.Job, sheet model.SheetName, findings []rule.Finding) error {
	report := checkJSON{Job: j.Title, Sheet: sheet, Findings: []findingJSON{}, Counts: counts(findings)}
	for _, f := range findings {
		report.Findings = append(report.Findings, findingJSON{f.Rule, f.Severity, subjects(f), f.Message, basisJSON{f.Basis.Text, f.Basis.Source}, f.Remedy})
	}
	return c.printAsJSON(report)
}
