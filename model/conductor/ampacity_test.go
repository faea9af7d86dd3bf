package conductor

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	_ "example.com/lugbook/model/fixedseed"
	"example.com/lugbook/model/unit"
)

// NEC table 310.17 (single conductor in free air, 30 C) and 33 CFR 183.425 table 5
// agree in the 60 and 75 C columns from 6 AWG up: an independent print of the data.
func TestAmpacityAgainstNECTable31017(t *testing.T) {
	printed := []struct{ awg, at60, at75 int }{
		{6, 80, 95}, {4, 105, 125}, {3, 120, 145}, {2, 140, 170}, {1, 165, 195}, {0, 195, 230}, {-1, 225, 265}, {-2, 260, 310}, {-3, 300, 360},
	}
	for _, row := range printed {
		for column, want := range map[float64]int{60: row.at60, 75: row.at75} {
			got, err := Ampacity(unit.AWG(row.awg), column, 30)
			require.NoError(t, err)
			require.InDelta(t, float64(want), got.Amperes, 1e-9)
		}
	}
}

// The 105 C column inside engine spaces as a distributor reprints it from ABYC E-11,
// unrounded where the print has tenths.
func TestAmpacityInEngineSpaces(t *testing.T) {
	printed := map[int]float64{
		18: 17, 16: 21.3, 14: 29.8, 12: 38.3, 10: 51, 8: 68, 6: 102, 4: 136, 3: 153, 2: 178.5, 1: 208.3, 0: 242.3, -1: 280.5, -2: 327.3, -3: 378.3,
	}
	for number, want := range printed {
		got, err := Ampacity(unit.AWG(number), 105, 50)
		require.NoError(t, err)
		require.InDelta(t, want, got.Amperes, 0.06, unit.AWG(number))
		require.Equal(t, 0.85, got.Factor)
	}
}

// NEC table 310.15(B)(1), base 30 C: correction at the top of each band of ambients.
func TestAmbientFactorAgainstNEC(t *testing.T) {
	printed := []struct{ ambient, at60, at75, at90 float64 }{
		{35, .91, .94, .96}, {40, .82, .88, .91}, {45, .71, .82, .87}, {50, .58, .75, .82}, {55, .41, .67, .76},
	}
	for _, row := range printed {
		for column, want := range map[float64]float64{60: row.at60, 75: row.at75, 90: row.at90} {
			got, err := Ampacity(unit.AWG(6), column, row.ambient)
			require.NoError(t, err)
			require.InDelta(t, want, got.Factor, 0.01)
		}
	}
	for _, column := range []int{60, 75, 80, 90, 105, 125} {
		factor, recalled, ok := EngineSpaceFactor(column)
		require.True(t, ok)
		require.Equal(t, column != 105, recalled)
		got, err := Ampacity(unit.AWG(6), float64(column), 50)
		require.NoError(t, err)
		require.InDelta(t, factor, got.Factor, 0.006, "the equation gives the printed factor")
	}
	_, _, ok := EngineSpaceFactor(95)
	require.False(t, ok)
}

func TestAmpacityIsCarefulBetweenRows(t *testing.T) {
	got, err := Ampacity(unit.MM2(16), 105, 30)
	require.NoError(t, err)
	require.Equal(t, Allowance{Amperes: 120, Table: 120, Row: unit.AWG(6), Column: 105, Factor: 1}, got, "16 mm2 lies between 6 and 4 AWG")
	got, err = Ampacity(unit.MM2(120), 110, 20)
	require.NoError(t, err)
	require.Equal(t, Allowance{Amperes: 445, Table: 445, Row: unit.AWG(-3), Column: 105, Factor: 1}, got)
	got, err = Ampacity(unit.AWG(6), 60, 60)
	require.NoError(t, err)
	require.Zero(t, got.Amperes, "an ambient as hot as the insulation stands leaves nothing")
	for want, f := range map[string]func() (Allowance, error){
		"no ampacity is published for 22 AWG: the table begins at 18 AWG":             func() (Allowance, error) { return Ampacity(unit.AWG(22), 105, 30) },
		"no ampacity is published for insulation of 50 C: the table begins at 60 C":   func() (Allowance, error) { return Ampacity(unit.AWG(6), 50, 30) },
		"the conductor size is not stated: state it to get an ampacity":               func() (Allowance, error) { return Ampacity(unit.Gauge{}, 105, 30) },
		"no ampacity is published for 0.5 mm2: the table begins at 18 AWG":            func() (Allowance, error) { return Ampacity(unit.MM2(0.5), 105, 30) },
		"no ampacity is published for insulation of 59.5 C: the table begins at 60 C": func() (Allowance, error) { return Ampacity(unit.AWG(6), 59.5, 30) },
	} {
		_, err := f()
		require.EqualError(t, err, want)
	}
}

func TestAmpacityOnlyGrowsWithCopperAndOnlyFallsWithHeat(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		insulation := rapid.Float64Range(60, 220).Draw(t, "insulation")
		ambient := rapid.Float64Range(-20, 120).Draw(t, "ambient")
		thin := rapid.Float64Range(1, 100).Draw(t, "mm2")
		hotter := rapid.Float64Range(0, 30).Draw(t, "hotter by")
		a, err := Ampacity(unit.MM2(thin), insulation, ambient)
		require.NoError(t, err)
		b, err := Ampacity(unit.MM2(thin*1.5), insulation, ambient)
		require.NoError(t, err)
		c, err := Ampacity(unit.MM2(thin), insulation, ambient+hotter)
		require.NoError(t, err)
		require.LessOrEqual(t, a.Amperes, b.Amperes)
		require.LessOrEqual(t, c.Amperes, a.Amperes)
		require.GreaterOrEqual(t, c.Amperes, 0.0)
	})
}

// Coast Guard guideline to 33 CFR 183.425 note 2, 105 C, three, four to six and seven
// to 24 bundled: 2/0 231, 198, 165 A; 4/0 311.5, 267, 222.5 A.
func TestBundling(t *testing.T) {
	for number, want := range map[int][3]float64{-1: {231, 198, 165}, -3: {311.5, 267, 222.5}} {
		a, err := Ampacity(unit.AWG(number), 105, 30)
		require.NoError(t, err)
		for i, n := range []int{3, 6, 24} {
			require.InDelta(t, want[i], a.Amperes*BundleFactor(n, 50), 1e-9)
		}
	}
	require.Equal(t, 1.0, BundleFactor(2, 72))
	require.Equal(t, 0.6, BundleFactor(4, 72))
	require.Equal(t, 0.5, BundleFactor(7, 72))
	require.Equal(t, 0.4, BundleFactor(25, 72))
	require.Equal(t, 1.0, BundleFactor(25, 48), "the note holds from 50 V")
	require.Equal(t, unit.AWG(16), LeastGauge(false))
	require.Equal(t, unit.AWG(18), LeastGauge(true))
}
