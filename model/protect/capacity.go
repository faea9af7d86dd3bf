package protect

import (
	"fmt"

	"example.com/lugbook/model"
	"example.com/lugbook/model/conductor"
	"example.com/lugbook/model/network"
)

// Capacity is the current that a conductor may carry, and how large a device before it
// may be.
type Capacity struct {
	Amps    float64 // for long, at Class and Ambient, among Bundled conductors; 0 if not known
	Most    float64 // largest rating of a device that the rule for the circuit's voltage allows
	Rule    string  // that rule
	Class   float64 // insulation temperature in C that was taken
	Assumed bool    // the insulation is not recorded; Class is what the thinnest insulation stands
	Ambient float64 // C
	Bundled int     // conductors in its bundle, itself included
	Missing string  // what is not recorded, so that nothing is known; empty if all is
}

// worstClass is the lowest insulation temperature in C of 33 CFR 183.425 table 5: what
// a wire of unknown insulation carries at least.
const worstClass = 60

// CapacityOf finds what a wire of a job's sheet carries in a circuit of a nominal voltage
// (33 CFR 183.425 and 183.455, or as the job has them).
func CapacityOf(j *model.Job, s *model.Sheet, w *model.Wire, nominalVolts float64) Capacity {
	c := Capacity{Class: w.Insulation.Degrees(), Ambient: conductor.TableAmbient, Bundled: s.Bundled(w)}
	if w.Gauge.IsZero() {
		c.Missing = "the gauge"
		return c
	}
	if c.Class < worstClass {
		c.Class, c.Assumed = worstClass, true
	}
	allowance, err := conductor.Ampacity(w.Gauge, c.Class, c.Ambient)
	if err != nil {
		c.Missing = fmt.Sprintf("a table for %s", w.Gauge)
		return c
	}
	rule := RatingRule(j, nominalVolts)
	c.Amps = allowance.Amperes * conductor.BundleFactor(c.Bundled, nominalVolts)
	c.Most, c.Rule = rule.Greatest(c.Amps), rule.Basis
	return c
}

// nominalAt is the nominal voltage of the circuit that a wire belongs to: of the feed
// that stands highest over its return at the wire in any state, else of the system.
func (s *Survey) nominalAt(l *network.Link) float64 {
	if volts, done := s.nominals[l]; done {
		return volts
	}
	volts := 0.0
	for i := range s.feeds {
		f := &s.feeds[i]
		if s.reaches(f, l.A) || s.reaches(f, l.B) {
			volts = max(volts, f.Nominal.Value)
		}
	}
	if volts == 0 {
		volts = s.net.SystemVolts()
	}
	s.nominals[l] = volts
	return volts
}

// reaches reports whether a feed stands at a node, or its current returns there, in some state.
func (s *Survey) reaches(f *network.Feed, at network.Node) bool {
	if s.fedBy(f)[at] {
		return true
	}
	if !s.returns[at] {
		return false
	}
	for _, st := range s.states {
		if _, sure := st.solution.Voltage(at, f.Return); sure && st.solution.On(f.Link) {
			return true
		}
	}
	return false
}

// fedBy marks the nodes at which a feed stands in some state.
func (s *Survey) fedBy(f *network.Feed) []bool {
	if marks, done := s.fed[f]; done {
		return marks
	}
	marks := make([]bool, s.net.Size())
	for _, i := range s.distinct {
		for at, live := range s.states[i].solution.LiveFrom(f, s.returns) {
			marks[at] = marks[at] || live
		}
	}
	s.fed[f] = marks
	return marks
}
