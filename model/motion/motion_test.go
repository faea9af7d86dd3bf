package motion_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	_ "example.com/lugbook/model/fixedseed"
	"example.com/lugbook/model/motion"
)

const (
	kmh = 1000.0 / 3600
	// tonne with a resistance in newtons per tonne, as railways count it
	tonne = 1000.0
)

func perTonne(newtons float64) float64 { return newtons / (tonne * motion.Gravity) }

// Chakrabarti, Power System Engineering, p. 781: a resistance of 1 N per tonne costs
// .278 Wh, a grade of 1 % 27.25 Wh per tonne and km.
func TestEnergyPerTonneAndKilometre(t *testing.T) {
	v := motion.Vehicle{Mass: tonne, Rolling: perTonne(1), Efficiency: 1}
	require.InDelta(t, .278, v.WattHoursPerKM(0), 5e-4)
	grade := motion.Vehicle{Mass: tonne, Efficiency: 1}
	require.InDelta(t, 27.25, grade.WattHoursPerKM(0.01), 0.02)
}

// Theraja, Electrical Technology, volume III p. 1780: 500 t down 2 % at 40 km/h against 40
// N/t, of which .75 comes back: 650 kW, with gravity 9.8.
func TestBrakingDownhillGivesBack(t *testing.T) {
	v := motion.Vehicle{Mass: 500 * tonne, Rolling: perTonne(40), Efficiency: .75}
	require.InEpsilon(t, -650e3, v.Watts(motion.Task{Grade: -.02, Speed: 40 * kmh}), 2e-3)
}

// Chakrabarti, p. 784: up 1 in 75 against 66.75 N/t at an efficiency of .7 takes 78.4 Wh per
// tonne and km.
func TestEnergyUphill(t *testing.T) {
	v := motion.Vehicle{Mass: tonne, Rolling: perTonne(66.75), Efficiency: .7}
	require.InEpsilon(t, 78.4, v.WattHoursPerKM(1.0/75), 1e-3)
}

// Theraja, volume III p. 1724: 250 t, 10 % more for what turns, to 42 km/h in 20 s up 1 in 80
// against 40 N/t; gears 3.5:1, .92, wheels of .92 m, four motors: 7181 N m each.
func TestTorqueToSpeedUp(t *testing.T) {
	v := motion.Vehicle{Mass: 250 * tonne, Rolling: perTonne(40), Efficiency: 1}
	force := v.Force(motion.Task{Grade: 1.0 / 80, Acceleration: 42 * kmh / 20})
	require.InEpsilon(t, 7181, force*.92/2/(3.5*.92)/4, 1e-3)
}

// A tug, a shuttle and a truck, worked by hand from m g c / (3.6 x efficiency) and m g h /
// (3600 x efficiency), with the watt-hours that their 12 V side takes; no printed example. The
// hill currents hold for 13 mohm of pack and loop.
func TestThreeCarts(t *testing.T) {
	for _, c := range []struct {
		v                         motion.Vehicle
		volts, km, climbed, other float64
		hill                      motion.Task
		perKM, day, hillAmps      float64
	}{
		{motion.Vehicle{Mass: 1350, Rolling: .025, Efficiency: .62}, 51.2, 14, 40, 300, motion.Task{Grade: .08, Speed: 8 * kmh}, 148, 2614, 100},
		{motion.Vehicle{Mass: 1250, Rolling: .018, Efficiency: .70}, 51.2, 38, 120, 780, motion.Task{Grade: .10, Speed: 15 * kmh}, 88, 4692, 175},
		{motion.Vehicle{Mass: 780, Rolling: .03, Efficiency: .66}, 38.4, 11, 260, 120, motion.Task{Grade: .14, Speed: 9 * kmh}, 97, 2020, 133},
	} {
		require.InDelta(t, c.perKM, c.v.WattHoursPerKM(0), 0.5)
		day := c.km*c.v.WattHoursPerKM(c.climbed/(c.km*1000)) + c.other
		require.InDelta(t, c.day, day, 2)
		amps, ok := motion.BatteryAmps(c.volts, 13e-3, c.v.Watts(c.hill))
		require.True(t, ok)
		require.InDelta(t, c.hillAmps, amps, 0.6)
	}
}

// Theraja, volume III p. 1739: two motors of .4 ohm on 500 V, each pulling 2100 N at 50
// km/h and losing 3500 W: 138.32 A for both. The other root, 1180.84 A each, is not taken.
func TestBatteryAmpsTakesTheLowCurrent(t *testing.T) {
	watts := 2100*50*kmh + 3500
	amps, ok := motion.BatteryAmps(500, .4, watts)
	require.True(t, ok)
	require.InDelta(t, 138.32, 2*amps, 0.005)
	require.InDelta(t, 1180.84, 500/.4-amps, 0.005, "the two roots add to V / R")
}

