package model

import (
	"regexp"
	"strings"
	"testing"

	_ "example.com/lugbook/model/fixedseed"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestColourCodesAreThoseOfTheStandard(t *testing.T) {
	// IEC 60757:2021, table of letter codes, with the combination for protective conductors.
	require.Equal(t, []string{"BK", "BN", "RD", "OG", "YE", "GN", "BU", "VT", "GY", "WH", "PK", "GD", "TQ", "SR", "GNYE"}, ColourCodes())
}

func TestParseColour(t *testing.T) {
	for text, want := range map[string]Colour{
		"RD": {Body: "RD"}, "rd": {Body: "RD"}, " red ": {Body: "RD"}, "RD/WH": {Body: "RD", Stripe: "WH"}, "red/white": {Body: "RD", Stripe: "WH"},
		"gray": {Body: "GY"}, "Grey": {Body: "GY"}, "purple": {Body: "VT"}, "tan": {Body: "BN"}, "GNYE": {Body: "GNYE"}, "green-yellow": {Body: "GNYE"},
		"turquoise": {Body: "TQ"}, "silver/gold": {Body: "SR", Stripe: "GD"}, "black / blue": {Body: "BK", Stripe: "BU"},
	} {
		got, err := ParseColour(text)
		require.NoError(t, err, text)
		require.Equal(t, want, got, text)
	}
	for _, text := range []string{"", "/", "RD/", "/RD", "RD/WH/BK", "R", "reddish", "RD WH"} {
		_, err := ParseColour(text)
		require.ErrorContains(t, err, "expected an IEC 60757 colour code", text)
	}
}

func TestColourReadsBack(t *testing.T) {
	pattern, example := Colour{}.FormHint()
	form := regexp.MustCompile(pattern)
	require.Regexp(t, form, example)
	for _, body := range ColourCodes() {
		for _, stripe := range append(ColourCodes(), "") {
			c := Colour{Body: body, Stripe: stripe}
			var back Colour
			require.NoError(t, back.UnmarshalText([]byte(c.String())))
			require.Equal(t, c, back)
			require.Regexp(t, form, c.String())
			require.NotEmpty(t, c.Word())
		}
	}
	require.Equal(t, "red with white stripe", Colour{Body: "RD", Stripe: "WH"}.Word())
	require.Equal(t, "black", Colour{Body: "BK"}.Word())
	require.Empty(t, Colour{}.Word())
	require.True(t, Colour{}.IsZero())
	kept := Colour{Body: "RD"}
	require.Error(t, kept.UnmarshalText([]byte("nonsense")))
	require.Equal(t, Colour{Body: "RD"}, kept, "a bad text changes nothing")
}

func TestEndReadsAndWrites(t *testing.T) {
	for text, want := range map[string]End{
		"sol.L1": On("sol", "L1"), "b1.+": On("b1", "+"), "b1.-": On("b1", "-"), "ctl.coil+": On("ctl", "coil+"),
		"cut": LooseEnd(Cut), "capped": LooseEnd(Capped), "untraced": LooseEnd(Untraced),
		"cut in dash": {Loose: Cut, In: "dash"}, "untraced in rear-bay": {Loose: Untraced, In: "rear-bay"},
	} {
		var got End
		require.NoError(t, got.UnmarshalText([]byte(text)), text)
		require.Equal(t, want, got)
		require.Equal(t, text, got.String())
		require.Equal(t, want.Loose != "", got.IsLoose())
		pattern, _ := End{}.FormHint()
		require.Regexp(t, pattern, text)
	}
	for text, say := range map[string]string{
		"": "expected part.terminal", "sol": "expected part.terminal", "sol.": "expected part.terminal", ".L1": "expected part.terminal",
		"sol.L1.x": "expected part.terminal", "Cut": "expected part.terminal", "so l.L1": "expected part.terminal", "sol.L1 in dash": "expected part.terminal",
		"cut in ": "a zone's id", "cut in the dash": "a zone's id", "capped in d.sh": "a zone's id",
	} {
		kept := On("b1", "+")
		require.ErrorContains(t, kept.UnmarshalText([]byte(text)), say, text)
		require.Equal(t, On("b1", "+"), kept)
		pattern, _ := End{}.FormHint()
		require.NotRegexp(t, pattern, text)
	}
	require.True(t, End{}.IsZero())
}

func TestTerminalRefReadsAndWrites(t *testing.T) {
	var at TerminalRef
	require.NoError(t, at.UnmarshalText([]byte("b1.+")))
	require.Equal(t, TerminalRef{"b1", "+"}, at)
	text, err := at.MarshalText()
	require.NoError(t, err)
	require.Equal(t, "b1.+", string(text))
	for _, bad := range []string{"", "b1", "b1+", ".", "b1.", ".+", "b1.+.-", "b 1.+", strings.Repeat("b", 65) + ".+", "b1.é"} {
		require.ErrorContains(t, at.UnmarshalText([]byte(bad)), "expected a terminal as part.terminal", bad)
	}
	require.Empty(t, TerminalRef{}.String())
	require.True(t, TerminalRef{}.IsZero())
}

// Whatever is accepted is written as it was read, and fits the pattern of the schema.
func TestEndsAcceptWhatTheirPatternAccepts(t *testing.T) {
	pattern, _ := End{}.FormHint()
	form := regexp.MustCompile(pattern)
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`(cut|capped|untraced|[a-z0-9_-]{0,3})( in |\.|)[A-Za-z0-9_+. -]{0,4}`).Draw(t, "text")
		var e End
		if err := e.UnmarshalText([]byte(text)); (err == nil) != form.MatchString(text) {
			t.Fatalf("%q: read %v, pattern %v", text, err, form.MatchString(text))
		} else if err == nil && e.String() != text {
			t.Fatalf("%q is written %q", text, e.String())
		}
	})
}

