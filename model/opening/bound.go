package opening

import "math"

// bound is one end of a band at a current, with the gate or the I2t that it comes from.
type bound struct {
	seconds float64
	amps    float64
	holds   bool    // it is the lower end
	gate    Gate    // zero if there is none
	heat    float64 // A2s; 0 if it comes from a gate
}

// words say what the bound comes from; they are empty if there is none.
func (b bound) words() string {
	switch {
	case b.heat > 0 && b.holds:
		return "takes at least " + figures(b.heat) + " A2s before it arcs" + b.so(0)
	case b.heat > 0:
		return "lets through at most " + figures(b.heat) + " A2s" + b.so(0)
	case b.gate.Amps == 0 && b.holds && b.amps <= 0:
		return "no current"
	case b.gate.Amps == 0:
		return ""
	case b.holds:
		return "holds " + Span(b.gate.Least) + " at " + figures(b.gate.Amps) + " A" + b.so(b.gate.Least)
	}
	return "opens within " + Span(b.gate.Most) + " at " + figures(b.gate.Amps) + " A" + b.so(b.gate.Most)
}

// so is the time that follows from a gate's, unless it is the same.
func (b bound) so(gateSeconds float64) string {
	if gateSeconds == b.seconds || math.IsInf(gateSeconds, 1) {
		return ""
	}
	return ", so " + Span(b.seconds) + " at " + figures(b.amps) + " A"
}
