package protect

import (
	"math"
	"slices"

	"example.com/lugbook/model/network"
	"example.com/lugbook/model/opening"
)

// Conductor is what protects one wire.
type Conductor struct {
	Wire       *network.Link
	Returns    bool    // it is of the return side
	Nominal    float64 // V, of its circuit
	Exposure   network.Exposure
	Capacity   Capacity
	Leads      []Lead
	Greatest   [2]Fault // bolted faults at its from and its to end, sources full, copper cold, bolted to the source
	Least      Fault    // at its far end, sources empty, copper hot, through the way back
	Openings   []Opening
	Missing    []string // what is not recorded and would decide something, each with what it decides
	Unmeasured string   // why it may be left so, but for a length that is not recorded
	Left       string   // why practice leaves it to something else than a device; empty if it does not

	largest float64 // rating of the largest device or source among what limits it, A
	strain  float64 // share of the ampacity that all of them together may let through
}

// Protected says whether what limits the current in the conductor protects it: each
// device by the rule for its rating, and all of them together by the rule for circuits under
// 50 V. A conductor that only leads to a device is protected by that.
func (c *Conductor) Protected() opening.Answer {
	switch {
	case c.Left != "", c.onlyLeads():
		return opening.Yes
	case c.Exposure.IsUnrated() || c.Capacity.Missing != "" || c.Unmeasured != "":
		return opening.NotKnown
	case c.Exposure.Amps <= c.Capacity.Most, c.largest <= c.Capacity.Most && c.Exposure.Amps <= c.strain*c.Capacity.Amps:
		return opening.Yes
	case c.Capacity.Assumed && !math.IsInf(c.Exposure.Amps, 1):
		return opening.NotKnown
	}
	return opening.No
}

// onlyLeads reports whether the conductor runs from where current enters to a device that
// is near enough.
func (c *Conductor) onlyLeads() bool {
	return len(c.Leads) > 0 && !slices.ContainsFunc(c.Leads, func(l Lead) bool { return !l.Within() && !l.limitsItself(c) })
}

func (s *Survey) outline(l *network.Link) *Conductor {
	c := &Conductor{Wire: l, Returns: s.returns[l.A] || s.returns[l.B], Exposure: s.protection.Exact(l), strain: strainOf(s.net.Job())}
	c.Nominal = s.nominalAt(l)
	c.Capacity = CapacityOf(s.net.Job(), s.net.Sheet, l.Wire, c.Nominal)
	hung, measured := IsHungLead(s.net, l)
	switch {
	case math.IsInf(c.Exposure.Amps, 1) && !hung:
	case IsMotorLead(s.net, l):
		c.Left = "a lead of the motor: the controller limits its current (common practice, no source)"
	case hung && !measured:
		c.Unmeasured = "the lead of a part that hangs on a stud: practice leaves a short one without a device, but its length is not recorded"
	case hung:
		c.Left = "the short lead of a part that hangs on a stud: practice leaves it without a device (common practice, no source)"
	}
	for _, d := range c.Exposure.Limits {
		if amps, ok := s.net.Figure(d.Part, d.Element.Amps); ok {
			c.largest = max(c.largest, amps)
		}
	}
	if !c.Returns {
		c.Leads = s.leads(c)
	}
	return c
}

func (s *Survey) conductor(l *network.Link) *Conductor {
	c := *s.Outline(l)
	home := s.homeOf(l)
	for i, at := range []network.Node{l.A, l.B} {
		if c.Returns {
			c.Greatest[i] = s.worst(s.crossing(at, l), at, greatest, coldCelsius)
		} else {
			c.Greatest[i] = s.worst(at, home, greatest, coldCelsius)
		}
		if f := s.leastAt(&c, at); !f.IsNone() && f.Through(l) > c.Least.Through(l) {
			c.Least = f
		}
	}
	c.Openings = s.openings(&c)
	c.Missing = s.missing(&c)
	return &c
}

// leastAt is the least fault at one end of a conductor, through the nearest part to the
// other side.
func (s *Survey) leastAt(c *Conductor, at network.Node) Fault {
	celsius := c.Capacity.Class
	if c.Returns {
		return s.worst(s.crossing(at, c.Wire), at, least, celsius)
	}
	return s.worst(at, s.crossing(at, c.Wire), least, celsius)
}

// homeOf is where the current of what feeds a link comes back to: of a battery or pack
// before what limits itself, of the highest.
func (s *Survey) homeOf(l *network.Link) network.Node {
	if f := s.strongest(l); f != nil {
		return f.Return
	}
	return network.None
}

// strongest is the feed that drives most into a fault at a link: a battery or pack before
// what limits itself, the highest of them; nil if none reaches it.
func (s *Survey) strongest(l *network.Link) *network.Feed {
	var best *network.Feed
	for i := range s.feeds {
		f := &s.feeds[i]
		stronger := best == nil || f.String != nil && best.String == nil ||
			(f.String != nil) == (best.String != nil) && f.Nominal.Value > best.Nominal.Value
		if stronger && (s.reaches(f, l.A) || s.reaches(f, l.B)) {
			best = f
		}
	}
	return best
}

// missing lists what is not recorded of a conductor.
func (s *Survey) missing(c *Conductor) []string {
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
		if curve := s.Curve(d); len(curve.Gates()) == 0 && curve.Note != "" {
			list = append(list, "when "+DeviceName(d)+" opens: "+curve.Note)
		} else if len(curve.Gates()) == 0 {
			list = append(list, "the opening times of "+DeviceName(d)+": whether it opens before the conductor is too hot")
		}
	}
	return slices.Compact(list)
}
