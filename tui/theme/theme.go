// Package theme turns roles (a selected box, a fault, a traction wire) into what the terminal in use can show.
//
// Text stands in the terminal's own foreground; hue is decoration. Colours come from the 240 fixed ones of the
// 256-colour set, so that their contrast is known: text has at least 4.5:1 and lines 3:1 on the grounds of each
// palette, which a test computes. The lower sixteen belong to the user and are used for two roles only, where the
// terminal has no others.
//
// Colour never carries a meaning alone. Whoever draws tells states apart by characters first (a sign before a
// finding, brackets round the selected box, line patterns, letter codes on wires): without colour, and on terminals
// without bold and reverse, those are all there is.
package theme

import (
	"io"
	"strconv"
	"strings"

	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"

	_ "example.com/lugbook/tui/early" // has to be initialised before Lip Gloss is asked anything
)

// Theme holds the styles of all roles for one terminal. It does not change, so it may be used from anywhere.
type Theme struct {
	// Ground is the background it was made for, Depth the terminal's abilities.
	Ground Ground
	Depth  Depth

	prefix [roleCount]string
	style  [roleCount]lipgloss.Style
	tinted [roleCount]map[string]string // by IEC 60757 code; codes without a hue are missing
}

// New makes the theme for a background and a depth of colour.
func New(ground Ground, depth Depth) *Theme {
	t := &Theme{Ground: ground, Depth: depth}
	renderer := lipgloss.NewRenderer(io.Discard)
	renderer.SetHasDarkBackground(ground != Light)
	renderer.SetColorProfile(profile(depth))
	for role := range roleCount {
		colour := looks[role].colour(ground, depth)
		t.prefix[role] = sequence(looks[role].attributes, colour, depth)
		t.style[role] = style(renderer, looks[role].attributes, colour)
		t.tinted[role] = map[string]string{}
		for _, tint := range tints {
			if hue := tint.hue(ground); hue != plain && depth == Indexed {
				t.tinted[role][tint.code] = sequence(looks[role].attributes, hue, depth)
			}
		}
	}
	return t
}

// Prefix is the escape sequence that sets a role, whatever was set before it. Write it where the role changes, and
// [Theme.Reset] at the end of a line. It is empty on a terminal without escape sequences.
func (t *Theme) Prefix(role Role) string {
	if role >= roleCount {
		role = Text
	}
	return t.prefix[role]
}

// Reset is the escape sequence that ends every role.
func (t *Theme) Reset() string {
	return t.prefix[Text]
}

// Style is the role for Lip Gloss: for whole lines, frames and dialogs. Rendering a cell at a time with it costs a
// thousand times what writing [Theme.Prefix] does.
func (t *Theme) Style(role Role) lipgloss.Style {
	if role >= roleCount {
		role = Text
	}
	return t.style[role]
}

// Tint is [Theme.Prefix] with the hue of a wire's insulation, given as IEC 60757 code with or without a stripe
// (RD, BK/WH; the body decides). Where the hue would have less than 3:1 contrast, and on terminals with sixteen
// colours or none, it is the role's own prefix: a black wire has no tint on black. So the code has to stand with it.
func (t *Theme) Tint(role Role, colour string) string {
	if role >= roleCount {
		role = Text
	}
	body, _, _ := strings.Cut(colour, "/")
	if prefix, known := t.tinted[role][body]; known {
		return prefix
	}
	return t.prefix[role]
}

// sequence is the SGR sequence (ECMA-48, 8.3.117) for attributes and a colour, from a clean slate.
func sequence(attributes attribute, colour index, depth Depth) string {
	if depth == NoEscapes {
		return ""
	}
	if attributes == 0 && colour == plain {
		return "\x1b[m"
	}
	var b strings.Builder
	b.WriteString("\x1b[0")
	for _, a := range []struct {
		bit  attribute
		code string
	}{{bold, ";1"}, {underline, ";4"}, {reverse, ";7"}} {
		if attributes&a.bit != 0 {
			b.WriteString(a.code)
		}
	}
	switch {
	case colour == plain:
	case colour < 8:
		b.WriteString(";" + strconv.Itoa(30+int(colour)))
	default:
		b.WriteString(";38;5;" + strconv.Itoa(int(colour)))
	}
	b.WriteByte('m')
	return b.String()
}

// style is the same for Lip Gloss.
func style(renderer *lipgloss.Renderer, attributes attribute, colour index) lipgloss.Style {
	s := renderer.NewStyle().
		Bold(attributes&bold != 0).
		Underline(attributes&underline != 0).
		Reverse(attributes&reverse != 0)
	if colour != plain {
		s = s.Foreground(lipgloss.Color(strconv.Itoa(int(colour))))
	}
	return s
}

// profile is Lip Gloss's word for a depth. Its profile without colour would drop bold and reverse as well, so a
// terminal that merely has no colours counts as one with sixteen that are not used.
func profile(depth Depth) termenv.Profile {
	switch depth {
	case NoEscapes:
		return termenv.Ascii
	case Indexed:
		return termenv.ANSI256
	default:
		return termenv.ANSI
	}
}
