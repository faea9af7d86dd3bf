package main

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/size"
)

// sizeCaution ends every answer about sizes.
const sizeCaution = "Figures aid a decision; local codes, makers' instructions and licensed people make it.\n"

func (c *cli) sizeCommand() *cobra.Command {
	var a sizeAsk
	cmd := &cobra.Command{
		Use:   "size [FILE]",
		Short: "Pick the thinnest conductor and the fuse that satisfy everything",
		Long: "Pick the thinnest conductor and the fuse for a circuit, in AWG and in mm2, and say which demand decided: current,\n" +
			"duty, voltage drop, fuse, short circuit, strength or lug. With FILE all conductors of a sheet are sized by the worst\n" +
			"of its states; those that are too thin are marked with !. With --drops it tells what each load loses, piece by piece. Without it the flags say what is asked: a current, a duty,\n" +
			"or a vehicle on a grade. What is assumed is listed. " + strings.TrimSpace(sizeCaution),
		Example: "  lugbook size --current 250A --system 48V --length 3m\n" +
			"  lugbook size --duty \"300 A 30 s, 90 A 1 h\" --system 51.2V --length 12ft --ambient 40 --metric\n" +
			"  lugbook size --mass 1250kg --grade 10% --speed 15km/h --surface asphalt --system 51.2V --length 3m\n" +
			"  lugbook size --sheet plan tug.yaml\n  lugbook size --wire w1 tug.yaml\n  lugbook size --drops tug.yaml",
		Args: cobra.MaximumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			if err := a.fits(cmd, len(args) > 0); err != nil {
				return err
			}
			if len(args) > 0 {
				return c.sizeJob(args[0], a)
			}
			return c.sizeFlags(a)
		},
	}
	a.define(cmd)
	return cmd
}

// sizeFlags sizes what the flags describe, in each series that was asked for.
func (c *cli) sizeFlags(a sizeAsk) error {
	r, told, err := a.requirement()
	if err != nil {
		return err
	}
	var choices []size.Choice
	for _, s := range a.series() {
		choice, err := size.Pick(r, s)
		if err != nil {
			return err
		}
		choices = append(choices, choice)
	}
	if a.json {
		err = c.printAsJSON(choicesJSON(told, choices))
	} else {
		_, err = io.WriteString(c.out, choicesText(told, choices))
	}
	if err != nil {
		return err
	}
	for _, choice := range choices {
		if choice.Gauge.IsZero() {
			return errFound
		}
	}
	return nil
}

// sizeJob sizes the conductors of a sheet.
func (c *cli) sizeJob(path string, a sizeAsk) error {
	options, err := a.options()
	if err != nil {
		return err
	}
	o, name, err := c.openSheet(path, a.sheet)
	if err != nil {
		return err
	}
	survey := size.Of(network.Build(o.job, o.job.Sheet(name), o.lib))
	if a.drops {
		return c.dropsJob(o.job, name, survey, a, cmp.Or(options.Drop, size.DefaultDrop))
	}
	rows := survey.Rows(options)
	if a.wire != "" {
		if rows, err = only(rows, model.WireID(a.wire), name); err != nil {
			return err
		}
	}
	switch {
	case a.json:
		err = c.printAsJSON(rowsJSON(o.job, name, rows, survey))
	case a.wire != "":
		_, err = io.WriteString(c.out, rowText(rows[0], survey))
	default:
		_, err = io.WriteString(c.out, rowsText(o.job, name, rows, survey))
	}
	if err != nil {
		return err
	}
	if len(survey.Unsolved()) > 0 || slices.ContainsFunc(rows, func(r size.Row) bool { return r.Thin() || r.Choice.Why != "" }) {
		return errFound
	}
	return nil
}

// only keeps the row of one wire.
func only(rows []size.Row, wire model.WireID, sheet model.SheetName) ([]size.Row, error) {
	for _, r := range rows {
		if r.Wire.ID == wire {
			return []size.Row{r}, nil
		}
	}
	return nil, fmt.Errorf("sheet %s has no wire %q", sheet, wire)
}

// fits makes sure that the flags go together.
func (a sizeAsk) fits(cmd *cobra.Command, job bool) error {
	changed := func(names ...string) string {
		for _, name := range names {
			if cmd.Flags().Changed(name) {
				return name
			}
		}
		return ""
	}
	if job {
		if name := changed(append(loadFlags, circuitFlags...)...); name != "" {
			return fmt.Errorf("--%s is for sizing without a job: a job says it itself", name)
		}
		return nil
	}
	if name := changed("sheet", "wire", "drops"); name != "" {
		return fmt.Errorf("--%s needs a job FILE", name)
	}
	if changed("mass") == "" {
		if name := changed(motionFlags...); name != "" {
			return fmt.Errorf("--%s needs --mass, the vehicle with its load", name)
		}
	}
	if changed("current", "duty", "mass") == "" {
		return errors.New("say what flows: --current, --duty, or --mass with --speed; or name a job FILE")
	}
	return nil
}
