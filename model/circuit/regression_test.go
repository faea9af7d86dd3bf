package circuit

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// A large current that is drawn between a large resistance and a small one must not drown
// the small current through the large one, whichever was built first.
func TestSmallCurrentBesideALargeOne(t *testing.T) {
	for _, text := range []string{
		"big r n a 10M\nsmall r n b 1m\nv v a 0 50 0\nw v b 0 48 0\ni i n 0 250\nj i a 0 1",
		"small r n b 1m\nbig r n a 10M\nv v a 0 50 0\nw v b 0 48 0\ni i n 0 250\nj i a 0 1",
	} {
		n := parse(t, text)
		s := n.solve()
		require.InDelta(t, 47.75, n.read(s, "V(n)"), 1e-9)
		require.InDelta(t, n.read(s, "V(n)")-50, 10e6*n.read(s, "I(big)"), 1e-9)
	}
}

// Two loads that float behind a supply between them: one comes on, is held at its least
// voltage and let go of again before all is settled. It must not count as on with
// nothing to feed it.
func TestLoadThatFloatsIsNotOn(t *testing.T) {
	c := New()
	plus, minus, one, two := c.Node(), c.Node(), c.Node(), c.Node()
	c.Source(plus, minus, 36, 0.01)
	first := c.Load(plus, one, Load{Amperes: 3, LeastVolts: 20})
	c.Load(plus, two, Load{Amperes: 3, LeastVolts: 20})
	c.Diode(one, plus)
	c.Supply(two, one, Supply{Volts: 58, Ohms: 0.01})
	s := solve(t, c)
	require.False(t, s.On(first))
	require.Less(t, s.Current(first), 1e-5)
	require.True(t, s.Starved(first))
	require.InDelta(t, 20, volts(t, s, plus, one), 1e-6)
}
