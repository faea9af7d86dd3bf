package opening

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	_ "example.com/lugbook/model/fixedseed"
)

// aDevice draws a device of any family, of a rating that its standard covers.
func aDevice(t *rapid.T, label string) (Gates, Curve) {
	g, _ := Find(rapid.SampledFrom(Names()).Draw(t, label))
	low, high := 0.5, 1000.0
	if ratings := g.Ratings(); len(ratings) > 0 {
		low, high = ratings[0], ratings[len(ratings)-1]
		if rapid.Bool().Draw(t, label+" of the list") {
			return g, Of(g, rapid.SampledFrom(ratings).Draw(t, label+" rated"))
		}
	}
	if g.greatest > 0 {
		high = g.greatest
	}
	return g, Of(g, rapid.Float64Range(low, high).Draw(t, label+" rated"))
}

// aCurrent draws a current of any size, often one at or next to a gate.
func aCurrent(t *rapid.T, label string, c Curve) float64 {
	amps := math.Pow(10, rapid.Float64Range(-1, 5.5).Draw(t, label))
	if n := len(c.gates); n > 0 && rapid.Bool().Draw(t, label+" at a gate") {
		at := c.gates[rapid.IntRange(0, n-1).Draw(t, label+" gate")].Amps
		return at * rapid.SampledFrom([]float64{1, 1, 1 - 1e-9, 1 + 1e-9}).Draw(t, label+" beside")
	}
	return amps
}

func TestTimesFallWithTheCurrent(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, c := aDevice(t, "device")
		i, j := aCurrent(t, "i", c), aCurrent(t, "j", c)
		low, high := c.Band(min(i, j)), c.Band(max(i, j))
		for _, b := range []Band{low, high} {
			require.LessOrEqual(t, b.Least, b.Most)
			require.Equal(t, b.Least > 0 || !math.IsInf(b.Most, 1), b.Known)
			require.Equal(t, b.Least > 0, b.LeastBy != "")
			require.Equal(t, !math.IsInf(b.Most, 1), b.MostBy != "")
		}
		require.LessOrEqual(t, high.Least, low.Least)
		require.LessOrEqual(t, high.Most, low.Most)
	})
}

func TestNoCurrentOpensNothing(t *testing.T) {
	for _, c := range []Curve{{}, Of(iec60269GG, 100), Of(iec60269GG, 5000)} {
		b := c.Band(0)
		require.Equal(t, math.Inf(1), b.Least)
		require.Equal(t, math.Inf(1), b.Most)
		require.True(t, b.Known)
	}
}

// A device that keeps every gate of its standard keeps the band: times are drawn at random
// between the gates themselves so that they fall with the current, for a fuse its I2t too.
func TestEveryLawfulDeviceKeepsTheBand(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g, c := aDevice(t, "device")
		power := 2.0 // of the current that is constant or falls with it
		if g.breaker {
			power = 0
		}
		at := []float64{}
		for _, gate := range c.gates {
			at = append(at, gate.Amps)
		}
		if len(at) == 0 {
			return
		}
		at = append(at, at[0]/2, at[len(at)-1]*2, rapid.Float64Range(at[0], at[len(at)-1]).Draw(t, "amps"))
		slices.Sort(at)
		falling := 1e15
		for _, amps := range at {
			least, most := 0.0, 1e15
			for _, gate := range c.gates {
				scale := math.Pow(gate.Amps, power)
				if gate.Amps >= amps {
					least = max(least, min(gate.Least, 1e8)*scale)
				}
				if gate.Amps <= amps {
					most = min(most, gate.Most*scale)
				}
			}
			least = max(least, c.preArc)
			require.LessOrEqual(t, least, most*(1+1e-12), "the gates leave room at %g A", amps)
			share := rapid.Float64Range(0, 1).Draw(t, "share")
			falling = min(falling, math.Pow(max(least, 1e-9), 1-share)*math.Pow(max(most, 1e-9), share))
			seconds := falling / math.Pow(amps, power)
			b := c.Band(amps)
			if !math.IsInf(b.Least, 1) {
				require.GreaterOrEqual(t, seconds*(1+1e-9), b.Least, "%g A", amps)
			}
			if amps < c.adiabaticFrom() {
				require.LessOrEqual(t, seconds, max(b.Most, adiabatic)*(1+1e-9), "%g A", amps)
			}
		}
	})
}

