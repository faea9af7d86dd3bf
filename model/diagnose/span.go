package diagnose

import (
	"math"
)

// span is what a fault predicts of a reading: any value from lo to hi.
type span struct {
	lo, hi   float64
	floating bool // nothing holds one of the probes: about 0 on a meter, but not surely
	restless bool // the sheet comes to no rest: anything
}

// hull is the span that covers both. A size of fault that comes to no rest says nothing
// beside one that does.
func (a span) hull(b span) span {
	switch {
	case a.restless:
		return b
	case b.restless:
		return a
	}
	return span{lo: min(a.lo, b.lo), hi: max(a.hi, b.hi), floating: a.floating || b.floating}
}

func (a span) middle() float64 { return (a.lo + a.hi) / 2 }

// both is the span of a full and a light load.
func (s *solved) both(of func(*outcome) span) span {
	read := func(o *outcome) span {
		if o == nil {
			return span{restless: true}
		}
		return of(o)
	}
	got := read(s.full)
	if s.loaded {
		got = got.hull(read(s.light))
	}
	return got
}

// density is how likely a reading is, per unit, if anything in the span is and the meter
// strays by sigma: a uniform density smeared by a normal one.
func (a span) density(x, sigma float64) float64 {
	if width := a.hi - a.lo; width > sigma/10 {
		return (normal((a.hi-x)/sigma) - normal((a.lo-x)/sigma)) / width
	}
	z := (x - a.middle()) / sigma
	return math.Exp(-z*z/2) / (sigma * math.Sqrt(2*math.Pi))
}

// normal is the distribution of the standard normal law.
func normal(z float64) float64 { return math.Erfc(-z/math.Sqrt2) / 2 }

// off is how far a reading lies outside the span.
func (a span) off(x float64) float64 { return max(0, a.lo-x, x-a.hi) }
