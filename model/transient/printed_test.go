package transient

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// asPrinted compares with a printed figure to half a unit of its last digit.
func asPrinted(t *testing.T, printed string, got float64) {
	t.Helper()
	want, err := strconv.ParseFloat(printed, 64)
	require.NoError(t, err)
	_, decimals, _ := strings.Cut(printed, ".")
	unit := 1.0
	for range decimals {
		unit /= 10
	}
	require.InDelta(t, want, got, unit*0.5000001)
}

// reaches is the time to a value that is known to be reached.
func reaches(t *testing.T, a Approach, value float64) float64 {
	t.Helper()
	seconds, ok := a.TimeTo(value)
	require.True(t, ok)
	return seconds
}

// Lessons In Electric Circuits, volume DC, "RC and L/R time constants": 15 V, 10 kohm
// and 100 uF; volts across the capacitor and microamperes, second by second.
func TestChargeAgainstLessonsInElectricCircuits(t *testing.T) {
	c := Charge{Volts: 15, Ohms: 10e3, Farads: 100e-6}
	for _, row := range []struct {
		seconds        float64
		volts, microns string
	}{
		{0.5, "5.902", "909.8"}, {1, "9.482", "551.8"}, {2, "12.970", "203.0"}, {3, "14.253", "74.68"}, {4, "14.725", "27.47"},
		{5, "14.899", "10.11"}, {6, "14.963", "3.718"}, {7.25, "14.989", "1.065"}, {10, "14.999", "0.068"},
	} {
		asPrinted(t, row.volts, c.Voltage().At(row.seconds))
		asPrinted(t, row.microns, c.Current().At(row.seconds)*1e6)
	}
}

// The same chapter: 15 V on 1 ohm and 1 H, after 3.5 s.
func TestRiseAgainstLessonsInElectricCircuits(t *testing.T) {
	amps := Rise(15, 1, 1).At(3.5)
	asPrinted(t, "14.547", amps)
	asPrinted(t, "0.453", 15-amps*1)
}

// Bird, Electrical Circuit Theory and Technology, pp. 262, 265 and 267.
func TestChargeAgainstBird(t *testing.T) {
	p262 := Charge{Volts: 120, Ohms: 47e3, Farads: 15e-6}.Voltage()
	asPrinted(t, "75.85", p262.At(p262.Tau))
	require.InDelta(t, 0.4887, reaches(t, p262, 60), 1e-4)

	p265 := Charge{Volts: 20, Ohms: 50e3, Farads: 20e-6}
	asPrinted(t, "0.4", p265.Current().At(0)*1e3)
	asPrinted(t, "0.147", p265.Current().At(1)*1e3)
	asPrinted(t, "17.3", p265.Voltage().At(2))

	asPrinted(t, "1.29", reaches(t, Approach{Start: 100, Tau: 0.8}, 20))
}

// Bird, p. 271: 3 H and 15 ohm on 120 V. Kulshreshtha, Basic Electrical Engineering,
// p. 220: 10 V on 3 ohm with a time constant of 1.8 s.
func TestRiseAgainstTextbooks(t *testing.T) {
	bird := Rise(120, 15, 3)
	asPrinted(t, "8", bird.Final)
	asPrinted(t, "0.2", bird.Tau)
	asPrinted(t, "72.78", 120-15*bird.At(0.1))
	asPrinted(t, "0.38", reaches(t, bird, 0.85*8))

	kulshreshtha := Rise(10, 3, 3*1.8)
	asPrinted(t, "1.42", kulshreshtha.At(1))
	asPrinted(t, "1.25", reaches(t, kulshreshtha, kulshreshtha.Final/2))
	asPrinted(t, "1.85", kulshreshtha.At(1e-6)/1e-6)
}

