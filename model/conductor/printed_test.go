package conductor

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model/unit"
)

const metresPerFoot = 0.3048

// ASTM B258 as printed in NBS Circular 31 and in "Lessons In Electric Circuits":
// diameter in inches, circular mils, mm2, and ohms per kilometre of solid copper at 20 C.
func TestGeometryAgainstThePrintedTable(t *testing.T) {
	rows := []struct{ inches, circularMils, mm2, ohmsPerKM float64 }{
		{0.02535, 642.4, 0.326, 52.96}, {0.03196, 1021.5, 0.518, 33.31}, {0.04030, 1624.3, 0.823, 20.95}, {0.05082, 2582.7, 1.309, 13.17},
		{0.06408, 4106.7, 2.081, 8.285}, {0.08081, 6529.9, 3.309, 5.211}, {0.1019, 10383, 5.261, 3.277}, {0.1285, 16510, 8.366, 2.061},
		{0.1620, 26251, 13.30, 1.296}, {0.2043, 41741, 21.15, 0.8152}, {0.2294, 52635, 26.67, 0.6464}, {0.2576, 66371, 33.63, 0.5127},
		{0.2893, 83693, 42.41, 0.4066}, {0.3249, 105535, 53.47, 0.3224}, {0.3648, 133077, 67.43, 0.2557}, {0.4096, 167806, 85.03, 0.2028},
		{0.4600, 211600, 107.2, 0.1608},
	}
	require.Len(t, unit.AWGSizes(), len(rows))
	for i, g := range unit.AWGSizes() {
		require.InEpsilon(t, rows[i].inches, g.DiameterMM()/mmPerInch, printedTolerance, g)
		require.InEpsilon(t, rows[i].circularMils, g.AreaMM2()/mm2PerCircMil, printedTolerance, g)
		require.InEpsilon(t, rows[i].mm2, g.AreaMM2(), printedTolerance, g)
		require.InEpsilon(t, rows[i].ohmsPerKM, 1000*SolidOhmsPerMetre(g.AreaMM2(), 20), printedTolerance, g)
		if i >= 3 {
			require.Greater(t, g.AreaMM2(), unit.AWGSizes()[i-3].AreaMM2())
		}
	}
	// NEETS module 4 question 1-8: twelve strands of 0.2 in radius are 1,920,000 circular mils.
	strands := 12 * math.Pi * math.Pow(0.2*mmPerInch, 2)
	require.InEpsilon(t, 1_920_000, strands/mm2PerCircMil, 1e-6)
}

// 33 CFR 183.425 table 5, all columns: 60, 75, 80, 90, 105, 125, 200 C.
func TestAmpacityAgainst33CFRTable5(t *testing.T) {
	classes := []float64{60, 75, 80, 90, 105, 125, 200}
	printed := map[int][7]float64{
		18: {10, 10, 15, 20, 20, 25, 25}, 16: {15, 15, 20, 25, 25, 30, 35}, 14: {20, 20, 25, 30, 35, 40, 45},
		12: {25, 25, 35, 40, 45, 50, 55}, 10: {40, 40, 50, 55, 60, 70, 70}, 8: {55, 65, 70, 70, 80, 90, 100},
		6: {80, 95, 100, 100, 120, 125, 135}, 4: {105, 125, 130, 135, 160, 170, 180}, 3: {120, 145, 150, 155, 180, 195, 210},
		2: {140, 170, 175, 180, 210, 225, 240}, 1: {165, 195, 210, 210, 245, 265, 280}, 0: {195, 230, 245, 245, 285, 305, 325},
		-1: {225, 265, 285, 285, 330, 355, 370}, -2: {260, 310, 330, 330, 385, 410, 430}, -3: {300, 360, 385, 385, 445, 475, 510},
	}
	for number, row := range printed {
		for i, class := range classes {
			got, err := Ampacity(unit.AWG(number), class, TableAmbient)
			require.NoError(t, err)
			require.InDelta(t, row[i], got.Amperes, 1e-9, "%s at %g C", unit.AWG(number), class)
		}
	}
}

