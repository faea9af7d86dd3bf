package conductor

import (
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model/unit"
)

// FAA AC 43.13-1B table 11-3, DC wire and circuit protector chart, column fuse.
func TestUsualFuses(t *testing.T) {
	for awg, want := range map[int]float64{22: 5, 20: 5, 18: 10, 16: 10, 14: 15, 12: 20, 10: 30, 8: 50, 6: 70, 4: 70, 2: 100, 1: 150, 0: 150} {
		got, ok := UsualFuse(unit.AWG(awg))
		require.True(t, ok, awg)
		require.Equal(t, want, got, awg)
	}
	between, _ := UsualFuse(unit.MM2(2.5)) // thicker than 14 AWG, thinner than 12
	require.Equal(t, 15.0, between)
	_, ok := UsualFuse(unit.AWG(24))
	require.False(t, ok)
}
