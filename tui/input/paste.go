package input

import (
	"strings"
	"unicode"

	"github.com/charmbracelet/x/ansi"
)

// PasteLine makes pasted text fit for a one-line field: escape sequences and control characters go, line ends and
// tabs become one space each, space around the whole goes.
func PasteLine(runes []rune) string {
	return strings.Join(PasteLines(runes), " ")
}

// PasteLines splits pasted text into lines and cleans each as [PasteLine] does. Empty lines are left out.
func PasteLines(runes []rune) []string {
	var lines []string
	isEnd := func(r rune) bool {
		return r == '\n' || r == '\r' || r == '\v' || r == '\f' || r == 0x85 || r == 0x2028 || r == 0x2029
	}
	for line := range strings.FieldsFuncSeq(ansi.Strip(string(runes)), isEnd) {
		if line = strings.TrimSpace(strings.Map(printable, line)); line != "" {
			lines = append(lines, line)
		}
	}
	return lines
}

// printable maps a rune of pasted text to what may stand in a field, or to -1. Format characters go as well:
// they are not seen, and some turn the direction of the text around them.
func printable(r rune) rune {
	switch {
	case r == '\t' || unicode.Is(unicode.Zs, r):
		return ' '
	case unicode.IsControl(r), unicode.Is(unicode.Cf, r), r == unicode.ReplacementChar:
		return -1
	}
	return r
}
