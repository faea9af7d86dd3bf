package circuit

import "math"

// A load takes what it asks for while its voltage is at least its least one, and nothing
// below that. Between, it is starved: what feeds it can hold its least voltage, and gives
// less than it asks for. So its current never falls as its voltage rises to the least one,
// and a network of such loads of constant current has one solution, whatever the order in
// which they come on (Duffin, Nonlinear networks IIa, Bulletin of the American Mathematical
// Society 53, 1947; from memory).

// wantedOfLoad is the mode that suits an acting load, other than beginning to take.
func (s *state) wantedOfLoad(e Element, amperes, volts float64) mode {
	el := &s.elements[e]
	switch s.modes[e] {
	case limited:
		short := s.volts[el.a]-s.volts[el.b] < el.volts-volts
		return modeIf(short, modeIf(s.demand[e] > 0, giving, blocked), limited)
	case giving:
		if s.currents[e] < -amperes {
			return blocked
		}
		s.demand[e] = s.asked(el, s.volts[el.a]-s.volts[el.b])
		return modeIf(s.currents[e] > s.demand[e]+amperes, limited, giving)
	}
	return blocked
}

// adjustLoads sets the demand of the acting loads to what the present voltages ask
// for, and lists those that had to change.
func (s *state) adjustLoads(drifting []Element) []Element {
	for _, i := range s.injecting {
		el := &s.elements[i]
		if el.kind != load || !s.moved[i] || s.modes[i] == giving {
			continue
		}
		across := s.volts[el.a] - s.volts[el.b]
		if s.modes[i] == blocked {
			if across < el.volts {
				continue
			}
			s.modes[i], s.demand[i] = limited, 0
		}
		amperes := s.asked(el, across)
		if math.Abs(amperes-s.demand[i]) > steadyShare*amperes {
			drifting = append(drifting, i)
		}
		s.demand[i] = amperes
	}
	return drifting
}

// asked is the current in amperes that a load takes at a voltage, besides its leak.
// Below its least voltage it takes no more than at that voltage.
func (s *state) asked(el *element, across float64) float64 {
	amperes, watts := el.amperes, s.watts(el)
	if amperes == 0 && watts > 0 {
		amperes = watts / max(el.volts, across)
	}
	return max(0, amperes-across/LeakOhms)
}

// watts is the constant power that a load asks for.
func (s *state) watts(el *element) float64 {
	if el.output <= 0 {
		return el.watts
	}
	out := &s.elements[el.output]
	given := -(s.volts[out.a] - s.volts[out.b]) * s.currents[el.output]
	return el.watts + max(0, given)/el.efficiency
}

// patientDrifts is how often the demands are put to what the voltages ask for before
// Newton's method helps: a feed near the most power that it can give needs it.
const patientDrifts = 15

// mostRefusals is how often the push on loads that ask in vain doubles.
const mostRefusals = 20

// hasten replaces the demands by those that Newton's method gives, as long as it asks
// each load for more. From below it never passes the first solution of a single load. Where
// there is none near, the loads that ask in vain are pushed on, the harder the more often.
func (s *state) hasten(refusals int) int {
	var loads []Element
	for _, i := range s.injecting {
		if s.elements[i].kind == load && s.moved[i] && s.modes[i] == limited && s.elements[i].amperes == 0 {
			loads = append(loads, i)
		}
	}
	n := len(loads)
	rows := make([][]float64, n)
	for k, e := range loads {
		rows[k] = make([]float64, n+1)
		rows[k][n] = s.demand[e] - s.forced[e]
		if rows[k][n] < 0 {
			return refusals
		}
	}
	s.fillSlopes(rows, loads)
	hopeless := make([]bool, n)
	for k := range loads {
		hopeless[k] = rows[k][k] < 0.5
	}
	step := eliminate(rows)
	refused := false
	for _, x := range step {
		refused = refused || !(x >= 0) || math.IsInf(x, 0)
	}
	for k, e := range loads {
		if !refused {
			s.demand[e] = s.forced[e] + step[k]
		} else if hopeless[k] {
			s.demand[e] += (s.demand[e] - s.forced[e]) * math.Exp2(float64(refusals))
		}
	}
	if refused {
		refusals++
	}
	return refusals
}

// fillSlopes sets row k, column j to how much the gap between what load k asks for and what it gets
// closes by one ampere more into load j.
func (s *state) fillSlopes(rows [][]float64, loads []Element) {
	injected, currents := make([]float64, len(s.elements)), make([]float64, len(s.elements))
	volts := make([]float64, len(s.volts))
	for j, source := range loads {
		injected[source] = 1
		s.mesh.solve(currents, volts, injected, s.injecting, false)
		injected[source] = 0
		for k, e := range loads {
			el := &s.elements[e]
			across, slope := s.volts[el.a]-s.volts[el.b], volts[el.a]-volts[el.b]
			asked := -s.watts(el)/(across*across)*slope - slope/LeakOhms
			if el.output > 0 && s.watts(el) > el.watts {
				out := &s.elements[el.output]
				given := (volts[out.a]-volts[out.b])*s.currents[el.output] + (s.volts[out.a]-s.volts[out.b])*currents[el.output]
				asked -= given / el.efficiency / across
			}
			rows[k][j] = -asked
		}
		rows[j][j]++
	}
}

// eliminate solves the linear equations of an augmented matrix, which it overwrites. Not
// a number comes of a singular one.
func eliminate(rows [][]float64) []float64 {
	n := len(rows)
	for i := range n {
		best := i
		for k := i + 1; k < n; k++ {
			if math.Abs(rows[k][i]) > math.Abs(rows[best][i]) {
				best = k
			}
		}
		rows[i], rows[best] = rows[best], rows[i]
		for k := i + 1; k < n; k++ {
			share := rows[k][i] / rows[i][i]
			for j := i; j <= n; j++ {
				rows[k][j] -= share * rows[i][j]
			}
		}
	}
	x := make([]float64, n)
	for i := n - 1; i >= 0; i-- {
		sum := rows[i][n]
		for j := i + 1; j < n; j++ {
			sum -= rows[i][j] * x[j]
		}
		x[i] = sum / rows[i][i]
	}
	return x
}
