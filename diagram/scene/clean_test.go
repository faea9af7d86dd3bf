package scene

import (
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	_ "example.com/lugbook/model/fixedseed"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestCleanKeepsOneCellForEachLetter(t *testing.T) {
	for _, c := range []struct{ in, want string }{
		{"w12 6 RD", "w12 6 RD"},
		{"Kühler 4.7 kΩ ±5 %", "Kühler 4.7 kΩ ±5 %"},
		{"кабель → 12", "кабель → 12"},
		{"tab\there\nline", "tab here line"},
		{"電池", "▯▯"},
		{"e\u0301", "e▯"},
		{"\x1b[31mred", "▯[31mred"},
		{"a\u202eb\u200bc\ufeff", "a▯b▯c▯"},
		{"\xff\xfe", "▯▯"},
		{"שלום", "▯▯▯▯"},
		{"a┼b─c", "a▯b▯c"},
		{"🔋", "▯"},
		{"soft\u00adhyphen", "soft▯hyphen"},
	} {
		require.Equal(t, c.want, Clean(c.in), "%q", c.in)
	}
}

func TestCleanOfAnyText(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := rapid.String().Draw(t, "text")
		out := Clean(in)
		require.Equal(t, Width(in), Width(out))
		require.Equal(t, out, Clean(out), "cleaning twice changes nothing")
		require.True(t, utf8.ValidString(out))
		for _, r := range out {
			require.False(t, unicode.In(r, unicode.C, unicode.M, unicode.Zl, unicode.Zp), "%U", r)
		}
	})
}

func TestFoldAndShorten(t *testing.T) {
	require.Equal(t, []string{"main", "contactor", "250 A"}, Fold("main contactor 250 A", 9))
	require.Equal(t, []string{"abcd", "ef g"}, Fold("abcdef g", 4))
	require.Empty(t, Fold("  ", 5))
	require.Empty(t, Fold("x", 0))
	require.Equal(t, "main c…", Shorten("main contactor", 7))
	require.Equal(t, "main…", Shorten("main contactor", 6), "no blank before the ellipsis")
	require.Equal(t, "main", Shorten("main", 4))
	require.Empty(t, Shorten("main", 0))
	rapid.Check(t, func(t *rapid.T) {
		text, cells := rapid.StringOf(rapid.RuneFrom([]rune("ab é "))).Draw(t, "text"), rapid.IntRange(1, 12).Draw(t, "cells")
		lines := Fold(text, cells)
		for _, line := range lines {
			require.LessOrEqual(t, Width(line), cells)
		}
		join := func(s string) string { return strings.ReplaceAll(s, " ", "") }
		require.Equal(t, join(text), join(strings.Join(lines, "")), "no letter is lost")
		require.LessOrEqual(t, Width(Shorten(text, cells)), cells)
	})
}
