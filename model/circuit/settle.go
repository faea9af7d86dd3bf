package circuit

// Bounds on the search for a resting state. Each is far above what circuits of carts
// take, and only keeps a search that would not end from running on.
const (
	freePasses  = 30   // in which all diodes and supplies may switch at once
	mostPasses  = 2000 // of settling diodes, supplies and loads
	steadyShare = 1e-12
)

// settle finds currents and voltages with diodes, supplies and loads at rest, nothing
// else moving. Those that find none are a Chatter.
//
// Loads begin with nothing and ask for more as the voltages that are left allow, so that
// of the two voltages at which a resistance can feed a constant power the higher is found.
func (s *state) settle() error {
	for _, i := range s.injecting {
		if s.elements[i].kind == load {
			s.modes[i], s.demand[i] = blocked, 0
		}
	}
	if err := s.rewire(); err != nil {
		return err
	}
	var restless []Element
	drifts, refusals := 0, 0
	for pass := range mostPasses {
		if err := s.checkReturns(); err != nil {
			return err
		}
		s.solve()
		if restless = s.switchModes(restless[:0], pass >= freePasses); len(restless) > 0 {
			if err := s.rewire(); err != nil {
				return err
			}
			continue
		}
		if restless = s.adjustLoads(restless[:0]); len(restless) == 0 {
			return nil
		}
		if drifts++; drifts > patientDrifts {
			refusals = s.hasten(min(refusals, mostRefusals))
		}
	}
	return &Chatter{Elements: restless}
}

// checkReturns looks for currents that are forced and have no way back. Of supplies at
// their limit that have none, the first goes back to giving its voltage, which may give
// the others theirs.
func (s *state) checkReturns() error {
	for _, i := range s.injecting {
		el := &s.elements[i]
		if s.joined(el.a, el.b) {
			continue
		}
		if el.kind == current && el.amperes != 0 {
			return &Open{Element: i}
		}
		if el.kind == supply && s.modes[i] == limited && s.enabled(i) {
			s.modes[i] = giving
			if err := s.rewire(); err != nil {
				return err
			}
		}
	}
	return nil
}

// switchModes puts diodes, supplies and loads into the modes that suit the solution, and
// lists those that had to change: all, or only the first. Switching the first only always
// ends for diodes (Murty's least-index rule for linear complementarity problems), but
// takes longer.
func (s *state) switchModes(switched []Element, firstOnly bool) []Element {
	amperes, volts := s.mesh.largest(s.volts)
	amperes = max(amperes, s.strongest)
	for _, e := range s.switching {
		if mode := s.wanted(e, slack*amperes, slack*volts); mode != s.modes[e] {
			s.modes[e] = mode
			switched = append(switched, e)
			if firstOnly {
				break
			}
		}
	}
	return switched
}

// wanted is the mode that suits an element in the present solution.
func (s *state) wanted(e Element, amperes, volts float64) mode {
	switch el := &s.elements[e]; {
	case el.kind == diode:
		return s.wantedOfDiode(e, amperes, volts)
	case el.kind == load && s.moved[e]:
		return s.wantedOfLoad(e, amperes, volts)
	case el.kind == supply && s.enabled(e):
		return s.wantedOfSupply(e, amperes, volts)
	case el.kind == supply:
		return giving
	}
	return s.modes[e]
}

func (s *state) wantedOfDiode(e Element, amperes, volts float64) mode {
	el := &s.elements[e]
	if s.modes[e] == giving {
		return modeIf(s.currents[e] < -amperes, blocked, giving)
	}
	across, known := s.voltage(el.a, el.b)
	return modeIf(!known || across > el.volts+volts, giving, blocked)
}

func (s *state) wantedOfSupply(e Element, amperes, volts float64) mode {
	el := &s.elements[e]
	across, known := s.voltage(el.a, el.b)
	switch through := s.currents[e]; {
	case s.modes[e] == blocked:
		return modeIf(!known || across < el.volts-volts, giving, blocked)
	case s.modes[e] == limited:
		return modeIf(across > el.volts-el.ohms*el.limit+volts, giving, limited)
	case through > amperes:
		return blocked
	default:
		return modeIf(el.limit > 0 && -through > el.limit+amperes, limited, giving)
	}
}

func modeIf(condition bool, then, otherwise mode) mode {
	if condition {
		return then
	}
	return otherwise
}