// NEC table 310.16 (three conductors in a raceway, 30 C; editions of 2020 and 2023): a
// single conductor in the open never carries less than that.
func TestAmpacityIsNotBelowThatOfAConduit(t *testing.T) {
	printed := map[int][3]float64{
		14: {15, 20, 25}, 12: {20, 25, 30}, 10: {30, 35, 40}, 8: {40, 50, 55}, 6: {55, 65, 75}, 4: {70, 85, 95}, 3: {85, 100, 115},
		2: {95, 115, 130}, 1: {110, 130, 145}, 0: {125, 150, 170}, -1: {145, 175, 195}, -2: {165, 200, 225}, -3: {195, 230, 260},
	}
	for number, row := range printed {
		for i, class := range []float64{60, 75, 90} {
			got, err := Ampacity(unit.AWG(number), class, TableAmbient)
			require.NoError(t, err)
			require.GreaterOrEqual(t, got.Amperes, row[i], unit.AWG(number))
		}
	}
}

// NEC table 310.15(B)(1) at the top of each band up to that of the insulation.
func TestHotAmbientsAgainstNEC(t *testing.T) {
	for _, row := range []struct{ class, ambient, factor float64 }{
		{75, 60, .58}, {75, 65, .47}, {75, 70, .33},
		{90, 60, .71}, {90, 65, .65}, {90, 70, .58}, {90, 75, .50}, {90, 80, .41}, {90, 85, .29},
	} {
		got, err := Ampacity(unit.AWG(6), row.class, row.ambient)
		require.NoError(t, err)
		require.InDelta(t, row.factor, got.Factor, 0.01, "%g C at %g C", row.class, row.ambient)
	}
}

// FAA AC 43.13-1B table 11-9, amperes at 105 C in an ambient of 70 C in a bundle: well
// below a single cable at that ambient. Its tinned wires have 12 to 22 per cent more
// resistance than copper of the circular mils that it lists, from 22 AWG up.
func TestAmpacityAndResistanceAgainstAircraftTable(t *testing.T) {
	for _, row := range []struct {
		awg                       int
		amps, ohmsPerKFt, circMil float64
	}{
		{18, 6, 6.23, 1900}, {16, 7, 4.81, 2426}, {14, 10, 3.06, 3831}, {12, 13, 2.02, 5874}, {10, 17, 1.26, 9354}, {8, 38, .70, 16983},
		{6, 50, .44, 26818}, {4, 68, .28, 42615}, {2, 95, .18, 66500}, {1, 113, .15, 81700}, {0, 128, .12, 104500}, {-1, 147, .09, 133000},
		{-2, 172, .07, 166500}, {-3, 204, .06, 210900},
	} {
		got, err := Ampacity(unit.AWG(row.awg), 105, 70)
		require.NoError(t, err)
		require.Greater(t, got.Amperes, row.amps, unit.AWG(row.awg))
		copper := SolidOhmsPerMetre(row.circMil*mm2PerCircMil, 20) * metresPerKFt
		if row.ohmsPerKFt >= 0.1 { // beyond that the print has one figure
			require.InDelta(t, 1.17, row.ohmsPerKFt/copper, 0.055, unit.AWG(row.awg))
		}
	}
}

// The drops of FAA AC 43.13-1B tables 11-7 and 11-8 with the resistances printed there. The
// third is loosely rounded there; .366 V for 19.5 ft of No. 10 is a misprint for .491.
func TestPrintedDropsGiveBackTheirConductor(t *testing.T) {
	for _, row := range []struct{ ohmsPerFt, feet, volts, within float64 }{
		{.00044, 107, .942, 1e-3}, {.00028, 90, .504, 1e-3}, {.00202, 88, 3.60, 1.5e-2}, {.00306, 100, 6.12, 1e-3},
		{.00126, 39, .98, 5e-3}, {.00126, 156, 3.93, 1e-3}, {.00126, 273, 6.88, 1e-3}, {.00126, 19.5, .491, 1e-3},
	} {
		const amperes = 20
		area := AreaForDrop(amperes, row.feet*metresPerFoot, row.volts, 20)
		perFoot := StrandedAdder * SolidOhmsPerMetre(area, 20) * metresPerFoot
		require.InEpsilon(t, row.ohmsPerFt, perFoot, row.within)
	}
	misprint := AreaForDrop(20, 19.5*metresPerFoot, .366, 20)
	require.Greater(t, misprint/AreaForDrop(20, 19.5*metresPerFoot, .491, 20), 1.3, "the misprint is no rounding")
}

