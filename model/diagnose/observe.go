package diagnose

import (
	"fmt"
	"math"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/strictyaml"
	"example.com/lugbook/model/unit"
)

// Kind is what a meter is set to.
type Kind string

// The kinds of reading.
const (
	Volts Kind = "V"
	Ohms  Kind = "ohm"
	Amps  Kind = "A"
)

// observation is a reading on the network.
type observation struct {
	kind       Kind
	state      int
	red, black network.Node
	link       int     // of a clamp
	value      float64 // ohms on the scale of logOhms
}

// openOhms is where an ohmmeter shows no continuity any more.
const openOhms = 10e6

// leadOhms is what the leads of a meter add. From memory.
const leadOhms = 0.3

// logOhms is the scale that resistances are compared on: decades above the leads.
func logOhms(ohms float64) float64 { return math.Log10(min(max(ohms, 0), openOhms) + leadOhms) }

// observe finds the places of a reading; the error says what is not on the sheet, with the
// nearest name.
func (c *Case) observe(r *model.Reading) (observation, error) {
	o := observation{red: network.None, black: network.None, link: -1, state: -1}
	var names []string
	for i := range c.states {
		names = append(names, c.states[i].Name)
		if c.states[i].Name == r.State {
			o.state = i
		}
	}
	if o.state < 0 {
		return o, c.unknown("state", r.State, names)
	}
	if r.Wire != "" {
		link := c.n.WireLink(r.Wire)
		if link == nil {
			return o, c.unknown("wire", string(r.Wire), c.wireNames())
		}
		o.kind, o.link, o.value = Amps, c.number[link], r.Value.SI()
		return o, nil
	}
	for _, end := range []struct {
		at   model.TerminalRef
		node *network.Node
	}{{r.Red, &o.red}, {r.Black, &o.black}} {
		if *end.node = c.n.Node(end.at); *end.node == network.None {
			return o, c.unknown("terminal", end.at.String(), c.terminalNames())
		}
	}
	o.kind, o.value = Volts, r.Value.SI()
	if r.Dimension() == unit.Resistance {
		o.kind, o.value = Ohms, logOhms(r.Value.SI())
		if r.Open {
			o.value = logOhms(openOhms)
		}
	}
	return o, nil
}

// unknown is the error of a name that the sheet does not have.
func (c *Case) unknown(what, name string, known []string) error {
	if near := strictyaml.Nearest(name, known); near != "" {
		return fmt.Errorf("no %s %q on sheet %s; did you mean %q?", what, name, c.sheet.Name, near)
	}
	return fmt.Errorf("no %s %q on sheet %s", what, name, c.sheet.Name)
}

func (c *Case) wireNames() []string {
	var names []string
	for i := range c.sheet.Wires {
		names = append(names, string(c.sheet.Wires[i].ID))
	}
	return names
}

func (c *Case) terminalNames() []string {
	var names []string
	for i := range c.sheet.Parts {
		p := &c.sheet.Parts[i]
		for _, name := range c.n.Cat.TerminalsOf(c.sheet, p) {
			names = append(names, string(p.ID)+"."+name)
		}
	}
	return names
}

// predict is what a variant gives at an observation's place.
func (p *solver) predict(v int, o *observation) span {
	if o.kind == Ohms {
		return p.resistance(v, o)
	}
	return p.got[v][o.state].both(func(got *outcome) span {
		if o.kind == Amps {
			return span{lo: got.amps[o.link], hi: got.amps[o.link]}
		}
		if got.island[o.red] != got.island[o.black] {
			return span{floating: true}
		}
		volts := got.volts[o.red] - got.volts[o.black]
		return span{lo: volts, hi: volts}
	})
}

// ohmsKey is a place where an ohmmeter stood.
type ohmsKey struct {
	v, state   int
	red, black network.Node
}

// testAmps is the current of an ohmmeter. Usual for digital meters, from memory.
const testAmps = 0.5e-3

// resistance is what an ohmmeter reads with the power off, on the scale of logOhms. It drives its current from red to black.
func (p *solver) resistance(v int, o *observation) span {
	key := ohmsKey{v: v, state: o.state, red: o.red, black: o.black}
	if got, known := p.ohms[key]; known {
		return got
	}
	w := p.variation(v, nil)
	w.Dead = true
	w.Bridges = append(w.Bridges[:len(w.Bridges):len(w.Bridges)],
		network.Bridge{A: o.red, B: o.black, Amps: testAmps}, network.Bridge{A: o.red, B: o.black, Ohms: openOhms})
	p.solves.Add(1)
	got := span{restless: true}
	if s, err := p.n.SolveWith(p.states[o.state], w); err == nil {
		volts, _ := s.Voltage(o.red, o.black)
		at := logOhms(math.Abs(volts) / testAmps)
		got = span{lo: at, hi: at}
	}
	p.ohms[key] = got
	return got
}
