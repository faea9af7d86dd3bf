package transient

import "math"

// Approach is a value that goes from Start to Final with the time constant Tau in
// seconds: the distance left shrinks by e in each Tau. It is Final at once if Tau is 0.
type Approach struct {
	Start, Final float64
	Tau          float64
}

// At is the value after a time in seconds, Final + (Start - Final) exp(-t/Tau).
func (a Approach) At(seconds float64) float64 {
	left := a.left(seconds)
	return a.Final*(1-left) + a.Start*left
}

// left is the share of the whole distance that is left after a time.
func (a Approach) left(seconds float64) float64 {
	switch {
	case seconds <= 0:
		return 1
	case a.Tau <= 0:
		return 0
	}
	return math.Exp(-seconds / a.Tau)
}

// TimeTo is the time in seconds until the value is reached,
// Tau ln((Final - Start) / (Final - value)). It reports false if the value does not lie
// between Start and Final; Final itself is never quite reached.
func (a Approach) TimeTo(value float64) (seconds float64, ok bool) {
	switch {
	case value == a.Start:
		return 0, true
	case !(a.Start < value && value < a.Final) && !(a.Start > value && value > a.Final):
		return 0, false
	case a.Tau <= 0:
		return 0, true
	}
	return a.Tau * math.Log((a.Final-a.Start)/(a.Final-value)), true
}

// Squared is the integral of the square of the value over a time in seconds, in the
// value's unit squared times seconds: I2t of a current, V2t of a voltage.
func (a Approach) Squared(seconds float64) float64 {
	if seconds <= 0 {
		return 0
	}
	tau := max(a.Tau, 0)
	gone, goneTwice := 1.0, 1.0
	if tau > 0 {
		gone, goneTwice = -math.Expm1(-seconds/tau), -math.Expm1(-2*seconds/tau)
	}
	distance := a.Start - a.Final
	return a.Final*a.Final*seconds + 2*a.Final*distance*tau*gone + distance*distance*tau/2*goneTwice
}
