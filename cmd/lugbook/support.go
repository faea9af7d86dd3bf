package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"example.com/lugbook/model"
	"example.com/lugbook/model/clean"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/support"
	"example.com/lugbook/model/unit"
)

func (c *cli) supportCommand() *cobra.Command {
	var sheet, branch string
	var asJSON bool
	cmd := &cobra.Command{
		Use:   "support FILE",
		Short: "Compute pre-charge, coils, drain at rest, charging and the pack's currents",
		Long: "Compute what stands around the traction circuit: pre-charge of the controller, suppression of coils,\n" +
			"drain at rest, the charger against pack and AC circuit, and the pack's currents against its limits.\n" +
			"Without --sheet the latest sheet is taken. It computes from what the file says and the figures that it names;\n" +
			"it never says that a cart is safe.",
		Example: "  lugbook support tug.yaml\n  lugbook support --sheet plan --branch 20A --json tug.yaml",
		Args:    cobra.ExactArgs(1),
		RunE: func(_ *cobra.Command, args []string) error {
			amps, err := branchAmps(branch)
			if err != nil {
				return err
			}
			o, name, err := c.openSheet(args[0], sheet)
			if err != nil {
				return err
			}
			report := support.Of(network.Build(o.job, o.job.Sheet(name), o.lib), support.Options{Branch: amps})
			text, err := supportText(o, name, report, asJSON)
			if err != nil {
				return err
			}
			if err := c.write(stdio, []byte(text)); err != nil {
				return err
			}
			if report.IsBad() {
				return errFound
			}
			return nil
		},
	}
	cmd.Flags().StringVar(&sheet, "sheet", "", "sheet to compute: as-found, plan or as-built")
	cmd.Flags().StringVar(&branch, "branch", "", "breaker of the AC circuit that the charger is plugged into, such as 20A; without it 15A is assumed")
	cmd.Flags().BoolVar(&asJSON, "json", false, "print one JSON object")
	return cmd
}

// branchAmps reads the size of an AC circuit; nothing is 0.
func branchAmps(text string) (float64, error) {
	if text == "" {
		return 0, nil
	}
	amps, err := unit.ParseAmpere(text)
	if err != nil {
		return 0, err
	}
	if amps.Amperes() <= 0 {
		return 0, fmt.Errorf("%s is no size of an AC circuit; write it as 15A or 20A", text)
	}
	return amps.Amperes(), nil
}

func supportText(o *opened, name model.SheetName, r *support.Report, asJSON bool) (string, error) {
	rests := restsOf(o, name)
	if !asJSON {
		return supportWords(o, name, r, rests), nil
	}
	var b bytes.Buffer
	encoder := json.NewEncoder(&b)
	encoder.SetEscapeHTML(false)
	encoder.SetIndent("", "  ")
	err := encoder.Encode(struct {
		Job   string          `json:"job"`
		Sheet model.SheetName `json:"sheet"`
		*support.Report
		Others []rest `json:"stand_by_of_other_sheets"`
	}{o.job.Title, name, r, rests})
	return escapeHidden(b.String()), err
}

// rest is the drain at rest of another sheet of the job, to compare.
type rest struct {
	Sheet model.SheetName `json:"sheet"`
	Amps  float64         `json:"amps"`
	Days  float64         `json:"days"`
}

// restsOf computes the drain at rest of the other sheets.
func restsOf(o *opened, but model.SheetName) []rest {
	list := []rest{}
	for i := range o.job.Sheets {
		s := &o.job.Sheets[i]
		if s.Name == but {
			continue
		}
		if r := support.StandByOf(network.Build(o.job, s, o.lib)); r != nil {
			list = append(list, rest{s.Name, r.Amps, r.Days})
		}
	}
	return list
}

// supportWords is a report for a person to read.
func supportWords(o *opened, name model.SheetName, r *support.Report, rests []rest) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s, sheet %s\n", clean.Line(o.job.Title), name)
	for _, section := range r.Sections() {
		fmt.Fprintf(&b, "\n%s\n", section.Title)
		if len(section.Items) == 0 {
			fmt.Fprintf(&b, "  %s\n", section.None)
		}
		for _, item := range section.Items {
			fmt.Fprintf(&b, "  %s\n", clean.Line(item.Title))
			for _, line := range item.Lines {
				fmt.Fprintf(&b, "    %s\n", clean.Line(line))
			}
			for _, j := range item.Judgements {
				fmt.Fprintf(&b, "    %-8s%s\n", j.Grade, clean.Line(j.Text))
			}
		}
		if section.Title == support.RestTitle {
			for _, other := range rests {
				fmt.Fprintf(&b, "  to compare, %s: %s\n", other.Sheet, support.RestWords(other.Amps, other.Days))
			}
		}
	}
	if assumptions := r.Assumptions(); len(assumptions) > 0 {
		fmt.Fprintf(&b, "\nThis rests on figures that are not the parts' own:\n")
		for _, line := range assumptions {
			fmt.Fprintf(&b, "  %s\n", clean.Line(line))
		}
	}
	fmt.Fprintf(&b, "\nThe AC side is for licensed people and the local code. Discharge the controller before you touch its studs.\n")
	return b.String()
}
