package heat

import (
	"fmt"
	"math"

	"example.com/lugbook/model/conductor"
	"example.com/lugbook/model/transient"
	"example.com/lugbook/model/unit"
)

// capacityPerMM2 is the heat that a metre of copper of 1 mm2 stores, in J/C: 3.45
// J/(C cm3), the constant of IEC 60949 for copper at 20 C.
const capacityPerMM2 = 3.45

// Cable is one conductor where it lies. Of makes it.
type Cable struct {
	Gauge   unit.Gauge
	Ambient float64 // C, at least that of the ampacity table
	Limit   float64 // C, the insulation temperature of the table's column
	Rated   float64 // A that bring it from Ambient to Limit if they flow all the time

	// Tau is the time constant in seconds, c S (Limit - Ambient) / P, where P is the
	// power per metre at Rated and Limit. Derived from 33 CFR 183.425 table 5 with
	// the copper alone as store of heat: a lower bound.
	Tau float64
}

// Of is the thermal model of a conductor by its insulation temperature and the ambient
// in C. As in the ampacity table an ambient below 30 C counts as 30, an insulation
// temperature between two columns as the lower, a size between two rows as the thinner.
// The error says what the table does not cover, or that the ambient leaves nothing.
func Of(gauge unit.Gauge, insulation, ambient float64) (Cable, error) {
	allowed, err := conductor.Ampacity(gauge, insulation, ambient)
	if err != nil {
		return Cable{}, err
	}
	if allowed.Amperes <= 0 || math.IsNaN(ambient) {
		return Cable{}, fmt.Errorf("insulation of %d C may not warm up in an ambient of %g C: lay it where it is cooler, or use a higher class", allowed.Column, ambient)
	}
	return Cable{
		Gauge: gauge, Ambient: max(ambient, conductor.TableAmbient),
		Limit: float64(allowed.Column), Rated: allowed.Amperes,
	}.timed(), nil
}

// Bundled is the conductor among others, where it may carry a share of its current, as
// conductor.BundleFactor gives it. A share that is not above 0 and below 1 changes
// nothing. It warms up as fast at first, and further.
func (c Cable) Bundled(factor float64) Cable {
	if factor > 0 && factor < 1 {
		c.Rated *= factor
	}
	return c.timed()
}

// timed is the cable with its time constant worked out.
func (c Cable) timed() Cable {
	perMetre, _ := conductor.OhmsPerMetre(c.Gauge, c.Limit)
	c.Tau = capacityPerMM2 * c.Gauge.AreaMM2() * (c.Limit - c.Ambient) / (c.Rated * c.Rated * perMetre)
	return c
}

// Steady is the temperature in C at a current that flows all the time: the rise goes
// as the current squared, as in the ambient correction of NEC 310.15(B). The resistance
// is taken as that at Limit, so that up to Limit the conductor is no hotter than this.
func (c Cable) Steady(amps float64) float64 {
	share := amps / c.Rated
	return c.Ambient + (c.Limit-c.Ambient)*share*share
}

// towards is how the conductor goes from one temperature to what it has at a current.
func (c Cable) towards(amps, from float64) transient.Approach {
	return transient.Approach{Start: from, Final: c.Steady(amps), Tau: c.Tau}
}

// After is the temperature in C after a current has flowed for a time in seconds,
// beginning at a temperature.
func (c Cable) After(amps, seconds, from float64) float64 {
	return c.towards(amps, from).At(seconds)
}

// TimeToLimit is how long in seconds a current may flow until the conductor is at its
// limit, from a temperature. It is infinite if the current may flow all the time, and 0
// if the conductor is at its limit already.
func (c Cable) TimeToLimit(amps, from float64) float64 {
	if from >= c.Limit {
		return 0
	}
	if seconds, ok := c.towards(amps, from).TimeTo(c.Limit); ok {
		return seconds
	}
	return math.Inf(1)
}

// ShortTime is the current in amperes that brings the conductor from a temperature to
// its limit in a time in seconds. It is Rated for an infinite time, and 0 if the
// conductor is at its limit already.
func (c Cable) ShortTime(seconds, from float64) float64 {
	if from >= c.Limit || seconds <= 0 {
		return 0
	}
	gone := -math.Expm1(-seconds / c.Tau)
	final := from + (c.Limit-from)/gone
	return c.Rated * math.Sqrt(max(0, final-c.Ambient)/(c.Limit-c.Ambient))
}

// Working is what a conductor settles at when its resistance follows its temperature:
// the temperature in C, and the resistance there in ohms per metre, for the voltage
// drop in work. It reports false for a current at which the resistance grows faster
// than the heat gets away, so that the temperature settles nowhere.
//
// It is the fixed point of T = Ambient + (Steady - Ambient) R(T)/R(Limit), with R
// linear in T.
func (c Cable) Working(amps float64) (celsius, ohmsPerMetre float64, ok bool) {
	const alpha = conductor.TemperatureCoefficient
	perDegree := (c.Steady(amps) - c.Ambient) / conductor.AtTemperature(1, c.Limit)
	if perDegree*alpha >= 1 {
		return 0, 0, false
	}
	celsius = (c.Ambient + perDegree*(1-20*alpha)) / (1 - perDegree*alpha)
	ohmsPerMetre, ok = conductor.OhmsPerMetre(c.Gauge, celsius)
	return celsius, ohmsPerMetre, ok
}
