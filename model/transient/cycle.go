package transient

import "math"

// Phase is one part of a cycle: for Seconds the value approaches Final with the time
// constant Tau in seconds.
type Phase struct {
	Final, Tau, Seconds float64
}

// approach is the phase begun at a value.
func (p Phase) approach(start float64) Approach {
	return Approach{Start: start, Final: p.Final, Tau: p.Tau}
}

// Cycle is phases that follow each other again and again.
type Cycle []Phase

// Settled are the values at the start of each phase once the cycle has been repeated
// until it no longer changes. The value moves one way within a phase, so the greatest
// and the least of them are the peak and the valley of the whole cycle.
//
// Each phase maps its start to its end by a linear function, and so does the cycle:
// what is found is the value that it maps to itself. Every Tau must be above 0; a
// cycle that takes no time, and so never settles, gives nil.
func (c Cycle) Settled() []float64 {
	exponent, offset := 0.0, 0.0
	for _, p := range c {
		exponent += max(p.Seconds, 0) / p.Tau
		offset = p.approach(offset).At(p.Seconds)
	}
	if !(exponent > 0) {
		return nil
	}
	starts := make([]float64, len(c))
	value := offset / -math.Expm1(-exponent)
	for i, p := range c {
		starts[i] = value
		value = p.approach(value).At(p.Seconds)
	}
	return starts
}
