package main

import (
	"fmt"
	"io"
	"math"
	"strings"

	"github.com/spf13/cobra"

	"example.com/lugbook/model"
	"example.com/lugbook/model/clean"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/opening"
	"example.com/lugbook/model/protect"
)

func (c *cli) protectCommand() *cobra.Command {
	var sheet, wire string
	var asJSON bool
	cmd := &cobra.Command{
		Use:   "protect FILE",
		Short: "Tell what protects each conductor, and against what",
		Long: "For each conductor: the current that can persist in it and what limits it, how far it runs before a device, what a\n" +
			"bolted fault drives, and whether the device opens before the conductor is too hot. For each device: whether it\n" +
			"breaks what it may meet. For devices in series: whether the nearer one opens first.\n" +
			"Figures aid a decision; local codes and licensed people make it.",
		Example: "  lugbook protect tug.yaml\n  lugbook protect --wire w3 tug.yaml",
		Args:    cobra.ExactArgs(1),
		RunE: func(_ *cobra.Command, args []string) error {
			o, name, err := c.openSheet(args[0], sheet)
			if err != nil {
				return err
			}
			n := network.Build(o.job, o.job.Sheet(name), o.lib)
			if wire != "" && n.WireLink(model.WireID(wire)) == nil {
				return fmt.Errorf("sheet %s has no wire %q", name, wire)
			}
			report := protect.Of(n)
			if asJSON {
				err = c.printAsJSON(protectionJSON(o.job, name, report))
			} else {
				_, err = io.WriteString(c.out, protectionText(o.job, name, report, model.WireID(wire)))
			}
			if err == nil && !report.Holds() {
				return errFound
			}
			return err
		},
	}
	cmd.Flags().StringVar(&sheet, "sheet", "", "sheet to look at: as-found, plan or as-built")
	cmd.Flags().StringVar(&wire, "wire", "", "only this wire")
	cmd.Flags().BoolVar(&asJSON, "json", false, "print one JSON object")
	return cmd
}

// marks lead the lines of a report: a failure must be seen without reading.
var marks = map[opening.Answer]string{opening.Yes: "  ", opening.No: "! ", opening.NotKnown: "? "}

// remarks end the lines that rest on memory.
var remarks = map[bool]string{true: " *"}

func protectionText(j *model.Job, sheet model.SheetName, r *protect.Report, only model.WireID) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s, sheet %s: what protects each conductor\n", clean.Line(j.Title), sheet)
	fmt.Fprintf(&b, "! does not hold   ? not known   * %s\n", opening.FromMemory)
	lines := func(list []protect.Line) {
		for _, l := range list {
			fmt.Fprintf(&b, "  %s%s%s\n", marks[l.Answer], clean.Line(l.Text), remarks[l.Recalled])
		}
	}
	for i := range r.Conductors {
		if k := &r.Conductors[i]; only == "" || only == k.Wire.Wire.ID {
			fmt.Fprintf(&b, "\n%s\n", conductorTitle(k))
			lines(k.Lines())
		}
	}
	if only != "" {
		return b.String()
	}
	for i := range r.Devices {
		fmt.Fprintf(&b, "\ndevice %s\n", clean.Line(protect.DeviceName(r.Devices[i].Link)))
		lines(r.Devices[i].Lines())
	}
	if len(r.Pairs) > 0 {
		b.WriteString("\ndevices in series\n")
	}
	for i := range r.Pairs {
		lines([]protect.Line{r.Pairs[i].Line()})
	}
	return b.String()
}

func conductorTitle(k *protect.Conductor) string {
	w := k.Wire.Wire
	size := "size not recorded"
	if !w.Gauge.IsZero() {
		size = w.Gauge.String()
	}
	side := ""
	if k.Returns {
		side = ", return side"
	}
	return clean.Line(fmt.Sprintf("%s  %s to %s, %s%s", w.ID, w.From, w.To, size, side))
}

type protectJSON struct {
	Job        string             `json:"job"`
	Sheet      model.SheetName    `json:"sheet"`
	Conductors []protectWireJSON  `json:"conductors"`
	Devices    []protectLinesJSON `json:"devices"`
	Series     []lineJSON         `json:"series"`
}

type protectWireJSON struct {
	Wire         model.WireID   `json:"wire"`
	Return       bool           `json:"return"`
	ExposureAmps *float64       `json:"exposure_A"` // null if nothing limits it
	LimitedBy    []string       `json:"limited_by"`
	AmpacityAmps float64        `json:"ampacity_A"`
	MostAmps     float64        `json:"largest_device_A"`
	FaultAmps    []float64      `json:"fault_A"`
	Protected    opening.Answer `json:"protected"`
	Lines        []lineJSON     `json:"lines"`
}

type protectLinesJSON struct {
	Device string     `json:"device"`
	Lines  []lineJSON `json:"lines"`
}

type lineJSON struct {
	Holds      opening.Answer `json:"holds"`
	Text       string         `json:"text"`
	FromMemory bool           `json:"from_memory"`
}

func protectionJSON(j *model.Job, sheet model.SheetName, r *protect.Report) protectJSON {
	out := protectJSON{Job: j.Title, Sheet: sheet, Conductors: []protectWireJSON{}, Devices: []protectLinesJSON{}, Series: []lineJSON{}}
	for i := range r.Conductors {
		k := &r.Conductors[i]
		wire := protectWireJSON{
			Wire: k.Wire.Wire.ID, Return: k.Returns, LimitedBy: []string{}, AmpacityAmps: k.Capacity.Amps, MostAmps: k.Capacity.Most,
			FaultAmps: []float64{k.Greatest[0].Amps, k.Greatest[1].Amps}, Protected: k.Protected(), Lines: linesJSON(k.Lines()),
		}
		if !math.IsInf(k.Exposure.Amps, 1) {
			wire.ExposureAmps = &k.Exposure.Amps
		}
		for _, l := range k.Exposure.Limits {
			wire.LimitedBy = append(wire.LimitedBy, protect.DeviceName(l))
		}
		out.Conductors = append(out.Conductors, wire)
	}
	for i := range r.Devices {
		out.Devices = append(out.Devices, protectLinesJSON{protect.DeviceName(r.Devices[i].Link), linesJSON(r.Devices[i].Lines())})
	}
	for i := range r.Pairs {
		out.Series = append(out.Series, linesJSON([]protect.Line{r.Pairs[i].Line()})...)
	}
	return out
}

func linesJSON(lines []protect.Line) []lineJSON {
	out := make([]lineJSON, len(lines))
	for i, l := range lines {
		out[i] = lineJSON{l.Answer, l.Text, l.Recalled}
	}
	return out
}
