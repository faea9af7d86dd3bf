package opening

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestSelective(t *testing.T) {
	gg, blade, strip := iec60269GG, isoBlade, isoStrip
	tests := []struct {
		down, up Curve
		fault    float64
		want     Answer
		from     float64
		why      string
	}{
		{Of(gg, 100), Of(gg, 160), 20_000, Yes, 0, "IEC 60269-1, gG: 100 A lets through less than 160 A holds, ratings 1:1.6 apart are selective"},
		{Of(gg, 160), Of(gg, 100), 20_000, No, 100, "at 160 A the 100 A gG fuse opens within 2 h at 160 A, but the 160 A gG fuse holds for ever at 160 A"},
		{Of(gg, 100), Of(gg, 100), 20_000, No, 100, "from 100 A on the 100 A gG fuse opens as soon as the 100 A gG fuse by every gate"},
		{Of(gg, 100), Of(gg, 125), 20_000, NotKnown, 125, "at 125 A the 100 A gG fuse may never open, and the 125 A gG fuse holds for sure no longer than 3.125 h"},
		{Of(gg, 16), Of(gg, 160), 90, Yes, 0, ""},
		{Of(blade, 10), Of(gg, 100), 1000, Yes, 0, "up to 1000 A the 10 A blade fuse has opened before the 100 A gG fuse may (from memory; to be confirmed by the maker's data sheet)"},
		{Of(blade, 10), Of(gg, 100), 10_000, NotKnown, 1643, "at 1643 A the 10 A blade fuse opens within 10 ms, the 100 A gG fuse not before 10 ms: either may be first (from memory; to be confirmed by the maker's data sheet)"},
		{Of(blade, 10), Of(strip, 250), 3000, NotKnown, 1500, "at 1500 A nothing says how long the 250 A bolted strip fuse holds (from memory; to be confirmed by the maker's data sheet)"},
		{Of(blade, 10), Of(ulClassT, 300), 500, NotKnown, 300, "nothing says when the 300 A class T fuse opens at 300 A: the standard's rows end at twice the rating: take the times of a fault from the maker's curve"},
		{Curve{}, Of(gg, 100), 500, NotKnown, 0, "nothing says when the device opens"},
		{Of(gg, 100), Of(gg, 800), 500, NotKnown, 0, "nothing says when the 800 A gG fuse opens: IEC 60269-1, gG has no gates for a rating of 800 A"},
		{Curve{}, Curve{}, 500, NotKnown, 0, "nothing says when the device opens"},
		{Of(strip, 250), Of(iec60947, 100), 500, No, 100, "at 130 A the 100 A industrial circuit breaker opens within 2 h at 130 A, but the 250 A bolted strip fuse holds for ever at 250 A"},
	}
	for _, tt := range tests {
		v := Selective(tt.down, tt.up, tt.fault)
		require.Equal(t, tt.want, v.Answer, "%s, %s", tt.down.Title, tt.up.Title)
		require.InDelta(t, tt.from, v.From, 0.5, v.Why)
		if tt.why != "" {
			require.Equal(t, tt.why, v.Why)
		}
	}
}

// By hand: at 90 A a 16 A gG fuse has opened in 5 s (65 A), and 160 A carries that for
// ever; at 600 A the bounds are 16 A: 0.01 s, its I2t of 1 000 A2s being reached from 316 A
// on: 2.8 ms; 160 A: 0.1 s at 1450 A, so 0.584 s.
func TestSelectiveByHand(t *testing.T) {
	down, up := Of(iec60269GG, 16), Of(iec60269GG, 160)
	require.Less(t, down.Band(90).Most, 5.0)
	require.InDelta(t, 0.00278, down.Band(600).Most, 1e-5)
	require.InDelta(t, 0.584, up.Band(600).Least, 1e-3)
	down.Family = "" // without the standard's own word
	require.Equal(t, Yes, Selective(down, up, 50_000).Answer)
}

// Yes means that at every current the one downstream has opened when the other may, No and
// not known that there is a current at which that is not sure.
func TestSelectiveAtEveryCurrent(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, down := aDevice(t, "down")
		_, up := aDevice(t, "up")
		if _, ok := chained(down, up); ok {
			return
		}
		fault := aCurrent(t, "fault", up)
		v := Selective(down, up, fault)
		if v.Answer == Yes {
			amps := min(fault, aCurrent(t, "amps", rapid.SampledFrom([]Curve{down, up}).Draw(t, "near")))
			require.LessOrEqual(t, down.Band(amps).Most, up.Band(amps).Least*(1+1e-12), "%g A", amps)
			return
		}
		require.LessOrEqual(t, v.From, fault*1.001)
		sure := true
		for _, amps := range edges(v.From*0.999, min(fault, v.From*1.001), down, up) {
			sure = sure && down.Band(amps).Most <= up.Band(amps).Least
		}
		require.False(t, sure, v.Why)
		require.NotEmpty(t, v.Why)
	})
}

// Two devices cannot each be selective to the other where one of them surely opens.
func TestSelectivityHasADirection(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, a := aDevice(t, "a")
		_, b := aDevice(t, "b")
		fault := aCurrent(t, "fault", a)
		_, opens := a.SlowestWithin(fault)
		_, other := b.SlowestWithin(fault)
		if (opens || other) && Selective(a, b, fault).Answer == Yes {
			require.NotEqual(t, Yes, Selective(b, a, fault).Answer)
		}
	})
}
