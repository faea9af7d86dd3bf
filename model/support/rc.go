package support

import "math"

// RC is a capacitor that fills through a resistance toward a voltage.
type RC struct {
	Ohms   float64 `json:"ohms"`   // that the capacitor sees, leaks included
	Farads float64 `json:"farads"` // of the capacitor
	Volts  float64 `json:"volts"`  // that it fills to
}

// Tau is the time constant in seconds: resistance times capacitance.
func (c RC) Tau() float64 { return c.Ohms * c.Farads }

// At is the voltage after some seconds from empty: V (1 - exp(-t/RC)).
func (c RC) At(seconds float64) float64 { return -c.Volts * math.Expm1(-seconds/c.Tau()) }

// Reaches is the time in seconds from empty to a voltage: RC ln(V / (V - v)). It is false if the
// capacitor never comes there.
func (c RC) Reaches(volts float64) (seconds float64, ok bool) {
	if volts >= c.Volts || c.Tau() <= 0 {
		return 0, false
	}
	return c.Tau() * math.Log(c.Volts/(c.Volts-volts)), true
}

// Joules is the energy in a capacitor at a voltage, and what a resistor turns into heat that
// fills it from empty: C V^2 / 2.
func Joules(farads, volts float64) float64 { return farads * volts * volts / 2 }
