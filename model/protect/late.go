package protect

import (
	"math"
	"slices"

	"example.com/lugbook/model/conductor"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/opening"
)

// Late is a device that surely opens later than a conductor withstands a fault.
type Late struct {
	Conductor *Conductor
	Opening   Opening
}

// Late lists the devices that surely open too late for a conductor, in the order of the
// wires. Faults are solved only where a device promises to hold that long at some current.
func (s *Survey) Late() []Late {
	var list []Late
	for _, c := range s.guarded() {
		holds := func(d *network.Link) bool { return isDevice(d) && s.holdsLong(c, d) }
		if !slices.ContainsFunc(c.Exposure.Limits, holds) {
			continue
		}
		full := s.Conductor(c.Wire)
		for _, o := range full.Openings {
			if o.Answer == opening.No && o.Amps >= shortFrom(o.Stands) {
				list = append(list, Late{full, o})
			}
		}
	}
	return list
}

// Unproven is a device of which nothing proves that it opens in time for some conductors.
type Unproven struct {
	Device *network.Link
	Wires  []*network.Link
}

// Unproven lists the devices whose opening times leave open whether a conductor behind them
// withstands a fault, for currents up to what the sources that reach it drive through a
// short at their own terminals, in the order of the sheet.
func (s *Survey) Unproven() []Unproven {
	behind := map[*network.Link][]*network.Link{}
	for _, c := range s.guarded() {
		for _, d := range c.Exposure.Limits {
			if isDevice(d) && !s.proves(c, d) {
				behind[d] = append(behind[d], c.Wire)
			}
		}
	}
	var list []Unproven
	for i := range s.net.Links() {
		if d := &s.net.Links()[i]; len(behind[d]) > 0 {
			list = append(list, Unproven{d, behind[d]})
		}
	}
	return list
}

// guarded lists the outlines of the conductors that are left to a device and of which it is
// known what they withstand. What a device is too large for anyway is left out.
func (s *Survey) guarded() []*Conductor {
	var list []*Conductor
	for i := range s.net.Links() {
		l := &s.net.Links()[i]
		if l.Kind != network.WireLink {
			continue
		}
		if c := s.Outline(l); c.Left == "" && c.Capacity.Missing == "" && !c.onlyLeads() && c.Protected() != opening.No {
			list = append(list, c)
		}
	}
	return list
}

// stands is the heat in A2s that a conductor stands, (k S)^2 of IEC 60364-4-43 434.5.2,
// with k.
func (c *Conductor) stands() (i2t, k float64) {
	area := c.Wire.Wire.Gauge.AreaMM2()
	k = conductor.WithstandConstant(c.Capacity.Class, SoftCelsius)
	return k * k * area * area, k
}

// holdsLong reports whether a device promises to hold, at some current that harms a
// conductor, for longer than that withstands it.
func (s *Survey) holdsLong(c *Conductor, d *network.Link) bool {
	stands, _ := c.stands()
	curve := s.Curve(d)
	if curve.Band(hugeAmps).Least*hugeAmps*hugeAmps > stands {
		return true
	}
	for _, g := range curve.Gates() {
		if g.Amps > c.Capacity.Amps && g.Least*g.Amps*g.Amps > stands {
			return true
		}
	}
	return false
}

// shortFrom is the current in amperes from which a conductor is heated as in a short, all of
// the heat staying in it: IEC 60364-4-43 434.5.2 holds up to 5 s. What is less is an
// overload, and a matter of ampacity and rating.
func shortFrom(stands float64) float64 { return math.Sqrt(stands / conductor.LongestAdiabatic) }

// hugeAmps is more than any source of a cart drives.
const hugeAmps = 1e6

// proves reports whether a device has surely opened, at every current at which it opens at
// all, before a conductor is harmed. What it may carry for ever is left to its rating.
func (s *Survey) proves(c *Conductor, d *network.Link) bool {
	curve := s.Curve(d)
	from, opens := curve.OpensFrom()
	if !opens {
		return false
	}
	stands, _ := c.stands()
	from = max(from, shortFrom(stands))
	upTo := s.ceiling(d)
	if upTo <= from {
		return true
	}
	_, heat, bounded := curve.Worst(from, upTo)
	return bounded && heat <= stands
}

// ceiling bounds the current in amperes of any fault behind a device: what the sources
// that reach it drive through a short at their own terminals.
func (s *Survey) ceiling(d *network.Link) float64 {
	sum, onPack := 0.0, false
	for i := range s.feeds {
		f := &s.feeds[i]
		if inside := f.String != nil && !f.Whole; !inside && (s.reaches(f, d.A) || s.reaches(f, d.B)) {
			sum += s.ShortAmps(f)
			onPack = onPack || f.String != nil
		}
	}
	for _, f := range s.regen {
		if onPack {
			sum += f.Limit
		}
	}
	return min(sum, hugeAmps)
}

// ShortAmps is the current in amperes that a source drives through a short at its own
// terminals, at full charge; infinite if nobody states what limits it. A battery inside a
// string counts with its string.
func (s *Survey) ShortAmps(f *network.Feed) float64 {
	if f.String == nil {
		return f.Limit
	}
	ohms, volts := 0.0, 0.0
	for _, cell := range f.String.Cells {
		inside := s.net.SourceOhms(cell.Link)
		emf := s.fullVolts(cell.Link)
		if !inside.OK || emf == 0 {
			return math.Inf(1)
		}
		ohms += inside.Value
		if cell.Reversed {
			emf = -emf
		}
		volts += emf
	}
	return max(0, volts) / ohms
}

// fullVolts is the voltage of a source at full charge, at rest if its label states the
// current of a short; 0 if neither is known.
func (s *Survey) fullVolts(l *network.Link) float64 {
	rest, _ := s.net.Figure(l.Part, l.Element.Volts)
	if _, stated := l.Part.Rating(network.FaultRating); stated {
		return rest
	}
	full, _ := s.net.Figure(l.Part, l.Element.MaxVolts)
	return max(rest, full)
}