// Bird, p. 273: a field of 15 ohm on 110 V with a time constant of 2 s is shorted; a
// coil of 6 H with 10 ohm outside it on 120 V has a time constant of 0.3 s.
func TestReleaseAgainstBird(t *testing.T) {
	field := Release{Amps: 110.0 / 15, Ohms: 15, Henries: 2 * 15}
	asPrinted(t, "1.64", field.At(3))
	seconds, ok := field.TimeToShare(5 / field.Amps)
	require.True(t, ok)
	asPrinted(t, "0.77", seconds)

	coil := Release{Amps: 120 / (6 / 0.3), Ohms: 6 / 0.3, Henries: 6}
	asPrinted(t, "10", coil.Ohms-10)
	asPrinted(t, "0.21", coil.At(1))
	seconds, ok = coil.TimeToShare(0.1)
	require.True(t, ok)
	asPrinted(t, "0.69", seconds)
}

// Theraja, A Textbook of Electrical Technology, volume III, pp. 1808 and 1809.
// Chakrabarti et al., Power System Engineering, p. 706: at twice the load the losses, half
// of which go as the square of the load, are 2.5 times as great.
func TestWarmingAgainstTextbooks(t *testing.T) {
	on := Approach{Final: 100, Tau: 60}
	off := Approach{Start: on.At(30), Tau: 120}
	asPrinted(t, "35.6", off.At(12))

	asPrinted(t, "70.58", 25+Approach{Start: 20, Final: 85, Tau: 2.4}.At(1.2))

	asPrinted(t, "51", reaches(t, Approach{Final: 40 * (1 + 2*2) / 2, Tau: 100}, 40))
}

// fromTwo is the approach from 0 that has two values at a time and at twice that time.
func fromTwo(first, second, time float64) Approach {
	unscaled := Approach{Final: first * first / (2*first - second), Tau: 1}
	constants, _ := unscaled.TimeTo(first)
	return Approach{Final: unscaled.Final, Tau: time / constants}
}

// Theraja volume III, p. 1809, and Fundamentals of Electric Drives and Control, pp. 49,
// 50 and 52: final temperatures and time constants from two readings.
func TestReadingsAgainstTextbooks(t *testing.T) {
	for _, row := range []struct {
		first, second, time float64
		final, tau          string
	}{
		{25, 37.5, 1, "50", "1.44"}, // time constant: 1 h / ln 2, not asked for in print
		{20, 30, 30, "40.0", "43.28"},
		{30, 45, 40, "60.0", "57.71"},
	} {
		a := fromTwo(row.first, row.second, row.time)
		require.InDelta(t, row.first, a.At(row.time), 1e-9)
		require.InDelta(t, row.second, a.At(2*row.time), 1e-9)
		asPrinted(t, row.final, a.Final)
		asPrinted(t, row.tau, a.Tau)
	}
	// It cools from 50 to 10 C in 1.5 h.
	asPrinted(t, "0.93", 1.5/reaches(t, Approach{Start: 50, Tau: 1}, 10))

	// It warms by 0.08 C/min at 20 C and by 0.06 C/min at 28 C: 52 C, 400 min.
	printed := Approach{Start: 20, Final: 52, Tau: 400}
	asPrinted(t, "0.08", printed.At(1)-20)
	later := reaches(t, printed, 28)
	asPrinted(t, "0.06", printed.At(later+1)-28)
}

// Fundamentals of Electric Drives and Control, pp. 61 and 62: 15 min on and 25 off; and
// what a motor of 50 kW may give for 15 min once, and again and again with 20 min off.
func TestCycleAgainstTextbook(t *testing.T) {
	p61 := Cycle{{Final: 55, Tau: 100, Seconds: 15}, {Tau: 140, Seconds: 25}}.Settled()
	asPrinted(t, "27.36", p61[1])

	once := Approach{Final: 1, Tau: 80}.At(15)
	asPrinted(t, "120.9", 50/math.Sqrt(once))
	again := Cycle{{Final: 1, Tau: 80, Seconds: 15}, {Tau: 110, Seconds: 20}}.Settled()
	asPrinted(t, "67.2", 50/math.Sqrt(again[1]))
}

// Mehta, and Sedha, Applied Electronics, p. 379: I2t of a constant current.
func TestSquaredAgainstTextbooks(t *testing.T) {
	asPrinted(t, "30", Approach{Start: 50, Final: 50, Tau: 1}.Squared(12e-3))
	asPrinted(t, "24", Approach{Start: 40, Final: 40, Tau: 1}.Squared(15e-3))
}
