package theme

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"github.com/charmbracelet/lipgloss"
	"github.com/stretchr/testify/require"
)

var (
	allGrounds = []Ground{Neutral, Dark, Light}
	allDepths  = []Depth{NoEscapes, Monochrome, Sixteen, Indexed}
)

func TestContrastOfKnownPairs(t *testing.T) {
	require.InDelta(t, 21, contrast(hex(0x000000), hex(0xffffff)), 1e-9)
	require.InDelta(t, 4.478, contrast(hex(0x777777), hex(0xffffff)), 1e-3)
	require.InDelta(t, 5.252, contrast(hex(0xff0000), hex(0x000000)), 1e-3)
	require.InDelta(t, 8.592, contrast(hex(0x0000ff), hex(0xffffff)), 1e-3)
	require.Equal(t, hex(0x5fafff), index(75).rgb())
	require.Equal(t, hex(0x8a8a8a), index(245).rgb())
}

func TestContrastOfAllRoles(t *testing.T) {
	for role := range roleCount {
		for _, ground := range allGrounds {
			colour := looks[role].colour(ground, Indexed)
			if colour == plain {
				continue // the user's own foreground
			}
			need := 4.5
			if looks[role].line {
				need = 3
			}
			require.GreaterOrEqual(t, int(colour), 16, "role %d: the lower sixteen have no known colour", role)
			require.GreaterOrEqual(t, worst(colour.rgb(), grounds[ground]), need, "role %d on ground %d", role, ground)
		}
	}
}

func TestContrastOfTints(t *testing.T) {
	shown := map[Ground]int{}
	for _, ground := range allGrounds {
		for _, tint := range tints {
			if hue := tint.hue(ground); hue != plain {
				shown[ground]++
				require.GreaterOrEqual(t, worst(hue.rgb(), grounds[ground]), 3.0, "%s on ground %d", tint.code, ground)
			}
		}
	}
	require.Equal(t, map[Ground]int{Dark: 14, Light: 11, Neutral: 10}, shown, "hues that can be shown")
	require.Equal(t, plain, tints[0].hue(Dark), "black on black")
	require.Equal(t, index(16), tints[0].hue(Light))
}

// Every code of IEC 60757 has a tint, if only the role's own colour.
func TestTintsCoverTheStandard(t *testing.T) {
	standard := []string{"BK", "BN", "RD", "OG", "YE", "GN", "BU", "VT", "GY", "WH", "PK", "GD", "TQ", "SR", "GNYE"}
	var codes []string
	for _, tint := range tints {
		codes = append(codes, tint.code)
	}
	require.Equal(t, standard, codes)
}

func TestTint(t *testing.T) {
	th := New(Dark, Indexed)
	require.Equal(t, "\x1b[0;38;5;196m", th.Tint(Power, "RD"))
	require.Equal(t, "\x1b[0;1;38;5;196m", th.Tint(Traction, "RD/BK"), "the body decides, the role's weight stays")
	require.Equal(t, th.Prefix(Control), th.Tint(Control, "BK"))
	for _, unknown := range []string{"", "ZZ", "/RD"} {
		require.Equal(t, th.Prefix(Control), th.Tint(Control, unknown))
	}
	for _, depth := range []Depth{NoEscapes, Monochrome, Sixteen} {
		th := New(Dark, depth)
		require.Equal(t, th.Prefix(Power), th.Tint(Power, "RD"))
	}
}

// What a theme may emit at each depth.
func TestPrefixByDepth(t *testing.T) {
	allowed := map[Depth]string{
		NoEscapes:  `^$`,
		Monochrome: `^\x1b\[(0(;[147])*)?m$`,
		Sixteen:    `^\x1b\[(0(;[147])*(;3[0-7])?)?m$`,
		Indexed:    `^\x1b\[(0(;[147])*(;38;5;(1[6-9]|[2-9]\d|[12]\d\d))?)?m$`,
	}
	for _, ground := range allGrounds {
		for _, depth := range allDepths {
			th := New(ground, depth)
			for role := range roleCount {
				require.Regexp(t, regexp.MustCompile(allowed[depth]), th.Prefix(role), "role %d at depth %d", role, depth)
			}
			require.Equal(t, th.Prefix(Text), th.Reset())
			require.Equal(t, th.Prefix(Text), th.Prefix(roleCount), "an unknown role is text")
			require.Equal(t, th.Prefix(Text), th.Tint(roleCount+7, "ZZ"))
		}
	}
}

// Lip Gloss and the prefixes have to show the same.
func TestStyleAgreesWithPrefix(t *testing.T) {
	for _, ground := range allGrounds {
		for _, depth := range allDepths {
			th := New(ground, depth)
			for role := range roleCount {
				rendered := th.Style(role).Render("x")
				want := strings.Replace(strings.TrimSuffix(th.Prefix(role), "m"), "\x1b[0;", "\x1b[", 1)
				got, _, styled := strings.Cut(rendered, "mx")
				if !styled {
					require.Equal(t, "x", rendered)
					require.Contains(t, []string{"", "\x1b["}, want, "role %d at depth %d", role, depth)
					continue
				}
				require.ElementsMatch(t, parameters(want), parameters(got), "role %d at depth %d", role, depth)
			}
			require.Equal(t, lipgloss.Width(th.Style(roleCount).Render("x")), 1)
		}
	}
}

