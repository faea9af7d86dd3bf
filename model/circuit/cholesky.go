package circuit

import (
	"math"
	"slices"
)

// cholesky is the factor L of a symmetric positive definite matrix S A S = L L', where S
// scales the diagonal of A to one. What is left of a row's first entry is zero in A and
// stays zero in L, and is passed over (George and Liu, Computer Solution of Large Sparse
// Positive Definite Systems, 1981, chapter 4: the envelope method).
type cholesky struct {
	n     int
	scale []float64
	lower []float64 // row by row
	first []int     // by row: the column of its first entry
}

// leastPivot is the pivot, on the scaled matrix, below which it counts as singular.
const leastPivot = 1e-13

// room makes room for an n by n matrix of zeros and returns it row by row, for the caller
// to fill its lower half.
func (c *cholesky) room(n int) []float64 {
	c.n = n
	c.scale = slices.Grow(c.scale[:0], n)[:n]
	c.first = slices.Grow(c.first[:0], n)[:n]
	c.lower = slices.Grow(c.lower[:0], n*n)[:n*n]
	clear(c.lower)
	return c.lower
}

// factorise factors the matrix in place. It returns the number of the first row without
// a usable pivot, or -1.
func (c *cholesky) factorise() int {
	n, a := c.n, c.lower
	for i := range n {
		if !(a[i*n+i] > 0) {
			return i
		}
		c.scale[i] = 1 / math.Sqrt(a[i*n+i])
		c.first[i] = 0
		for a[i*n+c.first[i]] == 0 {
			c.first[i]++
		}
	}
	for i := range n {
		row, start := a[i*n:i*n+i+1], c.first[i]
		pivot := 1.0
		for j := start; j < i; j++ {
			from := max(start, c.first[j])
			sum := row[j]*c.scale[i]*c.scale[j] - dot(row[from:j], a[j*n+from:j*n+j])
			row[j] = sum / a[j*n+j]
			pivot -= row[j] * row[j]
		}
		if !(pivot > leastPivot) {
			return i
		}
		row[i] = math.Sqrt(pivot)
	}
	return -1
}

func dot(x, y []float64) float64 {
	y = y[:len(x)]
	var sum, other float64
	i := 0
	for ; i+1 < len(x); i += 2 {
		sum += x[i] * y[i]
		other += x[i+1] * y[i+1]
	}
	if i < len(x) {
		sum += x[i] * y[i]
	}
	return sum + other
}

// solve finds x of A x = b, in place of b.
func (c *cholesky) solve(b []float64) {
	n := c.n
	for i := range n {
		start := c.first[i]
		sum := b[i]*c.scale[i] - dot(b[start:i], c.lower[i*n+start:i*n+i])
		b[i] = sum / c.lower[i*n+i]
	}
	for i := n - 1; i >= 0; i-- {
		row := c.lower[i*n : i*n+i+1]
		b[i] /= row[i]
		for k := c.first[i]; k < i; k++ {
			b[k] -= row[k] * b[i]
		}
	}
	for i := range n {
		b[i] *= c.scale[i]
	}
}
