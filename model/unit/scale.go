package unit

import (
	"math"
	"slices"
	"strings"
)

// Dimension says what kind of quantity something is.
type Dimension string

// The dimensions.
const (
	Voltage     Dimension = "voltage"
	Current     Dimension = "current"
	Resistance  Dimension = "resistance"
	Charge      Dimension = "charge"
	Power       Dimension = "power"
	Capacitance Dimension = "capacitance"
	Temperature Dimension = "temperature"
	Torque      Dimension = "torque"
	Time        Dimension = "time"
	Distance    Dimension = "length"
	Area        Dimension = "area"
	Ratio       Dimension = "ratio"
	Number      Dimension = "count"
)

// Names lists the dimensions.
func (Dimension) Names() []string {
	return []string{
		string(Voltage), string(Current), string(Resistance), string(Charge), string(Power),
		string(Capacitance), string(Temperature), string(Torque), string(Time), string(Distance),
		string(Area), string(Ratio), string(Number),
	}
}

// mark is one unit of a scale: how it prints, how else it may be written, and what
// it is worth. In spellings a "~" stands for an optional space, dot or hyphen.
type mark struct {
	print  string
	also   []string
	worth  float64 // SI units in one of it
	offset float64 // SI value of zero of it; only temperatures have one
	auto   bool    // chosen for values computed from SI
	show   func(millionths int64) string
}

// scale is all the units of one dimension.
type scale struct {
	of       Dimension
	what     string // "a voltage"
	examples string // "48 V, 250 mV"
	example  string
	min      float64 // least value in SI
	max      float64 // greatest value in SI, if it is more than limit
	whole    bool
	marks    []mark
	compound func(text string) (millionths int64, mark uint8, ok bool)
	pattern  string // of the compound forms
}

// limit is the greatest size of a quantity in its SI unit where its scale does not say more.
const limit = 1e6

// tolerance lets a value at a limit pass after conversion.
const tolerance = 1 + 1e-12

// find returns the number of the mark with the given spelling, counted from one.
func (s *scale) find(spelling string) (uint8, bool) {
	bare := squeeze(spelling)
	if bare == "" {
		return 0, false
	}
	for i, m := range s.marks {
		if bare == squeeze(m.print) || slices.ContainsFunc(m.also, func(a string) bool { return bare == squeeze(a) }) {
			return uint8(i + 1), true
		}
	}
	return 0, false
}

// separators are what may be left out of the spelling of a unit.
var separators = strings.NewReplacer(" ", "", "~", "", "-", "", ".", "", "·", "")

// squeeze takes the optional separators out of the spelling of a unit.
func squeeze(spelling string) string { return separators.Replace(spelling) }

// si converts a number in a mark's unit to SI.
func (s *scale) si(millionths int64, number uint8) float64 {
	m := s.marks[number-1]
	return float64(millionths)/1e6*m.worth + m.offset
}

// fits reports whether a value in SI is within the scale's limits.
func (s *scale) fits(si float64) bool {
	return si <= max(limit, s.max)*tolerance && si >= s.min*tolerance
}

// nearest expresses a value in SI in the unit that suits its size, rounded to six
// decimals. It reports false if the value is outside the scale.
func (s *scale) nearest(si float64) (int64, uint8, bool) {
	if math.IsNaN(si) || !s.fits(si) {
		return 0, 0, false
	}
	number := uint8(1)
	for i, m := range s.marks {
		if math.Abs(si)/s.marks[number-1].worth >= 0.1 || si == 0 {
			break
		}
		if m.auto && m.worth < s.marks[number-1].worth {
			number = uint8(i + 1)
		}
	}
	n, ok := s.inUnit(si/s.marks[number-1].worth, number)
	return n, number, ok
}

// inUnit rounds a value in the unit of that number to what the scale can hold. It
// reports false if the value is outside the scale.
func (s *scale) inUnit(value float64, number uint8) (int64, bool) {
	m := s.marks[number-1]
	if math.IsNaN(value) || !s.fits(value*m.worth+m.offset) {
		return 0, false
	}
	if s.whole {
		value = math.Round(value)
	}
	return int64(math.Round(value * 1e6)), true
}