func TestAPackHasItsLimit(t *testing.T) {
	// A 300 W converter on 48 V behind 0.1 ohm: 6.333571 A; the most is 5760 W (closed
	// form, and a SPICE run).
	amps, ok := motion.BatteryAmps(48, .1, 300)
	require.True(t, ok)
	require.InDelta(t, 6.333571, amps, 1e-6)
	amps, ok = motion.BatteryAmps(48, .1, 5760)
	require.True(t, ok)
	require.InDelta(t, 240, amps, 1e-9)
	_, ok = motion.BatteryAmps(48, .1, 5761)
	require.False(t, ok)
	_, ok = motion.BatteryAmps(0, 0, 1)
	require.False(t, ok)
	amps, ok = motion.BatteryAmps(48, 0, 480)
	require.True(t, ok)
	require.InDelta(t, 10, amps, 1e-12, "without resistance it is power over voltage")
}

func TestBatteryPowerIsWhatTheDriveTakesAndThePackLoses(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		volts := rapid.Float64Range(20, 100).Draw(t, "volts")
		ohms := rapid.Float64Range(0, 0.1).Draw(t, "ohms")
		watts := rapid.Float64Range(-10000, 10000).Draw(t, "watts")
		amps, ok := motion.BatteryAmps(volts, ohms, watts)
		if !ok {
			require.Greater(t, watts, volts*volts/(4*ohms))
			return
		}
		require.InDelta(t, watts, volts*amps-ohms*amps*amps, 1e-6*math.Max(1, math.Abs(watts)))
	})
}

func TestSurfaces(t *testing.T) {
	for _, s := range motion.Surfaces() {
		require.NotEmpty(t, s.Title)
		require.NotEmpty(t, s.Source)
		require.Positive(t, s.Least)
		require.LessOrEqual(t, s.Least, s.Most)
		found, ok := motion.FindSurface(s.Name)
		require.True(t, ok)
		require.Equal(t, s, found)
	}
	_, ok := motion.FindSurface("ice")
	require.False(t, ok)
	// Moyer in Marks: hard road .008, packed gravel .012, wet loose gravel .06.
	for name, least := range map[string]float64{"hard-road": .008, "packed-gravel": .012, "wet-gravel": .06} {
		s, _ := motion.FindSurface(name)
		require.InDelta(t, least, s.Least, 1e-12)
	}
}

func TestParsing(t *testing.T) {
	for _, tt := range []struct {
		parse func(string) (float64, error)
		text  string
		want  float64
	}{
		{motion.ParseMass, "780 kg", 780}, {motion.ParseMass, "1.2t", 1200}, {motion.ParseMass, "1000 lb", 453.59237},
		{motion.ParseSpeed, "18 km/h", 5}, {motion.ParseSpeed, "10 mph", 4.4704}, {motion.ParseSpeed, "4 m/s", 4},
		{motion.ParseGrade, "12 %", .12}, {motion.ParseGrade, "12%", .12}, {motion.ParseGrade, "1 in 8", .125}, {motion.ParseGrade, "1:10", .1},
		{motion.ParseGrade, "-5%", -.05}, {motion.ParseGrade, "0 %", 0},
	} {
		got, err := tt.parse(tt.text)
		require.NoError(t, err, tt.text)
		require.InDelta(t, tt.want, got, 1e-9, tt.text)
	}
	for _, tt := range []struct {
		parse func(string) (float64, error)
		text  string
		want  string
	}{
		{motion.ParseMass, "780", `"780" is not a mass: expected one such as 780 kg or 1700 lb`},
		{motion.ParseMass, "0 kg", `"0 kg" is not a mass: expected one such as 780 kg or 1700 lb`},
		{motion.ParseSpeed, "15", `"15" is not a speed: expected one such as 15 km/h, 9 mph or 4 m/s`},
		{motion.ParseSpeed, "-3 mph", `"-3 mph" is not a speed: expected one such as 15 km/h, 9 mph or 4 m/s`},
		{motion.ParseGrade, "steep", `"steep" is not a grade: expected one such as 12 % or 1 in 8`},
		{motion.ParseGrade, "1 in 0.5", `"1 in 0.5" is not a grade: expected one such as 12 % or 1 in 8`},
		{motion.ParseGrade, "150 %", `"150 %" is not a grade: expected one such as 12 % or 1 in 8`},
	} {
		_, err := tt.parse(tt.text)
		require.EqualError(t, err, tt.want)
	}
}

func FuzzParse(f *testing.F) {
	for _, text := range []string{"780 kg", "15 km/h", "12 %", "1 in 8", "-1e9", ".5t"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		for _, parse := range []func(string) (float64, error){motion.ParseMass, motion.ParseSpeed, motion.ParseGrade} {
			if v, err := parse(text); err == nil {
				require.False(t, math.IsNaN(v) || math.IsInf(v, 0), text)
			}
		}
	})
}
