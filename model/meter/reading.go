package meter

import (
	"math"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/state"
	"example.com/lugbook/model/unit"
)

// Reading is what a meter would show. The true value lies between Low and High if what is
// assumed holds; the meter itself may be off by Off besides.
type Reading struct {
	Unit  unit.Dimension // a voltage in V, a current in A or a resistance in ohms
	Value float64
	Low   float64
	High  float64
	Off   float64

	Known    bool     // false if nothing firm decides what the meter shows
	Floating bool     // volts: nothing drives one probe against the other
	Open     bool     // ohms: no continuity; there is no value
	Why      []string // what the reading depends on that nobody has confirmed
}

// Verdict is what a reading says of what was expected.
type Verdict string

// The verdicts.
const (
	Pass    Verdict = "as expected"
	Fail    Verdict = "not as expected"
	Between Verdict = "not decided: a better range or method is needed"
)

// Judge compares what a meter showed with what was expected. The reading passes if all that
// the true value may be by the meter's accuracy is inside the expected range, fails if all
// of it is outside, and is not decided otherwise (guard bands as in JCGM 106:2012, simple
// acceptance with the meter's full tolerance on either side). shown is in the unit of the
// reading; open tells that an ohmmeter showed no continuity.
func (r Reading) Judge(by Instrument, shown float64, open bool) Verdict {
	switch {
	case r.Unit == unit.Current:
		by = clamp
	case r.Open || open:
		if r.Open == open {
			return Pass
		}
		return Fail
	}
	if !r.Known {
		return Between
	}
	off := by.Off(r.Unit, shown)
	switch {
	case shown-off >= r.Low && shown+off <= r.High:
		return Pass
	case shown+off < r.Low || shown-off > r.High:
		return Fail
	}
	return Between
}

// Volts is what a voltmeter shows in a state with its probes on two terminals. The error
// is a [*network.ChatterError] if the sheet comes to no rest, or names a terminal that the
// sheet has not.
func Volts(n *network.Network, s state.State, red, black model.TerminalRef) (Reading, error) {
	b, err := At(n, s)
	if err != nil {
		return Reading{}, err
	}
	return b.Volts(red, black)
}

// Ohms is what an ohmmeter shows between two terminals with the power off: batteries,
// packs, chargers and converters count as taken out, contacts stand as the controls say.
// How to take them out comes with it. Errors are those of Volts.
func Ohms(n *network.Network, s state.State, red, black model.TerminalRef) (Reading, error) {
	b, err := Off(n, s)
	if err != nil {
		return Reading{}, err
	}
	reading, err := b.Ohms(red, black)
	if err != nil {
		return Reading{}, err
	}
	reading.Why = append(reading.Why, dead(n, s, n.Node(red), n.Node(black))...)
	return reading, nil
}

// Amps is what a clamp round a wire shows, from the wire's from end to its to end. Errors
// are those of Volts.
func Amps(n *network.Network, s state.State, wire model.WireID) (Reading, error) {
	b, err := At(n, s)
	if err != nil {
		return Reading{}, err
	}
	return b.Amps(wire)
}

// Expected is what is expected of a reading that was taken on the cart.
func Expected(n *network.Network, r *model.Reading) (Reading, error) {
	s, ok := state.Find(n.States(), r.State)
	if !ok {
		return Reading{}, model.Expected("a state that the sheet has, not " + r.State)
	}
	switch r.Dimension() {
	case unit.Current:
		return Amps(n, s, r.Wire)
	case unit.Resistance:
		return Ohms(n, s, r.Red, r.Black)
	}
	return Volts(n, s, r.Red, r.Black)
}

// exact is a reading of a value with nothing around it.
func exact(of unit.Dimension, value float64) Reading {
	if math.Abs(value) < negligible {
		value = 0
	}
	return Reading{Unit: of, Value: value, Low: value, High: value, Known: true}
}

// negligible is what no meter shows, in volts, amperes or ohms.
const negligible = 1e-9
