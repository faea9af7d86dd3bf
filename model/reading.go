package model

import (
	"fmt"
	"slices"

	"example.com/lugbook/model/unit"
)

// Reading is what a meter showed on the cart: volts or ohms between two terminals, or
// amperes in a wire. Ohms are read with the power off.
type Reading struct {
	Sheet SheetName   `yaml:"sheet,required" doc:"sheet that shows the wiring as it was when the reading was taken"`
	State string      `yaml:"state,required" doc:"state of the controls it was taken in, such as parked"`
	Red   TerminalRef `yaml:"red" doc:"terminal that the red probe was on, for volts and ohms"`
	Black TerminalRef `yaml:"black" doc:"terminal that the black probe was on"`
	Wire  WireID      `yaml:"wire" doc:"wire that a clamp was round, for amperes; from its from end to its to end counts positive"`
	Value unit.Any    `yaml:"value" doc:"what the meter showed, such as 51.2 V, 14 A or 0.4 ohm"`
	Open  bool        `yaml:"open" doc:"true if the ohmmeter showed no continuity; then there is no value"`
	Time  string      `yaml:"time" doc:"when it was taken"`
	Note  string      `yaml:"note" doc:"anything worth knowing"`
}

// Dimension is what was read: a voltage, a current or a resistance. An open circuit is
// a resistance.
func (r *Reading) Dimension() unit.Dimension {
	if r.Open {
		return unit.Resistance
	}
	return r.Value.Dimension()
}

// Where says in words what was probed: sol.L1 against b1.-, or w3.
func (r *Reading) Where() string {
	if r.Wire != "" {
		return string(r.Wire)
	}
	return r.Red.String() + " against " + r.Black.String()
}

// Shown is what the meter showed.
func (r *Reading) Shown() string {
	if r.Open {
		return "open"
	}
	return r.Value.String()
}

// Meter is what the maker of the shop's meter says of its accuracy: a share of the
// reading and counts of the last digit.
type Meter struct {
	Accuracy unit.Percent `yaml:"accuracy,required" doc:"share of the reading that it may be off by, such as 0.5 %"`
	Counts   int          `yaml:"counts,required" doc:"counts of the last digit that it may be off by besides"`
	Display  int          `yaml:"display,required" doc:"counts that the display goes to, such as 6000"`
	Input    unit.Ohm     `yaml:"input" doc:"input resistance on volts; 10 Mohm if not said"`
}

// leastDisplay and mostDisplay bound the counts of a display: a pointer's scale, and
// more than a laboratory meter has.
const (
	leastDisplay = 100
	mostDisplay  = 100_000_000
)

func (c *checker) meter() {
	m := c.job.Meter
	if m == nil {
		return
	}
	say := func(field, text, message, expected string) {
		c.report(Fault{Path: []string{"meter", field}, Text: text, Message: message, Expected: expected})
	}
	if m.Accuracy.IsZero() || m.Accuracy.Fraction() >= 1 {
		say("accuracy", m.Accuracy.String(), "not a usable accuracy", "a share of the reading such as 0.5 %")
	}
	if m.Display < leastDisplay || m.Display > mostDisplay {
		say("display", fmt.Sprint(m.Display), "not a usable display", "the counts that it goes to, such as 2000 or 6000")
	}
	if m.Counts < 0 || m.Counts > max(m.Display, leastDisplay) {
		say("counts", fmt.Sprint(m.Counts), "not a usable number of counts", "counts of the last digit such as 3")
	}
	if !m.Input.IsZero() && m.Input.Ohms() <= 0 {
		say("input", m.Input.String(), "a meter without input resistance", "a resistance such as 10 Mohm")
	}
}

func (c *checker) readings() {
	for i := range c.job.Readings {
		c.reading([]string{"readings", fmt.Sprint(i)}, &c.job.Readings[i])
	}
}

func (c *checker) reading(path []string, r *Reading) {
	if names := c.job.StateNames(); !slices.Contains(names, r.State) {
		c.report(Fault{Path: join(path, "state"), Text: r.State, Message: "no such state",
			Expected: "a state that follows from the controls, or one of the job's own", Known: names})
	}
	c.readingValue(path, r)
	s := c.job.Sheet(r.Sheet)
	if s == nil {
		c.report(Fault{Path: join(path, "sheet"), Text: string(r.Sheet), Message: "no such sheet", Expected: "a sheet of the job", Known: c.sheetNames()})
		return
	}
	c.probes(path, s, r)
}

func (c *checker) sheetNames() []string {
	var names []string
	for i := range c.job.Sheets {
		names = append(names, string(c.job.Sheets[i].Name))
	}
	return names
}

// readingValue checks that exactly one thing was read and that it fits what was probed.
func (c *checker) readingValue(path []string, r *Reading) {
	path = join(path, "value")
	switch d := r.Value.Dimension(); {
	case r.Open == (d != ""):
		c.report(Fault{Path: path, Text: r.Value.String(), Message: "a reading shows either a value or an open circuit", Expected: "a value such as 51.2 V, or open: true"})
	case r.Wire != "" && (r.Open || d != unit.Current):
		c.report(Fault{Path: path, Text: r.Shown(), Message: "a clamp round a wire reads amperes", Expected: "a current such as 14 A"})
	case r.Wire == "" && !r.Open && d != unit.Voltage && d != unit.Resistance:
		c.report(Fault{Path: path, Text: r.Shown(), Message: "two probes read volts or ohms", Expected: "a voltage such as 51.2 V or a resistance such as 0.4 ohm"})
	}
}

// probes checks that the reading names either a wire or two terminals of the sheet.
func (c *checker) probes(path []string, s *Sheet, r *Reading) {
	switch {
	case r.Wire != "" && (!r.Red.IsZero() || !r.Black.IsZero()):
		c.report(Fault{Path: join(path, "wire"), Text: string(r.Wire), Message: "a reading of both a wire and terminals", Expected: "one of the two"})
	case r.Wire != "":
		if s.Wire(r.Wire) == nil {
			c.report(Fault{Path: join(path, "wire"), Text: string(r.Wire), Message: "no such wire on this sheet", Expected: "a wire of the sheet", Known: allWires(s)})
		}
	case r.Red.IsZero() || r.Black.IsZero():
		c.report(Fault{Path: path, Text: r.Where(), Message: "a reading of nothing", Expected: "red and black, or wire"})
	default:
		c.ref(s, join(path, "red"), r.Red, r.Red.String())
		c.ref(s, join(path, "black"), r.Black, r.Black.String())
		if r.Red == r.Black {
			c.report(Fault{Path: join(path, "black"), Text: r.Black.String(), Message: "both probes are on one terminal", Expected: "another terminal"})
		}
	}
}

func allWires(s *Sheet) []string {
	var ids []WireID
	for i := range s.Wires {
		ids = append(ids, s.Wires[i].ID)
	}
	return wireNames(ids)
}
