package meter

import (
	"fmt"
	"math"

	"example.com/lugbook/model"
	"example.com/lugbook/model/unit"
)

// Instrument is a meter by what its maker says of it.
type Instrument struct {
	Share   float64 // of the reading that it may be off by
	Counts  float64 // of the last digit that it may be off by besides
	Display float64 // counts that the display goes to
	Input   float64 // ohms of input resistance on volts
	Assumed bool    // nobody recorded the meter: usual figures stand for it
}

// usualInput is the input resistance in ohms of a digital voltmeter on its volt ranges.
// Common practice, from memory.
const usualInput = 10e6

// usual is a plain meter, for where none is recorded: 1 % and 5 counts of a 2000-count
// display. Our choice on the safe side.
var usual = Instrument{Share: 0.01, Counts: 5, Display: 2000, Input: usualInput, Assumed: true}

// clamp is a plain DC clamp: 2 % and 5 counts of a 2000-count display. From memory.
var clamp = Instrument{Share: 0.02, Counts: 5, Display: 2000, Assumed: true}

// Of is the meter that a job records, or a usual one.
func Of(m *model.Meter) Instrument {
	if m == nil {
		return usual
	}
	i := Instrument{Share: m.Accuracy.Fraction(), Counts: float64(m.Counts), Display: float64(m.Display), Input: usualInput}
	if !m.Input.IsZero() {
		i.Input = m.Input.Ohms()
	}
	return i
}

// String says what the meter may be off by.
func (i Instrument) String() string {
	text := i.figures()
	if i.Assumed {
		text += ", assumed: no meter is recorded"
	}
	return text
}

func (i Instrument) figures() string {
	return fmt.Sprintf("%.3g %% + %g counts of %g", 100*i.Share, i.Counts, i.Display)
}

// finest is the finest step that a meter shows of each quantity: 0.1 mV, 10 mA by a
// clamp, 0.1 ohm. Usual of plain meters, from memory.
var finest = map[unit.Dimension]float64{unit.Voltage: 1e-4, unit.Current: 0.01, unit.Resistance: 0.1}

// Step is the resolution of the range that a value is read on: the finest decade in which
// the display still holds it.
func (i Instrument) Step(of unit.Dimension, value float64) float64 {
	step := finest[of]
	for math.Abs(value) > i.Display*step*(1+1e-9) {
		step *= 10
	}
	return step
}

// Off is how far a reading may be off: the meter's share of it and its counts of the last
// digit, as makers state accuracy (+-(% of reading + counts)).
func (i Instrument) Off(of unit.Dimension, value float64) float64 {
	return i.Share*math.Abs(value) + i.Counts*i.Step(of, value)
}
