package scene

import "strings"

// colourWords holds the letter codes of IEC 60757 with their English words.
var colourWords = []struct{ code, word string }{
	{"BK", "black"}, {"BN", "brown"}, {"RD", "red"}, {"OG", "orange"}, {"YE", "yellow"},
	{"GN", "green"}, {"BU", "blue"}, {"VT", "violet"}, {"GY", "grey"}, {"WH", "white"},
	{"PK", "pink"}, {"GD", "gold"}, {"TQ", "turquoise"}, {"SR", "silver"}, {"GNYE", "green-and-yellow"},
}

// colourKey explains the colour codes in use, in the order of the standard's table.
func colourKey(u Usage) string {
	var words []string
	for _, c := range colourWords {
		for _, code := range u.Colours {
			if code == c.code {
				words = append(words, c.code+" "+c.word)
			}
		}
	}
	if len(words) == 0 {
		return ""
	}
	key := "Insulation: " + strings.Join(words, ", ")
	if u.Striped {
		key += "; body/stripe"
	}
	return key + "."
}
