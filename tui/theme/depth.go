package theme

import (
	"fmt"
	"slices"
	"strings"
)

// Depth is how much a terminal can show, or may.
type Depth uint8

// The depths.
const (
	NoEscapes  Depth = iota // characters only: a pipe, a file, a terminal that calls itself dumb
	Monochrome              // bold, underline and reverse
	Sixteen                 // and the sixteen colours the user has chosen
	Indexed                 // and the 240 fixed ones
)

// Choices are the values of the --color option.
var Choices = []string{"auto", "always", "never", "16", "256"}

// DepthOf settles the depth from the --color option, from whether the output is a terminal, and from the environment,
// looked up through getenv. In this order: "16" and "256" are obeyed; "always" means colour, as much as TERM promises;
// "never" means no colour; "auto" means no colour if NO_COLOR is not empty (no-color.org) or CLICOLOR is 0, colour even
// in a pipe if CLICOLOR_FORCE is set and not 0 (bixense.com/clicolors), and else what the terminal can do.
//
// The error names the choices.
func DepthOf(choice string, terminal bool, getenv func(string) string) (Depth, error) {
	if !slices.Contains(Choices, choice) {
		return NoEscapes, fmt.Errorf("unknown colour choice %q: use one of %s", choice, strings.Join(Choices, ", "))
	}
	able := ability(getenv)
	shown := able
	if !terminal {
		shown = NoEscapes
	}
	force := getenv("CLICOLOR_FORCE")
	switch {
	case choice == "256":
		return Indexed, nil
	case choice == "16":
		return Sixteen, nil
	case choice == "always":
		return max(able, Sixteen), nil
	case choice == "never", getenv("NO_COLOR") != "":
		return min(shown, Monochrome), nil
	case force != "" && force != "0":
		return max(able, Sixteen), nil
	case getenv("CLICOLOR") == "0":
		return min(shown, Monochrome), nil
	}
	return shown, nil
}

// ability is what the terminal can do by its name.
func ability(getenv func(string) string) Depth {
	term := getenv("TERM")
	has := func(parts ...string) bool {
		return slices.ContainsFunc(parts, func(part string) bool { return strings.Contains(term, part) })
	}
	switch colours := getenv("COLORTERM"); {
	case term == "dumb":
		return NoEscapes
	case colours == "truecolor" || colours == "24bit" || getenv("WT_SESSION") != "":
		return Indexed
	case has("256color", "direct", "kitty", "alacritty", "ghostty", "wezterm", "foot", "contour"):
		return Indexed
	case term == "" || has("vt1", "vt2", "vt3", "mono", "-m"):
		return Monochrome
	}
	return Sixteen
}
