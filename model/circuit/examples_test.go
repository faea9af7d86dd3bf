package circuit

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// Lessons In Electric Circuits, volume DC, network analysis: 28 V behind 4 ohm, 2 ohm to
// ground, 7 V behind 1 ohm. Printed: 5, 4, -1 A; 20, 8, 1 V across the resistors.
func TestTwoSourcesOneBackFed(t *testing.T) {
	c := New()
	ground, one, two, three := c.Node(), c.Node(), c.Node(), c.Node()
	v1 := c.Source(one, ground, 28, 0)
	r1 := c.Resistor(one, two, 4)
	r2 := c.Resistor(two, ground, 2)
	r3 := c.Resistor(three, two, 1)
	v2 := c.Source(three, ground, 7, 0)
	s := solve(t, c)
	require.InDelta(t, 5, s.Current(r1), 1e-12)
	require.InDelta(t, 4, s.Current(r2), 1e-12)
	require.InDelta(t, -1, s.Current(r3), 1e-12)
	require.InDelta(t, -5, s.Current(v1), 1e-12)
	require.InDelta(t, 1, s.Current(v2), 1e-12, "the second source is charged")
	require.InDelta(t, 20, volts(t, s, one, two), 1e-12)
	require.InDelta(t, 8, volts(t, s, two, ground), 1e-12)
	require.InDelta(t, -140, s.Power(v1), 1e-9)
	require.InDelta(t, 7, s.Power(v2), 1e-9)
}

// Same source, unbalanced bridge on 24 V. Printed: 17.655 and 19.310 V; 42.299, 93.793,
// 16.552, 58.851, 77.241 mA; 136.092 mA in all.
func TestUnbalancedBridge(t *testing.T) {
	c := New()
	ground, one, two, three := c.Node(), c.Node(), c.Node(), c.Node()
	v := c.Source(one, ground, 24, 0)
	rs := []Element{
		c.Resistor(one, two, 150), c.Resistor(one, three, 50), c.Resistor(three, two, 100),
		c.Resistor(two, ground, 300), c.Resistor(three, ground, 250),
	}
	s := solve(t, c)
	require.InDelta(t, 17.655, volts(t, s, two, ground), 5e-4)
	require.InDelta(t, 19.310, volts(t, s, three, ground), 5e-4)
	for i, mA := range []float64{42.299, 93.793, 16.552, 58.851, 77.241} {
		require.InDelta(t, mA, s.Current(rs[i])*1000, 5e-4)
	}
	require.InDelta(t, -136.092, s.Current(v)*1000, 5e-4)
}

// Same source, node voltages: 10 V behind 2 ohm, 4 ohm, 2.5 ohm, 5 ohm, -4 V behind 1 ohm.
// Printed: 3.809524 and -1.547619 V.
func TestNodeVoltageExample(t *testing.T) {
	c := New()
	ground, one, two := c.Node(), c.Node(), c.Node()
	c.Source(one, ground, 10, 2)
	c.Resistor(one, ground, 4)
	c.Resistor(one, two, 2.5)
	c.Resistor(two, ground, 5)
	c.Source(two, ground, -4, 1)
	s := solve(t, c)
	require.InDelta(t, 3.809524, volts(t, s, one, ground), 5e-7)
	require.InDelta(t, -1.547619, volts(t, s, two, ground), 5e-7)
}

// Same source, series-parallel: 24 V on (100 || 250) + (350 || 200). Printed: 120.78 mA;
// 8.627 and 15.37 V; 86.27, 34.51, 43.92, 76.86 mA.
func TestSeriesParallelExample(t *testing.T) {
	c := New()
	ground, one, two := c.Node(), c.Node(), c.Node()
	v := c.Source(one, ground, 24, 0)
	rs := []Element{c.Resistor(one, two, 100), c.Resistor(one, two, 250), c.Resistor(two, ground, 350), c.Resistor(two, ground, 200)}
	s := solve(t, c)
	require.InDelta(t, -120.78, s.Current(v)*1000, 5e-3)
	require.InDelta(t, 8.627, volts(t, s, one, two), 5e-4)
	require.InDelta(t, 15.37, volts(t, s, two, ground), 5e-3)
	for i, mA := range []float64{86.27, 34.51, 43.92, 76.86} {
		require.InDelta(t, mA, s.Current(rs[i])*1000, 5e-3)
	}
}

