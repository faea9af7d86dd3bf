package circuit

import "math"

// cholesky is the factor L of a symmetric positive definite matrix S A S = L L', where S
// scales the diagonal of A to one.
type cholesky struct {
	n     int
	scale []float64
	lower []float64 // row by row
}

// leastPivot is the pivot, on the scaled matrix, below which it counts as singular.
const leastPivot = 1e-13

// newCholesky factors an n by n matrix, which it overwrites. It returns the number of
// the first row without a usable pivot, or -1.
func newCholesky(a []float64, n int) (cholesky, int) {
	c := cholesky{n: n, scale: make([]float64, n), lower: a}
	for i := range n {
		if !(a[i*n+i] > 0) {
			return c, i
		}
		c.scale[i] = 1 / math.Sqrt(a[i*n+i])
	}
	for i := range n {
		for j := range i + 1 {
			row, other := a[i*n:i*n+j], a[j*n:j*n+j]
			sum := a[i*n+j] * c.scale[i] * c.scale[j]
			for k, x := range row {
				sum -= x * other[k]
			}
			if i != j {
				a[i*n+j] = sum / a[j*n+j]
				continue
			}
			if !(sum > leastPivot) {
				return c, i
			}
			a[i*n+i] = math.Sqrt(sum)
		}
	}
	return c, -1
}

// solve finds x of A x = b. It overwrites b and returns it.
func (c *cholesky) solve(b []float64) []float64 {
	n := c.n
	for i := range n {
		sum := b[i] * c.scale[i]
		for k := range i {
			sum -= c.lower[i*n+k] * b[k]
		}
		b[i] = sum / c.lower[i*n+i]
	}
	for i := n - 1; i >= 0; i-- {
		sum := b[i]
		for k := i + 1; k < n; k++ {
			sum -= c.lower[k*n+i] * b[k]
		}
		b[i] = sum / c.lower[i*n+i]
	}
	for i := range n {
		b[i] *= c.scale[i]
	}
	return b
}
