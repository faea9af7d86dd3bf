package heat

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model/conductor"
	"example.com/lugbook/model/unit"
)

// NEC 630.11(A) nonmotor and 630.31(A)(2): the tables round the square root their own way.
func TestDutyFactorAgainstNEC630(t *testing.T) {
	arc := map[float64]float64{1: 1, .9: .95, .8: .89, .7: .84, .6: .78, .5: .71, .4: .63, .3: .55, .2: .45}
	for share, printed := range arc {
		require.InDelta(t, printed, DutyFactor(share), .006, share)
	}
	resistance := map[float64]float64{.5: .71, .4: .63, .3: .55, .25: .50, .2: .45, .15: .39, .1: .32, .075: .27, .05: .22}
	for share, printed := range resistance {
		require.InDelta(t, printed, DutyFactor(share), .004, share)
	}
	// Worked with the root and with the table: 40 A at 50 %, 60 A at 60 %, 160 A at 60 %
	// to all the time, 140 A at 8 %.
	require.InDelta(t, 28.3, 40*DutyFactor(.5), .05)
	require.InDelta(t, 28.4, 40*arc[.5], .05)
	require.InDelta(t, 46.8, 60*arc[.6], .05)
	require.InDelta(t, 124, 160*DutyFactor(.6), .5)
	require.InDelta(t, 39.6, 140*DutyFactor(.08), .05)

	require.Equal(t, 1.0, DutyFactor(1.5))
	require.Zero(t, DutyFactor(-1))
	require.InDelta(t, DutyFactor(.6)*200, Duty{{200, 6}, {0, 4}}.RMS(), 1e-9, "the duty that it stands for")
}

// Derived from 33 CFR 183.425 table 5, 105 C in 30 C, and IEC 60949: no table of time
// constants of vehicle cable was found in print. Watts per metre and seconds recomputed
// by hand from the same sources.
func TestTimeConstants(t *testing.T) {
	for _, row := range []struct {
		awg        int
		watts, tau float64
	}{
		{6, 25.4, 136}, {4, 28.4, 193}, {2, 30.8, 283}, {1, 33.2, 330}, {0, 35.6, 388}, {-1, 37.9, 460}, {-2, 40.9, 538}, {-3, 43.3, 640},
	} {
		c := cable(t, unit.AWG(row.awg), 105, 30)
		perMetre, ok := conductor.OhmsPerMetre(c.Gauge, c.Limit)
		require.True(t, ok)
		require.InDelta(t, row.watts, c.Rated*c.Rated*perMetre, .05, c.Gauge)
		require.InDelta(t, row.tau, c.Tau, .6, c.Gauge)
	}
}

// MIL-DTL-83454A 4.5.3, in microhms; and 100 microhms at 400 A, recomputed.
func TestJoints(t *testing.T) {
	for stud, microhms := range map[string]float64{"#6": 300, "#8": 250, "#10": 214, "1/4 in": 174} {
		limit, ok := JointLimitFor(studOf(t, stud))
		require.True(t, ok)
		require.Equal(t, stud, limit.Stud.String())
		require.InDelta(t, microhms, limit.Ohms()*1e6, .5)
		require.InDelta(t, 7.5e-3, Joint{limit.Ohms()}.Volts(limit.Amps), 1e-12)
	}
	for stud, nearest := range map[string]string{"M3": "#6", "M4": "#8", "M5": "#10", "M6": "1/4 in", "M8": "1/4 in", "3/8 in": "1/4 in"} {
		limit, ok := JointLimitFor(studOf(t, stud))
		require.True(t, ok)
		require.Equal(t, nearest, limit.Stud.String())
	}
	_, ok := JointLimitFor(unit.Stud{})
	require.False(t, ok)

	poor := Joint{100e-6}
	require.InDelta(t, 40e-3, poor.Volts(400), 1e-12)
	require.InDelta(t, 16, poor.Watts(400), 1e-9)
}

// Heat and Mass Transfer, chapter 3, p. 88: 25 mm of 40 microhms per cm at 200 A and 200 C
// in air of 10 C needs a film coefficient of 10.73 (exactly 10.72) W/(m2 C).
func TestWattsAgainstHeatTransferText(t *testing.T) {
	watts := Joint{40e-6 * 100}.Watts(200)
	require.InDelta(t, 160, watts, 1e-9)
	require.InDelta(t, 10.73, watts/(math.Pi*.025*(200-10)), .02)
}

// Kulshreshtha, Basic Electrical Engineering, p. 32: copper of 3.42 ohm at 20 C has warmed
// by 59.59 C when it has 4.22 ohm (coefficient .00426 at 0 C), or by 59.53 C by 234.5 C.
func TestResistanceAgainstTextbook(t *testing.T) {
	require.InDelta(t, 4.22, conductor.AtTemperature(3.42, 20+59.53), .0005)
	require.InEpsilon(t, 4.22, conductor.AtTemperature(3.42, 20+59.59), .0005)
}

func cable(t require.TestingT, gauge unit.Gauge, insulation, ambient float64) Cable {
	c, err := Of(gauge, insulation, ambient)
	require.NoError(t, err)
	return c
}

func studOf(t *testing.T, text string) unit.Stud {
	t.Helper()
	stud, err := unit.ParseStud(text)
	require.NoError(t, err)
	return stud
}
