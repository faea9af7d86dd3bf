package conductor

import "math"

// LongestAdiabatic is how long in seconds a fault may last for Withstand to hold: IEC
// 60364-4-43 434.5.2 takes no heat as leaving the conductor for at most that long.
const LongestAdiabatic = 5

// Constants of copper for adiabatic heating, IEC 60949: heat capacity by volume in
// J/(C mm3) at 20 C, and the reciprocal of the temperature coefficient at 0 C.
const (
	heatCapacity      = 3.45e-3
	inferredZero      = 234.5
	resistivityOhmsMM = Resistivity20 * 1e3 // ohm mm
)

// WithstandConstant is the factor k of IEC 60364-4-43 for a copper conductor that may
// heat from one temperature to another in C, in A s^0.5 / mm2: 115 for 70 to 160 C
// (PVC), 143 for 90 to 250 C (cross-linked). It is 0 if the conductor may not heat.
func WithstandConstant(from, to float64) float64 {
	if to <= from || from <= -inferredZero {
		return 0
	}
	return math.Sqrt(heatCapacity * (inferredZero + 20) / resistivityOhmsMM *
		math.Log((inferredZero+to)/(inferredZero+from)))
}

// Withstand is the time in seconds in which a fault current in amperes heats a copper
// conductor of an area in mm2 to its limit, t = (k S / I)^2. A time over
// LongestAdiabatic is on the safe side. It is infinite without current.
func Withstand(areaMM2, k, amperes float64) float64 {
	if amperes == 0 {
		return math.Inf(1)
	}
	return math.Pow(k*areaMM2/amperes, 2)
}

// The temperatures in C that a fault may take the conductor to: 160 for PVC, 250 for
// cross-linked insulation, which begins with the class of 125 C (IEC 60364-4-43).
const (
	faultPVC         = 160
	faultCrossLinked = 250
	crossLinkedFrom  = 125
)

// FaultLimit is the temperature in C that a fault may take a conductor to, by the
// temperature of its insulation in C. What is not known to be cross-linked counts as PVC.
func FaultLimit(insulation float64) float64 {
	if insulation >= crossLinkedFrom {
		return faultCrossLinked
	}
	return faultPVC
}
