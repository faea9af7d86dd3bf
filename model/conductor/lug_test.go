package conductor

import (
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model/unit"
)

func TestLugOnStud(t *testing.T) {
	tests := []struct {
		lug, stud string
		want      Fit
	}{
		{"M8", "M8", Fits}, {"3/8 in", "3/8 in", Fits}, {"#6", "#6", Fits},
		{"5/16 in", "M8", NearMatch}, {"M8", "5/16 in", NearMatch}, {"M6", "1/4 in", NearMatch}, {"M12", "1/2 in", NearMatch},
		{"1/2 in", "M12", OneLarger}, {"1/4 in", "M6", OneLarger}, {"M10", "3/8 in", OneLarger},
		{"3/8 in", "M10", Measure}, {"#6", "M4", Measure},
		{"#10", "M5", NearMatch}, {"M8", "M10", DoesNotPass}, {"7/16 in", "M12", DoesNotPass}, {"#8", "#10", DoesNotPass},
		{"3/8 in", "5/16 in", OneLarger}, {"M10", "M8", OneLarger}, {"5/16 in", "1/4 in", OneLarger},
		{"1/2 in", "5/16 in", TooLarge}, {"M10", "M6", TooLarge}, {"3/8 in", "1/4 in", TooLarge},
	}
	for _, tt := range tests {
		require.Equal(t, tt.want, FitOf(stud(t, tt.lug), stud(t, tt.stud)), "%s on %s", tt.lug, tt.stud)
	}
	require.Equal(t, NotKnown, FitOf(unit.Stud{}, stud(t, "M8")))
	require.Equal(t, NotKnown, FitOf(stud(t, "M8"), unit.Stud{}))
	require.Equal(t, 4, MostLugs, "ABYC E-11 11.14.6.9")
}

// Play of a normal or medium hole over another stud, worked from the printed holes of
// ISO 273 and ASME B18.2.8.
func TestPlayOfTheUsualHole(t *testing.T) {
	for _, row := range []struct {
		stud, lug string
		mm        float64
	}{
		{"M6", "1/4 in", 1.14}, {"M8", "5/16 in", 0.74}, {"1/4 in", "M6", 0.25}, {"3/8 in", "M10", 1.48}, {"1/2 in", "M12", 0.80},
	} {
		_, usual, ok := Holes(stud(t, row.lug))
		require.True(t, ok)
		require.InDelta(t, row.mm, usual-stud(t, row.stud).DiameterMM(), 0.006, "%s in %s", row.stud, row.lug)
	}
}

// ISO 273 fine and medium holes in mm, and the drills in mm that are listed for the close
// and normal fits of ASME B18.2.8: within 0.13 mm of its holes in inches.
func TestHolesAgainstISO273AndDrills(t *testing.T) {
	for _, row := range []struct {
		stud         string
		close, usual float64
		within       float64
	}{
		{"M4", 4.3, 4.5, 0}, {"M5", 5.3, 5.5, 0}, {"M6", 6.4, 6.6, 0}, {"M8", 8.4, 9.0, 0}, {"M10", 10.5, 11.0, 0}, {"M12", 13.0, 13.5, 0},
		{"#10", 5.2, 5.6, 0.13}, {"1/4 in", 6.7, 7.1, 0.13}, {"5/16 in", 8.3, 8.7, 0.13}, {"3/8 in", 9.9, 10.2, 0.13},
		{"7/16 in", 11.5, 11.8, 0.13}, {"1/2 in", 13.5, 14.25, 0.13},
	} {
		tight, usual, ok := Holes(stud(t, row.stud))
		require.True(t, ok)
		require.InDelta(t, row.close, tight, row.within+1e-9, row.stud)
		require.InDelta(t, row.usual, usual, row.within+1e-9, row.stud)
	}
	_, _, ok := Holes(unit.Stud{})
	require.False(t, ok)
}

func TestEveryStudHasAFit(t *testing.T) {
	for _, lug := range unit.Studs() {
		require.Equal(t, Fits, FitOf(lug, lug))
		_, usual, ok := Holes(lug)
		require.True(t, ok)
		for _, s := range unit.Studs() {
			fit := FitOf(lug, s)
			require.NotEqual(t, NotKnown, fit)
			if usual < s.DiameterMM() {
				require.Equal(t, DoesNotPass, fit, "%s on %s", lug, s)
			}
			if lug.DiameterMM() > s.DiameterMM() {
				require.NotContains(t, []Fit{DoesNotPass, Measure}, fit, "%s on %s", lug, s)
			}
		}
	}
}

func TestLugsAreMadeForNeitherTinyNorHugeStuds(t *testing.T) {
	for _, row := range []struct {
		gauge unit.Gauge
		stud  string
		made  bool
	}{
		{unit.AWG(-1), "M8", true}, {unit.AWG(-1), "#10", false}, {unit.AWG(16), "#10", true}, {unit.AWG(16), "1/2 in", false},
		{unit.AWG(6), "#10", true}, {unit.AWG(2), "5/16 in", true}, {unit.AWG(-3), "1/4 in", false}, {unit.MM2(120), "M10", true},
		{unit.MM2(120), "M6", false}, {unit.MM2(185), "M10", false},
	} {
		require.Equal(t, row.made, LugMade(row.gauge, stud(t, row.stud)), "%s on %s", row.gauge, row.stud)
	}
}

func stud(t *testing.T, text string) unit.Stud {
	t.Helper()
	s, err := unit.ParseStud(text)
	require.NoError(t, err)
	return s
}
