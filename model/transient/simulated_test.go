package transient

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// ngspice 39, reltol 1e-7: 51.2 V behind 8 mohm, 250 ohm into 10 mF with 47 kohm across.
//
//	VB b 0 51.2 / RB b p 8m / RP p c 250 / C1 c 0 10m IC=0 / RL c 0 47k
func TestChargeAgainstSimulator(t *testing.T) {
	c := Charge{Volts: 51.2, Ohms: 250.008, Farads: 10e-3, Leak: 47e3}
	for seconds, volts := range map[float64]float64{1: 16.86242, 2.5: 32.29212, 5: 44.10909, 7.5: 48.43338, 12: 50.52046} {
		require.InEpsilon(t, volts, c.Voltage().At(seconds), 1e-6)
	}
	require.InEpsilon(t, 7.714908, reaches(t, c.Voltage(), 0.95*51.2), 1e-6)
	require.InEpsilon(t, 50.92909, c.Voltage().Final, 1e-6)
	require.InEpsilon(t, .1373459, c.Current().At(1), 1e-6)
}

// ngspice 39: a bolted short behind 10 mohm and 5 uH.
//
//	VB b 0 51.2 / RB b c 10m / L1 c 0 5u IC=0
func TestBoltedShortAgainstSimulator(t *testing.T) {
	fault := Rise(51.2, 10e-3, 5e-6)
	for seconds, amps := range map[float64]float64{.5e-3: 3236.457, 1e-3: 4427.083, 2e-3: 5026.224} {
		require.InEpsilon(t, amps, fault.At(seconds), 1e-6)
	}
	require.InEpsilon(t, 5120, fault.Final, 1e-12)
}

// ngspice 39: a coil of .5 H and 96 ohm with .5 A dies away in a diode, IS=1e-9 N=1.8
// RS=.02 at 27 C. The curve of the diode is replaced by its chords between .5 A and
// the current asked for, each a constant drop with a resistance in series.
//
//	L1 k m .5 IC=.5 / R1 m 0 96 / D1 0 k
func TestReleaseAgainstSimulator(t *testing.T) {
	const thermal = 1.380649e-23 * 300.15 / 1.602176634e-19
	diode := func(amps float64) float64 { return 1.8*thermal*math.Log1p(amps/1e-9) + .02*amps }
	timeTo := func(last float64) float64 {
		const chords = 50
		step := math.Pow(last/.5, 1.0/chords)
		total, high := 0.0, .5
		for range chords {
			low := high * step
			slope := (diode(high) - diode(low)) / (high - low)
			r := Release{Amps: high, Ohms: 96 + slope, Henries: .5, Drop: diode(high) - slope*high}
			seconds, ok := r.TimeToShare(step)
			require.True(t, ok)
			require.InEpsilon(t, low, r.At(seconds), 1e-9)
			total, high = total+seconds, low
		}
		return total
	}
	for amps, seconds := range map[float64]float64{.410949: 1e-3, .185585: 5e-3, .0655259: 10e-3, .05: 11.2228e-3} {
		require.InEpsilon(t, seconds, timeTo(amps), 1e-4)
	}

	// One constant drop stands for the diode: the drops at both ends of the release bracket it.
	tenth := func(drop float64) float64 {
		seconds, ok := Release{Amps: .5, Ohms: 96, Henries: .5, Drop: drop}.TimeToShare(.1)
		require.True(t, ok)
		return seconds
	}
	require.Less(t, tenth(diode(.5)), 11.2228e-3)
	require.Greater(t, tenth(diode(.05)), 11.2228e-3)
	require.InEpsilon(t, 11.2228e-3, tenth(diode(.16)), 2e-3)
	require.InEpsilon(t, 11.993e-3, tenth(0), 1e-4, "the resistance alone")
}

// No printed example of pre-charge at these voltages was found: recomputed figures.
func TestPrecharge(t *testing.T) {
	for _, row := range []struct {
		c                                  Charge
		tau, nearly, joules, watts, ampere string
	}{
		{Charge{Volts: 51.2, Ohms: 250, Farads: 10e-3}, "2.5", "7.489", "13.11", "10.49", "0.205"},
		{Charge{Volts: 58.4, Ohms: 470, Farads: 10e-3}, "4.70", "14.08", "17.05", "7.26", "0.124"},
	} {
		v := row.c.Voltage()
		asPrinted(t, row.tau, v.Tau)
		asPrinted(t, row.nearly, reaches(t, v, .95*row.c.Volts))
		asPrinted(t, row.joules, row.c.ResistorJoules(20*v.Tau))
		asPrinted(t, row.joules, row.c.CapacitorJoules(20*v.Tau))
		asPrinted(t, row.watts, row.c.PeakWatts())
		asPrinted(t, row.ampere, row.c.Current().Start)
	}
}

// What a controller draws from its capacitor while it is charged comes off the final
// voltage: 50 mA through 250 ohm are 12.5 V.
func TestDrawKeepsTheVoltageDown(t *testing.T) {
	c := Charge{Volts: 51.2, Ohms: 250, Farads: 10e-3, Draw: .05}
	require.InDelta(t, 51.2-12.5, c.Voltage().Final, 1e-9)
	require.InDelta(t, .05, c.Current().Final, 1e-12)
	_, ok := c.Voltage().TimeTo(.95 * 51.2)
	require.False(t, ok, "it never gets there")
}

// Two wires of 2/0, radius 4.633 mm, 20, 50 and 300 mm apart; recomputed in microhenries
// per metre.
func TestLoopInductance(t *testing.T) {
	const radius = 4.633e-3
	for apart, printed := range map[float64]string{.020: "0.685", .050: "1.052", .300: "1.768"} {
		asPrinted(t, printed, 1e6*LoopInductance(apart, radius))
	}
	require.Equal(t, LoopInductance(2*radius, radius), LoopInductance(0, radius), "no closer than touching")
}
