package diagnose

import (
	"math"

	"example.com/lugbook/model"
	"example.com/lugbook/model/unit"
)

// meterOf is the shop's meter by the job's record, or a usual one: 1 % and 5 counts of a
// display of 2000.
func meterOf(job *model.Job) model.Meter {
	if job.Meter != nil {
		return *job.Meter
	}
	return model.Meter{Accuracy: unit.Pct(1), Counts: 5, Display: 2000}
}

// finest is the finest range of a voltmeter in volts, full scale over counts as on the
// 200 mV range of a 2000-count display.
const finest = 0.2

// astray is how far a meter may be off at a reading: its share and its counts on the
// range that it chooses, decade by decade.
func astray(m model.Meter, value float64) float64 {
	value = math.Abs(value)
	full := finest * float64(m.Display) / 2000
	for full < value && full < 2000 {
		full *= 10
	}
	return m.Accuracy.Fraction()*value + float64(m.Counts)*full/float64(m.Display)
}

// resolution is the last digit of the range that a meter chooses.
func resolution(m model.Meter, value float64) float64 {
	full := finest * float64(m.Display) / 2000
	for full < math.Abs(value) && full < 2000 {
		full *= 10
	}
	return full / float64(m.Display)
}

// What the model itself may be off by. Our choice: the spread of a pack between low and
// full, of the same once it was read, and of small drops in what nobody records.
const (
	spreadUnread = 0.06
	spreadRead   = 0.015
	spreadFloor  = 0.02 // volts
	spreadFloat  = 0.5  // volts, of a probe that nothing holds
	spreadAmps   = 0.2
	floorAmps    = 0.2
	spreadOhms   = 0.12 // decades
)

// sigma is the standard deviation of a reading about what a span says. A meter's stated
// accuracy counts as two of its deviations.
func (w *weigher) sigma(kind Kind, value float64, at span) float64 {
	switch kind {
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
	model := math.Hypot(spreadFloor, share*nearest)
	return math.Hypot(math.Hypot(astray(w.c.meter, value)/2, model), off)
}
