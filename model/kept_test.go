package model

import (
	"encoding"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestEveryKeptTextIsReadAsItWasWritten(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		cell := rapid.IntRange(0, maxPlace)
		r := KeptRect{cell.Draw(t, "x"), cell.Draw(t, "y"), cell.Draw(t, "w"), cell.Draw(t, "h")}
		way := KeptWay{{cell.Draw(t, "x"), cell.Draw(t, "y")}}
		for i := range rapid.IntRange(0, 6).Draw(t, "runs") {
			next := way[len(way)-1]
			if i%2 == 0 {
				next.X = (next.X + rapid.IntRange(1, maxPlace).Draw(t, "level")) % (maxPlace + 1)
			} else {
				next.Y = (next.Y + rapid.IntRange(1, maxPlace).Draw(t, "upright")) % (maxPlace + 1)
			}
			way = append(way, next)
		}
		var ports KeptPorts
		for range rapid.IntRange(0, 4).Draw(t, "ports") {
			ports = append(ports, KeptPort{rapid.StringMatching(`[A-Za-z0-9+/_-]{1,8}`).Draw(t, "id"), rapid.SampledFrom([]byte("NESW")).Draw(t, "side"), cell.Draw(t, "offset")})
		}
		label := KeptLabel{X: cell.Draw(t, "x"), Y: cell.Draw(t, "y"), Text: rapid.IntRange(0, 3).Draw(t, "text"), Upright: rapid.Bool().Draw(t, "upright"), Stands: true}
		sameAgain(t, r, &KeptRect{})
		sameAgain(t, way, &KeptWay{})
		sameAgain(t, ports, &KeptPorts{})
		sameAgain(t, label, &KeptLabel{})
	})
}

func sameAgain[T encoding.TextMarshaler, P interface {
	*T
	encoding.TextUnmarshaler
}](t *rapid.T, v T, into P) {
	text, err := v.MarshalText()
	require.NoError(t, err)
	require.NoError(t, into.UnmarshalText(text), "%s", text)
	require.Equal(t, v, *into, "%s", text)
}

func TestKeptTextsThatCannotBeAreRefused(t *testing.T) {
	for _, text := range []string{"", "1 2 3", "1 2 3 4 5", "-1 2 3 4", "1 2 3 10001", "01 2 3 4", "a b c d"} {
		require.Error(t, new(KeptRect).UnmarshalText([]byte(text)), text)
	}
	for _, text := range []string{"", "5", "5 5 X3", "5 5 L6", "5 5 R", "5 5 R-1", "5 5 3"} {
		require.Error(t, new(KeptWay).UnmarshalText([]byte(text)), text)
	}
	for _, text := range []string{"L1", "L1 3", "L1 Q3", "L1 E", "L1 E3 x"} {
		require.Error(t, new(KeptPorts).UnmarshalText([]byte(text)), text)
	}
	for _, text := range []string{"1", "1 2", "1 2 X3", "1 2 U", "1 2 3 4"} {
		require.Error(t, new(KeptLabel).UnmarshalText([]byte(text)), text)
	}
}

func FuzzKeptTexts(f *testing.F) {
	for _, text := range []string{"12 4 21 9", "12 5 R20 D4", "L1/w14 E3 coil+/k5 W5", "16 5 U0"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		var (
			way   KeptWay
			again KeptWay
			ports KeptPorts
			label KeptLabel
			rect  KeptRect
		)
		if way.UnmarshalText([]byte(text)) == nil {
			written, err := way.MarshalText()
			require.NoError(t, err)
			require.NoError(t, again.UnmarshalText(written))
		}
		_, _, _ = ports.UnmarshalText([]byte(text)), label.UnmarshalText([]byte(text)), rect.UnmarshalText([]byte(text))
	})
}
