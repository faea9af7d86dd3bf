package protect

import (
	"math"
	"slices"

	"example.com/lugbook/model/network"
	"example.com/lugbook/model/opening"
)

// Conductor is what protects one wire.
type Conductor struct {
	Wire     *network.Link
	Returns  bool    // it is of the return side
	Nominal  float64 // V, of its circuit
	Exposure network.Exposure
	Capacity Capacity
	Leads    []Lead
	Greatest [2]Fault // bolted faults at its from and its to end, sources full, copper cold, bolted to the source
	Least    Fault    // at its far end, sources empty, copper hot, through the way back
	Openings []Opening
	Missing  []string // what is not recorded and would decide something, each with what it decides
}

// Protected compares the current that can persist in the conductor with the largest
// rating that its rule allows.
func (c *Conductor) Protected() opening.Answer {
	switch {
	case c.Exposure.IsUnrated() || c.Capacity.Missing != "":
		return opening.NotKnown
	case c.Exposure.Amps <= c.Capacity.Most:
		return opening.Yes
	case c.Capacity.Assumed && !math.IsInf(c.Exposure.Amps, 1):
		return opening.NotKnown
	}
	return opening.No
}

func (s *survey) conductor(l *network.Link) Conductor {
	c := Conductor{Wire: l, Returns: s.returns[l.A] || s.returns[l.B], Exposure: s.protection.Exact(l)}
	c.Nominal = s.nominalAt(l)
	c.Capacity = CapacityOf(s.net.Sheet, l.Wire, c.Nominal)
	if !c.Returns {
		c.Leads = s.leads(l)
	}
	home := s.homeOf(l)
	for i, at := range []network.Node{l.A, l.B} {
		if c.Returns {
			c.Greatest[i] = s.worst(s.across[at], at, greatest, coldCelsius)
		} else {
			c.Greatest[i] = s.worst(at, home, greatest, coldCelsius)
		}
		if f := s.leastAt(&c, at); !f.IsNone() && f.Through(l) > c.Least.Through(l) {
			c.Least = f
		}
	}
	c.Openings = s.openings(&c)
	c.Missing = s.missing(&c)
	return c
}

// leastAt is the least fault at one end of a conductor, through the nearest part to the
// other side.
func (s *survey) leastAt(c *Conductor, at network.Node) Fault {
	celsius := c.Capacity.Class
	if c.Returns {
		return s.worst(s.across[at], at, least, celsius)
	}
	return s.worst(at, s.across[at], least, celsius)
}

// homeOf is where the current of the source that feeds a wire comes back to.
func (s *survey) homeOf(l *network.Link) network.Node {
	best := network.None
	volts := 0.0
	for i := range s.feeds {
		f := &s.feeds[i]
		if f.Nominal.Value > volts && (s.reaches(f, l.A) || s.reaches(f, l.B)) {
			best, volts = f.Return, f.Nominal.Value
		}
	}
	return best
}

// missing lists what is not recorded of a conductor.
func (s *survey) missing(c *Conductor) []string {
	var list []string
	if c.Capacity.Missing != "" {
		list = append(list, c.Capacity.Missing+": what it carries")
	}
	if c.Capacity.Assumed {
		list = append(list, "the insulation class: whether it carries more than at 60 C")
	}
	if _, known := s.net.Length(c.Wire.Wire); !known {
		list = append(list, "the length: what a fault at its end drives")
	}
	for _, d := range c.Exposure.Limits {
		if !isDevice(d) {
			continue
		}
		if _, ok := s.net.Figure(d.Part, d.Element.Amps); !ok {
			list = append(list, "the rating of "+DeviceName(d)+": what it lets through")
		}
		if len(s.curve(d).Gates()) == 0 {
			list = append(list, "the opening times of "+DeviceName(d)+": whether it opens before the conductor is too hot")
		}
	}
	return slices.Compact(list)
}
