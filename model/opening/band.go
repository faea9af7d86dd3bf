package opening

import "math"

// adiabatic is the time in seconds that the I2t of a standard is stated for: from there
// down no heat leaves the fuse, and its I2t is constant (IEC 60269-1).
const adiabatic = 0.01

// Band is when a device opens at one current. Both bounds are promises: the standard or
// the maker allows no device outside them.
type Band struct {
	Least    float64 // it opens no sooner, in seconds; infinite if it holds for ever, 0 if nothing is promised
	Most     float64 // it has opened by then, in seconds; infinite if it may never open
	LeastBy  string  // what Least comes from, in words; empty if there is nothing
	MostBy   string  // what Most comes from, in words; empty if there is nothing
	Source   string  // the standard, or the maker's curve
	Recalled bool    // one of the bounds was put down from memory
	Known    bool    // there is at least one bound
}

// Band is the band of opening times at a current in amperes. From 0.01 s down they are
// virtual times.
func (c Curve) Band(amps float64) Band {
	least, most := c.least(amps), c.most(amps)
	return Band{
		Least: least.seconds, LeastBy: least.words(), Most: most.seconds, MostBy: most.words(), Source: c.Source,
		Recalled: least.gate.Recalled || most.gate.Recalled,
		Known:    least.seconds > 0 || !math.IsInf(most.seconds, 1),
	}
}

// least is the longest time that follows from a gate at or above a current.
func (c Curve) least(amps float64) bound {
	b := bound{amps: amps, holds: true}
	if amps <= 0 {
		b.seconds = math.Inf(1)
		return b
	}
	for _, g := range c.gates {
		if g.Amps < amps || g.Least == 0 {
			continue
		}
		if t := c.scaled(g.Least, g.Amps, amps); t > b.seconds {
			b.seconds, b.gate = t, g
		}
	}
	if t := c.preArc / (amps * amps); t > b.seconds {
		b.seconds, b.gate, b.heat = t, Gate{}, c.preArc
	}
	return b
}

// most is the shortest time that follows from a gate at or below a current. Arcs, whose
// time does not fall with the current, keep it at 0.01 s unless the total I2t is known.
func (c Curve) most(amps float64) bound {
	b := bound{seconds: math.Inf(1), amps: amps}
	for _, g := range c.gates {
		if g.Amps > amps || math.IsInf(g.Most, 1) {
			continue
		}
		t := max(c.scaled(g.Most, g.Amps, amps), min(g.Most, adiabatic))
		if t < b.seconds {
			b.seconds, b.gate = t, g
		}
	}
	if t := c.total / (amps * amps); amps >= c.adiabaticFrom() && t < b.seconds {
		b.seconds, b.gate, b.heat = t, Gate{}, c.total
	}
	return b
}

// scaled is the time at a current that follows from the time of a gate at another. A fuse
// melts by heat: the shorter it takes the less of it is lost, so that its I2t falls as the
// current rises, towards the constant of the adiabatic region. A release has no such law,
// and the time of the gate itself stands.
func (c Curve) scaled(seconds, gateAmps, amps float64) float64 {
	if !c.melts {
		return seconds
	}
	return seconds * (gateAmps / amps) * (gateAmps / amps)
}

// adiabaticFrom is the current from which a device surely opens within 0.01 s by its
// total I2t; infinite if that is not known.
func (c Curve) adiabaticFrom() float64 {
	if c.total == 0 {
		return math.Inf(1)
	}
	return math.Sqrt(c.total / adiabatic)
}

// SlowestWithin is the time in seconds within which the device has surely opened at a
// current in amperes. It reports false if it may never open.
func (c Curve) SlowestWithin(amps float64) (seconds float64, ok bool) {
	most := c.Band(amps).Most
	return most, !math.IsInf(most, 1)
}

// LetThrough is the greatest I2t in A2s that a fault of a prospective current in amperes
// puts through the device until it has opened. It reports false if that has no bound.
func (c Curve) LetThrough(amps float64) (i2t float64, ok bool) {
	most, ok := c.SlowestWithin(amps)
	if !ok {
		return 0, false
	}
	return most * amps * amps, true
}

// OpensFrom is the least current in amperes at which the device surely opens, sooner or
// later. It reports false if no such current is known.
func (c Curve) OpensFrom() (amps float64, ok bool) { return c.OpensWithin(math.MaxFloat64) }

// OpensWithin is the least current in amperes at which the device has surely opened
// within a time in seconds: volts divided by it are the greatest resistance of a fault's
// loop that is cleared in that time. It reports false if no such current is known.
func (c Curve) OpensWithin(seconds float64) (amps float64, ok bool) {
	amps = math.Inf(1)
	for _, g := range c.gates {
		switch {
		case g.Most <= seconds:
			amps = min(amps, g.Amps)
		case c.melts && seconds >= adiabatic && !math.IsInf(g.Most, 1):
			amps = min(amps, g.Amps*math.Sqrt(g.Most/seconds))
		}
	}
	if c.total > 0 {
		amps = min(amps, math.Sqrt(c.total/min(seconds, adiabatic)))
	}
	return amps, !math.IsInf(amps, 1)
}
