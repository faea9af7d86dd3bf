package unit

import (
	"encoding"
	"math"
	"regexp"
	"testing"

	_ "example.com/lugbook/model/fixedseed"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// value is what every quantity of the package can do.
type value interface {
	comparable
	IsZero() bool
	String() string
	encoding.TextMarshaler
	FormHint() (pattern, example string)
}

type reading struct {
	text, print string
	si          float64
}

func checkReadings[T value](t *testing.T, parse func(string) (T, error), si func(T) float64, rows []reading) {
	t.Helper()
	for _, row := range rows {
		q, err := parse(row.text)
		require.NoError(t, err, row.text)
		require.Equal(t, row.print, q.String())
		require.InDelta(t, row.si, si(q), 1e-9*math.Max(1e-3, math.Abs(row.si)), row.text)
		require.False(t, q.IsZero())
		checkText(t, q)
	}
	require.Zero(t, si(*new(T)))
	checkHint(t, parse, rows)
}

// checkText sends a value through its text form and back.
func checkText[T value](t *testing.T, q T) {
	t.Helper()
	text, err := q.MarshalText()
	require.NoError(t, err)
	require.Equal(t, q.String(), string(text))
	var again T
	reader, ok := any(&again).(encoding.TextUnmarshaler)
	require.True(t, ok)
	require.NoError(t, reader.UnmarshalText(text))
	require.Equal(t, q, again)
	require.Error(t, reader.UnmarshalText([]byte("no quantity")))
	require.Equal(t, q, again, "an error leaves the value alone")
	require.NoError(t, reader.UnmarshalText(nil))
	require.True(t, again.IsZero())
}

// checkHint holds the published pattern against what the parser takes and prints.
func checkHint[T value](t *testing.T, parse func(string) (T, error), rows []reading) {
	t.Helper()
	var zero T
	require.True(t, zero.IsZero())
	require.Empty(t, zero.String())
	pattern, example := zero.FormHint()
	form := regexp.MustCompile(pattern)
	require.Regexp(t, form, example)
	q, err := parse(example)
	require.NoError(t, err)
	require.Equal(t, example, q.String(), "the example is in the printed form")
	for _, row := range rows {
		require.Regexp(t, form, row.text)
		require.Regexp(t, form, row.print)
	}
}

func TestElectricalReadings(t *testing.T) {
	checkReadings(t, ParseVolt, Volt.Volts, []reading{
		{"48 V", "48 V", 48}, {"51.2V", "51.2 V", 51.2}, {" 250mV ", "250 mV", 0.25}, {"0 V", "0 V", 0},
		{"-0.5 V", "-0.5 V", -0.5}, {"4.50 v", "4.5 V", 4.5}, {"1 kV", "1 kV", 1000}, {".5 V", "0.5 V", 0.5},
		{"12 volts", "12 V", 12}, {"48 VDC", "48 V", 48}, {"48 V DC", "48 V", 48}, {"-0 V", "0 V", 0},
	})
	checkReadings(t, ParseAmpere, Ampere.Amperes, []reading{
		{"250 A", "250 A", 250}, {"40mA", "40 mA", 0.04}, {"10 kA", "10 kA", 10e3}, {"-12.5 amps", "-12.5 A", -12.5},
		{"15 µA", "15 uA", 15e-6}, {"15 \u03bcA", "15 uA", 15e-6},
	})
	checkReadings(t, ParseOhm, Ohm.Ohms, []reading{
		{"470 ohm", "470 ohm", 470}, {"470\u03a9", "470 ohm", 470}, {"470 \u2126", "470 ohm", 470},
		{"10 mohm", "10 mohm", 0.01}, {"5 k\u03a9", "5 kohm", 5000}, {"4.7k", "4.7 kohm", 4700},
		{"0.5 m\u2126", "0.5 mohm", 0.0005}, {"1 Mohm", "1 Mohm", 1e6}, {"1000 Mohm", "1000 Mohm", 1e9}, {"50 \u00b5\u03a9", "50 uohm", 50e-6},
	})
	checkReadings(t, ParseAmpHour, AmpHour.AmpHours, []reading{
		{"105 Ah", "105 Ah", 105}, {"105 A h", "105 Ah", 105}, {"800 mAh", "800 mAh", 0.8}, {"105AH", "105 Ah", 105},
	})
	checkReadings(t, ParseWatt, Watt.Watts, []reading{
		{"10 W", "10 W", 10}, {"1.2kW", "1.2 kW", 1200}, {"3 hp", "3 hp", 2237.099616}, {"5 mW", "5 mW", 0.005},
	})
	checkReadings(t, ParseFarad, Farad.Farads, []reading{
		{"10 mF", "10 mF", 0.01}, {"4700uF", "4700 uF", 4.7e-3}, {"4700 µF", "4700 uF", 4.7e-3}, {"100 nF", "100 nF", 1e-7},
	})
}

func TestMechanicalReadings(t *testing.T) {
	checkReadings(t, ParseCelsius, Celsius.Degrees, []reading{
		{"105 C", "105 C", 105}, {"105°C", "105 C", 105}, {"-20 deg C", "-20 C", -20},
		{"77 °F", "77 °F", 25}, {"-40 degF", "-40 °F", -40},
	})
	// The conversions are those of the pound, the inch and standard gravity.
	checkReadings(t, ParseNewtonMetre, NewtonMetre.NewtonMetres, []reading{
		{"11 N m", "11 N m", 11}, {"11Nm", "11 N m", 11}, {"11 N·m", "11 N m", 11}, {"11 N-m", "11 N m", 11},
		{"100 lbf in", "100 lbf in", 11.2984829028}, {"100 in-lb", "100 lbf in", 11.2984829028},
		{"12 ft-lbs", "12 lbf ft", 16.2698153799}, {"12 lb ft", "12 lbf ft", 16.2698153799},
	})
	checkReadings(t, ParseSecond, Second.Seconds, []reading{
		{"5 s", "5 s", 5}, {"250ms", "250 ms", 0.25}, {"20 minutes", "20 min", 1200}, {"8 h", "8 h", 28800},
	})
	checkReadings(t, ParsePercent, Percent.Fraction, []reading{
		{"92 %", "92 %", 0.92}, {"3.5%", "3.5 %", 0.035}, {"150 percent", "150 %", 1.5},
	})
	checkReadings(t, ParseCount, func(c Count) float64 { return float64(c.Int()) }, []reading{
		{"16 cells", "16 cells", 16}, {"1 cell", "1 cells", 1}, {"6 ways", "6 ways", 6}, {"4 pcs", "4 pcs", 4}, {"8.0 pcs", "8 pcs", 8},
	})
}

func TestLengthReadings(t *testing.T) {
	checkReadings(t, ParseLength, Length.Metres, []reading{
		{"24in", "24 in", 0.6096}, {`24"`, "24 in", 0.6096}, {"24 in", "24 in", 0.6096}, {"24 inches", "24 in", 0.6096},
		{"0.6 m", "0.6 m", 0.6}, {"600mm", "600 mm", 0.6}, {"60 cm", "60 cm", 0.6}, {"2 ft", "2 ft", 0.6096}, {"2'", "2 ft", 0.6096},
		{"2 ft 6 in", "2 ft 6 in", 0.762}, {`2'6"`, "2 ft 6 in", 0.762}, {`2' 6.5"`, "2 ft 6.5 in", 0.7747},
		{"24 1/2 in", "24.5 in", 0.6223}, {`3/8"`, "0.375 in", 0.009525}, {"1-1/64 in", "1.015625 in", 0.025796875},
	})
}

func TestParseSaysWhatItExpected(t *testing.T) {
	tests := []struct {
		parse func(string) error
		text  string
		want  string
	}{
		{errOf(ParseLength), "24", `"24" has no unit: expected a length such as 24 in, 0.6 m, 2 ft`},
		{errOf(ParseLength), "", `"" is not a length: expected a length such as 24 in, 0.6 m, 2 ft`},
		{errOf(ParseLength), "-1 m", `"-1 m" is out of range: expected a length such as 24 in, 0.6 m, 2 ft`},
		{errOf(ParseLength), "2 ft 12 in", `"2 ft 12 in" is not a length: expected a length such as 24 in, 0.6 m, 2 ft`},
		{errOf(ParseLength), "3/2 in in", `"3/2 in in" is not a length: expected a length such as 24 in, 0.6 m, 2 ft`},
		{errOf(ParseLength), "2000 km", `"2000 km" is not a length: expected a length such as 24 in, 0.6 m, 2 ft`},
		{errOf(ParseVolt), "48 A", `"48 A" is not a voltage: expected a voltage such as 48 V, 51.2 V, 250 mV`},
		{errOf(ParseVolt), "1 MV", `"1 MV" is not a voltage: expected a voltage such as 48 V, 51.2 V, 250 mV`},
		{errOf(ParseVolt), "1.2.3 V", `"1.2.3 V" has a number that cannot be read: expected a voltage such as 48 V, 51.2 V, 250 mV, with at most 6 decimals`},
		{errOf(ParseVolt), "1.1234567 V", `"1.1234567 V" has a number that cannot be read: expected a voltage such as 48 V, 51.2 V, 250 mV, with at most 6 decimals`},
		{errOf(ParseVolt), "1000000.1 V", `"1000000.1 V" is out of range: expected a voltage such as 48 V, 51.2 V, 250 mV`},
		{errOf(ParseVolt), "NaN V", `"NaN V" is not a voltage: expected a voltage such as 48 V, 51.2 V, 250 mV`},
		{errOf(ParseVolt), "1e3 V", `"1e3 V" is not a voltage: expected a voltage such as 48 V, 51.2 V, 250 mV`},
		{errOf(ParseOhm), "-1 ohm", `"-1 ohm" is out of range: expected a resistance such as 470 ohm, 10 mohm, 5 kohm`},
		{errOf(ParseCelsius), "-300 C", `"-300 C" is out of range: expected a temperature such as 105 C, 40 °C, 77 °F`},
		{errOf(ParseCount), "1.5 cells", `"1.5 cells" is not a whole number: expected a count such as 16 cells, 6 ways, 4 pcs`},
		{errOf(ParseAny), "51.2", `"51.2" has no unit: expected a quantity with its unit, such as 51.2 V, 250 A, 470 ohm or 16 cells`},
		{errOf(ParseAny), "6", `"6" has no unit: expected a quantity with its unit, such as 51.2 V, 250 A, 470 ohm or 16 cells`},
		{errOf(ParseAny), "red", `"red" is not a quantity: expected a quantity with its unit, such as 51.2 V, 250 A, 470 ohm or 16 cells`},
	}
	for _, tt := range tests {
		require.EqualError(t, tt.parse(tt.text), tt.want)
	}
}

func errOf[T any](parse func(string) (T, error)) func(string) error {
	return func(text string) error {
		_, err := parse(text)
		return err
	}
}

func TestConstructorsKeepTheValue(t *testing.T) {
	require.Equal(t, "48 V", V(48).String())
	require.Equal(t, 51.2, V(51.2).Volts())
	require.Equal(t, "50 mV", V(0.05).String())
	require.Equal(t, "-0.2 V", V(-0.2).String())
	require.Equal(t, "0 V", V(0).String())
	require.False(t, V(0).IsZero(), "0 V is stated")
	require.Equal(t, "250 A", A(250).String())
	require.Equal(t, "12.5 uA", A(12.5e-6).String())
	require.Equal(t, "0.9516 mohm", Ohms(0.9516e-3).String())
	require.Equal(t, "4700 W", W(4700).String())
	require.Equal(t, "10 mF", F(0.01).String())
	require.Equal(t, "105 Ah", Ah(105).String())
	require.Equal(t, "105 C", C(105).String())
	require.Equal(t, "0.05 C", C(0.05).String())
	require.Equal(t, "11 N m", Nm(11).String())
	require.Equal(t, "50 ms", S(0.05).String())
	require.Equal(t, "92 %", Pct(92).String())
	require.Equal(t, "16 pcs", Pcs(16).String())
	require.Equal(t, "0.6 m", LengthFromMetres(0.6).String())
	require.Equal(t, "50 mm", LengthFromMetres(0.05).String())
	require.Equal(t, "7 in", Inches(7).String())
	for _, q := range []interface{ IsZero() bool }{
		V(math.NaN()), V(math.Inf(1)), A(2e6), Ohms(-1), LengthFromMetres(-1), Inches(-1), Inches(math.NaN()),
		C(-300), Pcs(-1), MM2(0), MM2(math.NaN()), MM2(2000), AWG(5), AWG(24), AWG(-4),
	} {
		require.True(t, q.IsZero())
	}
}

func TestComputedValuesReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := rapid.Float64Range(-1e6, 1e6).Draw(t, "volts")
		q := V(v)
		require.InDelta(t, v, q.Volts(), 5.001e-7) // half of the last digit, and what a float64 of that size adds
		again, err := ParseVolt(q.String())
		require.NoError(t, err)
		require.Equal(t, q, again)
	})
}

func TestStatedTextsReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.SampledFrom(scales).Draw(t, "scale")
		number := uint8(rapid.IntRange(1, len(s.marks)).Draw(t, "unit"))
		n := rapid.Int64Range(0, 9e9).Draw(t, "millionths")
		if s.whole {
			n -= n % 1e6
		}
		text := s.print(n, number)
		if !s.fits(s.si(n, number)) {
			return
		}
		q, err := ParseAny(text)
		require.NoError(t, err)
		require.Equal(t, Any{of: s.of, millionths: n, mark: number}, q)
		pattern, _ := q.FormHint()
		require.Regexp(t, pattern, text)
	})
}

func TestNoSpellingBelongsToTwoScales(t *testing.T) {
	owner := map[string]string{}
	for _, s := range scales {
		for _, m := range s.marks {
			for _, spelling := range append([]string{m.print}, m.also...) {
				if spelling == "" {
					continue
				}
				unit := string(s.of) + " " + m.print
				if at, taken := owner[squeeze(spelling)]; taken {
					require.Equal(t, unit, at, spelling)
				}
				owner[squeeze(spelling)] = unit
			}
		}
	}
}