// The same circular, 11-66e and f: No. 14 wire of 200 C in an ambient of 50 C, 47 A in free
// air, x 0.91 for 20,000 ft x 0.6 for eight wires loaded to 60 %: 42.77, then 26 A. And at
// 182 C as much drops over 9.5 ft as over 15.5 ft at 20 C.
func TestBundleAndHeatAgainstTheAircraftExample(t *testing.T) {
	factor, ok := LoomFactor(8, 0.6)
	require.True(t, ok)
	require.InEpsilon(t, 0.6, factor, 0.03)
	require.InDelta(t, 26, 47*0.91*factor, 0.8)
	require.InEpsilon(t, 9.5, 15.5/AtTemperature(1, 182), 0.005)
}

func TestLoomFactor(t *testing.T) {
	for _, row := range []struct {
		wires   int
		loading float64
		want    float64
	}{
		{1, 1, 1}, {2, 0.2, .9675}, {3, 1, .725}, {4, 1, .61}, {5, 0.5, .695}, {15, 0.9, .385}, {6, 2, .5125},
	} {
		got, ok := LoomFactor(row.wires, row.loading)
		require.True(t, ok)
		require.InDelta(t, row.want, got, 1e-9)
	}
	_, ok := LoomFactor(16, 1)
	require.False(t, ok)
}

// The circular mil formula of ABYC E-11, K = 10.75: copper of 10.371 ohm circular mils per
// foot at 20 C reaches it at about 29 C, stranded copper at about 24 C.
func TestAreaForDropAgainstTheCircularMilFormula(t *testing.T) {
	for _, row := range []struct{ amperes, loopFeet, drop, circularMils float64 }{
		{10, 21, .36, 6270.8}, {10, 21, 1.2, 1881}, {250, 10, 1.44, 18663},
	} {
		got := AreaForDrop(row.amperes, row.loopFeet*metresPerFoot, row.drop, 24) / mm2PerCircMil
		require.InEpsilon(t, row.circularMils, got, 0.002)
	}
	// SAE cable of the same number is thinner than AWG: 5833 circular mils do not do for the first.
	require.Less(t, 5833*mm2PerCircMil, AreaForDrop(10, 21*metresPerFoot, .36, 20))
}

// "Lessons In Electric Circuits" counts solid copper as 10.09 ohm circular mils per foot
// where IEC 60028 has 10.371.
func TestAgainstLessonsInElectricCircuits(t *testing.T) {
	const theirs = 10.09 / 10.371
	area := AreaForDrop(25, 2*2300*metresPerFoot, 230-220, 20) / StrandedAdder * theirs
	require.InEpsilon(t, 116_035, area/mm2PerCircMil, 2e-4)
	one := SolidOhmsPerMetre(4107*mm2PerCircMil, 20) * 2300 * metresPerFoot * theirs
	require.InEpsilon(t, 5.651, one, 2e-4)
	require.InEpsilon(t, 20.352, 230/(2*one), 2e-4)
	// 14 V over two wires of 15 ohm (at 20 C) to 250 ohm, at 35 C: 12.42 V and 0.79 V; its
	// coefficient is .004041.
	wire := AtTemperature(15, 35)
	require.InDelta(t, 12.42, 14*250/(250+2*wire), 0.005)
	require.InDelta(t, 0.79, 14*wire/(250+2*wire), 0.005)
}

// A worked page on wire drop: 2 x 100 ft of No. 16 (4.99 ohm per 1000 ft, NEC chapter 9
// table 8) at 4 A of 24 V: 4.0 V, 16.7 %.
func TestDropOfAThinPair(t *testing.T) {
	ohms, ok := Resistance(unit.AWG(16), unit.LengthFromMetres(200*metresPerFoot), 75)
	require.True(t, ok)
	require.InDelta(t, 4.0, 4*ohms, 0.03)
	require.InDelta(t, 16.7, 4*ohms/24*100, 0.1)
}

// IEC 60228 class 5, plain and tinned, as reprinted; and its factors to 20 C, 250/(230+T).
func TestClass5AgainstIEC60228(t *testing.T) {
	printed := []struct{ mm2, plain, tinned float64 }{
		{0.5, 39.0, 40.1}, {0.75, 26.0, 26.7}, {1, 19.5, 20.0}, {1.5, 13.3, 13.7}, {2.5, 7.98, 8.21}, {4, 4.95, 5.09}, {6, 3.30, 3.39},
		{10, 1.91, 1.95}, {16, 1.21, 1.24}, {25, 0.780, 0.795}, {35, 0.554, 0.565}, {50, 0.386, 0.393}, {70, 0.272, 0.277},
		{95, 0.206, 0.210}, {120, 0.161, 0.164},
	}
	require.Len(t, MetricSizes(), len(printed))
	for i, g := range MetricSizes() {
		got, ok := Class5(g)
		require.True(t, ok)
		require.InDelta(t, printed[i].mm2, g.AreaMM2(), 1e-9)
		require.InDelta(t, printed[i].plain, got, 1e-9, g)
		require.InEpsilon(t, printed[i].tinned, got, 0.035, g)
	}
	for celsius := 5.0; celsius <= 100; celsius += 5 {
		require.InDelta(t, 250/(230+celsius), 1/AtTemperature(1, celsius), 0.004, celsius)
	}
}

