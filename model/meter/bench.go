package meter

import (
	"fmt"
	"math"
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/state"
	"example.com/lugbook/model/unit"
)

// Bench is a sheet in one state with a meter beside it. It keeps what it solved, so that
// many readings in one state cost little more than one. It is not for concurrent use.
type Bench struct {
	By Instrument // for volts and ohms

	n      *network.Network
	state  state.State
	base   network.Variation // as the sheet is taken to be, batteries as measured
	solved *network.Solution
	inputs []input
	shared []*network.Solution // by input, without a meter's load; nil if not solved yet
	firm   *network.Groups     // what next to no resistance joins
	stiff  *network.Groups     // what a meter's input does not load
	driven *network.Groups     // what anything firm holds
	metal  *network.Groups     // what metal joins in every state
	off    bool                // the power is off
}

// At is a bench with the power on. The error is a [*network.ChatterError] if the sheet
// comes to no rest in the state.
func At(n *network.Network, s state.State) (*Bench, error) {
	return With(n, s, network.Variation{})
}

// Off is a bench with every battery, pack, charger and converter taken out.
func Off(n *network.Network, s state.State) (*Bench, error) {
	v := network.Variation{Dead: true}
	links := n.Links()
	for i := range links {
		if !links[i].Is(model.LoadElement) {
			continue
		}
		if _, plain := resistive(n, &links[i]); !plain { // electronics do not act on an ohmmeter
			v.Changes = append(v.Changes, network.Change{Link: &links[i], Dead: true})
		}
	}
	b, err := With(n, s, v)
	if err == nil {
		b.off = true
	}
	return b, err
}

// With is a bench on a sheet that is otherwise in some respects, such as with a fault.
func With(n *network.Network, s state.State, v network.Variation) (*Bench, error) {
	b := &Bench{By: Of(n.Job().Meter), n: n, state: s, base: v}
	var pack input
	if !v.Dead {
		pack = b.pack()
	}
	solved, err := n.SolveWith(s, b.base)
	if err != nil {
		return nil, err
	}
	b.solved = solved
	open := map[*network.Link]bool{}
	for _, c := range v.Changes {
		open[c.Link] = c.Open
	}
	within := func(ohms float64) *network.Groups {
		return n.Joined(func(l *network.Link) bool { return !open[l] && passes(n, solved, l) <= ohms })
	}
	b.firm, b.stiff, b.driven = within(firmOhms), within(stiffOhms), within(drivenOhms)
	b.metal = n.MetalGroups()
	b.inputs = b.listInputs(pack)
	b.shared = make([]*network.Solution, 2*len(b.inputs))
	return b, nil
}

// Solution is the sheet in the state with no meter on it.
func (b *Bench) Solution() *network.Solution { return b.solved }

// Volts is what a voltmeter shows with its probes on two terminals. A terminal that the
// sheet has not is an error.
func (b *Bench) Volts(red, black model.TerminalRef) (Reading, error) {
	r, k, err := b.nodes(red, black)
	if err != nil {
		return Reading{}, err
	}
	open, _ := b.solved.Voltage(r, k)
	value, stray := open, stiffStrayVolts
	if !b.stiff.Same(r, k) {
		stray = strayVolts
		if value, err = b.loaded(r, k); err != nil {
			return Reading{}, err
		}
	}
	reading := exact(unit.Voltage, value)
	if !b.driven.Same(r, k) {
		reading.Known, reading.Floating = false, true
		reading.Why = []string{fmt.Sprintf("floating: nothing drives %s against %s; a meter of %s pulls it there", red, black, ohmWords(b.By.Input))}
		if held := b.solved.Stored(); !b.off && held[r] != held[k] {
			reading.Why = append(reading.Why, "a controller's capacitor may hold its charge here, up to the pack's volts: discharge it before you trust this")
		}
		return b.finish(reading, stray), nil
	}
	share := 1.0
	if math.Abs(open) > negligible {
		share = value / open
	}
	reading = b.spread(reading, func(i int) (float64, bool) {
		s := b.at(i)
		if s == nil {
			return 0, false
		}
		moved, ok := s.Voltage(r, k)
		return value + share*(moved-open), ok
	})
	return b.finish(b.throttled(reading, r, k), stray), nil
}

// loaded is the voltage between two nodes with a meter on them.
func (b *Bench) loaded(r, k network.Node) (float64, error) {
	s, err := b.n.SolveWith(b.state, b.vary(nil, network.Bridge{A: r, B: k, Ohms: b.By.Input}))
	if err != nil {
		return 0, err
	}
	volts, _ := s.Voltage(r, k)
	return volts, nil
}

// throttled widens a reading with one probe on what a controller in action switches for the
// motor: the pedal and the speed set it, anywhere between nothing and the pack.
func (b *Bench) throttled(reading Reading, r, k network.Node) Reading {
	links := b.n.Links()
	for i := range links {
		l := &links[i]
		if !l.Is(model.LoadElement) || !isTraction(b.n, l) || !b.solved.On(l) || b.metal.Same(r, l.A) == b.metal.Same(k, l.A) {
			continue
		}
		plus := b.n.Node(model.TerminalRef{Part: l.Part.ID, Name: positiveStud(l.Def)})
		if plus == network.None || b.metal.Same(plus, l.A) {
			continue
		}
		most, _ := b.solved.Voltage(plus, l.B)
		reading.Low, reading.High, reading.Known = min(0, reading.Low), max(most, reading.High), false
		reading.Why = append(reading.Why, fmt.Sprintf("%s sets it by pedal and speed, between nothing and the pack", l.Part.ID))
	}
	return reading
}

