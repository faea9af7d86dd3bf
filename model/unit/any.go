package unit

import (
	"fmt"
	"slices"
	"strings"
)

// Any is a quantity of any dimension, known by its unit: 51.2 V, 250 A, 470 ohm,
// 16 cells, 6 AWG. Ratings of parts are of this type.
type Any struct {
	of         Dimension
	millionths int64
	mark       uint8
	gauge      Gauge // of an area
}

// scales are all the scales in the order in which a unit is looked up. No spelling
// belongs to two of them.
var scales = []*scale{
	&voltScale, &ampereScale, &ohmScale, &ampHourScale, &wattScale, &faradScale, &celsiusScale,
	&torqueScale, &secondScale, &lengthScale, &percentScale, &countScale,
}

const anyExpected = "a quantity with its unit, such as 51.2 V, 250 A, 470 ohm or 16 cells"

// ParseAny reads a quantity of whatever dimension its unit has. A conductor size
// needs its unit here: 6 AWG, 16 mm2.
func ParseAny(text string) (Any, error) {
	text = strings.TrimSpace(text)
	if s := scaleByUnit(text); s != nil {
		n, mark, err := s.parse(text)
		if err != nil {
			return Any{}, err
		}
		return Any{of: s.of, millionths: n, mark: mark}, nil
	}
	if g, err := ParseGauge(text); err == nil && statesGaugeUnit(text) {
		return g.Any(), nil
	}
	if digits, rest := splitNumber(text); digits != "" && rest == "" {
		return Any{}, fmt.Errorf("%q has no unit: expected %s", text, anyExpected)
	}
	return Any{}, fmt.Errorf("%q is not a quantity: expected %s", text, anyExpected)
}

// scaleByUnit finds the scale that knows the unit of a text.
func scaleByUnit(text string) *scale {
	_, spelling := splitNumber(text)
	for _, s := range scales {
		if _, ok := s.find(spelling); ok {
			return s
		}
		if _, _, ok := s.compounded(text); ok {
			return s
		}
	}
	return nil
}

// IsZero reports whether the quantity is not stated.
func (a Any) IsZero() bool { return a.of == "" }

// Dimension is what kind of quantity it is; empty if not stated.
func (a Any) Dimension() Dimension { return a.of }

// String is the quantity as people write it; empty if not stated.
func (a Any) String() string {
	if a.of == Area {
		return a.gauge.String()
	}
	if s := scaleOfDimension(a.of); s != nil {
		return s.print(a.millionths, a.mark)
	}
	return ""
}

// scaleOfDimension finds the scale of a dimension; nil if it has none.
func scaleOfDimension(of Dimension) *scale {
	i := slices.IndexFunc(scales, func(s *scale) bool { return s.of == of })
	if i < 0 {
		return nil
	}
	return scales[i]
}

// SI is the value in volts, amperes, ohms, ampere-hours, watts, farads, degrees
// Celsius, newton metres, seconds, metres, square metres, or as a plain number; 0 if
// not stated. Ask Dimension which of them it is.
func (a Any) SI() float64 {
	if a.of == Area {
		return a.gauge.AreaMM2() * 1e-6
	}
	if s := scaleOfDimension(a.of); s != nil {
		return s.si(a.millionths, a.mark)
	}
	return 0
}

// MarshalText is String as bytes.
func (a Any) MarshalText() ([]byte, error) { return []byte(a.String()), nil }

// UnmarshalText parses a quantity; an empty text is one that is not stated.
func (a *Any) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*a = Any{}
		return nil
	}
	parsed, err := ParseAny(string(text))
	if err == nil {
		*a = parsed
	}
	return err
}

// FormHint is an anchored regular expression of the accepted texts, and an example.
func (Any) FormHint() (pattern, example string) {
	forms := make([]string, 0, len(scales)+1)
	for _, s := range scales {
		forms = append(forms, unanchored(s.regexp()))
	}
	gauge, _ := Gauge{}.FormHint()
	return "^(?:" + strings.Join(append(forms, unanchored(gauge)), "|") + ")$", "51.2 V"
}

func unanchored(pattern string) string {
	return strings.TrimSuffix(strings.TrimPrefix(pattern, "^"), "$")
}

// as gives the number and unit of the quantity if it is of the scale of D.
func as[D dimension](a Any) (quantity[D], bool) {
	if a.of != scaleOf[D]().of {
		return quantity[D]{}, false
	}
	return quantity[D]{a.millionths, a.mark}, true
}

// Volt is the quantity as a voltage, if it is one.
func (a Any) Volt() (Volt, bool) {
	q, ok := as[volts](a)
	return Volt{q}, ok
}

// Ampere is the quantity as a current, if it is one.
func (a Any) Ampere() (Ampere, bool) {
	q, ok := as[amperes](a)
	return Ampere{q}, ok
}

// Ohm is the quantity as a resistance, if it is one.
func (a Any) Ohm() (Ohm, bool) {
	q, ok := as[ohms](a)
	return Ohm{q}, ok
}

// AmpHour is the quantity as a charge, if it is one.
func (a Any) AmpHour() (AmpHour, bool) {
	q, ok := as[ampHours](a)
	return AmpHour{q}, ok
}

// Watt is the quantity as a power, if it is one.
func (a Any) Watt() (Watt, bool) {
	q, ok := as[watts](a)
	return Watt{q}, ok
}

// Farad is the quantity as a capacitance, if it is one.
func (a Any) Farad() (Farad, bool) {
	q, ok := as[farads](a)
	return Farad{q}, ok
}

// Celsius is the quantity as a temperature, if it is one.
func (a Any) Celsius() (Celsius, bool) {
	q, ok := as[celsius](a)
	return Celsius{q}, ok
}

// NewtonMetre is the quantity as a torque, if it is one.
func (a Any) NewtonMetre() (NewtonMetre, bool) {
	q, ok := as[newtonMetres](a)
	return NewtonMetre{q}, ok
}

// Second is the quantity as a time, if it is one.
func (a Any) Second() (Second, bool) {
	q, ok := as[seconds](a)
	return Second{q}, ok
}

// Length is the quantity as a length, if it is one.
func (a Any) Length() (Length, bool) {
	q, ok := as[metres](a)
	return Length{q}, ok
}

// Percent is the quantity as a ratio, if it is one.
func (a Any) Percent() (Percent, bool) {
	q, ok := as[percent](a)
	return Percent{q}, ok
}

// Count is the quantity as a count, if it is one.
func (a Any) Count() (Count, bool) {
	q, ok := as[count](a)
	return Count{q}, ok
}

// Gauge is the quantity as a conductor size, if it is one.
func (a Any) Gauge() (Gauge, bool) { return a.gauge, a.of == Area }
