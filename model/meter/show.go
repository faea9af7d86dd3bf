package meter

import (
	"fmt"
	"math"

	"example.com/lugbook/model/unit"
)

// symbols are the units that readings are shown in.
var symbols = map[unit.Dimension]string{unit.Voltage: "V", unit.Current: "A", unit.Resistance: "ohm"}

// mostDecimals keeps a figure from claiming more than anybody can read.
const mostDecimals = 3

// Figure is a value of the reading's quantity with as many decimals as the meter shows at
// the reading itself, without its unit.
func (r Reading) Figure(by Instrument, value float64) string {
	if r.Unit == unit.Current {
		by = clamp
	}
	step := by.Step(r.Unit, max(math.Abs(r.Value), 1))
	decimals := min(mostDecimals, max(0, int(math.Round(-math.Log10(step)))))
	text := fmt.Sprintf("%.*f", decimals, value)
	if zero := fmt.Sprintf("-%.*f", decimals, 0.0); text == zero {
		return zero[1:]
	}
	return text
}

// Show is the reading as a meter would, in words where it shows no figure: 53.3 V, open, or
// floating with what the meter pulls it to.
func (r Reading) Show(by Instrument) string {
	switch {
	case r.Open:
		return "open"
	case r.Floating:
		return fmt.Sprintf("floating, about %s %s", r.Figure(by, r.Value), symbols[r.Unit])
	}
	return r.Figure(by, r.Value) + " " + symbols[r.Unit]
}

// Range is between what the true value may lie and what the meter may add, in words; empty
// if there is no value.
func (r Reading) Range(by Instrument) string {
	if r.Open || r.Floating {
		return ""
	}
	return fmt.Sprintf("between %s and %s %s, the meter may be off by %s", r.Figure(by, r.Low), r.Figure(by, r.High), symbols[r.Unit], r.Figure(by, r.Off))
}

// Symbol is the unit of the reading.
func (r Reading) Symbol() string { return symbols[r.Unit] }
