package opening

import (
	"math"
	"strconv"
)

// Span is a time in seconds in words: 20 ms, 10 s, 4 min, 2 h, or for ever.
func Span(seconds float64) string {
	switch {
	case math.IsInf(seconds, 1):
		return "for ever"
	case seconds >= 2*hour || seconds == hour:
		return figures(seconds/hour) + " h"
	case seconds >= 2*minute:
		return figures(seconds/minute) + " min"
	case seconds >= 0.1 || seconds == 0:
		return figures(seconds) + " s"
	}
	return figures(seconds*1000) + " ms"
}

// figures is a number to four figures without an exponent.
func figures(x float64) string {
	return strconv.FormatFloat(rounded(x), 'f', -1, 64)
}

// rounded is a number to four figures.
func rounded(x float64) float64 {
	r, err := strconv.ParseFloat(strconv.FormatFloat(x, 'g', 4, 64), 64)
	if err != nil {
		return x
	}
	return r
}