// IEC 60364-5-54 and BS 7671: k of copper by insulation.
func TestWithstandConstantsByInsulation(t *testing.T) {
	for _, row := range []struct{ from, to, k float64 }{
		{70, 160, 115}, {70, 140, 103}, {90, 160, 100}, {90, 140, 86}, {90, 250, 143}, {60, 200, 141}, {85, 220, 134}, {180, 350, 132},
	} {
		require.InEpsilon(t, row.k, WithstandConstant(row.from, row.to), 0.007)
	}
}

// 30 CFR 75.601-1 and 75.601-3, copper trailing cables in coal mines: the largest fuse of
// each is the next standard size to its ampacity, and the instantaneous setting of its
// breaker lies near the current that it stands for 20 s (ICEA, 75 to 150 C).
func TestFuseAndWithstandAgainstMineCables(t *testing.T) {
	for _, row := range []struct {
		awg, setting, ampacity, fuse, pairAmpacity, pairFuse int
	}{
		{14, 50, 0, 0, 15, 15}, {12, 75, 0, 0, 20, 20}, {10, 150, 0, 0, 25, 25}, {8, 200, 60, 60, 50, 50}, {6, 300, 85, 90, 65, 70},
		{4, 500, 110, 110, 90, 90}, {3, 600, 130, 150, 105, 110}, {2, 800, 150, 150, 120, 125}, {1, 1000, 170, 175, 140, 150},
		{0, 1250, 200, 200, 170, 175}, {-1, 1500, 235, 250, 195, 200}, {-2, 2000, 275, 300, 225, 225}, {-3, 2500, 315, 350, 260, 300},
	} {
		for ampacity, fuse := range map[int]int{row.ampacity: row.fuse, row.pairAmpacity: row.pairFuse} {
			if ampacity == 0 {
				continue
			}
			got, ok := FuseAtLeast(float64(ampacity))
			require.True(t, ok)
			require.InDelta(t, float64(fuse), got.Amperes, 1e-9, unit.AWG(row.awg))
			require.InDelta(t, float64(fuse), FromHighCircuit.Greatest(float64(ampacity)), 1e-9, unit.AWG(row.awg))
		}
		seconds := Withstand(unit.AWG(row.awg).AreaMM2(), WithstandConstant(75, 150), float64(row.setting))
		require.InDelta(t, 18, seconds, 5, unit.AWG(row.awg))
	}
}

// 33 CFR 183.455 with table 5: 2/0 of 105 C in a compartment of 50 C carries 280.5 A. Under
// 50 V its fuse may be 495 A by the printed table, 420 A by what it carries there; from
// 50 V up the next size to 330 A, which is 350 A.
func TestFuseOfATractionCableInAHotCompartment(t *testing.T) {
	got, err := Ampacity(unit.AWG(-1), 105, EngineSpace)
	require.NoError(t, err)
	require.InDelta(t, 280.5, got.Amperes, 1e-9)
	require.InDelta(t, 495, RatingRuleFor(48).Greatest(got.Table), 1e-9)
	require.InDelta(t, 420.75, RatingRuleFor(48).Greatest(got.Amperes), 1e-9)
	require.InDelta(t, 350, RatingRuleFor(51.2).Greatest(got.Table), 1e-9)
	require.InDelta(t, 300, RatingRuleFor(51.2).Greatest(got.Amperes), 1e-9)
}

// k for a fault from the limit of the insulation: battery cable of 105 C counts as PVC,
// below the 100 that IEC 60364-5-54 has for PVC of 90 C.
func TestFaultLimit(t *testing.T) {
	require.InDelta(t, 87.4, WithstandConstant(105, FaultLimit(105)), 0.05)
	require.InDelta(t, 100, WithstandConstant(90, FaultLimit(90)), 0.5)
	require.InDelta(t, 250, FaultLimit(125), 0)
	require.InDelta(t, 160, FaultLimit(60), 0)
}
