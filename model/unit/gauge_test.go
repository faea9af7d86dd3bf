package unit

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestGaugeReadings(t *testing.T) {
	// Areas: the printed table of ASTM B258 to four figures is checked in TestAWGTable.
	checkReadings(t, ParseGauge, Gauge.AreaMM2, []reading{
		{"6", "6 AWG", AWG(6).AreaMM2()}, {"6 AWG", "6 AWG", AWG(6).AreaMM2()}, {"AWG 6", "6 AWG", AWG(6).AreaMM2()},
		{"6AWG", "6 AWG", AWG(6).AreaMM2()}, {"6 ga", "6 AWG", AWG(6).AreaMM2()}, {"#6", "6 AWG", AWG(6).AreaMM2()},
		{"No. 8", "8 AWG", AWG(8).AreaMM2()}, {"3", "3 AWG", AWG(3).AreaMM2()},
		{"2/0", "2/0 AWG", AWG(-1).AreaMM2()}, {"2/0 AWG", "2/0 AWG", AWG(-1).AreaMM2()}, {"00", "2/0 AWG", AWG(-1).AreaMM2()},
		{"0", "1/0 AWG", AWG(0).AreaMM2()}, {"1/0", "1/0 AWG", AWG(0).AreaMM2()}, {"0000", "4/0 AWG", AWG(-3).AreaMM2()},
		{"16mm2", "16 mm2", 16}, {"16 mm²", "16 mm2", 16}, {"16 sq mm", "16 mm2", 16}, {"16 mm^2", "16 mm2", 16},
		{"0.75 mm2", "0.75 mm2", 0.75}, {"2.50 sq. mm", "2.5 mm2", 2.5},
	})
}

func TestGaugeErrors(t *testing.T) {
	tests := []struct{ text, want string }{
		{"5", `"5" is not an AWG size from 22 to 4/0: expected a gauge such as 6 AWG, 2/0 AWG or 16 mm2`},
		{"25", `"25" is not an AWG size from 22 to 4/0: expected a gauge such as 6 AWG, 2/0 AWG or 16 mm2`},
		{"06", `"06" is not an AWG size from 22 to 4/0: expected a gauge such as 6 AWG, 2/0 AWG or 16 mm2`},
		{"5/0", `"5/0" is not a conductor size: expected a gauge such as 6 AWG, 2/0 AWG or 16 mm2`},
		{"-6", `"-6" is not a conductor size: expected a gauge such as 6 AWG, 2/0 AWG or 16 mm2`},
		{"", `"" is not a conductor size: expected a gauge such as 6 AWG, 2/0 AWG or 16 mm2`},
		{"0 mm2", `"0 mm2" is out of range: expected an area above 0 and up to 1000 mm2`},
		{"1001 mm2", `"1001 mm2" is out of range: expected an area above 0 and up to 1000 mm2`},
	}
	for _, tt := range tests {
		_, err := ParseGauge(tt.text)
		require.EqualError(t, err, tt.want)
	}
}

// The diameters in inches and areas in mm2 of ASTM B258, to the figures printed.
func TestAWGTable(t *testing.T) {
	printed := []struct{ inches, mm2 float64 }{
		{0.02535, 0.326}, {0.03196, 0.518}, {0.04030, 0.823}, {0.05082, 1.309}, {0.06408, 2.081}, {0.08081, 3.309},
		{0.1019, 5.261}, {0.1285, 8.366}, {0.1620, 13.30}, {0.2043, 21.15}, {0.2294, 26.67}, {0.2576, 33.63},
		{0.2893, 42.41}, {0.3249, 53.47}, {0.3648, 67.43}, {0.4096, 85.03}, {0.4600, 107.2},
	}
	sizes := AWGSizes()
	require.Len(t, sizes, len(printed))
	require.True(t, slices.IsSortedFunc(sizes, Gauge.Compare))
	for i, g := range sizes {
		require.InEpsilon(t, printed[i].inches, g.DiameterMM()/25.4, 5e-4, g)
		require.InEpsilon(t, printed[i].mm2, g.AreaMM2(), 2e-3, g)
	}
	require.InDelta(t, 0.46, AWG(-3).DiameterMM()/25.4, 1e-12, "4/0 is 0.4600 in exactly")
}

func TestGaugeOrder(t *testing.T) {
	require.Negative(t, AWG(6).Compare(MM2(16)), "6 AWG is 13.3 mm2")
	require.Positive(t, AWG(4).Compare(MM2(16)), "4 AWG is 21.15 mm2")
	require.Zero(t, MM2(16).Compare(MM2(16)))
	require.InDelta(t, 2*math.Sqrt(16/math.Pi), MM2(16).DiameterMM(), 1e-9)
	n, ok := AWG(-1).AWG()
	require.True(t, ok)
	require.Equal(t, -1, n)
	_, ok = MM2(16).AWG()
	require.False(t, ok)
	require.False(t, MM2(16).IsAWG())
}

func TestStudReadings(t *testing.T) {
	checkReadings(t, ParseStud, Stud.DiameterMM, []reading{
		{"M8", "M8", 8}, {"m8", "M8", 8}, {"M 10", "M10", 10}, {"5/16 in", "5/16 in", 7.9375}, {`5/16"`, "5/16 in", 7.9375},
		{"5/16", "5/16 in", 7.9375}, {"1/4 in", "1/4 in", 6.35}, {"3/8 inch", "3/8 in", 9.525}, {"1/2in", "1/2 in", 12.7},
		{"#10", "#10", 4.826}, {"No. 10", "#10", 4.826}, {"#8", "#8", 4.1656},
	})
	for _, bad := range []string{"", "8", "10", "M7", "#9", "9/16 in", "5/17 in", "5/16 mm", "M8 in"} {
		_, err := ParseStud(bad)
		require.ErrorContains(t, err, "expected one such as M8, 5/16 in or #10", bad)
	}
}

func TestStudsAreInOrder(t *testing.T) {
	all := Studs()
	for i, s := range all {
		parsed, err := ParseStud(s.String())
		require.NoError(t, err)
		require.Equal(t, s, parsed)
		if i > 0 {
			require.Less(t, all[i-1].DiameterMM(), s.DiameterMM())
			require.Negative(t, all[i-1].Compare(s))
		}
	}
	metric, err := ParseStud("M8")
	require.NoError(t, err)
	require.True(t, metric.IsMetric())
	require.False(t, Stud{}.IsMetric())
}
