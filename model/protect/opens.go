package protect

import (
	"fmt"
	"math"

	"example.com/lugbook/model/network"
	"example.com/lugbook/model/opening"
)

// Opening is how one device that limits a conductor answers bolted faults along it,
// against the heat that the conductor withstands.
type Opening struct {
	Device   *network.Link
	From, To float64      // A through the device: the least and the greatest of the faults along the conductor
	Amps     float64      // of these the current at which it lets most heat through, or has no bound
	Band     opening.Band // when it opens at Amps
	Heat     float64      // A2s that it lets into the conductor at Amps; infinite without a bound
	Stands   float64      // A2s that the conductor stands, (k S)^2 of IEC 60364-4-43 434.5.2
	K        float64      // A s^0.5 / mm2, from its insulation temperature to SoftCelsius
	Answer   opening.Answer
	Why      string // the numbers in words
}

// SoftCelsius is the temperature in C to which a fault may heat thermoplastic insulation
// (IEC 60364-4-43). Cross-linked insulation stands more; what it is made of is not
// recorded, so it counts for nothing.
const SoftCelsius = 160

// leastShare is the share of a fault's current from which a conductor counts as part of its
// way. Our choice.
const leastShare = 0.1

// openings compares each device that limits the conductor with what it withstands. A
// conductor that only leads to a device is left to its shortness, and so is the lead of a
// part that hangs on a stud.
func (s *Survey) openings(c *Conductor) []Opening {
	stands, k := c.stands()
	if hung, _ := IsHungLead(s.net, c.Wire); hung || stands == 0 || c.onlyLeads() {
		return nil
	}
	var list []Opening
	for _, d := range c.Exposure.Limits {
		if isDevice(d) {
			if o, ok := s.opening(c, d); ok {
				o.K, o.Stands = k, stands
				list = append(list, o.judged(c))
			}
		}
	}
	return list
}

// opening finds what faults along a conductor drive through a device; false if none does.
func (s *Survey) opening(c *Conductor, d *network.Link) (Opening, bool) {
	o := Opening{Device: d}
	share := 0.0
	for _, f := range []Fault{c.Greatest[0], c.Greatest[1], c.Least} {
		amps, wire := f.Through(d), f.Through(c.Wire)
		fed := amps*float64(len(c.Exposure.Limits)+1) >= wire // not by something else alone
		if amps < faultAmps || wire < leastShare*f.Amps || !fed {
			continue
		}
		if o.From == 0 || amps < o.From {
			o.From = amps
		}
		o.To = max(o.To, amps)
		share = max(share, wire/amps)
	}
	if o.To == 0 {
		return o, false
	}
	curve := s.Curve(d)
	amps, heat, bounded := curve.Worst(o.From, o.To)
	o.Amps, o.Band, o.Heat = amps, curve.Band(amps), math.Inf(1)
	if bounded {
		o.Heat = heat * share * share
	}
	return o, true
}

// judged adds the answer and its reason.
func (o Opening) judged(c *Conductor) Opening {
	withstand := o.Stands / (o.Amps * o.Amps)
	switch {
	case !o.Band.Known:
		o.Answer, o.Why = opening.NotKnown, fmt.Sprintf("when it opens is not recorded; a fault drives %.0f to %.0f A through it", o.From, o.To)
	case o.Heat <= o.Stands:
		o.Answer = opening.Yes
		o.Why = fmt.Sprintf("at %.0f A it opens within %s, the conductor stands that for %s", o.Amps, opening.Span(o.Band.Most), opening.Span(withstand))
	case math.IsInf(o.Heat, 1) && o.Amps <= c.Capacity.Amps:
		o.Answer = opening.Yes
		o.Why = fmt.Sprintf("it may carry %.0f A for ever, and so may the conductor", o.Amps)
	case o.Band.Least > withstand:
		o.Answer = opening.No
		o.Why = fmt.Sprintf("at %.0f A it holds for at least %s, the conductor stands that for %s", o.Amps, opening.Span(o.Band.Least), opening.Span(withstand))
	default:
		o.Answer = opening.NotKnown
		o.Why = fmt.Sprintf("at %.0f A it opens within %s, the conductor stands that for %s", o.Amps, opening.Span(o.Band.Most), opening.Span(withstand))
	}
	return o
}
