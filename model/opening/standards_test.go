package opening

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	"example.com/lugbook/model/part"
)

func family(t *testing.T, name string) Gates {
	g, ok := Find(name)
	require.True(t, ok, name)
	return g
}

// IEC 60269-1, gG: table 3 in A, table 7 in kA2s.
var printedGG = []struct{ rated, min10, max5, min01, max01, preArc, total float64 }{
	{16, 33, 65, 85, 150, 0.3, 1.0}, {20, 42, 85, 110, 200, 0.5, 1.8}, {25, 52, 110, 150, 260, 1.0, 3.0},
	{32, 75, 150, 200, 350, 1.8, 5.0}, {40, 95, 190, 260, 450, 3.0, 9.0}, {50, 125, 250, 350, 610, 5.0, 16},
	{63, 160, 320, 450, 820, 9.0, 27}, {80, 215, 425, 610, 1100, 16, 46}, {100, 290, 580, 820, 1450, 27, 86},
	{125, 355, 715, 1100, 1910, 46, 140}, {160, 460, 950, 1450, 2590, 86, 250}, {200, 610, 1250, 1910, 3420, 140, 400},
	{250, 750, 1650, 2590, 4500, 250, 760}, {315, 1050, 2200, 3420, 6000, 400, 1300}, {400, 1420, 2840, 4500, 8060, 760, 2250},
	{500, 1780, 3800, 6000, 10600, 1300, 3800}, {630, 2200, 5100, 8060, 14140, 2250, 7500},
}

func TestGGKeepsThePrintedGates(t *testing.T) {
	for _, row := range printedGG {
		c := Of(family(t, "iec-60269-gg"), row.rated)
		require.Equal(t, 10.0, c.Band(row.min10).Least)
		require.Equal(t, 5.0, c.Band(row.max5).Most)
		require.Equal(t, 0.1, c.Band(row.min01).Least)
		require.Equal(t, 0.1, c.Band(row.max01).Most)
		require.Less(t, c.Band(row.min10*1.001).Least, 10.0, "the promise ends at the gate")
		require.Greater(t, c.Band(row.max5*0.999).Most, 5.0)
		fault := c.Band(50_000)
		require.InEpsilon(t, row.preArc*1000, fault.Least*50_000*50_000, 1e-12)
		through, ok := c.LetThrough(50_000)
		require.True(t, ok)
		require.InEpsilon(t, row.total*1000, through, 1e-12)
		require.False(t, fault.Recalled)
		require.Equal(t, "IEC 60269-1, gG", fault.Source)
	}
}

// IEC 60269-1 table 2: 1.25 times the rating does not open it within the conventional
// time, 1.6 times does: 1 h to 63 A, 2 h to 160 A, 3 h to 400 A, 4 h above.
func TestGGConventionalCurrents(t *testing.T) {
	for _, row := range printedGG {
		hours := 4.0
		switch {
		case row.rated <= 63:
			hours = 1
		case row.rated <= 160:
			hours = 2
		case row.rated <= 400:
			hours = 3
		}
		c := Of(family(t, "iec-60269-gg"), row.rated)
		require.Equal(t, hours*3600, c.Band(1.25*row.rated).Least)
		require.Equal(t, hours*3600, c.Band(1.6*row.rated).Most)
		require.Equal(t, math.Inf(1), c.Band(row.rated).Least, "it carries its rating")
		require.Equal(t, math.Inf(1), c.Band(1.59*row.rated).Most)
		from, ok := c.OpensFrom()
		require.True(t, ok)
		require.InEpsilon(t, 1.6*row.rated, from, 1e-12)
	}
}

// The tables of IEC 60269-1 close in a chain: the greatest current and I2t of a rating
// are the least ones two ratings up, 1:1.6. All 15 pairs of each.
func TestGGChain(t *testing.T) {
	g := family(t, "iec-60269-gg")
	pairs := 0
	for i := range len(printedGG) - 2 {
		down, up := Of(g, printedGG[i].rated), Of(g, printedGG[i+2].rated)
		require.Equal(t, printedGG[i].max01, printedGG[i+2].min01)
		require.Equal(t, down.total, up.preArc)
		require.Equal(t, Yes, Selective(down, up, 100_000).Answer)
		require.Equal(t, No, Selective(up, down, 100_000).Answer)
		require.NotEqual(t, Yes, Selective(down, Of(g, printedGG[i+1].rated), 100_000).Answer)
		// Where the heat alone counts the bounds say the same as the standard's rule.
		for _, amps := range []float64{down.adiabaticFrom() * 1.001, 50_000, 100_000} {
			require.LessOrEqual(t, down.Band(amps).Most, up.Band(amps).Least*(1+1e-12))
		}
		pairs++
	}
	require.Equal(t, 15, pairs)
	require.Equal(t, NotKnown, Selective(Of(g, 10), Of(g, 20), 5000).Answer, "below 16 A the standard has no I2t")
}

