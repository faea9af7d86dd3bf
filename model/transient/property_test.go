package transient

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	_ "example.com/lugbook/model/fixedseed"
)

func drawApproach(t *rapid.T) Approach {
	return Approach{
		Start: rapid.Float64Range(-500, 500).Draw(t, "start"),
		Final: rapid.Float64Range(-500, 500).Draw(t, "final"),
		Tau:   rapid.Float64Range(1e-3, 1e4).Draw(t, "tau"),
	}
}

func TestTimeToInvertsAt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := drawApproach(t)
		if math.Abs(a.Start-a.Final) < 1 {
			t.Skip("nowhere to go")
		}
		constants := rapid.Float64Range(1e-3, 10).Draw(t, "time constants")
		value := a.At(constants * a.Tau)
		seconds, ok := a.TimeTo(value)
		require.True(t, ok)
		require.InEpsilon(t, constants, seconds/a.Tau, 1e-6)
	})
}

func TestApproachGoesOneWay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := drawApproach(t)
		early := rapid.Float64Range(0, 5).Draw(t, "early") * a.Tau
		late := early + rapid.Float64Range(0, 5).Draw(t, "more")*a.Tau
		const rounding = 1e-9
		left := func(seconds float64) float64 { return math.Abs(a.At(seconds) - a.Final) }
		require.LessOrEqual(t, left(late), left(early)+rounding)
		require.LessOrEqual(t, left(early), math.Abs(a.Start-a.Final)+rounding)
		require.Equal(t, a.Start, a.At(0))
		require.InDelta(t, a.Final, a.At(math.Inf(1)), rounding)
	})
}

func TestTimeToOfWhatIsNotReached(t *testing.T) {
	a := Approach{Start: 20, Final: 80, Tau: 10}
	for _, value := range []float64{80, 81, 19, math.NaN(), math.Inf(1)} {
		_, ok := a.TimeTo(value)
		require.False(t, ok, value)
	}
	seconds, ok := a.TimeTo(20)
	require.True(t, ok)
	require.Zero(t, seconds)
	_, ok = Approach{Start: 5, Final: 5, Tau: 1}.TimeTo(6)
	require.False(t, ok)
}

func TestNoTimeConstantIsAtOnce(t *testing.T) {
	a := Approach{Start: 20, Final: 80}
	require.Equal(t, 20.0, a.At(0))
	require.Equal(t, 80.0, a.At(1e-9))
	seconds, ok := a.TimeTo(50)
	require.True(t, ok)
	require.Zero(t, seconds)
	require.InDelta(t, 6400*3, a.Squared(3), 1e-9)
	require.Zero(t, a.Squared(0))
}

// Simpson's rule on the values themselves.
func TestSquaredIsTheIntegral(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := drawApproach(t)
		end := rapid.Float64Range(0.01, 5).Draw(t, "time constants") * a.Tau
		const steps = 400
		h, sum := end/steps, 0.0
		for i := 0; i <= steps; i++ {
			weight := 2.0 + 2*float64(i%2)
			if i == 0 || i == steps {
				weight = 1
			}
			v := a.At(float64(i) * h)
			sum += weight * v * v
		}
		require.InDelta(t, sum*h/3, a.Squared(end), 1e-6*(1+sum*h/3))
	})
}

func drawCycle(t *rapid.T) Cycle {
	return rapid.SliceOfN(rapid.Custom(func(t *rapid.T) Phase {
		return Phase{
			Final:   rapid.Float64Range(0, 500).Draw(t, "final"),
			Tau:     rapid.Float64Range(10, 1e4).Draw(t, "tau"),
			Seconds: rapid.Float64Range(1, 1e4).Draw(t, "seconds"),
		}
	}), 1, 8).Draw(t, "cycle")
}

// A cycle begun at the value that was found ends there, and passes the others; one begun
// anywhere else gets nearer.
func TestSettledCycleRepeats(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawCycle(t)
		starts := c.Settled()
		require.Len(t, starts, len(c))
		value, elsewhere := starts[0], rapid.Float64Range(-1000, 1000).Draw(t, "elsewhere")
		before := math.Abs(elsewhere - value)
		for i, p := range c {
			require.InDelta(t, starts[i], value, 1e-6)
			value = p.approach(value).At(p.Seconds)
			elsewhere = p.approach(elsewhere).At(p.Seconds)
		}
		require.InDelta(t, starts[0], value, 1e-6)
		require.LessOrEqual(t, math.Abs(elsewhere-value), before+1e-9)
	})
}

