package circuit

import (
	"math"
	"slices"
)

// mode is what an element with a diode's nature or a current limit is doing.
type mode uint8

const (
	giving  mode = iota // conducting; also where diodes and supplies begin
	blocked             // reverse voltage: no current
	limited             // a supply at its limit; a load that gets what it asks for
)

// state is a trial of how the elements that switch stand.
type state struct {
	nodes    int
	elements []element // those of the circuit, then a leak for each load
	leaks    []Element // by element: the leak beside a load
	moved    []bool    // coils, gated contacts, loads: away from rest
	modes    []mode    // diodes, supplies and acting loads
	demand   []float64 // what acting loads ask for
	mesh     *mesh
	currents []float64
	volts    []float64
}

func newState(c *Circuit) *state {
	s := &state{nodes: c.nodes, elements: slices.Clone(c.elements), leaks: make([]Element, len(c.elements))}
	for i, e := range c.elements {
		s.leaks[i] = None
		if e.kind == load {
			s.leaks[i] = Element(len(s.elements))
			s.elements = append(s.elements, element{kind: resistor, a: e.a, b: e.b, ohms: LeakOhms})
		}
	}
	n := len(s.elements)
	s.moved, s.modes, s.demand = make([]bool, n), make([]mode, n), make([]float64, n)
	return s
}

// closed reports whether a contact is closed.
func (s *state) closed(e Element) bool {
	el := &s.elements[e]
	if el.kind == contact && el.coil != None {
		return el.restClosed != s.moved[el.coil]
	}
	return el.restClosed != s.moved[e]
}

// enabled reports whether a supply has what it needs to give.
func (s *state) enabled(e Element) bool {
	input := s.elements[e].input
	return input == None || s.moved[input]
}

// conducts reports whether an element joins its nodes by an equation of its own.
func (s *state) conducts(e Element) bool {
	switch s.elements[e].kind {
	case resistor, source, coil:
		return true
	case contact, gated:
		return s.closed(e)
	case diode:
		return s.modes[e] == giving
	case supply:
		return s.modes[e] == giving && s.enabled(e)
	case load:
		return s.modes[e] == giving && s.moved[e]
	}
	return false
}

// on is what Solution.On reports.
func (s *state) on(e Element) bool {
	switch s.elements[e].kind {
	case contact, gated:
		return s.closed(e)
	case coil, load:
		return s.moved[e]
	case diode:
		return s.modes[e] == giving
	case supply:
		return s.modes[e] != blocked && s.enabled(e)
	}
	return true
}

// rewire makes the equations anew after something has switched.
func (s *state) rewire() error {
	m, err := newMesh(s.nodes, s.elements, s.conducts)
	s.mesh = m
	return err
}

// solve finds currents and voltages as everything stands.
func (s *state) solve() {
	forced := make([]float64, len(s.elements))
	for i := range s.elements {
		el := &s.elements[i]
		switch {
		case el.kind == current:
			forced[i] = el.amperes
		case el.kind == supply && s.modes[i] == limited && s.enabled(Element(i)):
			forced[i] = -el.limit
		case el.kind == load && s.modes[i] == limited && s.moved[i]:
			forced[i] = s.demand[i]
		}
	}
	s.currents = s.mesh.solve(forced)
	s.volts = s.mesh.potentials(s.currents)
}

func (s *state) joined(a, b Node) bool { return s.mesh.island[a] == s.mesh.island[b] }

// voltage is that of a against b, if it is known.
func (s *state) voltage(a, b Node) (float64, bool) {
	return s.volts[a] - s.volts[b], s.joined(a, b)
}

// on a gate, a voltage that is unknown counts as none.
func (s *state) gateOn(g *Gate) bool {
	fed := func(t Threshold) bool {
		v, ok := s.voltage(t.At, g.Against)
		return ok && v >= t.Volts
	}
	for _, t := range g.Fed {
		if !fed(t) {
			return false
		}
	}
	for _, t := range g.Blocked {
		if fed(t) {
			return false
		}
	}
	return true
}

// slack is how far a current or voltage may stray by rounding before it counts as one
// of the other sign, in parts of the largest one.
const slack = 1e-12

func largest(values []float64) float64 {
	most := 0.0
	for _, v := range values {
		most = max(most, math.Abs(v))
	}
	return most
}

func (s *state) solution() *Solution {
	on := make([]bool, len(s.leaks))
	for i, leak := range s.leaks {
		on[i] = s.on(Element(i))
		if leak != None {
			s.currents[i] += s.currents[leak]
		}
	}
	n := len(s.leaks)
	return &Solution{elements: s.elements[:n], island: s.mesh.island, volts: s.volts, currents: s.currents[:n], on: on}
}
