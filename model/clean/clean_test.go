package clean

import (
	"errors"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"github.com/stretchr/testify/require"
)

func TestLineAndText(t *testing.T) {
	tests := []struct {
		name, in, line, text string
	}{
		{"plain", "B1 to SOL.L1", "B1 to SOL.L1", "B1 to SOL.L1"},
		{"letters beyond ASCII", "Größe Ω 日本 ½", "Größe Ω 日本 ½", "Größe Ω 日本 ½"},
		{"newline", "a\nb", "a<U+000A>b", "a\nb"},
		{"carriage return and newline", "a\r\nb", "a<U+000D><U+000A>b", "a\nb"},
		{"lone carriage return", "a\rb", "a<U+000D>b", "a<U+000D>b"},
		{"tab", "a\tb", "a b", "a b"},
		{"escape sequence", "\x1b[31mred", "<U+001B>[31mred", "<U+001B>[31mred"},
		{"null and delete", "\x00\x7f", "<U+0000><U+007F>", "<U+0000><U+007F>"},
		{"C1 introducer", "\u009b2J", "<U+009B>2J", "<U+009B>2J"},
		{"next line control", "a\u0085b", "a<U+0085>b", "a<U+0085>b"},
		{"bidi override", "\u202egnp.exe", "<U+202E>gnp.exe", "<U+202E>gnp.exe"},
		{"bidi isolate", "\u2066x\u2069", "<U+2066>x<U+2069>", "<U+2066>x<U+2069>"},
		{"Arabic letter mark", "\u061c", "<U+061C>", "<U+061C>"},
		{"zero width", "a\u200bb\u200d\u2060\ufeff", "a<U+200B>b<U+200D><U+2060><U+FEFF>", "a<U+200B>b<U+200D><U+2060><U+FEFF>"},
		{"tag character", "\U000E0041", "<U+E0041>", "<U+E0041>"},
		{"variation selector supplement", "a\U000E0100", "a<U+E0100>", "a<U+E0100>"},
		{"separators", "\u2028\u2029", "<U+2028><U+2029>", "<U+2028><U+2029>"},
		{"invisible letter", "a\u3164b", "a<U+3164>b", "a<U+3164>b"},
		{"noncharacter", "\uffff", "<U+FFFF>", "<U+FFFF>"},
		{"bad bytes", "a\xff\xc3b", "a<0xFF><0xC3>b", "a<0xFF><0xC3>b"},
		{"a real replacement character", "\ufffd", "\ufffd", "\ufffd"},
		{"four marks stay", "e\u0301\u0302\u0303\u0304", "e\u0301\u0302\u0303\u0304", "e\u0301\u0302\u0303\u0304"},
		{"a fifth does not", "e\u0301\u0302\u0303\u0304\u0305", "e\u0301\u0302\u0303\u0304<U+0305>", "e\u0301\u0302\u0303\u0304<U+0305>"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			require.Equal(t, tt.line, Line(tt.in))
			require.Equal(t, tt.text, Text(tt.in))
		})
	}
}

func TestSuspiciousGivesOffsets(t *testing.T) {
	require.Empty(t, Suspicious("Ω two\tlines\r\nhere\n"))
	require.Equal(t, []Suspect{{2, "<U+202E>"}, {6, "<0xFF>"}, {8, "<U+000D>"}}, Suspicious("Ω\u202e.\xffx\r"))
}

func TestError(t *testing.T) {
	require.Equal(t, "open a<U+001B>b: no such file", Error(errors.New("open a\x1bb: no such file")))
	require.Empty(t, Error(nil))
}

func FuzzClean(f *testing.F) {
	f.Add("\x1b]8;;http://x\x07y")
	f.Add("\ufeff\u2028a\u202eb\u2066c\xff")
	f.Add("e\u0301\u0302\u0303\u0304\u0305\u0306")
	f.Fuzz(func(t *testing.T, s string) {
		line, text := Line(s), Text(s)
		require.NotContains(t, line, "\n")
		for _, out := range []string{line, text} {
			require.True(t, utf8.ValidString(out))
			for _, r := range strings.ReplaceAll(out, "\n", "") {
				require.False(t, unicode.In(r, unicode.Cc, unicode.Cf, unicode.Zl, unicode.Zp), "%U left in %q", r, out)
			}
			require.Empty(t, Suspicious(out))
		}
		require.Equal(t, line, Line(line))
		require.Equal(t, text, Text(text))
		if len(Suspicious(s)) == 0 && !strings.ContainsAny(s, "\t\r") {
			require.Equal(t, s, text)
		}
	})
}