func TestSettledCycleStaysWithinItsFinals(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawCycle(t)
		least, greatest := math.Inf(1), math.Inf(-1)
		for _, p := range c {
			least, greatest = min(least, p.Final), max(greatest, p.Final)
		}
		for _, v := range c.Settled() {
			require.GreaterOrEqual(t, v, least-1e-6)
			require.LessOrEqual(t, v, greatest+1e-6)
		}
	})
}

func TestCycleThatTakesNoTime(t *testing.T) {
	require.Nil(t, Cycle(nil).Settled())
	require.Nil(t, Cycle{{Final: 1, Tau: 1}}.Settled())
	require.Nil(t, Cycle{{Final: 1}}.Settled())
}

// What the source gives is what the resistor and the capacitor get.
func TestChargeKeepsTheEnergy(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := Charge{
			Volts: rapid.Float64Range(10, 100).Draw(t, "volts"), Start: rapid.Float64Range(0, 100).Draw(t, "start"),
			Ohms: rapid.Float64Range(1, 1e3).Draw(t, "ohms"), Farads: rapid.Float64Range(1e-4, .1).Draw(t, "farads"),
		}
		seconds := rapid.Float64Range(0, 20).Draw(t, "time constants") * c.Voltage().Tau
		moved := c.Farads * (c.Voltage().At(seconds) - c.Start)
		stored := c.CapacitorJoules(seconds) - c.CapacitorJoules(0)
		require.InDelta(t, c.Volts*moved, stored+c.ResistorJoules(seconds), 1e-9*c.Farads*1e4)
		require.LessOrEqual(t, c.Ohms*math.Pow(c.Current().At(seconds), 2), c.PeakWatts()*(1+1e-12))
	})
}

// The current through the resistor is what the capacitor, the leak and the draw take.
func TestChargeKeepsTheCurrent(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := Charge{
			Volts: rapid.Float64Range(10, 100).Draw(t, "volts"), Ohms: rapid.Float64Range(1, 1e3).Draw(t, "ohms"),
			Farads: rapid.Float64Range(1e-4, .1).Draw(t, "farads"), Leak: rapid.Float64Range(100, 1e5).Draw(t, "leak"),
			Draw: rapid.Float64Range(0, .1).Draw(t, "draw"),
		}
		v := c.Voltage()
		now := rapid.Float64Range(.1, 5).Draw(t, "time constants") * v.Tau
		step := 1e-4 * v.Tau
		charging := c.Farads * (v.At(now+step) - v.At(now-step)) / (2 * step)
		require.InDelta(t, charging+v.At(now)/c.Leak+c.Draw, c.Current().At(now), 1e-6)
	})
}

// A diode's drop and a resistor both hasten the release; the current stops at 0, and
// the energy that the loop took until then is what the coil had.
func TestRelease(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		slow := Release{
			Amps: rapid.Float64Range(.05, 5).Draw(t, "amps"), Ohms: rapid.Float64Range(5, 500).Draw(t, "ohms"),
			Henries: rapid.Float64Range(.01, 5).Draw(t, "henries"),
		}
		quick, quickest := slow, slow
		quick.Drop = rapid.Float64Range(.3, 50).Draw(t, "drop")
		quickest.Drop, quickest.Ohms = quick.Drop, 2*slow.Ohms
		share := rapid.Float64Range(.05, .95).Draw(t, "share")
		times := make([]float64, 3)
		for i, r := range []Release{slow, quick, quickest} {
			var ok bool
			times[i], ok = r.TimeToShare(share)
			require.True(t, ok)
			require.InEpsilon(t, share*r.Amps, r.At(times[i]), 1e-9)
		}
		require.Greater(t, times[0], times[1])
		require.Greater(t, times[1], times[2])

		end, ok := quick.toZero().TimeTo(0)
		require.True(t, ok)
		require.InDelta(t, 0, quick.At(end), 1e-9)
		require.Zero(t, quick.At(2*end))
		inOhms := quick.Ohms * quick.toZero().Squared(end)
		inDrop := quick.Henries*quick.Amps*quick.Drop/quick.Ohms - quick.Drop*quick.Drop/quick.Ohms*end
		require.InEpsilon(t, quick.Joules(), inOhms+inDrop, 1e-6)
	})
	for _, share := range []float64{0, -1, 1.5, math.NaN()} {
		_, ok := Release{Amps: 1, Ohms: 1, Henries: 1}.TimeToShare(share)
		require.False(t, ok)
	}
	_, ok := Release{Ohms: 1, Henries: 1}.TimeToShare(.5)
	require.False(t, ok)
}
