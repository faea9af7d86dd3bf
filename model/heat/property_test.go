package heat

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"example.com/lugbook/model/conductor"
	_ "example.com/lugbook/model/fixedseed"
	"example.com/lugbook/model/unit"
)

func drawCable(t *rapid.T) Cable {
	sizes := append(unit.AWGSizes()[2:], conductor.MetricSizes()[3:]...)
	gauge := rapid.SampledFrom(sizes).Draw(t, "gauge")
	insulation := rapid.SampledFrom([]float64{60, 75, 80, 90, 100, 105, 125, 200}).Draw(t, "insulation")
	c := cable(t, gauge, insulation, rapid.Float64Range(-20, 58).Draw(t, "ambient"))
	return c.Bundled(rapid.SampledFrom([]float64{1, .7, .6, .5, .4}).Draw(t, "bundle"))
}

// share is a current as a share of what a cable is rated for.
func drawShare(t *rapid.T, label string) float64 { return rapid.Float64Range(0, 4).Draw(t, label) }

func drawDuty(t *rapid.T, c Cable) Duty {
	return Duty(rapid.SliceOfN(rapid.Custom(func(t *rapid.T) Stage {
		return Stage{c.Rated * drawShare(t, "share"), rapid.Float64Range(1, 5000).Draw(t, "seconds")}
	}), 1, 6).Draw(t, "duty"))
}

// The current of the ampacity table brings a conductor to the temperature of its column.
func TestRatedCurrentReachesTheLimit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawCable(t)
		require.InDelta(t, c.Limit, c.Steady(c.Rated), 1e-9)
		celsius, ohms, ok := c.Working(c.Rated)
		require.True(t, ok)
		require.InDelta(t, c.Limit, celsius, 1e-6)
		want, _ := conductor.OhmsPerMetre(c.Gauge, c.Limit)
		require.InEpsilon(t, want, ohms, 1e-9)
		v, err := c.Judge(Duty{{c.Rated, 60}, {c.Rated, 1}})
		require.NoError(t, err)
		require.True(t, v.Fits)
		v, err = c.Judge(Duty{{c.Rated * 1.001, 60}})
		require.NoError(t, err)
		require.False(t, v.Fits)
	})
}

// The equation of heat, step by step: a metre of copper of the cable's area, its
// resistance as at the limit, and the loss that balances the rated current there.
func TestAfterSolvesTheEquationOfHeat(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawCable(t)
		amps := c.Rated * drawShare(t, "share")
		from := rapid.Float64Range(c.Ambient, c.Limit).Draw(t, "from")
		seconds := rapid.Float64Range(.01, 3).Draw(t, "time constants") * c.Tau
		perMetre, _ := conductor.OhmsPerMetre(c.Gauge, c.Limit)
		capacity := 3.45e6 * c.Gauge.AreaMM2() * 1e-6
		loss := c.Rated * c.Rated * perMetre / (c.Limit - c.Ambient)
		rate := func(celsius float64) float64 { return (amps*amps*perMetre - loss*(celsius-c.Ambient)) / capacity }
		const steps = 2000
		h, celsius := seconds/steps, from
		for range steps {
			celsius += h * rate(celsius+h/2*rate(celsius))
		}
		require.InDelta(t, celsius, c.After(amps, seconds, from), 1e-4*(1+math.Abs(celsius-from)))
	})
}

func TestMoreIsHotter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawCable(t)
		low, more := c.Rated*drawShare(t, "share"), 1+c.Rated*drawShare(t, "more")
		seconds := rapid.Float64Range(.01, 5).Draw(t, "time constants") * c.Tau
		require.Less(t, c.Steady(low), c.Steady(low+more))
		require.Less(t, c.After(low, seconds, c.Ambient), c.After(low+more, seconds, c.Ambient))
		require.LessOrEqual(t, c.After(low, seconds, c.Ambient), c.After(low, 2*seconds, c.Ambient)+1e-9)
		require.LessOrEqual(t, c.TimeToLimit(low+more, c.Ambient), c.TimeToLimit(low, c.Ambient))
		require.Greater(t, c.ShortTime(seconds, c.Ambient), c.ShortTime(2*seconds, c.Ambient))
		require.Greater(t, c.ShortTime(seconds, c.Ambient), c.ShortTime(seconds, (c.Ambient+c.Limit)/2))
	})
}

// The short-time current brings the conductor to its limit in its time, no sooner.
func TestShortTimeInvertsTimeToLimit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawCable(t)
		from := c.Ambient + rapid.Float64Range(0, .9).Draw(t, "preload")*(c.Limit-c.Ambient)
		seconds := rapid.Float64Range(.01, 5).Draw(t, "time constants") * c.Tau
		amps := c.ShortTime(seconds, from)
		require.GreaterOrEqual(t, amps, c.Rated)
		require.InDelta(t, c.Limit, c.After(amps, seconds, from), 1e-6)
		require.InEpsilon(t, seconds, c.TimeToLimit(amps, from), 1e-6)
		v, err := c.Judge(Duty{{amps, seconds}, {0, 100 * c.Tau}})
		require.NoError(t, err)
		require.True(t, v.Fits, "from a temperature at or above that of a long rest")
	})
	c := cable(t, unit.AWG(2), 105, 30)
	require.InDelta(t, c.Rated, c.ShortTime(math.Inf(1), 30), 1e-9)
	require.Zero(t, c.ShortTime(30, 105))
	require.Zero(t, c.ShortTime(0, 30))
	require.Zero(t, c.TimeToLimit(10, 105))
	require.True(t, math.IsInf(c.TimeToLimit(c.Rated, 30), 1))
}