// What the standards print as multiples of the rating, at one rating each.
func TestPrintedMultiples(t *testing.T) {
	never := math.Inf(1)
	tests := []struct {
		name         string
		rated, times float64
		least, most  float64
	}{
		// UL 248-14, supplementary fuses.
		{name: "ul-248-14", rated: 30, times: 1, least: never, most: never},
		{name: "ul-248-14", rated: 30, times: 1.35, most: 3600},
		{name: "ul-248-14", rated: 30, times: 2, most: 120},
		{name: "ul-248-14", rated: 35, times: 2, most: 240},
		{name: "ul-248-14", rated: 60, times: 1.35, most: 3600},
		// UL 248-14, miniature fuses.
		{name: "ul-248-14-small", rated: 5, times: 1.1, least: 4 * 3600, most: never},
		{name: "ul-248-14-small", rated: 5, times: 1.35, most: 3600},
		{name: "ul-248-14-small", rated: 5, times: 2, most: 120},
		{name: "ul-248-14-small-slow", rated: 3, times: 2, least: 5, most: 120},
		{name: "ul-248-14-small-slow", rated: 3.15, times: 2, least: 12, most: 120},
		// IEC 60127-2, quick-acting.
		{name: "iec-60127-2-fast", rated: 2, times: 1.5, least: 3600, most: never},
		{name: "iec-60127-2-fast", rated: 2, times: 2.1, least: 0.05 * 2.75 * 2.75 / 2.1 / 2.1, most: 1800},
		{name: "iec-60127-2-fast", rated: 2, times: 2.75, least: 0.05, most: 2},
		{name: "iec-60127-2-fast", rated: 2, times: 4, least: 0.01, most: 0.3},
		{name: "iec-60127-2-fast", rated: 2, times: 10, most: 0.02},
		// IEC 60898-1.
		{name: "iec-60898-1-b", rated: 32, times: 1.13, least: 3600, most: never},
		{name: "iec-60898-1-b", rated: 32, times: 1.45, least: 1, most: 3600},
		{name: "iec-60898-1-c", rated: 32, times: 2.55, least: 1, most: 60},
		{name: "iec-60898-1-c", rated: 40, times: 2.55, least: 1, most: 120},
		{name: "iec-60898-1-b", rated: 32, times: 3, least: 0.1, most: 60},
		{name: "iec-60898-1-c", rated: 32, times: 5, least: 0.1, most: 60},
		{name: "iec-60898-1-d", rated: 32, times: 10, least: 0.1, most: 60},
		// IEC 60947-2.
		{name: "iec-60947-2", rated: 63, times: 1.05, least: 3600, most: never},
		{name: "iec-60947-2", rated: 63, times: 1.3, most: 3600},
		{name: "iec-60947-2", rated: 80, times: 1.05, least: 7200, most: never},
		{name: "iec-60947-2", rated: 80, times: 1.3, most: 7200},
		// UL 248-9 and UL 248-2, after the test of heat rise.
		{name: "ul-248-9-k", rated: 200, times: 1.1, least: 15 * 60, most: never},
		{name: "ul-248-9-k", rated: 201, times: 1.1, least: 30 * 60, most: never},
		{name: "ul-248-9-k-delay", rated: 30, times: 5, least: 8, most: 120 * 4 / 25.0},
		{name: "ul-248-2-c", rated: 61, times: 1.6, most: 7200},
		{name: "ul-248-2-c", rated: 201, times: 1.6, most: 14400},
	}
	for _, tt := range tests {
		got := Of(family(t, tt.name), tt.rated).Band(tt.times * tt.rated)
		if math.IsInf(tt.least, 1) || tt.least == 0 {
			require.Equal(t, tt.least, got.Least, "%v", tt)
		} else {
			require.InEpsilon(t, tt.least, got.Least, 1e-12, "%v", tt)
		}
		if math.IsInf(tt.most, 1) {
			require.Equal(t, tt.most, got.Most, "%v", tt)
		} else {
			require.InEpsilon(t, tt.most, got.Most, 1e-12, "%v", tt)
		}
	}
}

