package circuit

// Solution is the steady state of a circuit.
type Solution struct {
	elements []element
	island   []int
	volts    []float64
	currents []float64
	on       []bool
	starved  []bool
}

// Island numbers the group of nodes that conducting elements join with a node, in the
// order of their first nodes.
func (s *Solution) Island(n Node) int { return s.island[n] }

// Voltage is the voltage of a against b. It reports false if no conducting element
// joins them, so that the voltage is unknown.
func (s *Solution) Voltage(a, b Node) (volts float64, ok bool) {
	if s.island[a] != s.island[b] {
		return 0, false
	}
	return s.volts[a] - s.volts[b], true
}

// Current is the current through an element from its first node to its second.
func (s *Solution) Current(e Element) float64 { return s.currents[e] }

// On reports whether a contact is closed, a coil pulled in, a diode conducting, a load
// or the input of a converter acting, which is having what it asks for, a supply giving;
// always true of other elements.
func (s *Solution) On(e Element) bool { return s.on[e] }

// Starved reports whether a load or the input of a converter would act but cannot: it
// would itself pull its voltage below what it needs, as behind too high a resistance. A
// load then takes what there is at its least voltage, a converter or a load that cuts
// itself off by its gate takes nothing.
func (s *Solution) Starved(e Element) bool { return s.starved[e] }

// Power is what an element takes in watts; negative if it gives.
func (s *Solution) Power(e Element) float64 {
	if s.currents[e] == 0 {
		return 0
	}
	return s.across(e) * s.currents[e]
}

// across is the voltage over an element, by its own equation where it has one: exact
// even where a difference of node voltages is not.
func (s *Solution) across(e Element) float64 {
	el := &s.elements[e]
	switch el.kind {
	case resistor, source, contact, gated, coil, diode:
		return el.ohms*s.currents[e] + el.volts
	}
	return s.volts[el.a] - s.volts[el.b]
}

// Balance is the sum of the powers of all the elements: zero but for rounding.
func (s *Solution) Balance() float64 {
	sum := 0.0
	for e := range s.elements {
		sum += s.Power(Element(e))
	}
	return sum
}