// Same source, batteries: 10 V with 0.2 ohm inside gives 8.333 A into 1 ohm, 50 A into a short.
func TestInternalResistance(t *testing.T) {
	for _, row := range []struct{ ohms, amperes float64 }{{1, 8.3333333}, {0, 50}} {
		c := New()
		plus, minus := c.Node(), c.Node()
		c.Source(plus, minus, 10, 0.2)
		r := c.Resistor(plus, minus, row.ohms)
		require.InDelta(t, row.amperes, solve(t, c).Current(r), 1e-6)
	}
}

// FAA AC 43.13-1B tables 11-7 and 11-8: the drop along a wire in ohms per foot that
// carries 20 A.
func TestDropAlongAWire(t *testing.T) {
	for _, row := range []struct{ perFoot, feet, drop, tolerance float64 }{
		{.00044, 107, 0.942, 5e-4}, {.00028, 90, 0.504, 5e-4}, {.00306, 100, 6.12, 5e-3},
		{.00126, 39, 0.98, 5e-3}, {.00126, 156, 3.93, 5e-3}, {.00126, 273, 6.88, 5e-3},
		{.00202, 88, 3.60, 0.054}, // the print is rounded loosely: 1.5 %
	} {
		c := New()
		bus, end, ground := c.Node(), c.Node(), c.Node()
		c.Source(bus, ground, 28, 0)
		wire := c.Resistor(bus, end, row.perFoot*row.feet)
		c.Load(end, ground, Load{Amperes: 20})
		s := solve(t, c)
		require.InDelta(t, row.drop, volts(t, s, bus, end), row.tolerance)
		require.InDelta(t, 20, s.Current(wire), 1e-9)
	}
}

// electrician2.com, voltage drop lesson: 2 x 100 ft of No. 16 (4.99 ohm per 1000 ft), 4 A on 24 V:
// 4.0 V, 16.7 %. Lessons In Electric Circuits: 14 AWG loop of 11.301 ohm at 230 V feeds at
// most 20.352 A.
func TestLoopDrops(t *testing.T) {
	c := New()
	plus, far, back, minus := c.Node(), c.Node(), c.Node(), c.Node()
	c.Source(plus, minus, 24, 0)
	c.Resistor(plus, far, 0.499)
	c.Resistor(back, minus, 0.499)
	c.Load(far, back, Load{Amperes: 4})
	s := solve(t, c)
	require.InDelta(t, 4.0, 24-volts(t, s, far, back), 0.01)

	c = New()
	plus, minus = c.Node(), c.Node()
	c.Source(plus, minus, 230, 11.301)
	short := c.Resistor(plus, minus, 0)
	require.InDelta(t, 20.352, solve(t, c).Current(short), 5e-4)
}

// The quadratic for a constant power behind a resistance: V = E/2 + sqrt(E^2/4 - P R).
func TestConstantPowerFindsItsVoltage(t *testing.T) {
	for _, watts := range []float64{1, 1000, 5000, 12000} {
		c := New()
		plus, minus := c.Node(), c.Node()
		c.Source(plus, minus, 51.2, 0.05)
		l := c.Load(plus, minus, Load{Watts: watts, LeastVolts: 20})
		s := solve(t, c)
		want := 51.2/2 + math.Sqrt(51.2*51.2/4-watts*0.05)
		require.InDelta(t, want, volts(t, s, plus, minus), 1e-9)
		require.InDelta(t, watts, s.Power(l), 1e-6)
	}
}

func solve(t *testing.T, c *Circuit) *Solution {
	t.Helper()
	s, err := c.Solve()
	require.NoError(t, err)
	checkLaws(t, c, s)
	return s
}

func volts(t *testing.T, s *Solution, a, b Node) float64 {
	t.Helper()
	v, ok := s.Voltage(a, b)
	require.True(t, ok)
	return v
}

// checkLaws holds a solution against Kirchhoff's current law and the conservation of energy.
func checkLaws(t require.TestingT, c *Circuit, s *Solution) {
	out := make([]float64, c.nodes)
	most, emf := 0.0, largest(s.volts)
	for i, e := range c.elements {
		amperes := s.Current(Element(i))
		out[e.a] += amperes
		out[e.b] -= amperes
		most = max(most, math.Abs(amperes))
		emf = max(emf, math.Abs(e.volts))
	}
	for n, sum := range out {
		require.LessOrEqual(t, math.Abs(sum), 1e-9*most, "current law at node %d", n)
	}
	require.LessOrEqual(t, math.Abs(s.Balance()), 1e-9*most*emf+1e-300, "power balance")
}

// largest is the largest of some values, whatever their signs.
func largest(values []float64) float64 {
	most := 0.0
	for _, v := range values {
		most = max(most, math.Abs(v))
	}
	return most
}
