package circuit

import (
	"math"
	"slices"
)

// mode is what an element with a diode's nature or a current limit is doing.
type mode uint8

const (
	giving  mode = iota // conducting, where diodes and supplies begin; a load held at its least voltage
	blocked             // no current: reverse voltage, or too little voltage for a load, where loads begin
	limited             // a supply at its limit; a load that gets what it asks for
)

// state is a trial of how the elements that switch stand.
type state struct {
	nodes    int
	elements []element // those of the circuit, then a leak for each load
	leaks    []Element // by element: the leak beside a load
	movers   []Element // those that move by what the voltages are
	moved    []bool    // coils, gated contacts, loads: away from rest
	modes    []mode    // diodes, supplies and acting loads
	demand   []float64 // what acting loads ask for
	mesh     *mesh
	wired    []bool // the elements that conduct in the mesh
	conducts []bool
	forced   []float64
	currents []float64
	volts    []float64
}

func newState(c *Circuit) *state {
	loads := 0
	for i := range c.elements {
		if c.elements[i].kind == load {
			loads++
		}
	}
	s := &state{nodes: c.nodes, leaks: make([]Element, len(c.elements))}
	s.elements = append(make([]element, 0, len(c.elements)+loads), c.elements...)
	for i := range c.elements {
		e := &c.elements[i]
		s.leaks[i] = None
		if e.kind == load {
			s.leaks[i] = Element(len(s.elements))
			s.elements = append(s.elements, element{kind: resistor, a: e.a, b: e.b, ohms: LeakOhms})
		}
		if e.moves() {
			s.movers = append(s.movers, Element(i))
		}
	}
	n := len(s.elements)
	flags, figures := make([]bool, 3*n), make([]float64, 3*n)
	s.moved, s.wired, s.conducts = flags[:n], flags[n:2*n], flags[2*n:]
	s.demand, s.forced, s.currents = figures[:n], figures[n:2*n], figures[2*n:]
	s.modes, s.volts = make([]mode, n), make([]float64, c.nodes)
	for i := range c.elements {
		s.moved[i] = c.elements[i].kind == load && !c.elements[i].moves()
	}
	return s
}

// moves reports whether an element moves as a relay does, between two positions and in
// its own time. A load without a condition does not: it acts at once, as diodes do.
func (e *element) moves() bool {
	return e.kind == coil || e.kind == gated || e.kind == load && (e.output > 0 || !e.gate.always())
}

func (g *Gate) always() bool { return len(g.Fed)+len(g.Blocked) == 0 }

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

// joins reports whether an element joins its nodes by an equation of its own.
func (s *state) joins(e Element) bool {
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
	case coil:
		return s.moved[e]
	case load:
		return s.moved[e] && s.modes[e] == limited
	case diode:
		return s.modes[e] == giving
	case supply:
		return s.modes[e] != blocked && s.enabled(e)
	}
	return true
}

// rewire makes the equations anew if something has switched.
func (s *state) rewire() error {
	for e := range s.conducts {
		s.conducts[e] = s.joins(Element(e))
	}
	if s.mesh == nil {
		s.mesh = newMesh(s.nodes, s.elements)
	} else if slices.Equal(s.conducts, s.wired) {
		return nil
	}
	copy(s.wired, s.conducts)
	return s.mesh.wire(s.wired)
}

// solve finds currents and voltages as everything stands.
func (s *state) solve() {
	for i := range s.elements {
		el := &s.elements[i]
		s.forced[i] = 0
		switch {
		case el.kind == current:
			s.forced[i] = el.amperes
		case el.kind == supply && s.modes[i] == limited && s.enabled(Element(i)):
			s.forced[i] = -el.limit
		case el.kind == load && s.modes[i] == limited && s.moved[i]:
			s.forced[i] = s.demand[i]
		}
	}
	s.mesh.solve(s.currents, s.volts, s.forced, true)
}

func (s *state) joined(a, b Node) bool { return s.mesh.island[a] == s.mesh.island[b] }

// voltage is that of a against b, if it is known.
func (s *state) voltage(a, b Node) (float64, bool) {
	return s.volts[a] - s.volts[b], s.joined(a, b)
}

// wants reports whether the present voltages would have a mover moved from its rest.
func (s *state) wants(e Element) bool {
	el := &s.elements[e]
	switch el.kind {
	case coil:
		across, known := s.voltage(el.a, el.b)
		holds := s.moved[e] && math.Abs(across) >= el.dropOut
		return known && (holds || math.Abs(across) >= el.pullIn)
	case gated:
		return s.gateOn(&el.gate)
	}
	if el.output <= 0 || !s.gateOn(&el.gate) {
		return s.gateOn(&el.gate)
	}
	if s.moved[e] {
		return s.modes[e] == limited
	}
	across, known := s.voltage(el.a, el.b)
	return known && across >= el.volts
}

// gateOn reports whether a gate is on; a voltage that is unknown counts as none.
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

// solution is the settled state as the caller gets it, with the loads that do not act
// for want of what they would pull down themselves.
func (s *state) solution(held []Element) *Solution {
	n := len(s.leaks)
	on, starved := make([]bool, n), make([]bool, n)
	for i, leak := range s.leaks {
		on[i] = s.on(Element(i))
		starved[i] = s.elements[i].kind == load && s.moved[i] && s.modes[i] == giving
		if leak != None {
			s.currents[i] += s.currents[leak]
		}
	}
	for _, e := range held {
		starved[e] = true
	}
	return &Solution{
		elements: s.elements[:n], island: s.mesh.island, volts: s.volts, currents: s.currents[:n], on: on, starved: starved,
	}
}
