package support

// Branch is an AC branch circuit that a charger is plugged into.
type Branch struct {
	Amps    float64 `json:"amps"`    // of its breaker
	Volts   float64 `json:"volts"`   // AC
	Assumed bool    `json:"assumed"` // nobody said which circuit it is
}

// usualBranch is the branch circuit that is assumed when nobody names one: an ordinary
// 15 A circuit.
const usualBranch = 15

// loadShare is how much of a branch circuit cord-and-plug equipment may take: 80 % of its rating,
// NEC 210.23(A)(1). A 15 A receptacle is held to 12 A and one of 20 A to 16 A as well, NEC
// Table 210.21(B)(2).
const loadShare = 0.8

// branchSource names the rule for a person.
const branchSource = "NEC 210.23(A)(1): cord-and-plug equipment at most 80 % of the branch circuit; Table 210.21(B)(2): 12 A on a 15 A receptacle"

// smallReceptacle is the size in amperes of the receptacles that a circuit of 20 A may have as
// well as its own.
const smallReceptacle = 15

// receptacleSource names the rule for a person.
const receptacleSource = "NEC 210.21(B)(2) and (3)"

// MayBeSmall reports whether the circuit's receptacles may be smaller than its breaker: a
// circuit of 20 A with two or more of them may have ones of 15 A, NEC Table 210.21(B)(3).
func (b Branch) MayBeSmall() bool { return b.Amps > smallReceptacle && b.Amps <= 20 }

// Allows is the largest AC current in amperes that may be drawn from the circuit by a plug.
func (b Branch) Allows() float64 { return loadShare * b.Amps }

// ACSide is the AC supply of a charger: its volts, its efficiency and power factor as
// fractions.
type ACSide struct {
	Volts       float64 `json:"volts"`
	Efficiency  float64 `json:"efficiency"`
	PowerFactor float64 `json:"power_factor"`
}

// Draws is the AC current in amperes for a charging voltage and current: V I / (eff pf Vac).
func (a ACSide) Draws(volts, amps float64) float64 {
	return volts * amps / (a.Efficiency * a.PowerFactor * a.Volts)
}

// Gives is the power in watts that reaches the battery for an AC current in amperes.
func (a ACSide) Gives(amps float64) float64 {
	return amps * a.Volts * a.Efficiency * a.PowerFactor
}
