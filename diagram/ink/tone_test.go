package ink

import (
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/model"
)

// TestContrast holds the formula against pairs whose ratios are common knowledge.
func TestContrast(t *testing.T) {
	white, black := Shade{255, 255, 255}, Shade{}
	require.InDelta(t, 21, Contrast(white, black), 1e-9)
	require.InDelta(t, 1, Contrast(white, white), 1e-9)
	require.InDelta(t, 4.54, Contrast(Shade{0x76, 0x76, 0x76}, white), 0.01, "the lightest grey that passes 4.5:1 on white")
	require.Equal(t, Contrast(white, black), Contrast(black, white))
}

// TestEveryWireStandsOut computes the contrast of what is at the edge of each wire against
// the ground: on paper, on a dark screen, and of the grey that a printer makes of it. A
// core within a casing that is not told from the casing is told by it from the ground.
func TestEveryWireStandsOut(t *testing.T) {
	paper, _ := Page.Light()
	screen, _ := Page.Dark()
	colours := []string{"", "GNYE", "XX"}
	for _, body := range model.ColourCodes() {
		colours = append(colours, body)
		for _, stripe := range model.ColourCodes() {
			colours = append(colours, body+"/"+stripe)
		}
	}
	for _, colour := range colours {
		body, stripe := Insulation(colour)
		marks := strokes(scene.Wire{}, body, stripe, straight(0, 0, 100, 0))
		edge := marks[0].Pen
		light, ok := edge.Line.Light()
		require.True(t, ok)
		dark, _ := edge.Line.Dark()
		require.GreaterOrEqual(t, Contrast(light, paper), float64(LeastContrast), "%q on paper", colour)
		require.GreaterOrEqual(t, Contrast(dark, screen), float64(LeastContrast), "%q on a dark screen", colour)
		require.GreaterOrEqual(t, Contrast(grey(light), paper), float64(LeastContrast), "%q in grey print", colour)
		if edge.Line == Casing {
			require.Greater(t, edge.Width, marks[1].Pen.Width, "%q: the casing is seen on both sides", colour)
		} else {
			require.Len(t, marks, 1, "%q: only a plain colour goes without a casing", colour)
		}
	}
}

// grey is the grey of the same luminance, as sRGB has it.
func grey(s Shade) Shade {
	best, least := Shade{}, 21.0
	for v := range 256 {
		g := Shade{uint8(v), uint8(v), uint8(v)}
		if c := Contrast(g, s); c < least {
			best, least = g, c
		}
	}
	return best
}

// TestLettersStandOut asks of all letters what WCAG 2.1 asks of text.
func TestLettersStandOut(t *testing.T) {
	paper, _ := Page.Light()
	screen, _ := Page.Dark()
	for _, tone := range []Tone{Ink, Soft, Alarm} {
		light, _ := tone.Light()
		dark, _ := tone.Dark()
		require.GreaterOrEqual(t, Contrast(light, paper), 4.5, tone)
		require.GreaterOrEqual(t, Contrast(dark, screen), 4.5, tone)
	}
	for _, tone := range []Tone{Casing, Pointed} {
		light, _ := tone.Light()
		dark, _ := tone.Dark()
		require.GreaterOrEqual(t, Contrast(light, paper), float64(LeastContrast), tone)
		require.GreaterOrEqual(t, Contrast(dark, screen), float64(LeastContrast), tone)
	}
	_, seen := Hit.Light()
	require.False(t, seen)
}

func TestEveryColourOfTheStandardHasAShade(t *testing.T) {
	for _, code := range model.ColourCodes() {
		body, _ := Insulation(code)
		require.NotEqual(t, Unknown, body, code)
	}
	for colour, want := range map[string][2]Tone{
		"RD": {"RD", ""}, "RD/WH": {"RD", "WH"}, "GNYE": {"GN", "YE"}, "": {Unknown, ""}, "<x>": {Unknown, ""}, "page": {Unknown, ""}, "RD/ink": {"RD", ""},
	} {
		body, stripe := Insulation(colour)
		require.Equal(t, want, [2]Tone{body, stripe}, colour)
	}
}