func FuzzEnd(f *testing.F) {
	f.Add("sol.L1")
	f.Add("cut in dash")
	f.Fuzz(func(t *testing.T, text string) {
		var e End
		if e.UnmarshalText([]byte(text)) == nil {
			require.Equal(t, text, e.String())
		}
	})
}

func FuzzColour(f *testing.F) {
	f.Add("RD/WH")
	f.Fuzz(func(t *testing.T, text string) {
		c, err := ParseColour(text)
		if err != nil {
			return
		}
		back, err := ParseColour(c.String())
		require.NoError(t, err)
		require.Equal(t, c, back)
	})
}

func TestRelativePath(t *testing.T) {
	for _, good := range []string{
		"a.jpg", "photos/a b.jpg", "photos/left.tray/1.jpg", ".hidden", "com.jpg", "console/x", "com10", "lpt", "nulls.jpg", "é/ü.jpg",
		"1/2/3/4/5/6/7/8", strings.Repeat("a", 200),
	} {
		require.True(t, relativePath(good), good)
	}
	for _, bad := range []string{
		"", "/a.jpg", "a/", "a//b", "./a", "../a", "a/../b", "a/.", `a\b`, "C:/a", "a:b", "a?.jpg", "a*", `a"b`, "a<b", "a>b", "a|b",
		"a,b.jpg", "a.", "a ", "dir./a", "dir /a", "a\x00b", "a\nb", "a\x7fb",
		"con", "CON", "con.jpg", "photos/aux", "prn.tar.gz", "nul", "com1", "COM9.txt", "com0", "lpt1", "LPT9.jpg", "com¹", "lpt³.x", "CONIN$", "conout$",
		"1/2/3/4/5/6/7/8/9", strings.Repeat("a", 201),
	} {
		require.False(t, relativePath(bad), "%q", bad)
	}
}

func TestValidID(t *testing.T) {
	for _, good := range []string{"b1", "w-12", "A_b", "-", strings.Repeat("x", 64)} {
		require.True(t, ValidID(good), good)
	}
	for _, bad := range []string{"", "b.1", "b 1", "b+", "é", "b1\n", strings.Repeat("x", 65)} {
		require.False(t, ValidID(bad), "%q", bad)
	}
}

func TestFreeID(t *testing.T) {
	taken := map[string]bool{"w1": true, "w2": true, "w4": true}
	require.Equal(t, "w3", FreeID("w", func(id string) bool { return taken[id] }))
}

func TestFaultInOneLine(t *testing.T) {
	f := Fault{Path: []string{"sheets", "plan"}, Text: "x", Message: "no such thing"}
	require.EqualError(t, f, `sheets.plan: no such thing: "x"`)
	f.Expected = "a thing"
	require.EqualError(t, f, `sheets.plan: no such thing: "x"; expected a thing`)
}
