package scene

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// Substitute stands for a letter that a cell cannot hold.
const Substitute = '▯'

// oneCell lists the letters that every common terminal draws one cell wide, left to
// right, without joining them to their neighbours. Box-drawing characters are left
// out on purpose: in a drawing they would pass for lines.
var oneCell = &unicode.RangeTable{
	R16: []unicode.Range16{
		{Lo: 0x0020, Hi: 0x007E, Stride: 1}, // ASCII
		{Lo: 0x00A0, Hi: 0x00AC, Stride: 1}, // Latin-1 but the soft hyphen
		{Lo: 0x00AE, Hi: 0x02FF, Stride: 1}, // Latin
		{Lo: 0x0370, Hi: 0x0377, Stride: 1}, // Greek
		{Lo: 0x037A, Hi: 0x03FF, Stride: 1},
		{Lo: 0x0400, Hi: 0x0482, Stride: 1}, // Cyrillic but its combining marks
		{Lo: 0x048A, Hi: 0x052F, Stride: 1},
		{Lo: 0x1E00, Hi: 0x1EFF, Stride: 1}, // Latin with two marks
		{Lo: 0x2010, Hi: 0x2027, Stride: 1}, // dashes, quotes, dots
		{Lo: 0x2030, Hi: 0x205E, Stride: 1},
		{Lo: 0x2070, Hi: 0x208E, Stride: 1}, // raised and lowered figures
		{Lo: 0x20A0, Hi: 0x20BF, Stride: 1}, // money
		{Lo: 0x2100, Hi: 0x218B, Stride: 1}, // letterlike, fractions
		{Lo: 0x2190, Hi: 0x22FF, Stride: 1}, // arrows, mathematics
	},
	LatinOffset: 3,
}

// Clean makes user text fit for cells: one cell for each letter, nothing that could
// shift or steer a line. Letters that are not one cell wide or that join others,
// control and format characters, and bytes that are not UTF-8 become [Substitute];
// tabs and line ends become blanks. Cleaning never changes the count of letters.
func Clean(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\t' || r == '\n' || r == '\r' || r == '\u00a0':
			return ' '
		case r != utf8.RuneError && unicode.Is(oneCell, r) && !unicode.In(r, unicode.Cf, unicode.Mn, unicode.Cn):
			return r
		default:
			return Substitute
		}
	}, s)
}

// Width is the number of cells that a text takes once it is cleaned.
func Width(s string) int { return utf8.RuneCountInString(s) }

// Shorten cuts a text to a number of cells, with an ellipsis in the last one if
// anything was cut.
func Shorten(s string, cells int) string {
	letters := []rune(s)
	if len(letters) <= cells {
		return s
	}
	if cells <= 0 {
		return ""
	}
	return strings.TrimRight(string(letters[:cells-1]), " ") + "…"
}

// Fold breaks a text at blanks into lines of at most the given number of cells; a
// longer word is broken anywhere.
func Fold(s string, cells int) []string {
	if cells < 1 {
		return nil
	}
	var lines []string
	line := ""
	for _, word := range strings.Fields(s) {
		switch {
		case line == "":
			line = word
		case Width(line)+1+Width(word) <= cells:
			line += " " + word
		default:
			lines, line = append(lines, line), word
		}
		for Width(line) > cells {
			letters := []rune(line)
			lines, line = append(lines, string(letters[:cells])), string(letters[cells:])
		}
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}