// Both ends of the band can be met: a device at either keeps every gate.
func TestTheBandIsAsCloseAsTheGatesAllow(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, c := aDevice(t, "device")
		for _, g := range c.gates {
			b := c.Band(g.Amps)
			require.GreaterOrEqual(t, b.Least, g.Least)
			require.LessOrEqual(t, b.Most, g.Most)
			require.GreaterOrEqual(t, b.Most, g.Least, "the slowest device holds")
			require.LessOrEqual(t, b.Least, g.Most, "the quickest device opens")
		}
	})
}

func TestRatingsBetweenThoseOfTheStandard(t *testing.T) {
	g := iec60269GG
	c := Of(g, 30)
	require.Equal(t, "30 A gG fuse", c.Title)
	require.Contains(t, c.Note, "has no rating of 30 A: bounded by 25 and 32 A")
	require.Equal(t, math.Inf(1), c.Band(30).Least)
	require.Equal(t, 10.0, c.Band(52).Least, "holds as 25 A does")
	require.Equal(t, 5.0, c.Band(150).Most, "opens as 32 A does")
	require.Equal(t, 1000.0, c.preArc)
	require.Equal(t, 5000.0, c.total)
	rapid.Check(t, func(t *rapid.T) {
		rated := rapid.Float64Range(2, 630).Draw(t, "rated")
		low, high := g.neighbours(rated)
		between := Of(g, rated)
		amps := aCurrent(t, "amps", between)
		b := between.Band(amps)
		require.GreaterOrEqual(t, b.Least, Of(g, low).Band(amps).Least)
		require.LessOrEqual(t, b.Most, Of(g, high).Band(amps).Most)
	})
}

func TestWhatTheStandardDoesNotCover(t *testing.T) {
	tests := []struct {
		gates Gates
		rated float64
		note  string
	}{
		{iec60269GG, 800, "IEC 60269-1, gG has no gates for a rating of 800 A"},
		{iec60269GG, 1, "IEC 60269-1, gG has no gates for a rating of 1 A"},
		{ul24814, 80, "UL 248-14, supplementary has no gates for a rating of 80 A"},
		{isoBlade, 0, "its rated current is not stated"},
		{isoBlade, -5, "ISO 8820-3, type C has no gates for a rating of -5 A"},
		{isoBlade, math.NaN(), "ISO 8820-3, type C has no gates for a rating of NaN A"},
		{iec60947, math.Inf(1), "IEC 60947-2 has no gates for a rating of +Inf A"},
	}
	for _, tt := range tests {
		c := Of(tt.gates, tt.rated)
		require.Equal(t, tt.note, c.Note)
		require.Empty(t, c.Gates())
		b := c.Band(100)
		require.False(t, b.Known)
		require.Zero(t, b.Least)
		require.Equal(t, math.Inf(1), b.Most)
		_, ok := c.LetThrough(100)
		require.False(t, ok)
		_, ok = c.OpensFrom()
		require.False(t, ok)
	}
}

// A fuse for short circuits alone holds its rating; when it opens only its maker knows.
func TestShortCircuitFuse(t *testing.T) {
	c := Of(iec60269AR, 400)
	require.True(t, iec60269AR.ShortCircuitOnly)
	require.Equal(t, math.Inf(1), c.Band(400).Least)
	_, ok := c.SlowestWithin(20_000)
	require.False(t, ok)
	v := Protects(c, 20_000, 1)
	require.Equal(t, NotKnown, v.Answer)
	require.Contains(t, v.Why, "opens only from the least breaking current that its maker states")
}

func TestWords(t *testing.T) {
	for want, seconds := range map[string]float64{
		"for ever": math.Inf(1), "1 h": 3600, "2 h": 7200, "100 h": 360_000, "90 min": 5400, "2 min": 120, "110 s": 110,
		"5 s": 5, "0.1 s": 0.1, "20 ms": 0.02, "0.86 ms": 0.00086, "0 s": 0, "1.682 s": 1.682_04,
	} {
		require.Equal(t, want, Span(seconds))
	}
	require.Equal(t, "14140", figures(14140))
	require.Equal(t, "123500", figures(123_456))
	require.Equal(t, math.MaxFloat64, rounded(math.MaxFloat64), "rounding it up leaves the range of numbers")
	b := Of(iec60269GG, 100).Band(1000)
	require.Equal(t, "opens within 5 s at 580 A, so 1.682 s at 1000 A", b.MostBy)
	require.Equal(t, "takes at least 27000 A2s before it arcs, so 27 ms at 1000 A", b.LeastBy)
	require.Equal(t, "holds 2 h at 125 A", Of(iec60269GG, 100).Band(125).LeastBy)
}

func TestGatesAreACopy(t *testing.T) {
	c := Of(iec60269GG, 100)
	c.Gates()[0].Amps = 1e9
	require.Equal(t, 100.0, c.Gates()[0].Amps)
}
