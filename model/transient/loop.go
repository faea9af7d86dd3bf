package transient

import "math"

// Rise is the current in amperes that builds up when a voltage is switched onto a
// resistance in ohms, above 0, with an inductance in henries: a coil that pulls in, or
// a bolted short behind the inductance of its loop.
func Rise(volts, ohms, henries float64) Approach {
	return Approach{Final: volts / ohms, Tau: henries / ohms}
}

// Release is a coil whose current dies away in the part that suppresses its kick:
// Henries and Ohms of the whole loop (coil, and the resistor across it if there is
// one), and the voltage of a diode in it, which is taken not to depend on the current.
type Release struct {
	Amps    float64 // when the coil is switched off
	Ohms    float64 // above 0
	Henries float64
	Drop    float64 // volts of the diode, or of the diode and a reference diode
}

// toZero is the approach that the current follows until it is 0, where a diode stops it.
func (r Release) toZero() Approach {
	return Approach{Start: r.Amps, Final: -r.Drop / r.Ohms, Tau: r.Henries / r.Ohms}
}

// At is the current in amperes after a time in seconds.
func (r Release) At(seconds float64) float64 { return max(0, r.toZero().At(seconds)) }

// TimeToShare is the time in seconds until a share, above 0 and up to 1, of the first
// current is left: a contactor drops out at the share of its coil current that its
// drop-out voltage is of the coil voltage. It reports false for other shares and if no
// current flows.
func (r Release) TimeToShare(share float64) (seconds float64, ok bool) {
	if !(r.Amps > 0 && share > 0 && share <= 1) {
		return 0, false
	}
	return r.toZero().TimeTo(r.Amps * share)
}

// Joules is the energy in the coil when it is switched off, half of Henries times
// Amps squared: what the suppressing part and the coil turn into heat.
func (r Release) Joules() float64 { return r.Henries * r.Amps * r.Amps / 2 }

// vacuumPermeability is the magnetic constant in H/m, 4 pi 1e-7 to nine digits (exact until 2019).
const vacuumPermeability = 4 * math.Pi * 1e-7

// LoopInductance is the inductance in henries per metre of run of two parallel round
// wires that carry a current out and back, mu0/pi (ln(s/r) + 1/4), from the distance s
// between their centres and the radius r of their copper (the textbook formula with
// the field inside the wires, from memory; exact for s well above r). Wires closer
// than touching count as touching. The radius must be above 0.
func LoopInductance(apart, radius float64) float64 {
	return vacuumPermeability / math.Pi * (math.Log(max(apart, 2*radius)/radius) + 0.25)
}
