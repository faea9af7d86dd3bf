package circuit

import "math"

// Bounds on the search for a resting state. Each is far above what circuits of carts
// take, and only keeps a search that would not end from running on.
const (
	freePasses  = 30   // in which all diodes and supplies may switch at once
	mostPasses  = 2000 // of settling diodes, supplies and constant-power loads
	steadyShare = 1e-12
)

// settle finds currents and voltages with diodes, supplies and constant-power loads at
// rest, nothing else moving. Those that find none are a Chatter.
func (s *state) settle() error {
	if err := s.rewire(); err != nil {
		return err
	}
	var restless []Element
	for pass := range mostPasses {
		if err := s.checkReturns(); err != nil {
			return err
		}
		s.solve()
		if restless = s.switchModes(pass >= freePasses); len(restless) > 0 {
			if err := s.rewire(); err != nil {
				return err
			}
			continue
		}
		if restless = s.adjustLoads(); len(restless) == 0 {
			return nil
		}
	}
	return &Chatter{Elements: restless}
}

// checkReturns looks for currents that are forced and have no way back. Of supplies at
// their limit that have none, the first goes back to giving its voltage, which may give
// the others theirs.
func (s *state) checkReturns() error {
	for i := 0; i < len(s.elements); i++ {
		el := &s.elements[i]
		if s.joined(el.a, el.b) {
			continue
		}
		if el.kind == current && el.amperes != 0 {
			return &Open{Element: Element(i)}
		}
		if el.kind == supply && s.modes[i] == limited && s.enabled(Element(i)) {
			s.modes[i] = giving
			if err := s.rewire(); err != nil {
				return err
			}
		}
	}
	return nil
}

// switchModes puts diodes and supplies into the modes that suit the solution, and lists
// those that had to change: all, or only the first. Switching the first only always
// ends for diodes (Murty's least-index rule for linear complementarity problems), but
// takes longer.
func (s *state) switchModes(firstOnly bool) []Element {
	amperes, volts := slack*largest(s.currents), slack*largest(s.volts)
	var switched []Element
	for i := range s.elements {
		e := Element(i)
		if firstOnly && len(switched) > 0 {
			break
		}
		if mode := s.wanted(e, amperes, volts); mode != s.modes[e] {
			s.modes[e] = mode
			switched = append(switched, e)
		}
	}
	return switched
}

// wanted is the mode that suits an element in the present solution.
func (s *state) wanted(e Element, amperes, volts float64) mode {
	el := &s.elements[e]
	across, known := s.voltage(el.a, el.b)
	through := s.currents[e]
	switch {
	case el.kind == diode && s.modes[e] == giving:
		return modeIf(through < -amperes, blocked, giving)
	case el.kind == diode:
		return modeIf(!known || across > el.volts+volts, giving, blocked)
	case el.kind == load:
		return s.wantedOfLoad(e, across, amperes, volts)
	case el.kind != supply || !s.enabled(e):
		return giving
	case s.modes[e] == blocked:
		return modeIf(!known || across < el.volts-volts, giving, blocked)
	case s.modes[e] == limited:
		return modeIf(across > el.volts-el.ohms*el.limit+volts, giving, limited)
	case through > amperes:
		return blocked
	}
	return modeIf(el.limit > 0 && -through > el.limit+amperes, limited, giving)
}

// wantedOfLoad is the mode that suits a load. It gets what it asks for while its
// voltage stays positive, then what there is, and never gives anything back.
func (s *state) wantedOfLoad(e Element, across, amperes, volts float64) mode {
	through := s.currents[e]
	switch {
	case !s.moved[e]:
		return limited
	case s.modes[e] == limited:
		return modeIf(across < -volts, giving, limited)
	case s.modes[e] == blocked:
		return modeIf(across > volts, giving, blocked)
	case through < -amperes:
		return blocked
	}
	return modeIf(through > s.asked(&s.elements[e])+amperes, limited, giving)
}

func modeIf(condition bool, then, otherwise mode) mode {
	if condition {
		return then
	}
	return otherwise
}

// adjustLoads sets the demand of the acting loads to what the present voltages ask
// for, and lists those that had to change.
func (s *state) adjustLoads() []Element {
	var drifting []Element
	for i := range s.elements {
		el := &s.elements[i]
		if el.kind != load || !s.moved[i] || s.modes[i] != limited {
			continue
		}
		amperes := s.asked(el)
		if math.Abs(amperes-s.demand[i]) > steadyShare*amperes {
			drifting = append(drifting, Element(i))
		}
		s.demand[i] = amperes
	}
	return drifting
}

// asked is the current in amperes that a load takes at the present voltage, besides its
// leak. Below its least voltage it takes no more than at that voltage: it is about to
// drop out.
func (s *state) asked(el *element) float64 {
	across := s.volts[el.a] - s.volts[el.b]
	amperes, watts := el.amperes, el.watts
	if el.output > 0 {
		out := &s.elements[el.output]
		given := -(s.volts[out.a] - s.volts[out.b]) * s.currents[el.output]
		watts += max(0, given) / el.efficiency
	}
	if amperes == 0 && watts > 0 {
		amperes = watts / max(el.least, across)
	}
	return max(0, amperes-across/LeakOhms)
}
