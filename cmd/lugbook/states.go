package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"example.com/lugbook/model/meter"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/state"
)

// usualWidth is the width of the table of states where none is asked for, in columns.
const usualWidth = 100

func (c *cli) statesCommand() *cobra.Command {
	var sheet string
	var names []string
	var width int
	var asJSON bool
	cmd := &cobra.Command{
		Use:   "states FILE",
		Short: "Print the volts at the test points in every state, and whether the cart drives",
		Long: "Print the volts at the test points in every state of the controls, and whether the cart drives in it.\n" +
			"It must drive with the key on, in run, a direction chosen, the pedal down and no charger plugged in, and in\n" +
			"no other state. Without --sheet the latest sheet is taken. It computes from what the file says; it never\n" +
			"says that a cart is safe.",
		Example: "  lugbook states tug.yaml\n  lugbook states --sheet plan --state parked --state drive-forward tug.yaml",
		Args:    cobra.ExactArgs(1),
		RunE: func(_ *cobra.Command, args []string) error {
			if width < leastColumns || width > mostColumns {
				return fmt.Errorf("--width %d: expected %d to %d columns", width, leastColumns, mostColumns)
			}
			o, name, err := c.openSheet(args[0], sheet)
			if err != nil {
				return err
			}
			n := network.Build(o.job, o.job.Sheet(name), o.lib)
			states, err := chosen(n, names)
			if err != nil {
				return err
			}
			table, err := meter.Tabulate(n, states)
			if err != nil {
				return err
			}
			report := statesReport{job: o.job, sheet: name, table: table, by: meter.JudgedBy(n)}
			if len(names) == 0 {
				if report.trial, err = meter.Try(n); err != nil {
					return err
				}
			}
			if err := c.printStates(report, width, asJSON); err != nil {
				return err
			}
			if len(report.breaches()) > 0 {
				return errFound
			}
			return nil
		},
	}
	cmd.Flags().StringVar(&sheet, "sheet", "", "sheet to compute: as-found, plan or as-built")
	cmd.Flags().StringArrayVar(&names, "state", nil, "state to show; give it again for more; all without it")
	cmd.Flags().IntVar(&width, "width", usualWidth, "width of the table in columns")
	cmd.Flags().BoolVar(&asJSON, "json", false, "print one JSON object")
	return cmd
}

// chosen are the states that were asked for, or all.
func chosen(n *network.Network, names []string) ([]state.State, error) {
	if len(names) == 0 {
		return n.States(), nil
	}
	var list []state.State
	for _, name := range names {
		s, err := stateOf(n, name)
		if err != nil {
			return nil, err
		}
		list = append(list, s)
	}
	return list, nil
}

func (c *cli) printStates(r statesReport, width int, asJSON bool) error {
	if asJSON {
		return c.printAsJSON(r.json())
	}
	return c.write(stdio, []byte(r.text(width)))
}