// Amps is what a clamp round a wire shows, from the wire's from end to its to end.
func (b *Bench) Amps(wire model.WireID) (Reading, error) {
	l := b.n.WireLink(wire)
	if l == nil {
		return Reading{}, fmt.Errorf("the %s sheet has no wire %s", b.n.Sheet.Name, wire)
	}
	reading := b.spread(exact(unit.Current, b.solved.Current(l)), func(i int) (float64, bool) {
		s := b.at(i)
		if s == nil {
			return 0, false
		}
		return s.Current(l), true
	})
	return b.finish(reading, strayAmps), nil
}

// The test source of an ohmmeter: about 1 mA into a short circuit, enough for a diode to
// conduct. Usual of plain meters, from memory. From openOhms on it shows no continuity.
const (
	testVolts = 3
	testOhms  = 3e3
	openOhms  = 2e6
)

// Ohms is what an ohmmeter shows between two terminals. The bench must be one that is off.
func (b *Bench) Ohms(red, black model.TerminalRef) (Reading, error) {
	if !b.off {
		return Reading{}, fmt.Errorf("ohms are read with the power off")
	}
	r, k, err := b.nodes(red, black)
	if err != nil {
		return Reading{}, err
	}
	test := network.Bridge{A: r, B: k, Ohms: testOhms, Volts: testVolts}
	base, err := b.n.SolveWith(b.state, b.vary(nil, test))
	if err != nil {
		return Reading{}, err
	}
	reading := b.spread(exact(unit.Resistance, shownOhms(base)), func(i int) (float64, bool) {
		if !carries(base, b.changes(i)) {
			return 0, false
		}
		s, err := b.n.SolveWith(b.state, b.vary(b.changes(i), test))
		if err != nil {
			return 0, false
		}
		return shownOhms(s), true
	})
	through := b.diodes(base)
	for _, l := range through {
		reading.Why = append(reading.Why, fmt.Sprintf("it reads through diode %s", l.Part.ID))
	}
	if reading.Value >= openOhms*(1-1e-6) {
		return Reading{Unit: unit.Resistance, Known: true, Open: true, Why: reading.Why}, nil
	}
	reading = b.finish(reading, strayOhms)
	reading.Low = max(0, reading.Low)
	return reading, nil
}

// shownOhms is what the ohmmeter takes the current of its test source for.
func shownOhms(s *network.Solution) float64 {
	amps := math.Abs(s.BridgeCurrent(0))
	return min(openOhms, max(0, testVolts/max(amps, testVolts/(2*openOhms))-testOhms))
}

// carries reports whether any of the changed links carries a part of the test current that
// tells.
func carries(s *network.Solution, changes []network.Change) bool {
	return slices.ContainsFunc(changes, func(c network.Change) bool {
		return math.Abs(s.Current(c.Link)) > 1e-3*math.Abs(s.BridgeCurrent(0))
	})
}

// diodes lists the diodes that conduct in a solution.
func (b *Bench) diodes(s *network.Solution) []*network.Link {
	var list []*network.Link
	links := b.n.Links()
	for i := range links {
		if l := &links[i]; l.Is(model.DiodeElement) && s.On(l) && math.Abs(s.Current(l)) > testVolts/openOhms {
			list = append(list, l)
		}
	}
	return list
}

func (b *Bench) nodes(red, black model.TerminalRef) (r, k network.Node, err error) {
	if r, err = b.node(red); err != nil {
		return r, r, err
	}
	k, err = b.node(black)
	return r, k, err
}

func (b *Bench) node(at model.TerminalRef) (network.Node, error) {
	if node := b.n.Node(at); node != network.None {
		return node, nil
	}
	return network.None, &NoTerminalError{Sheet: b.n.Sheet.Name, At: at}
}

// NoTerminalError is a probe on a terminal that the sheet has not.
type NoTerminalError struct {
	Sheet model.SheetName
	At    model.TerminalRef
}

// Error names the terminal and the sheet.
func (e *NoTerminalError) Error() string {
	return fmt.Sprintf("the %s sheet has no terminal %s", e.Sheet, e.At)
}

// vary is the sheet with more changes and with a meter on it. A change of a link that is
// changed already comes on top of that.
func (b *Bench) vary(more []network.Change, bridges ...network.Bridge) network.Variation {
	v := b.base
	v.Changes = merge(v.Changes, more)
	v.Bridges = append(slices.Clone(v.Bridges), bridges...)
	if len(bridges) == 1 { // the meter comes first, so that its current is bridge 0
		v.Bridges = append([]network.Bridge{bridges[0]}, b.base.Bridges...)
	}
	return v
}

func merge(base, more []network.Change) []network.Change {
	if len(more) == 0 {
		return base
	}
	list := slices.Clone(base)
	at := map[*network.Link]int{}
	for i, c := range list {
		at[c.Link] = i
	}
	for _, c := range more {
		i, there := at[c.Link]
		if !there {
			list = append(list, c)
			continue
		}
		list[i].AddOhms += c.AddOhms
		if c.Scale != 0 && list[i].Scale != 0 {
			c.Scale *= list[i].Scale
		}
		if c.Scale != 0 {
			list[i].Scale = c.Scale
		}
	}
	return list
}

// at is the solution with one input at its other figure; nil if that comes to no rest.
func (b *Bench) at(i int) *network.Solution {
	if b.shared[i] == nil {
		s, err := b.n.SolveWith(b.state, b.vary(b.changes(i)))
		if err != nil {
			return nil
		}
		b.shared[i] = s
	}
	return b.shared[i]
}
