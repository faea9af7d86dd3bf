package unit

import (
	"regexp"
	"testing"

	"github.com/stretchr/testify/require"
)

// fuzzParser checks that a parser takes only what its pattern takes, that it reads
// its own print, and that printing is stable.
func fuzzParser[T value](f *testing.F, parse func(string) (T, error), seeds ...string) {
	for _, s := range append(seeds, "", "0", "-1 V", "1/0", "1e9 m", "½ in", "24 in", "0.1234567 V", "99999999999999999999 A") {
		f.Add(s)
	}
	var zero T
	pattern, _ := zero.FormHint()
	form := regexp.MustCompile(pattern)
	f.Fuzz(func(t *testing.T, text string) {
		q, err := parse(text)
		if err != nil {
			require.True(t, q.IsZero())
			return
		}
		require.False(t, q.IsZero())
		again, err := parse(q.String())
		require.NoError(t, err)
		require.Equal(t, q, again)
		require.Regexp(t, form, q.String())
	})
}

func FuzzParseLength(f *testing.F)  { fuzzParser(f, ParseLength, `2'6"`, "24 1/2 in") }
func FuzzParseGauge(f *testing.F)   { fuzzParser(f, ParseGauge, "00", "16 mm²", "AWG 6") }
func FuzzParseStud(f *testing.F)    { fuzzParser(f, ParseStud, "M8", `5/16"`, "#10") }
func FuzzParseVolt(f *testing.F)    { fuzzParser(f, ParseVolt, "51.2 V") }
func FuzzParseAmpere(f *testing.F)  { fuzzParser(f, ParseAmpere, "15 µA") }
func FuzzParseOhm(f *testing.F)     { fuzzParser(f, ParseOhm, "4.7k") }
func FuzzParseAmpHour(f *testing.F) { fuzzParser(f, ParseAmpHour, "105 A h") }
func FuzzParseWatt(f *testing.F)    { fuzzParser(f, ParseWatt, "3 hp") }
func FuzzParseFarad(f *testing.F)   { fuzzParser(f, ParseFarad, "4700uF") }
func FuzzParseCelsius(f *testing.F) { fuzzParser(f, ParseCelsius, "-40 °F") }
func FuzzParseNewtonMetre(f *testing.F) {
	fuzzParser(f, ParseNewtonMetre, "12 ft-lb", "11 N·m")
}
func FuzzParseSecond(f *testing.F)  { fuzzParser(f, ParseSecond, "20 min") }
func FuzzParsePercent(f *testing.F) { fuzzParser(f, ParsePercent, "92%") }
func FuzzParseCount(f *testing.F)   { fuzzParser(f, ParseCount, "16 cells") }
func FuzzParseAny(f *testing.F)     { fuzzParser(f, ParseAny, "2/0 AWG", "51.2 V", `2'6"`) }
