package transient

// Charge is a capacitor that is charged through a resistor: pre-charge of a
// controller. What the controller itself draws meanwhile stands beside the capacitor.
type Charge struct {
	Volts  float64 // of the source
	Start  float64 // volts across the capacitor when it begins
	Ohms   float64 // of the resistor, with the source and the leads; above 0
	Farads float64
	Leak   float64 // ohms across the capacitor; 0 if there are none
	Draw   float64 // amperes drawn from the capacitor all the time
}

// Voltage is the voltage across the capacitor. Source, resistor, leak and draw act
// like one source of (Volts/Ohms - Draw) R behind R, both resistances in parallel
// (Norton and Thevenin).
func (c Charge) Voltage() Approach {
	parallel := c.Ohms
	if c.Leak > 0 {
		parallel = c.Ohms * c.Leak / (c.Ohms + c.Leak)
	}
	return Approach{Start: c.Start, Final: (c.Volts/c.Ohms - c.Draw) * parallel, Tau: parallel * c.Farads}
}

// Current is the current through the resistor.
func (c Charge) Current() Approach {
	v := c.Voltage()
	return Approach{Start: (c.Volts - v.Start) / c.Ohms, Final: (c.Volts - v.Final) / c.Ohms, Tau: v.Tau}
}

// PeakWatts is the greatest power in the resistor, the one it begins with if the
// capacitor does charge.
func (c Charge) PeakWatts() float64 {
	current := c.Current()
	return c.Ohms * max(current.Start*current.Start, current.Final*current.Final)
}

// ResistorJoules is the energy turned into heat in the resistor after a time in
// seconds. Without leak and draw it nears half of Farads times Volts squared,
// whatever the resistance.
func (c Charge) ResistorJoules(seconds float64) float64 {
	return c.Ohms * c.Current().Squared(seconds)
}

// CapacitorJoules is the energy in the capacitor after a time in seconds.
func (c Charge) CapacitorJoules(seconds float64) float64 {
	v := c.Voltage().At(seconds)
	return c.Farads * v * v / 2
}