// parameters are the distinct parameters of an unfinished SGR sequence.
func parameters(sequence string) []string {
	seen := map[string]bool{}
	var distinct []string
	for p := range strings.SplitSeq(strings.TrimPrefix(sequence, "\x1b["), ";") {
		if !seen[p] {
			seen[p] = true
			distinct = append(distinct, p)
		}
	}
	return distinct
}

// The severities keep apart by attributes alone, where the terminal has those and nothing else.
func TestSeveritiesWithoutColour(t *testing.T) {
	th := New(Neutral, Monochrome)
	seen := map[string]Role{}
	for _, role := range []Role{Danger, Fault, Caution, Note} {
		other, twice := seen[th.Prefix(role)]
		require.False(t, twice, "roles %d and %d look the same", role, other)
		seen[th.Prefix(role)] = role
	}
	require.NotEqual(t, th.Prefix(Text), th.Prefix(Selected))
}

func TestGroundOf(t *testing.T) {
	for _, c := range []struct {
		answer, colorFGBG string
		want              Ground
	}{
		{"rgb:1e1e/1e1e/1e1e", "", Dark},
		{"rgb:fafa/fafa/fafa", "15;0", Light}, // the answer comes first
		{"rgb:0/0/0", "0;15", Dark},
		{"rgb:ff/ff/ff", "", Light},
		{"rgb:fff/000/000", "", Light}, // black reads better on pure red
		{"rgba:0000/0000/8080/ffff", "", Dark},
		{"rgb:zz/00/00", "", Neutral},
		{"rgb:00000/00/00", "", Neutral},
		{"rgb:00/00", "15;0", Dark},
		{"rgb://", "", Neutral},
		{"#ffffff", "", Neutral},
		{"", "15;0", Dark},
		{"", "0;default;15", Light},
		{"", "0;7", Light},
		{"", "15;8", Dark},
		{"", "15;default", Neutral},
		{"", "15;99", Neutral},
		{"", "0", Neutral},
		{"", "", Neutral},
	} {
		require.Equal(t, c.want, GroundOf(c.answer, c.colorFGBG), "%q %q", c.answer, c.colorFGBG)
	}
}

func TestDepthOf(t *testing.T) {
	const rich = "TERM=xterm-256color"
	for _, c := range []struct {
		choice   string
		terminal bool
		env      string
		want     Depth
	}{
		{"auto", true, rich, Indexed},
		{"auto", true, "TERM=xterm", Sixteen},
		{"auto", true, "TERM=linux", Sixteen},
		{"auto", true, "TERM=xterm COLORTERM=truecolor", Indexed},
		{"auto", true, "TERM=xterm-kitty", Indexed},
		{"auto", true, "WT_SESSION=1", Indexed},
		{"auto", true, "TERM=vt220", Monochrome},
		{"auto", true, "", Monochrome},
		{"auto", true, "TERM=dumb COLORTERM=truecolor", NoEscapes},
		{"auto", true, rich + " NO_COLOR=1", Monochrome},
		{"auto", true, rich + " NO_COLOR=1 CLICOLOR_FORCE=1", Monochrome},
		{"auto", true, rich + " NO_COLOR=", Indexed},
		{"auto", true, rich + " CLICOLOR=0", Monochrome},
		{"auto", false, rich, NoEscapes},
		{"auto", false, rich + " NO_COLOR=1", NoEscapes},
		{"auto", false, rich + " CLICOLOR_FORCE=1", Indexed},
		{"auto", false, rich + " CLICOLOR_FORCE=0", NoEscapes},
		{"always", false, rich + " NO_COLOR=1", Indexed},
		{"always", false, "TERM=dumb", Sixteen},
		{"never", true, rich + " CLICOLOR_FORCE=1", Monochrome},
		{"never", true, "TERM=dumb", NoEscapes},
		{"never", false, rich, NoEscapes},
		{"16", true, rich + " NO_COLOR=1", Sixteen},
		{"256", false, "TERM=linux", Indexed},
	} {
		t.Run(fmt.Sprintf("%s %v %s", c.choice, c.terminal, c.env), func(t *testing.T) {
			env := map[string]string{}
			for _, pair := range strings.Fields(c.env) {
				name, value, _ := strings.Cut(pair, "=")
				env[name] = value
			}
			got, err := DepthOf(c.choice, c.terminal, func(name string) string { return env[name] })
			require.NoError(t, err)
			require.Equal(t, c.want, got)
		})
	}
	_, err := DepthOf("sometimes", true, func(string) string { return "" })
	require.EqualError(t, err, `unknown colour choice "sometimes": use one of auto, always, never, 16, 256`)
}
