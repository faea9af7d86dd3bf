package main

import (
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"example.com/lugbook/model"
	"example.com/lugbook/model/clean"
	"example.com/lugbook/model/meter"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/state"
	"example.com/lugbook/model/strictyaml"
)

// probe is what the flags of the meter command ask for.
type probe struct {
	sheet, state, red, black, wire string
	ohms, json                     bool
}

func (c *cli) meterCommand() *cobra.Command {
	var p probe
	cmd := &cobra.Command{
		Use:   "meter FILE",
		Short: "Say what a meter would show: volts, ohms or amperes",
		Long: "Say what a meter would show in a state of the controls: volts between two terminals; with --ohms the\n" +
			"resistance with the power off; with --wire the amperes that a clamp round it shows. Without --sheet the\n" +
			"latest sheet is taken, without --state the cart is parked. What the figure rests on is said with it.",
		Example: "  lugbook meter tug.yaml --state drive-forward --red sol.coil+ --black b1.-\n" +
			"  lugbook meter tug.yaml --ohms --red sol.coil+ --black sol.coil-\n  lugbook meter tug.yaml --state parked --wire w1 --json",
		Args: cobra.ExactArgs(1),
		RunE: func(_ *cobra.Command, args []string) error {
			if err := p.check(); err != nil {
				return err
			}
			o, name, err := c.openSheet(args[0], p.sheet)
			if err != nil {
				return err
			}
			return c.meter(o, name, p)
		},
	}
	cmd.Flags().StringVar(&p.sheet, "sheet", "", "sheet to read: as-found, plan or as-built")
	cmd.Flags().StringVar(&p.state, "state", state.Parked, "state of the controls; lugbook states lists them")
	cmd.Flags().StringVar(&p.red, "red", "", "terminal of the red probe, such as sol.coil+")
	cmd.Flags().StringVar(&p.black, "black", "", "terminal of the black probe")
	cmd.Flags().StringVar(&p.wire, "wire", "", "wire that a clamp is round")
	cmd.Flags().BoolVar(&p.ohms, "ohms", false, "ohms with the power off, not volts")
	cmd.Flags().BoolVar(&p.json, "json", false, "print one JSON object")
	return cmd
}

// check makes sure that either a wire or two probes are asked for.
func (p probe) check() error {
	switch {
	case p.wire != "" && (p.red != "" || p.black != "" || p.ohms):
		return errors.New("a clamp reads amperes alone; give --wire, or --red and --black")
	case p.wire == "" && (p.red == "" || p.black == ""):
		return errors.New("nothing to read; give --red and --black, or --wire")
	}
	return nil
}

// meter reads what was asked for and prints it.
func (c *cli) meter(o *opened, sheet model.SheetName, p probe) error {
	n := network.Build(o.job, o.job.Sheet(sheet), o.lib)
	s, err := stateOf(n, p.state)
	if err != nil {
		return err
	}
	r, err := p.read(n, s)
	var chatter *network.ChatterError
	if errors.As(err, &chatter) {
		if err := c.write(stdio, []byte(clean.Line(err.Error())+"\n")); err != nil {
			return err
		}
		return errFound
	}
	if err != nil {
		return err
	}
	by := meter.Of(o.job.Meter)
	if p.json {
		return c.printAsJSON(struct {
			Job   string          `json:"job"`
			Sheet model.SheetName `json:"sheet"`
			State string          `json:"state"`
			Red   string          `json:"red,omitempty"`
			Black string          `json:"black,omitempty"`
			Wire  string          `json:"wire,omitempty"`
			readingJSON
		}{o.job.Title, sheet, s.Name, p.red, p.black, p.wire, jsonOf(r)})
	}
	return c.write(stdio, []byte(p.text(o.job, sheet, s, r, by)))
}

// read takes the reading that the flags ask for.
func (p probe) read(n *network.Network, s state.State) (meter.Reading, error) {
	if p.wire != "" {
		var known []string
		for i := range n.Sheet.Wires {
			known = append(known, string(n.Sheet.Wires[i].ID))
		}
		if n.WireLink(model.WireID(p.wire)) == nil {
			return meter.Reading{}, lost(n, "wire", p.wire, known)
		}
		return meter.Amps(n, s, model.WireID(p.wire))
	}
	red, err := terminalOf(n, p.red)
	if err != nil {
		return meter.Reading{}, err
	}
	black, err := terminalOf(n, p.black)
	if err != nil {
		return meter.Reading{}, err
	}
	if p.ohms {
		return meter.Ohms(n, s, red, black)
	}
	return meter.Volts(n, s, red, black)
}

