package main

import (
	"bytes"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"example.com/lugbook/diagram/export"
	"example.com/lugbook/diagram/live"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/state"
)

// The widest page that a drawing may be asked for, in columns.
const (
	leastColumns = 40
	mostColumns  = 1000
)

func (c *cli) drawCommand() *cobra.Command {
	var sheet, in, as, out string
	var columns int
	cmd := &cobra.Command{
		Use:   "draw FILE",
		Short: "Draw a sheet as text, ASCII or SVG",
		Long: "Draw a sheet. Without --sheet the latest sheet is drawn. With --state it shows which wires are dead, on the minus\n" +
			"side or live in that state, what they carry and which way, and which contacts are closed. " + formatsHelp(),
		Example: "  lugbook draw tug.yaml\n  lugbook draw --sheet as-found --as svg -o tug.svg tug.yaml\n" +
			"  lugbook draw --state drive-forward tug.yaml\n  lugbook draw --as ascii --width 100 - < tug.yaml",
		Args: cobra.ExactArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			if columns != 0 && (columns < leastColumns || columns > mostColumns) {
				return fmt.Errorf("--width %d: expected %d to %d columns", columns, leastColumns, mostColumns)
			}
			format, err := export.Find(as)
			if err != nil {
				return err
			}
			if err := apart(out, args[0]); err != nil {
				return err
			}
			o, name, err := c.openSheet(args[0], sheet)
			if err != nil {
				return err
			}
			shown, err := o.stateShown(name, in)
			if err != nil {
				return err
			}
			var b bytes.Buffer
			if err := format.Sheet(&b, o.job, name, o.lib, columns, shown); err != nil {
				return err
			}
			return c.write(out, b.Bytes())
		},
	}
	cmd.Flags().StringVar(&sheet, "sheet", "", "sheet to draw: as-found, plan or as-built")
	cmd.Flags().StringVar(&in, "state", "", "state to show, such as drive-forward; none if not said")
	cmd.Flags().StringVar(&as, "as", "text", "format: "+strings.Join(export.Names(), ", "))
	cmd.Flags().IntVar(&columns, "width", 0, "page width in columns; 0 for the format's own")
	cmd.Flags().StringVarP(&out, "out", "o", stdio, "file to write, - for standard output")
	return cmd
}

// stateShown solves the state that a person asked for; nil if none was.
func (o *opened) stateShown(sheet model.SheetName, asked string) (*scene.State, error) {
	if asked == "" {
		return nil, nil
	}
	n := network.Build(o.job, o.job.Sheet(sheet), o.lib)
	list := n.States()
	s, ok := state.Find(list, asked)
	if !ok {
		names := make([]string, len(list))
		for i := range list {
			names[i] = list[i].Name
		}
		return nil, fmt.Errorf("no state %q; the %s sheet has %s", asked, sheet, strings.Join(names, ", "))
	}
	solved, err := n.Solve(s)
	if err != nil {
		return nil, fmt.Errorf("%w; without --state the sheet is drawn at rest", err)
	}
	shown := live.Of(n, solved)
	return &shown, nil
}

func formatsHelp() string {
	var b strings.Builder
	b.WriteString("Formats:\n")
	for _, f := range export.All {
		fmt.Fprintf(&b, "  %-6s %s\n", f.Name, f.About)
	}
	return b.String()
}
