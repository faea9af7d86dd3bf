package support

import (
	"math"
	"strconv"
	"strings"
)

// si writes a figure with three or four significant digits and the prefix that suits it:
// 53.3 V, 12.5 mA, 3140 A.
func si(value float64, unit string) string {
	size := math.Abs(value)
	switch {
	case size < 5e-9:
		return "0 " + unit
	case size >= 10000:
		return plain(value/1000) + " k" + unit
	case size < 1e-3:
		return plain(value*1e6) + " u" + unit
	case size < 1:
		return plain(value*1e3) + " m" + unit
	}
	return plain(value) + " " + unit
}

// plain writes a number with three significant digits, a whole number of up to four
// digits in full.
func plain(value float64) string {
	size := math.Abs(value)
	decimals := 2
	switch {
	case size >= 100:
		decimals = 0
	case size >= 10:
		decimals = 1
	}
	text := strconv.FormatFloat(value, 'f', decimals, 64)
	if strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	return text
}

// orNotKnown writes a figure, or if it is 0 that what it stands for is not known.
func orNotKnown(value float64, unit, what string) string {
	if value == 0 {
		return what + " not known"
	}
	return si(value, unit)
}

// inDays writes a time in days, a short one in hours or minutes.
func inDays(days float64) string {
	switch hours := 24 * days; {
	case hours < 1:
		return plain(60*hours) + " min"
	case hours < 24:
		return plain(hours) + " h"
	}
	return plain(days) + " days"
}

// percent writes a share.
func percent(share float64) string { return plain(100*share) + " %" }

// span writes two figures of one unit as a band, or one if they print alike.
func span(low, high float64, unit string) string {
	if a, b := plain(low), plain(high); a != b {
		return a + " to " + b + " " + unit
	}
	return plain(high) + " " + unit
}
