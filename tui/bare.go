package tui

import (
	"regexp"
	"strings"
)

var (
	bareNumber  = regexp.MustCompile(`^[0-9]+([.][0-9]+)?$`)
	quantity    = regexp.MustCompile(`^[0-9]+(?:[.][0-9]+)? (\pL+)$`)
	voltExample = regexp.MustCompile(`such as [0-9.]+ (V)(?:$|,|;)`)
)

// withUnit gives a bare number the unit of the value that was there before. Where there was
// none, only volts are taken for granted, as the field's description says: lengths come in
// too many units. Everything else stays as it was typed.
func withUnit(text, was, about string) string {
	if !bareNumber.MatchString(text) {
		return text
	}
	if m := quantity.FindStringSubmatch(strings.TrimSpace(was)); m != nil {
		return text + " " + m[1]
	}
	if m := voltExample.FindStringSubmatch(about); was == "" && m != nil {
		return text + " " + m[1]
	}
	return text
}
