package conductor

// HighCircuit is the nominal voltage from which 33 CFR 183.425 and 183.455 are stricter.
// Sixteen lithium iron phosphate cells (51.2 V) reach it, eight 6 V batteries do not.
const HighCircuit = 50

// FuseSize is a standard ampere rating of a fuse or circuit breaker.
type FuseSize struct {
	Amperes  float64
	Recalled bool // put down from memory, not from the list of the NEC
}

// fuseSizes are the ratings of NEC 240.6(A) up to 600 A, and below 15 A the usual
// ratings of blade fuses, from memory.
var fuseSizes = []FuseSize{
	{1, true}, {2, true}, {3, true}, {4, true}, {5, true}, {7.5, true}, {10, true},
	{15, false}, {20, false}, {25, false}, {30, false}, {35, false}, {40, false}, {45, false}, {50, false},
	{60, false}, {70, false}, {80, false}, {90, false}, {100, false}, {110, false}, {125, false}, {150, false},
	{175, false}, {200, false}, {225, false}, {250, false}, {300, false}, {350, false}, {400, false},
	{450, false}, {500, false}, {600, false},
}

// FuseSizes lists the standard ratings up to 600 A, smallest first.
func FuseSizes() []FuseSize { return append([]FuseSize(nil), fuseSizes...) }

// FuseAtLeast is the smallest standard rating that is not below a current in amperes.
func FuseAtLeast(amperes float64) (FuseSize, bool) {
	for _, s := range fuseSizes {
		if s.Amperes >= amperes {
			return s, true
		}
	}
	return FuseSize{}, false
}

// FuseAtMost is the largest standard rating that is not above a current in amperes.
func FuseAtMost(amperes float64) (FuseSize, bool) {
	for i := len(fuseSizes) - 1; i >= 0; i-- {
		if fuseSizes[i].Amperes <= amperes {
			return fuseSizes[i], true
		}
	}
	return FuseSize{}, false
}

// RatingRule limits the rating of a protective device by the ampacity of the
// conductor that it protects.
type RatingRule struct {
	Basis  string  // regulation, with its clause
	Share  float64 // any rating up to this share of the ampacity is allowed
	NextUp float64 // the next standard size up is allowed to this share; 0 if never
}

// The rules that set a limit, each as its regulation has it.
var (
	BelowHighCircuit = RatingRule{Basis: "33 CFR 183.455(c)(1), circuits under 50 V", Share: 1.5}
	FromHighCircuit  = RatingRule{Basis: "33 CFR 183.455(c)(2), circuits of 50 V and more", Share: 1, NextUp: 1.5}
	SmallVessel      = RatingRule{Basis: "46 CFR 183.380(d)", Share: 1, NextUp: 1.5}
	StateVehicle     = RatingRule{Basis: "California DOT equipment electrical standard, overload protection 3.4", Share: 1, NextUp: 1.25}
	Aircraft         = RatingRule{Basis: "FAA AC 43.13-1B 11-48", Share: 1}
)

// RatingRuleFor is the rule of 33 CFR 183.455(c) for a circuit's nominal voltage.
func RatingRuleFor(nominalVolts float64) RatingRule {
	if nominalVolts < HighCircuit {
		return BelowHighCircuit
	}
	return FromHighCircuit
}

// Greatest is the largest rating in amperes that the rule allows before a conductor of
// an ampacity in amperes.
func (r RatingRule) Greatest(ampacity float64) float64 {
	greatest := r.Share * ampacity
	next, ok := FuseAtLeast(greatest)
	if r.NextUp > 0 && ok && next.Amperes <= r.NextUp*ampacity {
		return next.Amperes
	}
	return greatest
}
