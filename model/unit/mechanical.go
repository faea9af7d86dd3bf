package unit

// Celsius is a temperature such as 105 C or 77 °F, not below absolute zero.
type Celsius struct{ quantity[celsius] }

// ParseCelsius reads a temperature.
func ParseCelsius(text string) (Celsius, error) {
	q, err := parse[celsius](text)
	return Celsius{q}, err
}

// C is a temperature in degrees Celsius; not stated if t is not finite or beyond
// the limits.
func C(t float64) Celsius {
	n, ok := celsiusScale.inUnit(t, 1)
	if !ok {
		return Celsius{}
	}
	return Celsius{quantity[celsius]{n, 1}}
}

// Degrees is the temperature in degrees Celsius; 0 if not stated.
func (c Celsius) Degrees() float64 { return c.SI() }

// NewtonMetre is a torque such as 11 N m or 100 lbf in; it is never negative.
type NewtonMetre struct{ quantity[newtonMetres] }

// ParseNewtonMetre reads a torque.
func ParseNewtonMetre(text string) (NewtonMetre, error) {
	q, err := parse[newtonMetres](text)
	return NewtonMetre{q}, err
}

// Nm is a torque in newton metres; not stated if t is negative, not finite or
// beyond the limits.
func Nm(t float64) NewtonMetre { return NewtonMetre{fromSI[newtonMetres](t)} }

// NewtonMetres is the torque in newton metres; 0 if not stated.
func (n NewtonMetre) NewtonMetres() float64 { return n.SI() }

// Second is a time such as 5 s, 250 ms or 20 min; it is never negative.
type Second struct{ quantity[seconds] }

// ParseSecond reads a time.
func ParseSecond(text string) (Second, error) {
	q, err := parse[seconds](text)
	return Second{q}, err
}

// S is a time in seconds; not stated if t is negative, not finite or beyond the
// limits.
func S(t float64) Second { return Second{fromSI[seconds](t)} }

// Seconds is the time in seconds; 0 if not stated.
func (s Second) Seconds() float64 { return s.SI() }

// Percent is a ratio such as 92 %; it is never negative.
type Percent struct{ quantity[percent] }

// ParsePercent reads a percentage.
func ParsePercent(text string) (Percent, error) {
	q, err := parse[percent](text)
	return Percent{q}, err
}

// Pct is a ratio in percent: Pct(92) is 92 %; not stated if p is negative, not finite
// or beyond the limits.
func Pct(p float64) Percent { return Percent{fromSI[percent](p / 100)} }

// Fraction is the ratio as a number: 0.92 for 92 %; 0 if not stated.
func (p Percent) Fraction() float64 { return p.SI() }

// Count is a number of things such as 16 cells or 6 ways.
type Count struct{ quantity[count] }

// ParseCount reads a count.
func ParseCount(text string) (Count, error) {
	q, err := parse[count](text)
	return Count{q}, err
}

// Pcs is a count of n pieces; not stated if n is negative or beyond the limits.
func Pcs(n int) Count { return Count{fromSI[count](float64(n))} }

// Int is the count; 0 if not stated.
func (c Count) Int() int { return int(c.millionths / 1e6) }
