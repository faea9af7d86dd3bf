package heat

import (
	"fmt"
	"math"

	"example.com/lugbook/model/transient"
)

// Verdict is what a duty that repeats does to a conductor.
type Verdict struct {
	Peak    float64 // C, the highest temperature once nothing changes any more
	Valley  float64 // C, the lowest
	Hottest int     // the stage, from 0, at whose end the peak is
	RMS     float64 // A, of the duty
	Fits    bool    // the peak does not exceed the cable's limit
}

// tolerance is what a peak may exceed the limit by without being called hotter, as a
// share of the rise: what rounding leaves of a current that is exactly the rated one.
const tolerance = 1e-9

// Judge finds the temperatures of a duty that repeats for ever: those at which a
// cycle ends as it began. The error says what is wrong with the duty.
func (c Cable) Judge(d Duty) (Verdict, error) {
	cycle := make(transient.Cycle, len(d))
	for i, s := range d {
		if !(s.Amps >= 0 && s.Seconds > 0) || math.IsInf(s.Amps+s.Seconds, 1) {
			return Verdict{}, fmt.Errorf("stage %d of the duty has %g A for %g s: state a current not below 0 and a time above 0", i+1, s.Amps, s.Seconds)
		}
		cycle[i] = transient.Phase{Final: c.Steady(s.Amps), Tau: c.Tau, Seconds: s.Seconds}
	}
	starts := cycle.Settled()
	if len(starts) == 0 {
		return Verdict{}, fmt.Errorf("the duty has no stages: state %s", dutyExpected)
	}
	v := Verdict{Peak: starts[0], Valley: starts[0], Hottest: len(d) - 1, RMS: d.RMS()}
	for i, start := range starts {
		v.Valley = min(v.Valley, start)
		if start > v.Peak {
			v.Peak, v.Hottest = start, i-1
		}
	}
	v.Fits = v.Peak <= c.Limit+tolerance*(c.Limit-c.Ambient)
	return v, nil
}

// ShortPeriod is the share of the time constant up to which the period of a duty is
// short, so that the temperature hardly follows it.
const ShortPeriod = 0.1

// RMSHolds reports whether the root-mean-square current stands for the duty: its
// period is short against the cable's time constant. The peak then rises at most 1.051
// times as far as that current makes it, z/(1 - exp(-z)) for a period of z time
// constants with all its heat in one instant. A short on-time alone is not enough: a
// short peak now and then has a small root-mean-square however high it is.
func (c Cable) RMSHolds(d Duty) bool { return d.Period() <= ShortPeriod*c.Tau }
