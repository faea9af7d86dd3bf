package heat

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model/unit"
)

// A drive of 90 A with peaks of 300 A for 30 s, on 2 AWG of 105 C at 50 C. By hand:
//
//	rated    210 A x .85 = 178.5 A (33 CFR 183.425 table 5, note 1)
//	ohms     .5127e-3 x 1.02 x (1 + .00393 x 85) = .6977e-3 ohm/m at 105 C
//	tau      3.45 x 33.63 x 55 / (178.5^2 x .6977e-3) = 287 s
//	90 A     50 + 55 (90/178.5)^2 = 64.0 C, reached within the hour
//	300 A    50 + 55 (300/178.5)^2 = 205.4 C if it flowed for ever
//	peak     205.4 - (205.4 - 64.0) exp(-30/287) = 78.0 C
func TestDutyOfADrive(t *testing.T) {
	c := cable(t, unit.AWG(2), 105, 50)
	require.InDelta(t, 178.5, c.Rated, 1e-9)
	require.InDelta(t, 287, c.Tau, .5)

	duty := FromRatings(90, 300, 30)
	require.Equal(t, Duty{{300, 30}, {90, 3600}}, duty)
	v, err := c.Judge(duty)
	require.NoError(t, err)
	require.True(t, v.Fits)
	require.InDelta(t, 78.0, v.Peak, .05)
	require.InDelta(t, 64.0, v.Valley, .05)
	require.Equal(t, 0, v.Hottest)
	require.InDelta(t, math.Sqrt((300*300*30+90*90*3600)/3630.0), v.RMS, 1e-9)
	require.False(t, c.RMSHolds(duty))
	require.Less(t, c.Steady(v.RMS), v.Peak-10, "the root-mean-square alone would hide the peak")

	always, err := c.Judge(Duty{{300, 3600}})
	require.NoError(t, err)
	require.False(t, always.Fits)
	require.InDelta(t, 205.4, always.Peak, .05)
	require.Zero(t, always.Hottest)

	longer, err := c.Judge(FromRatings(90, 300, 180))
	require.NoError(t, err)
	require.False(t, longer.Fits, "three minutes of peak are too long")
}

func TestFromRatingsWithoutAPeak(t *testing.T) {
	for _, d := range []Duty{FromRatings(120, 0, 30), FromRatings(120, 120, 30), FromRatings(120, 350, 0)} {
		require.Equal(t, Duty{{120, 3600}}, d)
	}
}

func TestJudgeRefuses(t *testing.T) {
	c := cable(t, unit.AWG(2), 105, 30)
	for want, d := range map[string]Duty{
		"the duty has no stages":            nil,
		"stage 1 of the duty has -5 A":      {{-5, 1}},
		"stage 2 of the duty has 5 A for 0": {{5, 1}, {5, 0}},
		"stage 1 of the duty has NaN A":     {{math.NaN(), 1}},
		"for +Inf s":                        {{5, math.Inf(1)}},
	} {
		_, err := c.Judge(d)
		require.ErrorContains(t, err, want)
	}
	require.Zero(t, Duty(nil).RMS())
}

func TestParseDuty(t *testing.T) {
	for text, want := range map[string]Duty{
		"300 A 30 s, 90 A 1 h":           {{300, 30}, {90, 3600}},
		" 300A30s,90A1h ":                {{300, 30}, {90, 3600}},
		"300 A for 30 s, 90 A for 60min": {{300, 30}, {90, 3600}},
		"0.3 kA .5 min, 0 A 250 ms":      {{300, 30}, {0, .25}},
	} {
		d, err := ParseDuty(text)
		require.NoError(t, err, text)
		require.Equal(t, want, d, text)
	}
	for text, want := range map[string]string{
		"":                    "a stage of the duty is empty",
		"300 A 30 s,":         "a stage of the duty is empty",
		"300 A":               `"300 A" does not say how long`,
		"300 30 s":            `"300 30 s" is not a current`,
		"300 V 30 s":          `"300 V" is not a current`,
		"300 A 30":            `"30" has no unit`,
		"300 A 30 s 90 A 1 h": `"30 s 90 A 1 h" is not a time`,
		"-300 A 30 s":         "a current below 0",
		"300 A 0 s":           "takes no time",
		"thirty":              `"thirty" is not a current`,
	} {
		_, err := ParseDuty(text)
		require.ErrorContains(t, err, want, text)
	}
}

func TestDutyPrints(t *testing.T) {
	for want, d := range map[string]Duty{
		"300 A 30 s, 90 A 1 h": {{300, 30}, {90, 3600}},
		"40 mA 0.25 s":         {{.04, .25}},
		"5 A 90 s, 5 A 2 min":  {{5, 90}, {5, 120}},
		"0 A 90 min":           {{0, 5400}},
	} {
		require.Equal(t, want, d.String())
	}
}

// Whatever is read prints as something that reads the same.
func FuzzParseDuty(f *testing.F) {
	for _, seed := range []string{"300 A 30 s, 90 A 1 h", "300A30s", "1 kA for 5 ms,0 A 2 min", ",", "5 A .5 s", "300 A 30", "A 1 s", "µ 1"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		d, err := ParseDuty(text)
		if err != nil {
			require.Empty(t, d)
			return
		}
		again, err := ParseDuty(d.String())
		require.NoError(t, err, d.String())
		require.Len(t, again, len(d))
		for i := range d {
			require.InDelta(t, d[i].Amps, again[i].Amps, 1e-6+1e-9*d[i].Amps)
			require.InDelta(t, d[i].Seconds, again[i].Seconds, 1e-6+1e-9*d[i].Seconds)
		}
	})
}
