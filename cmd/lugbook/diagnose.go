package main

import (
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"example.com/lugbook/model"
	"example.com/lugbook/model/diagnose"
	"example.com/lugbook/model/meter"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/state"
)

// search is what the flags of the diagnose command ask for.
type search struct {
	sheet, complaint string
	readings         []string
	json             bool
}

func (c *cli) diagnoseCommand() *cobra.Command {
	var s search
	cmd := &cobra.Command{
		Use:   "diagnose FILE",
		Short: "Find what is wrong from readings, and say what to measure next",
		Long: "Compare the readings of a job with what the sheet gives, rank what may be wrong, and say which reading to\n" +
			"take next. One fault at a time is assumed. Without --sheet the latest sheet is taken. Readings of --reading\n" +
			"are added for this once and not saved. It exits with 1 if a reading is not as expected\n" +
			"or no fault on the list gives it.\n\n" + complaintsHelp(),
		Example: "  lugbook diagnose tug.yaml --complaint \"no click\"\n" +
			"  lugbook diagnose tug.yaml --reading \"parked pack.POS pack.NEG 52.9 V\" --reading \"drive-forward sol.coil+ pack.NEG 0.1 V\"",
		Args: cobra.ExactArgs(1),
		RunE: func(_ *cobra.Command, args []string) error {
			o, name, err := c.openSheet(args[0], s.sheet)
			if err != nil {
				return err
			}
			return c.diagnose(o, name, s)
		},
	}
	cmd.Flags().StringVar(&s.sheet, "sheet", "", "sheet that the cart is wired by: as-found, plan or as-built")
	cmd.Flags().StringVar(&s.complaint, "complaint", "", "what the customer says")
	cmd.Flags().StringArrayVar(&s.readings, "reading", nil, "one more reading, `\"STATE RED BLACK VALUE\"` or \"STATE WIRE AMPERES\"; can be given again")
	cmd.Flags().BoolVar(&s.json, "json", false, "print one JSON object")
	return cmd
}

func complaintsHelp() string {
	var b strings.Builder
	b.WriteString("Complaints:\n")
	for _, one := range diagnose.Complaints() {
		b.WriteString("  " + one.Name + strings.Repeat(" ", max(1, 18-len(one.Name))) + one.About + "\n")
	}
	return strings.TrimRight(b.String(), "\n")
}

// diagnosis is what the diagnose command prints.
type diagnosis struct {
	job       *model.Job
	sheet     model.SheetName
	complaint string
	readings  []compared
	elsewhere int // readings of other sheets, left out
	verdict   *diagnose.Verdict
	ties      []diagnose.Tie
	next      diagnose.Proposal
	more      bool // next is set
	states    []state.State
	by        meter.Instrument
}

// compared is a reading beside what the sound sheet gives.
type compared struct {
	model.Reading
	expected meter.Reading
	verdict  meter.Verdict
}

// mostTied is how many of the leading suspects are compared with each other.
const mostTied = 12

// diagnose ranks the faults of a sheet and prints them.
func (c *cli) diagnose(o *opened, sheet model.SheetName, s search) error {
	job := *o.job
	job.Readings = slices.Clone(job.Readings)
	for _, text := range s.readings {
		r, err := diagnose.ParseReading(text, sheet)
		if err != nil {
			return err
		}
		job.Readings = append(job.Readings, r)
	}
	d := diagnosis{job: &job, sheet: sheet, complaint: s.complaint, by: meter.Of(job.Meter)}
	if err := d.search(o.lib); err != nil {
		return err
	}
	if err := c.printDiagnosis(d, s.json); err != nil {
		return err
	}
	return d.conclusion()
}

// conclusion is errFound if a reading is not as expected, or nothing on the list gives it.
func (d diagnosis) conclusion() error {
	failed := slices.ContainsFunc(d.readings, func(r compared) bool { return r.verdict == meter.Fail })
	if failed || len(d.verdict.Contradicts) > 0 {
		return errFound
	}
	return nil
}

func (c *cli) printDiagnosis(d diagnosis, asJSON bool) error {
	if asJSON {
		return c.printAsJSON(d.json())
	}
	return c.write(stdio, []byte(d.text()))
}

// search does the work of the command.
func (d *diagnosis) search(lib *model.Catalogue) error {
	found, err := diagnose.New(d.job, d.sheet, lib)
	if err != nil {
		return err
	}
	var readings []model.Reading
	for _, r := range d.job.Readings {
		if r.Sheet == d.sheet {
			readings = append(readings, r)
		}
	}
	d.elsewhere = len(d.job.Readings) - len(readings)
	if d.verdict, err = found.Rank(readings, d.complaint); err != nil {
		return err
	}
	d.states = found.States()
	n := network.Build(d.job, d.job.Sheet(d.sheet), lib)
	for _, r := range readings {
		one := compared{Reading: r, verdict: meter.Between}
		if one.expected, err = meter.Expected(n, &r); err == nil {
			one.verdict = one.expected.Judge(d.by, r.Value.SI(), r.Open)
		}
		d.readings = append(d.readings, one)
	}
	var from diagnose.Place
	if len(readings) > 0 {
		from = found.PlaceOf(&readings[len(readings)-1])
	}
	d.next, d.more = found.Next(d.verdict, from)
	d.ties = found.Ties(d.verdict, mostTied)
	return nil
}
