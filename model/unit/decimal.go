package unit

import (
	"strconv"
	"strings"
)

// places is how many decimals a number may have.
const places = 6

// whole digits that a number may have, so that its millionths fit an int64.
const wholeDigits = 12

// splitNumber cuts a text into its leading decimal number and the rest.
func splitNumber(text string) (number, rest string) {
	i := 0
	if strings.HasPrefix(text, "-") {
		i = 1
	}
	for i < len(text) && (text[i] >= '0' && text[i] <= '9' || text[i] == '.') {
		i++
	}
	return text[:i], strings.TrimSpace(text[i:])
}

// parseDecimal reads a decimal number of at most six places as millionths.
func parseDecimal(text string) (int64, bool) {
	digits, negative := strings.CutPrefix(text, "-")
	whole, fraction, dotted := strings.Cut(digits, ".")
	if whole == "" && fraction == "" || dotted && fraction == "" {
		return 0, false
	}
	whole = strings.TrimLeft(whole, "0")
	if len(whole) > wholeDigits || len(fraction) > places {
		return 0, false
	}
	n, err := strconv.ParseUint(whole+fraction+strings.Repeat("0", places-len(fraction)), 10, 63)
	if err != nil {
		return 0, false
	}
	if negative {
		return -int64(n), true
	}
	return int64(n), true
}

// printDecimal writes millionths as a decimal number without needless zeros.
func printDecimal(millionths int64) string {
	sign := ""
	if millionths < 0 {
		sign, millionths = "-", -millionths
	}
	text := sign + strconv.FormatInt(millionths/1e6, 10)
	fraction := strconv.FormatInt(1e6+millionths%1e6, 10)[1:]
	if fraction = strings.TrimRight(fraction, "0"); fraction != "" {
		text += "." + fraction
	}
	return text
}
