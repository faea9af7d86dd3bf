// Package chance draws random numbers that are equal on every machine, and decides with integers alone whether a step
// of simulated annealing is taken.
package chance

import "math/bits"

// Source is a small seeded generator (splitmix64; Steele, Lea and Flood, "Fast splittable pseudorandom number
// generators", 2014). The zero value is seeded with 0.
type Source struct{ s uint64 }

// New seeds a generator.
func New(seed uint64) Source { return Source{seed} }

func (r *Source) next() uint64 {
	r.s += 0x9E3779B97F4A7C15
	z := r.s
	z = (z ^ z>>30) * 0xBF58476D1CE4E5B9
	z = (z ^ z>>27) * 0x94D049BB133111EB
	return z ^ z>>31
}

// Below gives a number in 0..n-1; n must be positive.
func (r *Source) Below(n int) int {
	hi, _ := bits.Mul64(r.next(), uint64(n))
	return int(hi)
}

// Within gives a number in -n..n.
func (r *Source) Within(n int) int { return r.Below(2*n+1) - n }

// One is a temperature of 1: temperatures are in 1/65536.
const One = 1 << 16

// Takes tells whether a step that makes things worse by d is taken at temperature t: always when d <= 0, else with
// probability exp(-d/t) (Metropolis).
func (r *Source) Takes(d int, t int64) bool {
	return d <= 0 || d <= r.Limit(t)
}

// Limit draws the most by which a step may make things worse at temperature t and still be taken; a step is taken with
// the same probability as by Takes.
func (r *Source) Limit(t int64) int { return int(t * negLn[r.Below(lnSteps)] >> 24) }

// lnSteps is the number of steps of the acceptance table.
const lnSteps = 1024

// negLn holds -ln((i+0.5)/lnSteps) in 1/256, made with integers only.
var negLn = makeNegLn()

func makeNegLn() [lnSteps]int64 {
	var out [lnSteps]int64
	for i := range out {
		out[i] = lnFixed(2*lnSteps) - lnFixed(uint64(2*i+1))
	}
	return out
}

// lnFixed is the natural logarithm of n >= 1 in 1/256: the binary logarithm by repeated squaring, times ln 2.
func lnFixed(n uint64) int64 {
	whole := bits.Len64(n) - 1
	x := n << (31 - whole) // 1 <= x/2^31 < 2
	log := int64(whole) << 16
	for bit := int64(1) << 15; bit > 0; bit >>= 1 {
		x = x * x >> 31
		if x >= 1<<32 {
			x >>= 1
			log += bit
		}
	}
	return log * 45426 >> 24 // ln 2 = 45426/65536
}
