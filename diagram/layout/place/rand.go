package place

import "math/bits"

// random is a small seeded generator (splitmix64, Steele, Lea and Flood, 2014): equal numbers on every machine.
type random struct{ s uint64 }

func (r *random) next() uint64 {
	r.s += 0x9E3779B97F4A7C15
	z := r.s
	z = (z ^ z>>30) * 0xBF58476D1CE4E5B9
	z = (z ^ z>>27) * 0x94D049BB133111EB
	return z ^ z>>31
}

// below gives a number in 0..n-1.
func (r *random) below(n int) int {
	hi, _ := bits.Mul64(r.next(), uint64(n))
	return int(hi)
}

// within gives a number in -n..n.
func (r *random) within(n int) int { return r.below(2*n+1) - n }

// lnSteps is the number of steps of the acceptance table.
const lnSteps = 1024

// negLn holds -ln((i+0.5)/lnSteps) in 1/256, so that a move that costs d is taken at temperature t when
// d*256 <= t*negLn[random step]. It is made with integers only.
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
