package network

import (
	"errors"
	"fmt"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/circuit"
	"example.com/lugbook/model/state"
)

// Solution is the steady state of a sheet in one state of its controls.
type Solution struct {
	State state.State

	n        *Network
	solved   *circuit.Solution
	elements []circuit.Element // by link; circuit.None if the link is out of circuit
	bridges  []circuit.Element
}

// ChatterError means that the sheet comes to no rest in a state: something switches
// for ever, as a relay does that breaks its own coil.
type ChatterError struct {
	State string
	Links []*Link // what keeps switching, or decides
	Race  bool    // it comes to rest, but where depends on which of them is faster
}

// Error names the state and the parts.
func (e *ChatterError) Error() string {
	var names []string
	for _, l := range e.Links {
		names = append(names, string(l.Part.ID))
	}
	if e.Race {
		return fmt.Sprintf("%s: where it comes to rest depends on which of %s is faster", e.State, strings.Join(names, ", "))
	}
	return fmt.Sprintf("%s: no rest: %s keeps switching", e.State, strings.Join(names, ", "))
}

// Solve computes the voltages and currents of a state. Figures that nobody recorded
// are replaced by usual ones; WireOhms tells for which wires. The error is a
// *ChatterError if the sheet comes to no rest.
func (n *Network) Solve(s state.State) (*Solution, error) {
	o := n.outcome(s)
	if o.err != nil {
		b := *o.b
		b.state = s
		return nil, b.explain(o.err)
	}
	solution := *o.solution
	solution.State = s
	return &solution, nil
}

// explain turns the numbers of a circuit's error into parts.
func (b *assembler) explain(err error) error {
	var chatter *circuit.Chatter
	var invalid *circuit.Invalid
	switch {
	case errors.As(err, &invalid):
		return fmt.Errorf("%s: %s %s: correct its ratings", b.state.Name, b.name(invalid.Element), invalid.Why)
	case !errors.As(err, &chatter):
		return fmt.Errorf("%s: %w", b.state.Name, err)
	}
	var race *circuit.Race
	e := &ChatterError{State: b.state.Name, Race: errors.As(err, &race)}
	for i := range b.n.links {
		for _, moving := range chatter.Elements {
			if b.elements[i] == moving && b.n.links[i].Part != nil {
				e.Links = append(e.Links, &b.n.links[i])
			}
		}
	}
	return e
}

// name is the wire, or the element of a part, that an element of the circuit stands for.
func (b *assembler) name(e circuit.Element) string {
	for i, built := range b.elements {
		switch l := &b.n.links[i]; {
		case built != e:
		case l.Kind == WireLink:
			return string(l.Wire.ID)
		default:
			return fmt.Sprintf("%s (%s)", l.Part.ID, l.Element.ID)
		}
	}
	return "a part"
}

// Voltage is the voltage of one node against another. It is false if nothing that
// conducts joins them, so that a meter would show nothing certain.
func (s *Solution) Voltage(a, b Node) (volts float64, ok bool) {
	if a == None || b == None {
		return 0, false
	}
	return s.solved.Voltage(circuit.Node(a), circuit.Node(b))
}

// Between is the voltage of one terminal against another: red probe on the first,
// black on the second. It is false if nothing that conducts joins them, or one is not
// on the sheet.
func (s *Solution) Between(red, black model.TerminalRef) (volts float64, ok bool) {
	return s.Voltage(s.n.Node(red), s.n.Node(black))
}

// Current is the current in amperes through a link from A to B; none if the link is out of
// circuit.
func (s *Solution) Current(l *Link) float64 {
	if e := s.elements[l.index]; e != circuit.None {
		return s.solved.Current(e)
	}
	return 0
}

// WireCurrent is the current in amperes through a wire from its from end to its to end;
// false if the sheet has no such wire.
func (s *Solution) WireCurrent(id model.WireID) (amperes float64, ok bool) {
	l := s.n.WireLink(id)
	if l == nil {
		return 0, false
	}
	return s.Current(l), true
}

// Power is what a link takes in watts; negative if it gives.
func (s *Solution) Power(l *Link) float64 {
	if e := s.elements[l.index]; e != circuit.None {
		return s.solved.Power(e)
	}
	return 0
}

// On reports whether a contact is closed, a coil pulled in, a diode conducting, a load
// or converter acting.
func (s *Solution) On(l *Link) bool {
	e := s.elements[l.index]
	return e != circuit.None && s.solved.On(e)
}

// Starved reports whether a load or a converter would act but would itself pull its voltage
// below what it needs.
func (s *Solution) Starved(l *Link) bool {
	e := s.elements[l.index]
	return e != circuit.None && s.solved.Starved(e)
}
