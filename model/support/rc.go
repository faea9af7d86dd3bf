package support

import "example.com/lugbook/model/transient"

// RC is a capacitor that fills through a resistance toward a voltage, as the source is
// seen from it: leaks beside it are counted in both figures (Thevenin).
type RC struct {
	Ohms   float64 `json:"ohms"`
	Farads float64 `json:"farads"`
	Volts  float64 `json:"volts"`
}

// Tau is the time constant in seconds: resistance times capacitance.
func (c RC) Tau() float64 { return c.Ohms * c.Farads }

// At is the voltage some seconds after it began to fill from empty.
func (c RC) At(seconds float64) float64 { return c.course().At(seconds) }

// Reaches is the time in seconds from empty to a voltage; false if it never comes there.
func (c RC) Reaches(volts float64) (seconds float64, ok bool) { return c.course().TimeTo(volts) }

func (c RC) course() transient.Approach {
	return transient.Approach{Final: c.Volts, Tau: c.Tau()}
}

// Joules is the energy in a capacitor at a voltage, and what a resistor turns into heat that
// fills it from empty: C V^2 / 2.
func Joules(farads, volts float64) float64 { return farads * volts * volts / 2 }
