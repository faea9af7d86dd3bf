package rule_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model/basis"
	"example.com/lugbook/model/rule"
)

// TestHotCoilFollowsCopper holds the hot coil's resistance against the temperature coefficient of
// annealed copper, 1 / (234.5 + 20) a degree at 20 C (IEC 60028, from memory): the share of the
// table is a coil some 100 C above the bench.
func TestHotCoilFollowsCopper(t *testing.T) {
	row, found := basis.Find(basis.CoilHot)
	require.True(t, found)
	hot, _ := row.Of(false)
	require.InDelta(t, 100, hot.SI()*(234.5+20), 5)

	coil := func(pullIn int) string {
		return edited(lithium, "part sol", fmt.Sprintf("part sol contactor-48v pull-in-voltage=%dV", pullIn), "part pack", "part pack lithium-pack-16 cutoff-voltage=50V")
	}
	const fed = 53.2 // volts across the coil, by the solver
	for _, pullIn := range []int{36, 37, 39, 40} {
		wants := float64(pullIn)*(1+hot.SI()) > fed
		require.Equal(t, wants, saysOf(t, "coil-marginal", rule.Example{Of: coil(pullIn)}) != "", "%d V", pullIn)
	}
}

// TestStoredEnergyFollowsTheCapacitor holds what a charged controller is said to hold against
// E = C V^2 / 2.
func TestStoredEnergyFollowsTheCapacitor(t *testing.T) {
	for _, c := range []struct{ milli, volts float64 }{{5, 58.4}, {2, 58.4}, {10, 54}} {
		text := edited(sepex, "wire p1", "wire p1 iso.in pre.a gauge=18AWG", "stack iso.in", "stack iso.in w2 c2 p1", "stack sol.L1", "stack sol.L1 w3 k1",
			"part ctrl", fmt.Sprintf("part ctrl controller-sepex input-capacitance=%gmF", c.milli), "part pack", fmt.Sprintf("part pack lithium-pack-16 full-voltage=%gV", c.volts))
		joules := c.milli / 1000 * c.volts * c.volts / 2
		require.Contains(t, saysOf(t, "controller-stays-charged", rule.Example{Of: text}), fmt.Sprintf("%.3g J in %g mF", joules, c.milli))
	}
}
