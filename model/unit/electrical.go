package unit

// Volt is a voltage such as 51.2 V or 250 mV; it may be negative.
type Volt struct{ quantity[volts] }

// ParseVolt reads a voltage.
func ParseVolt(text string) (Volt, error) {
	q, err := parse[volts](text)
	return Volt{q}, err
}

// V is a voltage in volts; not stated if v is not finite or beyond the limits.
func V(v float64) Volt { return Volt{fromSI[volts](v)} }

// Volts is the voltage in volts; 0 if not stated.
func (v Volt) Volts() float64 { return v.SI() }

// Ampere is a current such as 250 A or 40 mA; it may be negative.
type Ampere struct{ quantity[amperes] }

// ParseAmpere reads a current.
func ParseAmpere(text string) (Ampere, error) {
	q, err := parse[amperes](text)
	return Ampere{q}, err
}

// A is a current in amperes; not stated if a is not finite or beyond the limits.
func A(a float64) Ampere { return Ampere{fromSI[amperes](a)} }

// Amperes is the current in amperes; 0 if not stated.
func (a Ampere) Amperes() float64 { return a.SI() }

// Ohm is a resistance such as 470 ohm or 10 mohm; it is never negative.
type Ohm struct{ quantity[ohms] }

// ParseOhm reads a resistance.
func ParseOhm(text string) (Ohm, error) {
	q, err := parse[ohms](text)
	return Ohm{q}, err
}

// Ohms is a resistance in ohms; not stated if r is negative, not finite or beyond
// the limits.
func Ohms(r float64) Ohm { return Ohm{fromSI[ohms](r)} }

// Ohms is the resistance in ohms; 0 if not stated.
func (o Ohm) Ohms() float64 { return o.SI() }

// AmpHour is a battery's charge such as 105 Ah; it is never negative.
type AmpHour struct{ quantity[ampHours] }

// ParseAmpHour reads a charge.
func ParseAmpHour(text string) (AmpHour, error) {
	q, err := parse[ampHours](text)
	return AmpHour{q}, err
}

// Ah is a charge in ampere-hours; not stated if ah is negative, not finite or
// beyond the limits.
func Ah(ah float64) AmpHour { return AmpHour{fromSI[ampHours](ah)} }

// AmpHours is the charge in ampere-hours; 0 if not stated.
func (a AmpHour) AmpHours() float64 { return a.SI() }

// Watt is a power such as 10 W, 1.2 kW or 3 hp; it is never negative.
type Watt struct{ quantity[watts] }

// ParseWatt reads a power.
func ParseWatt(text string) (Watt, error) {
	q, err := parse[watts](text)
	return Watt{q}, err
}

// W is a power in watts; not stated if w is negative, not finite or beyond the
// limits.
func W(w float64) Watt { return Watt{fromSI[watts](w)} }

// Watts is the power in watts; 0 if not stated.
func (w Watt) Watts() float64 { return w.SI() }

// Farad is a capacitance such as 10 mF or 4700 uF; it is never negative.
type Farad struct{ quantity[farads] }

// ParseFarad reads a capacitance.
func ParseFarad(text string) (Farad, error) {
	q, err := parse[farads](text)
	return Farad{q}, err
}

// F is a capacitance in farads; not stated if f is negative, not finite or beyond
// the limits.
func F(f float64) Farad { return Farad{fromSI[farads](f)} }

// Farads is the capacitance in farads; 0 if not stated.
func (f Farad) Farads() float64 { return f.SI() }
