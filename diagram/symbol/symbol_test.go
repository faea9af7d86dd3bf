package symbol

import (
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/model/part"
)

func TestEverySymbolIsDrawnInItsField(t *testing.T) {
	seen := map[string]bool{}
	for _, name := range Names() {
		require.False(t, seen[name], "two symbols called %s", name)
		seen[name] = true
		s, ok := Lookup(name)
		require.True(t, ok, name)
		require.NotEmpty(t, s.Title)
		require.NotEmpty(t, s.Strokes)
		for _, stroke := range s.Strokes {
			require.True(t, len(stroke.Points) > 0 || stroke.Text != "", "%s has an empty stroke", name)
			for _, p := range stroke.Points {
				require.True(t, p.X-stroke.Radius >= 0 && p.X+stroke.Radius <= W && p.Y-stroke.Radius >= 0 && p.Y+stroke.Radius <= H, "%s: %v", name, p)
			}
		}
	}
	_, ok := Lookup("no such symbol")
	require.False(t, ok)
}

func TestRowFillsItsWidth(t *testing.T) {
	for _, name := range Names() {
		s, _ := Lookup(name)
		for width := range 10 {
			boxes, ascii := s.Row(width, false), s.Row(width, true)
			if boxes != "" {
				require.Equal(t, width, utf8.RuneCountInString(boxes), name)
			}
			for _, r := range ascii {
				require.True(t, r >= ' ' && r <= '~', "%s: %q", name, ascii)
			}
			require.Equal(t, boxes == "", ascii == "", "%s is drawn in both character sets or in none", name)
		}
	}
	motor, _ := Lookup("motor-dc")
	require.Equal(t, "──(M)──", motor.Row(7, false))
	require.Equal(t, "-(M)--", motor.Row(6, true))
	require.Empty(t, motor.Row(2, true))
}

func TestPartsLibraryNamesKnownSymbols(t *testing.T) {
	named := 0
	for _, d := range part.Definitions() {
		if d.Symbol != "" {
			_, ok := Lookup(d.Symbol)
			require.True(t, ok, "%s asks for the symbol %s", d.Kind, d.Symbol)
			named++
		}
	}
	require.Positive(t, named)
}

func TestNotation(t *testing.T) {
	strokes, err := parse("=6:22; R 6,8,16,8; D 14,12,2; T 3,6 A1; H 1,2 3,4")
	require.NoError(t, err)
	require.Equal(t, []Stroke{
		{Op: Line, Points: []Point{{0, 12}, {6, 12}}}, {Op: Line, Points: []Point{{22, 12}, {28, 12}}},
		{Op: Box, Points: []Point{{6, 8}, {22, 16}}}, {Op: Disc, Points: []Point{{14, 12}}, Radius: 2},
		{Op: Letters, Points: []Point{{3, 6}}, Text: "A1"}, {Op: Dashed, Points: []Point{{1, 2}, {3, 4}}},
	}, strokes)
	for _, bad := range []string{"", "Q 1,2", "LL 1,2", "L 1;2", "L 1,x", "R 1,2,3", "R a,2,3,4", "C 1", "C 1,2,r", "=a:2", "T x"} {
		_, err := parse(bad)
		require.Error(t, err, bad)
	}
}

// TestSymbolsTurnToTheirTerminals puts terminals on either side of a box.
func TestSymbolsTurnToTheirTerminals(t *testing.T) {
	box := func(symbol, left, right string) scene.Box {
		return scene.Box{Symbol: symbol, Ports: []scene.Port{{ID: left, Side: scene.West}, {ID: right, Side: scene.East}}}
	}
	for _, c := range []struct {
		box   scene.Box
		row   string
		ascii string
	}{
		{box("diode", "anode", "cathode"), "──►┃───", "-->|---"},
		{box("diode", "cathode", "anode"), "──┃◄───", "--|<---"},
		{box("charger", "AC-L", "DC+"), "─[~/=]─", "-[~/=]-"},
		{box("charger", "DC+", "AC-L"), "─[=/~]─", "-[=/~]-"},
		{box("fuse", "out", "in"), "─[───]─", "-[---]-"},
	} {
		s, ok := Of(c.box)
		require.True(t, ok)
		require.Equal(t, c.row, s.Row(7, false))
		require.Equal(t, c.ascii, s.Row(7, true))
	}
	rows, ok := mustOf(box("battery", "-", "+")).Block(false)
	require.True(t, ok)
	require.Equal(t, [3]string{"    │+ ", "──┤ ├──", "  - │  "}, rows)
	upright, _ := Of(box("battery", "+", "-"))
	turned, _ := Of(box("battery", "-", "+"))
	plus := func(s Symbol) int { return s.Strokes[7].Points[0].X }
	require.Less(t, plus(upright), W/2)
	require.Greater(t, plus(turned), W/2, "the plus stands at the terminal that it names")
	require.Equal(t, upright, turned.mirrored(), "twice turned is as before")
	for _, name := range Names() {
		s, _ := Lookup(name)
		from, to := s.Extent()
		mirroredFrom, mirroredTo := s.mirrored().Extent()
		require.Equal(t, []Point{from, to}, []Point{{W - mirroredTo.X, mirroredFrom.Y}, {W - mirroredFrom.X, mirroredTo.Y}}, name)
	}
	_, ok = Of(scene.Box{Symbol: "no such symbol"})
	require.False(t, ok)
}

func mustOf(b scene.Box) Symbol {
	s, _ := Of(b)
	return s
}

func TestBlocksFillTheirField(t *testing.T) {
	found := 0
	for _, name := range Names() {
		s, _ := Lookup(name)
		for _, ascii := range []bool{false, true} {
			for _, drawing := range []Symbol{s, s.mirrored()} {
				rows, ok := drawing.Block(ascii)
				if !ok {
					continue
				}
				found++
				for _, row := range rows {
					require.Equal(t, 7, utf8.RuneCountInString(row), name)
					require.NotContains(t, row, "┼")
					for _, r := range row {
						require.True(t, !ascii || r >= ' ' && r <= '~', "%s: %q", name, row)
					}
				}
			}
		}
	}
	require.Equal(t, 4*len(blocks), found, "each block is of a symbol")
}

func TestFlatSymbolsStandForThoseOfTwoRows(t *testing.T) {
	for name, want := range map[string]string{"solenoid": "contactor", "motor-series": "motor-dc", "fuse": "fuse"} {
		s, _ := Lookup(name)
		require.Equal(t, want, s.Flat().Name)
	}
	for name, one := range flat {
		_, ok := Lookup(name)
		require.True(t, ok, name)
		s, ok := Lookup(one)
		require.True(t, ok, one)
		require.Equal(t, s, s.Flat())
	}
}
