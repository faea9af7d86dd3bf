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
	if amps <= 0 {
		return Band{Least: math.Inf(1), Most: math.Inf(1), LeastBy: "no current", Source: c.Source, Known: true}
	}
	least, most := c.least(amps), c.most(amps)
	return Band{
		Least: least.seconds, LeastBy: least.by, Most: most.seconds, MostBy: most.by, Source: c.Source,
		Recalled: least.recalled || most.recalled,
		Known:    least.seconds > 0 || !math.IsInf(most.seconds, 1),
	}
}

// bound is one end of a band and what it comes from.
type bound struct {
	seconds  float64
	by       string
	recalled bool
}

// least is the longest time that follows from a gate at or above a current. Of equal ones
// a gate that was read in print goes before one from memory.
func (c Curve) least(amps float64) bound {
	var b bound
	for _, g := range c.gates {
		if g.Amps < amps || g.Least == 0 {
			continue
		}
		if t := c.scaled(g.Least, g.Amps, amps); t > b.seconds || t == b.seconds && b.recalled {
			b = bound{t, "holds " + Span(g.Least) + " at " + figures(g.Amps) + " A" + so(g.Least, t, amps), g.Recalled}
		}
	}
	if t := min(adiabatic, c.preArc/(amps*amps)); t > b.seconds {
		b = bound{t, "takes at least " + figures(c.preArc) + " A2s before it arcs", false}
	}
	return b
}

// most is the shortest time that follows from a gate at or below a current. Arcs, whose
// time does not fall with the current, keep it at 0.01 s unless the total I2t is known.
func (c Curve) most(amps float64) bound {
	b := bound{seconds: math.Inf(1)}
	for _, g := range c.gates {
		if g.Amps > amps || math.IsInf(g.Most, 1) {
			continue
		}
		t := max(c.scaled(g.Most, g.Amps, amps), min(g.Most, adiabatic))
		if t < b.seconds || t == b.seconds && b.recalled {
			b = bound{t, "opens within " + Span(g.Most) + " at " + figures(g.Amps) + " A" + so(g.Most, t, amps), g.Recalled}
		}
	}
	if t := c.total / (amps * amps); c.total > 0 && amps >= c.adiabaticFrom() && t < b.seconds {
		b = bound{t, "lets through at most " + figures(c.total) + " A2s", false}
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

// so is the time that follows from a gate's, in words, unless it is the same.
func so(gate, seconds, amps float64) string {
	if gate == seconds || math.IsInf(gate, 1) {
		return ""
	}
	return ", so " + Span(seconds) + " at " + figures(amps) + " A"
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
func (c Curve) OpensFrom() (amps float64, ok bool) {
	for _, g := range c.gates {
		if !math.IsInf(g.Most, 1) {
			return g.Amps, true
		}
	}
	return 0, false
}