// text is the reading for a person.
func (p probe) text(j *model.Job, sheet model.SheetName, s state.State, r meter.Reading, by meter.Instrument) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s, sheet %s, state %s: %s\n", clean.Line(j.Title), sheet, clean.Line(s.Name), clean.Line(s.About))
	what := p.wire
	switch {
	case p.ohms:
		what = p.red + " against " + p.black + ", power off"
	case p.wire == "":
		what = p.red + " against " + p.black
	}
	fmt.Fprintf(&b, "%s: %s\n", clean.Line(what), r.Show(by))
	if text := r.Range(by); text != "" {
		fmt.Fprintf(&b, "  %s\n", text)
	}
	for _, why := range r.Why {
		fmt.Fprintf(&b, "  rests on: %s\n", clean.Line(why))
	}
	return b.String()
}

// stateOf finds a state of a sheet by name.
func stateOf(n *network.Network, name string) (state.State, error) {
	list := n.States()
	if s, ok := state.Find(list, name); ok {
		return s, nil
	}
	var known []string
	for _, s := range list {
		known = append(known, s.Name)
	}
	if near := strictyaml.Nearest(name, known); near != "" {
		return state.State{}, fmt.Errorf("the %s sheet has no state %q; did you mean %q?", n.Sheet.Name, name, near)
	}
	return state.State{}, fmt.Errorf("the %s sheet has no state %q; it has %s", n.Sheet.Name, name, strings.Join(known, ", "))
}

// terminalOf finds a terminal of a sheet by its name.
func terminalOf(n *network.Network, text string) (model.TerminalRef, error) {
	var at model.TerminalRef
	if err := at.UnmarshalText([]byte(text)); err != nil {
		return at, fmt.Errorf("%q: %w", text, err)
	}
	if n.Node(at) != network.None {
		return at, nil
	}
	var known []string
	if p := n.Part(at.Part); p != nil {
		for _, name := range n.Cat.TerminalsOf(n.Sheet, p) {
			known = append(known, model.TerminalRef{Part: p.ID, Name: name}.String())
		}
		if strictyaml.Nearest(text, known) == "" {
			return at, fmt.Errorf("%s has no terminal %q; it has %s", p.ID, at.Name, strings.Join(known, ", "))
		}
		return at, lost(n, "terminal", text, known)
	}
	for i := range n.Size() {
		if p := n.Point(network.Node(i)); !p.At.IsZero() {
			known = append(known, p.At.String())
		}
	}
	return at, lost(n, "terminal", text, known)
}

// lost is the error for what a sheet has not, with the nearest that it has.
func lost(n *network.Network, what, name string, known []string) error {
	if near := strictyaml.Nearest(name, known); near != "" {
		return fmt.Errorf("the %s sheet has no %s %q; did you mean %q?", n.Sheet.Name, what, name, near)
	}
	return fmt.Errorf("the %s sheet has no %s %q", n.Sheet.Name, what, name)
}

// readingJSON is a reading as a program reads it: the value is left out where there is none.
type readingJSON struct {
	Unit     string   `json:"unit"`
	Value    *float64 `json:"value,omitempty"`
	Low      *float64 `json:"low,omitempty"`
	High     *float64 `json:"high,omitempty"`
	Off      *float64 `json:"off,omitempty"`
	Known    bool     `json:"known"`
	Floating bool     `json:"floating,omitempty"`
	Open     bool     `json:"open,omitempty"`
	Why      []string `json:"why"`
}

func jsonOf(r meter.Reading) readingJSON {
	out := readingJSON{Unit: r.Symbol(), Known: r.Known, Floating: r.Floating, Open: r.Open, Why: r.Why}
	if out.Why == nil {
		out.Why = []string{}
	}
	if r.Open {
		return out
	}
	value, low, high, off := rounded(r.Value), rounded(r.Low), rounded(r.High), rounded(r.Off)
	out.Value, out.Off = &value, &off
	if !r.Floating {
		out.Low, out.High = &low, &high
	}
	return out
}
