package circuit

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// drawHeld is a circuit in which nothing moves: joined or in pieces, with diodes and supplies.
func drawHeld(t *rapid.T) *Circuit {
	c := New()
	n := rapid.IntRange(2, 14).Draw(t, "nodes")
	for range n {
		c.Node()
	}
	node := rapid.Custom(func(t *rapid.T) Node { return Node(rapid.IntRange(0, n-1).Draw(t, "node")) })
	c.Source(0, 1, rapid.Float64Range(36, 88).Draw(t, "pack"), 0.01)
	for range rapid.IntRange(0, 25).Draw(t, "elements") {
		a, b, ohms := node.Draw(t, "a"), node.Draw(t, "b"), drawOhms(t, -4, 3)
		switch rapid.IntRange(0, 7).Draw(t, "kind") {
		case 0:
			c.Diode(a, b)
		case 1:
			c.Supply(a, b, Supply{Volts: 58, Ohms: 0.01, Limit: rapid.SampledFrom([]float64{0, 20}).Draw(t, "limit")})
		case 2:
			c.Source(a, b, rapid.SampledFrom([]float64{0, 12, 48}).Draw(t, "volts"), ohms)
		case 3:
			c.Contact(a, b, 1e-3, rapid.Bool().Draw(t, "closed"))
		default:
			c.Resistor(a, b, ohms)
		}
	}
	return c
}

// A bridge in a rig does what it does as an element of the circuit.
func TestARigAgreesWithTheCircuitAsAWhole(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawHeld(t)
		rig, err := c.Rig()
		require.NoError(t, err)
		for range rapid.IntRange(1, 4).Draw(t, "bridges") {
			a, b := Node(rapid.IntRange(0, c.nodes-1).Draw(t, "a")), Node(rapid.IntRange(0, c.nodes-1).Draw(t, "b"))
			ohms := drawOhms(t, -6, 1)
			with := &Circuit{nodes: c.nodes, elements: append([]element(nil), c.elements...)}
			bridge := with.Resistor(a, b, ohms)
			want, err := with.Solve()
			if err != nil {
				t.Skip("what has no solution is no matter of rigs")
			}
			amperes, err := rig.Amperes(a, b, ohms)
			require.NoError(t, err)
			near := 1e-7 * (1 + largest(want.currents))
			require.InDelta(t, want.Current(bridge), amperes, near)
			have, err := rig.Solve(a, b, ohms)
			require.NoError(t, err)
			require.Equal(t, amperes, must(rig.Amperes(a, b, ohms)))
			for e := range c.elements {
				require.InDelta(t, want.Current(Element(e)), have.Current(Element(e)), near, "element %d", e)
				checkElement(t, c, have, Element(e))
			}
			across, known := have.Voltage(a, b)
			require.True(t, known)
			require.InDelta(t, ohms*amperes, across, 1e-7*(1+largest(want.volts)))
		}
	})
}

func must(x float64, err error) float64 {
	if err != nil {
		return math.NaN()
	}
	return x
}

func TestARigIsForWhatDoesNotMove(t *testing.T) {
	c := New()
	a, b := c.Node(), c.Node()
	c.Coil(a, b, 100, 30, 10)
	_, err := c.Rig()
	require.ErrorIs(t, err, errMoves)
	c = New()
	c.Resistor(c.Node(), 7, 1)
	_, err = c.Rig()
	var invalid *Invalid
	require.ErrorAs(t, err, &invalid)
}