// IEC 60898-1, instantaneous tripping: B 3 to 5, C 5 to 10, D 10 to 20 times the rating.
// The upper limit is one of alternating current and bounds nothing here.
func TestInstantaneousLimitIsNoBoundOnDirectCurrent(t *testing.T) {
	for name, want := range map[string][2]float64{"iec-60898-1-b": {3, 5}, "iec-60898-1-c": {5, 10}, "iec-60898-1-d": {10, 20}} {
		g := family(t, name)
		var holds, opens []float64
		for _, r := range g.rows {
			if r.least == 0.1 {
				holds = append(holds, r.times)
			}
			if r.most == 0.1 {
				require.True(t, r.ac)
				opens = append(opens, r.times)
			}
		}
		require.Equal(t, []float64{want[0]}, holds)
		require.Equal(t, []float64{want[1]}, opens)
		require.Equal(t, 60.0, Of(g, 16).Band(16*want[1]*2).Most)
		require.NotEmpty(t, g.Caution)
	}
	require.Equal(t, 0.1, Of(family(t, "iec-60898-2-c"), 16).Band(16*15).Most)
}

func TestFamilies(t *testing.T) {
	seen := map[string]bool{}
	for _, g := range All() {
		require.True(t, model.ValidID(g.Name), g.Name)
		require.False(t, seen[g.Name], g.Name)
		seen[g.Name] = true
		require.NotEmpty(t, g.Title)
		require.NotEmpty(t, g.Source)
		recalled := 0
		for _, r := range g.rows {
			if r.recalled {
				recalled++
			}
		}
		if !g.ShortCircuitOnly {
			require.Equal(t, 2*recalled > len(g.rows), g.Recalled, g.Name)
		}
	}
	require.Len(t, Names(), len(seen))
	_, ok := Find("")
	require.False(t, ok)
	ratings := family(t, "iec-60269-gg").Ratings()
	require.Equal(t, []float64{2, 4, 6, 10, 16, 20, 25, 32, 40, 50, 63, 80, 100, 125, 160, 200, 250, 315, 400, 500, 630}, ratings)
	require.Empty(t, family(t, "iso-8820-3").Ratings())
}

// Rows from memory are said to be so wherever they decide.
func TestRecalledRowsAreMarked(t *testing.T) {
	for _, name := range []string{"iso-8820-3", "sae-j1284", "iso-8820-5", "ul-248-15-t", "ul-248-branch", "iec-60269-gpv"} {
		g := family(t, name)
		require.True(t, g.Recalled)
		c := Of(g, 40)
		require.False(t, c.Band(40).Recalled, "a rating is carried by definition")
		require.True(t, c.Band(90).Recalled, name)
		v := Protects(c, 90, 1e6)
		require.Equal(t, Yes, v.Answer)
		require.True(t, v.Recalled)
		require.Contains(t, v.Why, FromMemory)
	}
	require.True(t, Of(family(t, "iec-60269-gg"), 10).Band(110).Recalled)
	require.False(t, Of(family(t, "iec-60898-1-c"), 63).Band(2*63).Recalled)
	require.True(t, Of(family(t, "iec-60898-1-c"), 80).Band(2*80).Recalled)
}

// Every fuse and breaker of the parts library names gates that its usual rating has.
func TestLibraryNamesItsGates(t *testing.T) {
	devices := 0
	for _, d := range part.Definitions() {
		for _, e := range d.Elements {
			if e.Is != model.FuseElement {
				continue
			}
			devices++
			rating, ok := d.Rating(e.Amps)
			require.True(t, ok)
			amps, ok := rating.Value.Ampere()
			require.True(t, ok)
			c, err := Device(d.Opening, amps.Amperes(), nil)
			require.NoError(t, err, d.Kind)
			from, opens := c.OpensFrom()
			require.True(t, opens, d.Kind)
			require.Greater(t, from, amps.Amperes())
		}
	}
	require.Greater(t, devices, 10)
}
