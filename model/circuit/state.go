package circuit

import (
	"math"
	"slices"
	"sync"
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
	given     []element  // those of the circuit
	copied    *[]element // room of elements; nil if they are the circuit's own
	elements  []element  // those of the circuit, then a leak for each load
	leaks     []Element  // by element: the leak beside a load
	movers    []Element  // those that move by what the voltages are
	switching []Element  // those that conduct at times
	injecting []Element  // those that can be a known current
	moved     []bool     // coils, gated contacts, loads: away from rest
	modes     []mode     // diodes, supplies and acting loads
	demand    []float64  // what acting loads ask for
	mesh      *mesh
	wired     []bool // by place in switching: it conducts in the mesh
	conducts  []bool
	ready     bool    // the mesh was wired once
	strongest float64 // amperes that are injected; nothing less than a share of it is told from rounding
	forced    []float64
	currents  []float64
	volts     []float64
}

func newState(c *Circuit) (*state, error) {
	s := &state{leaks: make([]Element, len(c.elements))}
	s.list(c)
	n := len(s.elements)
	flags, figures := make([]bool, n+2*len(s.switching)), make([]float64, 3*n+c.nodes)
	s.moved, s.wired, s.conducts = flags[:n], flags[n:n+len(s.switching)], flags[n+len(s.switching):]
	s.demand, s.forced, s.currents, s.volts = figures[:n], figures[n:2*n], figures[2*n:3*n], figures[3*n:]
	s.modes = make([]mode, n)
	for i := range c.elements {
		s.moved[i] = c.elements[i].kind == load && !c.elements[i].moves()
	}
	var err error
	s.mesh, err = newMesh(c.nodes, s.elements, s.switching, s.watched(c.nodes))
	return s, err
}

// spareElements is room that nothing needs any more.
var spareElements = sync.Pool{New: func() any { return new([]element) }}

// spare gives the room of a state back. The state is of no use after that.
func (s *state) spare() {
	s.mesh.spare()
	if s.copied != nil {
		*s.copied = s.elements
		spareElements.Put(s.copied)
		s.elements, s.copied = nil, nil
	}
}

// list copies the elements, adds the leaks, and sorts them by what they do.
func (s *state) list(c *Circuit) {
	loads := 0
	for i := range c.elements {
		if c.elements[i].kind == load {
			loads++
		}
	}
	s.given = slices.Clip(c.elements)
	s.elements = s.given
	if loads > 0 {
		s.copied = spareElements.Get().(*[]element)
		s.elements = append(slices.Grow((*s.copied)[:0], len(c.elements)+loads), c.elements...)
	}
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
		if e.switches() {
			s.switching = append(s.switching, Element(i))
		}
		if e.injects() {
			s.injecting = append(s.injecting, Element(i))
		}
	}
}

// watched lists, by node, what is on anything that switches or injects, or is looked at.
func (s *state) watched(nodes int) []bool {
	watched := make([]bool, nodes)
	for i := range s.elements {
		e := &s.elements[i]
		if e.kind == coil || e.switches() || e.injects() {
			watched[e.a], watched[e.b] = true, true
		}
		if e.gate == nil {
			continue
		}
		for _, list := range [...][]Threshold{e.gate.Fed, e.gate.Blocked} {
			for _, t := range list {
				watched[t.At], watched[e.gate.Against] = true, true
			}
		}
	}
	return watched
}

// moves reports whether an element moves as a relay does, between two positions and in
// its own time. A load without a condition does not: it acts at once, as diodes do.
func (e *element) moves() bool {
	return e.kind == coil || e.kind == gated || e.kind == load && (e.output > 0 || !e.gate.always())
}

// held is the gate as an element holds it.
func (g Gate) held() *Gate {
	if g.always() && g.Against == 0 {
		return nil
	}
	return &g
}

func (g *Gate) always() bool { return g == nil || len(g.Fed)+len(g.Blocked) == 0 }

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

// joins reports whether a switching element joins its nodes by an equation of its own.
func (s *state) joins(e Element) bool {
	switch s.elements[e].kind {
	case contact, gated:
		return s.closed(e)
	case diode:
		return s.modes[e] == giving
	case supply:
		return s.modes[e] == giving && s.enabled(e)
	}
	return s.modes[e] == giving && s.moved[e] // a load
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
	for i, e := range s.switching {
		s.conducts[i] = s.joins(e)
	}
	if s.ready && slices.Equal(s.conducts, s.wired) {
		return nil
	}
	s.ready = true
	copy(s.wired, s.conducts)
	return s.mesh.wire(s.wired)
}

// solve finds currents and voltages as everything stands.
func (s *state) solve() {
	s.force()
	s.mesh.solve(s.currents, s.volts, s.forced, s.injecting, true)
}

// force sets the currents that are known as everything stands.
func (s *state) force() {
	for _, i := range s.injecting {
		el := &s.elements[i]
		s.forced[i] = 0
		switch {
		case el.kind == current:
			s.forced[i] = el.amperes
		case s.modes[i] != limited:
		case el.kind == supply && s.enabled(i):
			s.forced[i] = -el.limit
		case el.kind == load && s.moved[i]:
			s.forced[i] = s.demand[i]
		}
	}
}

func (s *state) joined(a, b Node) bool {
	return s.mesh.islands[a] == s.mesh.islands[b]
}

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
		return s.gateOn(el.gate)
	}
	if el.output <= 0 || !s.gateOn(el.gate) {
		return s.gateOn(el.gate)
	}
	if s.moved[e] {
		return s.modes[e] == limited
	}
	across, known := s.voltage(el.a, el.b)
	return known && across >= el.volts
}

// gateOn reports whether a gate is on; a voltage that is unknown counts as none.
func (s *state) gateOn(g *Gate) bool {
	if g == nil {
		return true
	}
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

// solution is the settled state as the caller gets it, with the loads that do not act
// for want of what they would pull down themselves.
func (s *state) solution(held []Element) *Solution {
	island := s.mesh.complete(s.currents, s.volts)
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
		elements: s.given, island: island, volts: s.volts, currents: s.currents[:n], on: on, starved: starved,
	}
}
