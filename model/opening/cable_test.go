package opening

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	"example.com/lugbook/model/conductor"
	"example.com/lugbook/model/unit"
)

// gG fuses before copper insulated with PVC for 90 C (IEC 60364-5-54, k 100): the area in
// mm2 that withstands the fault that opens the fuse in 5 s and in 0.1 s, and the greatest
// resistance of the loop in mohm at which a pack of 51.2 and 38.4 V opens it in 5 s.
func TestFuseAgainstCable(t *testing.T) {
	const k = 100
	derived := []struct{ rated, in5, in01, loop48, loop36 float64 }{
		{100, 13.0, 4.6, 88.3, 66.2}, {125, 16.0, 6.0, 71.6, 53.7}, {160, 21.2, 8.2, 53.9, 40.4}, {200, 28.0, 10.8, 41.0, 30.7},
		{250, 36.9, 14.2, 31.0, 23.3}, {315, 49.2, 19.0, 23.3, 17.5}, {400, 63.5, 25.5, 18.0, 13.5},
	}
	for _, row := range derived {
		c := Of(iec60269GG, row.rated)
		slow, ok := c.OpensWithin(5)
		require.True(t, ok)
		quick, ok := c.OpensWithin(0.1)
		require.True(t, ok)
		require.InDelta(t, row.loop48, 51.2/slow*1000, 0.06)
		require.InDelta(t, row.loop36, 38.4/slow*1000, 0.06)
		for _, at := range []struct{ amps, area float64 }{{slow, row.in5}, {quick, row.in01}} {
			heat, ok := c.LetThrough(at.amps)
			require.True(t, ok)
			require.InDelta(t, at.area, math.Sqrt(heat)/k, 0.06)
			require.Equal(t, Yes, Protects(c, at.amps, conductor.Withstand(at.area+0.06, k, at.amps)).Answer)
			require.Equal(t, NotKnown, Protects(c, at.amps, conductor.Withstand(at.area-0.06, k, at.amps)).Answer)
		}
		// What is wide enough for the fault of 5 s is so for every larger one.
		_, heat, ok := c.Worst(slow, 100_000)
		require.True(t, ok)
		require.InDelta(t, row.in5, math.Sqrt(heat)/k, 0.06)
	}
}

// 30 CFR 75.601-1 and 75.601-3, trailing cables of copper in coal mines: the greatest
// instantaneous setting of a breaker in A; ampacity and greatest dual-element fuse of
// single and of two-conductor cable; the time in s that ICEA P-32-382 withstands the
// setting, 75 to 150 C.
var trailingCables = []struct {
	awg                                                        int
	setting, single, singleFuse, double, doubleFuse, withstand float64
}{
	{14, 50, 0, 0, 15, 15, 18.9}, {12, 75, 0, 0, 20, 20, 21.2}, {10, 150, 0, 0, 25, 25, 13.4}, {8, 200, 60, 60, 50, 50, 19.1},
	{6, 300, 85, 90, 65, 70, 21.4}, {4, 500, 110, 110, 90, 90, 19.5}, {3, 600, 130, 150, 105, 110, 21.6}, {2, 800, 150, 150, 120, 125, 19.3},
	{1, 1000, 170, 175, 140, 150, 19.6}, {0, 1250, 200, 200, 170, 175, 20.0}, {-1, 1500, 235, 250, 195, 200, 22.1},
	{-2, 2000, 275, 300, 225, 225, 19.7}, {-3, 2500, 315, 350, 260, 300, 20.1},
}

func TestMineCablesHaveTheNextStandardFuse(t *testing.T) {
	agree := 0
	for _, row := range trailingCables {
		for _, pair := range [][2]float64{{row.single, row.singleFuse}, {row.double, row.doubleFuse}} {
			if pair[0] == 0 {
				continue
			}
			size, ok := conductor.FuseAtLeast(pair[0])
			require.True(t, ok)
			require.Equal(t, pair[1], size.Amperes, "%v", row)
			agree++
		}
	}
	require.Equal(t, 23, agree)
}

// A breaker that takes as long as the withstand at its setting just protects the cable.
func TestMineBreakersAreSetToTheWithstand(t *testing.T) {
	const k = 104.5 // ICEA P-32-382
	require.InEpsilon(t, k, conductor.WithstandConstant(75, 150), 0.007)
	for _, row := range trailingCables {
		withstand := conductor.Withstand(unit.AWG(row.awg).AreaMM2(), k, row.setting)
		require.InEpsilon(t, row.withstand, withstand, 0.005, "%v", row)
		require.InDelta(t, 20, withstand, 7)
		for share, want := range map[float64]Answer{0.98: Yes, 1.02: NotKnown} {
			c, err := FromPoints([]model.OpenPoint{{At: unit.A(row.setting), Most: unit.S(row.withstand * share)}})
			require.NoError(t, err)
			require.Equal(t, want, Protects(c, row.setting, withstand).Answer, "%v", row)
		}
	}
}

// Worked examples of textbooks on thyristors, I2t against their fuse: 50 A2s withstand
// 100 A for 5 ms; 50 A for 12 ms is 30 A2s, below the 90 of the device; 40 A for 15 ms is
// 24, below 93.
func TestFusesOfThyristors(t *testing.T) {
	require.InEpsilon(t, 0.005, conductor.Withstand(1, math.Sqrt(50), 100), 1e-12)
	for _, tt := range []struct{ amps, seconds, fuse, device float64 }{{50, 0.012, 30, 90}, {40, 0.015, 24, 93}} {
		c, err := FromPoints([]model.OpenPoint{{At: unit.A(tt.amps), Most: unit.S(tt.seconds)}})
		require.NoError(t, err)
		heat, ok := c.LetThrough(tt.amps)
		require.True(t, ok)
		require.InEpsilon(t, tt.fuse, heat, 1e-12)
		require.Equal(t, Yes, Protects(c, tt.amps, conductor.Withstand(1, math.Sqrt(tt.device), tt.amps)).Answer)
	}
}
