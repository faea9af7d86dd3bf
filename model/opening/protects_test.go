package opening

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestProtects(t *testing.T) {
	gg, blade := Of(iec60269GG, 100), Of(isoBlade, 10)
	tests := []struct {
		c               Curve
		amps, withstand float64
		want            Answer
		why             string
	}{
		{gg, 1000, 6, Yes, "the 100 A gG fuse opens within 5 s at 580 A, so 1.682 s at 1000 A; the conductor withstands 1000 A for 6 s"},
		{gg, 1000, 1, NotKnown, "the 100 A gG fuse opens within 5 s at 580 A, so 1.682 s at 1000 A, perhaps sooner; the conductor withstands 1000 A for 1 s"},
		{gg, 125, 60, No, "the 100 A gG fuse holds 2 h at 125 A; the conductor withstands 125 A for 60 s"},
		{gg, 150, 3600, NotKnown, "the 100 A gG fuse may never open at 150 A; the conductor withstands 150 A for 1 h"},
		{gg, 10_000, 0.01, Yes, "the 100 A gG fuse lets through at most 86000 A2s, so 0.86 ms at 10000 A; the conductor withstands 10000 A for 10 ms"},
		{blade, 20, 6, Yes, "the 10 A blade fuse opens within 5 s at 20 A (from memory; to be confirmed by the maker's data sheet); the conductor withstands 20 A for 6 s"},
		{Curve{}, 20, 6, NotKnown, "nothing says when the device opens at 20 A; the conductor withstands 20 A for 6 s"},
		{Of(iec60269GG, 800), 9000, 1, NotKnown, "nothing says when the 800 A gG fuse opens at 9000 A: IEC 60269-1, gG has no gates for a rating of 800 A; the conductor withstands 9000 A for 1 s"},
		{gg, 50, math.Inf(1), Yes, "the conductor withstands 50 A for ever"},
	}
	for _, tt := range tests {
		v := Protects(tt.c, tt.amps, tt.withstand)
		require.Equal(t, tt.want, v.Answer, tt.why)
		require.Equal(t, tt.why, v.Why)
		if tt.want == Yes {
			require.Zero(t, v.From)
		} else {
			require.Equal(t, tt.amps, v.From)
		}
	}
}

func TestProtectsIsTheBandsWord(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, c := aDevice(t, "device")
		amps := aCurrent(t, "amps", c)
		withstand := math.Pow(10, rapid.Float64Range(-4, 6).Draw(t, "withstand"))
		b := c.Band(amps)
		switch Protects(c, amps, withstand).Answer {
		case Yes:
			require.LessOrEqual(t, b.Most, withstand)
		case No:
			require.Greater(t, b.Least, withstand)
		default:
			require.Greater(t, b.Most, withstand)
			require.LessOrEqual(t, b.Least, withstand)
		}
	})
}

func TestNoFaultLetsThroughMoreThanTheWorst(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, c := aDevice(t, "device")
		i, j := aCurrent(t, "i", c), aCurrent(t, "j", c)
		from, to := min(i, j), max(i, j)
		amps := from + (to-from)*rapid.Float64Range(0, 1).Draw(t, "between")
		at, worst, ok := c.Worst(from, to)
		require.GreaterOrEqual(t, at, from)
		require.LessOrEqual(t, at, to)
		heat, bounded := c.LetThrough(amps)
		if !ok {
			_, bounded = c.LetThrough(at)
			require.False(t, bounded)
			return
		}
		require.True(t, bounded)
		require.LessOrEqual(t, heat, worst*(1+1e-9))
		reached, _ := c.LetThrough(at)
		require.Equal(t, worst, reached)
	})
}

func TestOpensWithinIsTheLeastCurrent(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, c := aDevice(t, "device")
		seconds := math.Pow(10, rapid.Float64Range(-4, 6).Draw(t, "seconds"))
		amps, ok := c.OpensWithin(seconds)
		if !ok {
			require.Greater(t, c.Band(1e9).Most, seconds)
			return
		}
		require.LessOrEqual(t, c.Band(amps*(1+1e-9)).Most, seconds*(1+1e-9))
		require.Greater(t, c.Band(amps*(1-1e-6)).Most, seconds)
		from, ok := c.OpensFrom()
		require.True(t, ok)
		require.LessOrEqual(t, from, amps)
	})
}
