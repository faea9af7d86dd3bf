package scene

import (
	"slices"
	"strings"

	"example.com/lugbook/model"
)

// colourKey explains the colour codes in use, in the order of the standard's table.
func colourKey(u Usage) string {
	var words []string
	for _, code := range model.ColourCodes() {
		if slices.Contains(u.Colours, code) {
			words = append(words, code+" "+model.Colour{Body: code}.Word())
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
