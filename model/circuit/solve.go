package circuit

import "math"

// Solve finds the steady state that the circuit comes to from rest: coils dropped out,
// loads off. Coils, gated contacts and loads move together, step by step; if that goes
// round in circles, one by one in the order of building, so that of two that exclude each
// other the first wins.
//
// The error is an [Invalid], [Singular] or [Open] circuit, or a [Chatter] that never
// comes to rest.
func (c *Circuit) Solve() (*Solution, error) {
	if err := c.check(); err != nil {
		return nil, err
	}
	s, t := newState(c), trail{}
	for oneByOne := false; ; {
		if err := s.settle(); err != nil {
			return nil, err
		}
		moving := s.moving()
		if len(moving) == 0 {
			return s.solution(), nil
		}
		circling := t.visit(s.moved)
		if circling && oneByOne {
			return nil, &Chatter{Elements: t.toggled()}
		}
		if circling {
			oneByOne = true
			s, t = newState(c), trail{}
			continue
		}
		if oneByOne {
			moving = moving[:1]
		}
		for _, e := range moving {
			s.moved[e] = !s.moved[e]
		}
	}
}

// moving lists the coils, gated contacts and loads that the present voltages move.
func (s *state) moving() []Element {
	var list []Element
	for i := range s.elements {
		el := &s.elements[i]
		across, known := s.voltage(el.a, el.b)
		want := s.moved[i]
		switch el.kind {
		case coil:
			holds := s.moved[i] && math.Abs(across) >= el.dropOut
			want = known && (holds || math.Abs(across) >= el.pullIn)
		case gated:
			want = s.gateOn(&el.gate)
		case load:
			want = known && across >= el.least && s.gateOn(&el.gate)
		}
		if want != s.moved[i] {
			list = append(list, Element(i))
		}
	}
	return list
}
