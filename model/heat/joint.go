package heat

import (
	"math"

	"example.com/lugbook/model/unit"
)

// Joint is a connection of some resistance: a lug on a stud, a crimp, a contact.
type Joint struct {
	Ohms float64
}

// Volts is the voltage across the joint at a current in amperes.
func (j Joint) Volts(amps float64) float64 { return j.Ohms * amps }

// Watts is the heat that the joint gives off at a current in amperes.
func (j Joint) Watts(amps float64) float64 { return j.Ohms * amps * amps }

// JointLimit is the voltage that a sound stud terminal stays within at a test current.
type JointLimit struct {
	Stud  unit.Stud
	Amps  float64
	Volts float64
}

// Ohms is the greatest resistance that passes.
func (l JointLimit) Ohms() float64 { return l.Volts / l.Amps }

// jointLimits is MIL-DTL-83454A 4.5.3: at most 7.5 mV across the terminal, before and
// after 50 cycles of 30 minutes at 140 % of the current.
var jointLimits = []struct {
	stud string
	amps float64
}{
	{"#6", 25}, {"#8", 30}, {"#10", 35}, {"1/4 in", 43},
}

const jointLimitVolts = 7.5e-3

// JointLimitFor is the limit of MIL-DTL-83454A 4.5.3 for the size that is nearest to a
// stud: the standard has #6, #8, #10 and 1/4 in. It reports false if the size is not
// stated.
func JointLimitFor(stud unit.Stud) (JointLimit, bool) {
	var nearest JointLimit
	for _, l := range jointLimits {
		size, err := unit.ParseStud(l.stud)
		if err != nil || stud.IsZero() {
			return JointLimit{}, false
		}
		if nearest.Stud.IsZero() || off(size, stud) < off(nearest.Stud, stud) {
			nearest = JointLimit{Stud: size, Amps: l.amps, Volts: jointLimitVolts}
		}
	}
	return nearest, true
}

// off is how far two sizes are apart in mm.
func off(a, b unit.Stud) float64 { return math.Abs(a.DiameterMM() - b.DiameterMM()) }
