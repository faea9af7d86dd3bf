package face_test

import (
	"testing"

	"github.com/stretchr/testify/require"
	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"example.com/lugbook/diagram/ink"
	"example.com/lugbook/diagram/ink/face"
)

func TestMeasuresAreThoseOfTheFonts(t *testing.T) {
	for _, f := range []ink.Face{ink.Plain, ink.Bold, ink.Italic} {
		parsed, err := face.Parse(f)
		require.NoError(t, err)
		var buf sfnt.Buffer
		em := fixed.I(1000)
		for _, r := range "AMil.0W" {
			glyph, err := parsed.GlyphIndex(&buf, r)
			require.NoError(t, err)
			advance, err := parsed.GlyphAdvance(&buf, glyph, em, font.HintingNone)
			require.NoError(t, err)
			require.InDelta(t, face.Advance, float64(advance)/64, 1)
		}
		metrics, err := parsed.Metrics(&buf, em, font.HintingNone)
		require.NoError(t, err)
		require.InDelta(t, face.CapHeight, float64(metrics.CapHeight)/64, 5)
	}
}

func TestLettersOfTheTradeAreInTheFonts(t *testing.T) {
	for _, f := range []ink.Face{ink.Plain, ink.Bold, ink.Italic} {
		parsed, err := face.Parse(f)
		require.NoError(t, err)
		for _, text := range []string{"4.7 kΩ ±5 %", "16 mm² · 2/0 AWG", "Kühler – żarówka – кабель – φ", "→ ← ↑ ↓ … × ≤ ≥ ∞ ≈"} {
			require.Equal(t, text, face.Known(parsed, text))
		}
		require.Equal(t, "a□b", face.Known(parsed, "a▯b"))
	}
}
