package support

// Hours is a range of hours.
type Hours struct {
	Least float64 `json:"least"`
	Most  float64 `json:"most"`
}

// ConstantHours is the time in hours to put back a charge at a constant current:
// ampere-hours over amperes, over the share of the charge put in that comes out again.
func ConstantHours(ampHours, amps, share float64) float64 { return ampHours / (amps * share) }

// Shares of the charge put in that comes out again. Lead-acid: 180 Ah out after 200 Ah in
// (Dhogal, Basic Electrical Engineering with Numerical Problems, p. 174). Lithium iron phosphate: at most 3 % more in than out,
// from memory.
const (
	leadShare    = 0.90
	lithiumShare = 0.97
)

// The last part of a charge, at falling current. Two published forms disagree, so that a
// range is told: half an hour to an hour more (websites-cpf.pages.dev, how long to charge a
// lithium battery), and a quarter more when it goes above 80 % (rftools.io, battery charge
// time).
const (
	tailLeast  = 0.5
	tailMost   = 1.0
	tailFactor = 1.25
)

// WithTail is the whole time of a charge that goes up to full, from its hours at constant
// current.
func WithTail(constant float64) Hours {
	factor := tailFactor * constant
	return Hours{Least: min(constant+tailLeast, factor), Most: max(constant+tailMost, factor)}
}