// Run stage by stage from anywhere for long enough, the duty shows the peak and the
// valley that were found at once.
func TestJudgeIsWhatRepeatingComesTo(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawCable(t)
		duty := drawDuty(t, c)
		v, err := c.Judge(duty)
		require.NoError(t, err)
		celsius := rapid.Float64Range(c.Ambient, 2*c.Limit).Draw(t, "begins at")
		for range int(30*c.Tau/duty.Period()) + 2 {
			for _, s := range duty {
				celsius = c.After(s.Amps, s.Seconds, celsius)
			}
		}
		peak, valley := math.Inf(-1), math.Inf(1)
		for i, s := range duty {
			celsius = c.After(s.Amps, s.Seconds, celsius)
			peak, valley = max(peak, celsius), min(valley, celsius)
			if i == v.Hottest {
				require.InDelta(t, v.Peak, celsius, 1e-6)
			}
		}
		require.InDelta(t, v.Peak, peak, 1e-6)
		require.InDelta(t, v.Valley, valley, 1e-6)
		if math.Abs(peak-c.Limit) > 1e-6 {
			require.Equal(t, peak < c.Limit, v.Fits)
		}
	})
}

// The mean rise is that of the root-mean-square current, so that it lies between valley
// and peak; and with a short period the peak is at most z/(1 - exp(-z)) times as high.
func TestRMSAgainstThePeak(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawCable(t)
		duty := drawDuty(t, c)
		if rapid.Bool().Draw(t, "short") {
			shrink := ShortPeriod * c.Tau / duty.Period() * rapid.Float64Range(.01, .999).Draw(t, "of the longest")
			for i := range duty {
				duty[i].Seconds *= shrink
			}
			require.True(t, c.RMSHolds(duty))
		}
		v, err := c.Judge(duty)
		require.NoError(t, err)
		rms := c.Steady(duty.RMS())
		require.GreaterOrEqual(t, v.Peak, rms-1e-6)
		require.LessOrEqual(t, v.Valley, rms+1e-6)
		if c.RMSHolds(duty) {
			require.LessOrEqual(t, v.Peak-c.Ambient, 1.051*(rms-c.Ambient)+1e-6)
		}
	})
}

// The resistance that follows the temperature, by repeating; it is below that of the
// limit while the current is below the rated one, and above beyond.
func TestWorkingIsWhatIteratingComesTo(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawCable(t)
		amps := c.Rated * rapid.Float64Range(0, 1.3).Draw(t, "share")
		celsius, ohms, ok := c.Working(amps)
		if !ok {
			t.Skip("settles nowhere")
		}
		atLimit, _ := conductor.OhmsPerMetre(c.Gauge, c.Limit)
		trial := c.Ambient
		for range 3000 {
			perMetre, _ := conductor.OhmsPerMetre(c.Gauge, trial)
			trial = c.Ambient + (c.Steady(amps)-c.Ambient)*perMetre/atLimit
		}
		require.InEpsilon(t, trial, celsius, 1e-6)
		want, _ := conductor.OhmsPerMetre(c.Gauge, celsius)
		require.Equal(t, want, ohms)
		if amps <= c.Rated {
			require.LessOrEqual(t, celsius, c.Steady(amps)+1e-9)
		} else {
			require.GreaterOrEqual(t, celsius, c.Steady(amps)-1e-9)
		}
	})
	_, _, ok := cable(t, unit.AWG(2), 105, 30).Working(1000)
	require.False(t, ok, "it runs away")
}

// In a bundle a conductor gets hotter, though no faster at first.
func TestBundled(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		alone := cable(t, unit.AWG(-1), 105, 40)
		among := alone.Bundled(.7)
		require.InEpsilon(t, .7*alone.Rated, among.Rated, 1e-12)
		amps := alone.Rated * rapid.Float64Range(.1, 3).Draw(t, "share")
		seconds := rapid.Float64Range(1, 5000).Draw(t, "seconds")
		require.Greater(t, among.After(amps, seconds, 40), alone.After(amps, seconds, 40))
		require.InEpsilon(t, alone.After(amps, .001, 40)-40, among.After(amps, .001, 40)-40, 1e-4)
	})
	c := cable(t, unit.AWG(2), 105, 30)
	for _, factor := range []float64{1, 0, -1, 2, math.NaN()} {
		require.Equal(t, c, c.Bundled(factor))
	}
}

func TestOfRefuses(t *testing.T) {
	for _, row := range []struct {
		gauge               unit.Gauge
		insulation, ambient float64
		want                string
	}{
		{unit.Gauge{}, 105, 30, "size is not stated"},
		{unit.AWG(22), 105, 30, "begins at 18 AWG"},
		{unit.AWG(2), 50, 30, "begins at 60 C"},
		{unit.AWG(2), 105, 105, "may not warm up"},
		{unit.AWG(2), 105, math.NaN(), "may not warm up"},
	} {
		_, err := Of(row.gauge, row.insulation, row.ambient)
		require.ErrorContains(t, err, row.want)
	}
	require.Equal(t, cable(t, unit.AWG(2), 105, 30), cable(t, unit.AWG(2), 105, -20), "cold earns nothing")
	require.Equal(t, 90.0, cable(t, unit.AWG(2), 100, 30).Limit, "the lower column")
}
