package main

import (
	"errors"
	"fmt"
	"slices"

	"github.com/spf13/cobra"

	"example.com/lugbook/model/rule"
)

func (c *cli) checkCommand() *cobra.Command {
	var sheet string
	var asJSON bool
	var fix []string
	cmd := &cobra.Command{
		Use:   "check FILE",
		Short: "Check a sheet against the rules: polarity, protection, conductors, controls, charging, studs, paper",
		Long: "Check a sheet against the rules that lugbook rules lists. Every state of the controls is computed. Without --sheet\n" +
			"the latest sheet is checked. It judges what the file says and names what it could not judge; it never says that a\n" +
			"cart is safe. What follows from another finding stands below it; what somebody waived is listed all the same.\n\n" +
			"With --fix it lists the ready-made edits, each tried on a copy; --fix=FINDING, or --fix=FINDING:2 for the second\n" +
			"choice, makes one and saves the job file. An edit that leaves its finding, or brings a danger, is not made.",
		Example: "  lugbook check tug.yaml\n  lugbook check --sheet as-found --json tug.yaml\n  lugbook check --fix tug.yaml\n" +
			"  lugbook check --fix=stack-order@sol.L1 tug.yaml",
		Args: cobra.ExactArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			fixing := cmd.Flags().Changed("fix")
			if err := misfix(fixing, asJSON, fix); err != nil {
				return err
			}
			o, name, err := c.openSheet(args[0], sheet)
			if err != nil {
				return err
			}
			report, err := rule.Judge(rule.All, o.job, name, o.lib)
			switch {
			case err != nil:
				return err
			case fixing && fix[0] == listFixes:
				err = c.printFixes(o, &report)
			case fixing:
				return c.fix(o, &report, fix, cmd.ErrOrStderr())
			case asJSON:
				err = c.printReportJSON(o.job, &report)
			default:
				_, err = fmt.Fprint(c.out, reportText(o.job, &report))
			}
			if err != nil {
				return err
			}
			return verdict(report.Findings)
		},
	}
	cmd.Flags().StringVar(&sheet, "sheet", "", "sheet to check: as-found, plan or as-built")
	cmd.Flags().BoolVar(&asJSON, "json", false, "print one JSON object")
	cmd.Flags().StringSliceVar(&fix, "fix", nil, "list the ready-made edits, or make those of the named `FINDING`s")
	cmd.Flags().Lookup("fix").NoOptDefVal = listFixes
	return cmd
}

// misfix tells what is wrong with how --fix was given.
func misfix(fixing, asJSON bool, asked []string) error {
	switch {
	case !fixing:
		return nil
	case asJSON:
		return errors.New("--fix and --json: give one of them")
	case len(asked) == 0 || slices.Contains(asked, ""):
		return errors.New("--fix=: name a finding, such as --fix=stack-order@sol.L1; --fix alone lists what there is")
	case len(asked) > 1 && slices.Contains(asked, listFixes):
		return errors.New("--fix alone lists and --fix=FINDING makes an edit: give one of them")
	}
	return nil
}

// verdict is errFound if any finding is worse than a caution. A waiver does not change that
// of a danger.
func verdict(findings []rule.Finding) error {
	for _, f := range findings {
		if f.Severity == rule.Danger || f.Severity == rule.Fault && f.Waived == nil {
			return errFound
		}
	}
	return nil
}
