package text

import "strings"

// asciiTwins are letters with a plain letter that reads the same. Each is one for
// one, so that a text keeps its width.
var asciiTwins = map[rune]rune{
	'…': '~', '–': '-', '—': '-', '−': '-', '·': '.', '•': '*', '×': 'x', '÷': '/', '±': '~', '°': 'd', 'µ': 'u', 'μ': 'u',
	'\u03a9': 'R', '\u2126': 'R', 'Δ': 'D', '²': '2', '³': '3', '‘': '\'', '’': '\'', '“': '"', '”': '"', '→': '>', '←': '<', '↑': '^', '↓': 'v',
	'à': 'a', 'á': 'a', 'â': 'a', 'ä': 'a', 'å': 'a', 'ç': 'c', 'è': 'e', 'é': 'e', 'ê': 'e', 'ë': 'e', 'í': 'i', 'î': 'i', 'ï': 'i',
	'ñ': 'n', 'ó': 'o', 'ô': 'o', 'ö': 'o', 'ø': 'o', 'ú': 'u', 'û': 'u', 'ü': 'u', 'Ä': 'A', 'Ö': 'O', 'Ü': 'U', 'É': 'E',
}

// asciiOnly replaces what is not printable ASCII, letter by letter.
func asciiOnly(s string) string {
	return strings.Map(func(r rune) rune {
		if r >= ' ' && r <= '~' {
			return r
		}
		if twin, ok := asciiTwins[r]; ok {
			return twin
		}
		return '?'
	}, s)
}
