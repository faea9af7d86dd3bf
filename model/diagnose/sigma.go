package diagnose

import (
	"math"
	"slices"

	"example.com/lugbook/model/network"
	"example.com/lugbook/model/unit"
)

// What the model itself may be off by. Our choice: the spread of a pack between low and
// full, of the same once it was read, and of small drops in what nobody records.
const (
	spreadUnread = 0.06
	spreadRead   = 0.015
	spreadFloor  = 0.02 // volts, between two points of the wiring
	spreadPole   = 0.06 // volts, against a pole of the pack: what the way back and dirt add
	spreadFloat  = 0.5  // volts, of a probe that nothing holds
	spreadAmps   = 0.2
	floorAmps    = 0.2
	spreadOhms   = 0.12 // decades
)

// sigma is the standard deviation of a reading about what a span says. A meter's stated
// accuracy counts as two of its deviations.
func (w *weigher) sigma(o *observation, value float64, at span) float64 {
	switch o.kind {
	case Ohms:
		return spreadOhms
	case Amps:
		return math.Hypot(floorAmps, spreadAmps*max(math.Abs(at.lo), math.Abs(at.hi)))
	}
	share := spreadUnread
	if w.read {
		share = spreadRead
	}
	off := 0.0
	if at.floating {
		off = spreadFloat
	}
	nearest := min(max(value, at.lo), at.hi)
	floor := spreadFloor
	if w.c.isPole(o.red) || w.c.isPole(o.black) {
		floor = spreadPole
	}
	model := math.Hypot(floor, share*nearest)
	return math.Hypot(math.Hypot(w.c.meter.Off(unit.Voltage, value)/2, model), off)
}

// isPole reports whether a node is an outer end of a string of batteries or of a pack.
func (c *Case) isPole(at network.Node) bool {
	return slices.ContainsFunc(c.ends, func(p poles) bool { return p.high == at || p.low == at })
}
