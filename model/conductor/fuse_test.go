package conductor

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// The four rules on one conductor: 2/0 at 105 C, 330 A by 33 CFR 183.425 table 5.
func TestRatingRules(t *testing.T) {
	tests := []struct {
		rule     RatingRule
		ampacity float64
		want     float64
	}{
		{RatingRuleFor(48), 330, 495},   // 33 CFR 183.455(c)(1): 150 %
		{RatingRuleFor(51.2), 330, 350}, // (c)(2): next standard size
		{RatingRuleFor(51.2), 300, 300}, // is itself a standard size
		{SmallVessel, 330, 350},
		{StateVehicle, 330, 350},
		{StateVehicle, 260, 300}, // 300 / 260 is 115 %
		{StateVehicle, 11, 11},   // 15 / 11 is over 125 %
		{SmallVessel, 11, 15},
		{Aircraft, 330, 330},
		{FromHighCircuit, 700, 700}, // no larger standard size in the list
	}
	for _, tt := range tests {
		require.InDelta(t, tt.want, tt.rule.Greatest(tt.ampacity), 1e-9, tt.rule.Basis)
		require.NotEmpty(t, tt.rule.Basis)
	}
	require.Equal(t, BelowHighCircuit, RatingRuleFor(49.9))
	require.Equal(t, FromHighCircuit, RatingRuleFor(50))
}

func TestNoRuleAllowsMoreThanHalfAgain(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ampacity := rapid.Float64Range(10, 1000).Draw(t, "ampacity")
		rule := rapid.SampledFrom([]RatingRule{BelowHighCircuit, FromHighCircuit, SmallVessel, StateVehicle, Aircraft}).Draw(t, "rule")
		got := rule.Greatest(ampacity)
		require.GreaterOrEqual(t, got, ampacity)
		require.LessOrEqual(t, got, 1.5*ampacity+1e-9)
	})
}

func TestFuseSizes(t *testing.T) {
	sizes := FuseSizes()
	for i, s := range sizes {
		require.Equal(t, s.Amperes < 15, s.Recalled, "NEC 240.6(A) begins at 15 A")
		if i > 0 {
			require.Greater(t, s.Amperes, sizes[i-1].Amperes)
		}
		at, ok := FuseAtLeast(s.Amperes)
		require.True(t, ok)
		require.Equal(t, s, at)
	}
	next, ok := FuseAtLeast(226)
	require.True(t, ok)
	require.Equal(t, 250.0, next.Amperes)
	_, ok = FuseAtLeast(601)
	require.False(t, ok)
	below, ok := FuseAtMost(226)
	require.True(t, ok)
	require.Equal(t, 225.0, below.Amperes)
	_, ok = FuseAtMost(0.5)
	require.False(t, ok)
	sizes[0].Amperes = 99
	require.Equal(t, 1.0, FuseSizes()[0].Amperes, "the list is a copy")
}

func TestPlacement(t *testing.T) {
	require.Equal(t, "7 in", PlacementFor(false, false).Within.String())
	require.Equal(t, "7 in", PlacementFor(false, true).Within.String())
	require.Equal(t, "40 in", PlacementFor(true, false).Within.String())
	require.Equal(t, "72 in", PlacementFor(true, true).Within.String())
	require.True(t, OffBattery.Recalled)
	require.False(t, InSheath.Recalled)
	// ABYC E-11 prints the same limits in metric: 178 mm, 102 cm, 1.83 m.
	require.InDelta(t, 0.178, AtSource.Within.Metres(), 0.0005)
	require.InDelta(t, 1.02, InSheath.Within.Metres(), 0.005)
	require.InDelta(t, 1.83, OffBattery.Within.Metres(), 0.005)
}
