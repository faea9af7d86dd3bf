package live

import (
	"math"
	"strconv"
)

// Amperes writes a current to the ampere from 100 A, and to two figures below, small ones
// in milliamperes: 187 A, 3.1 A, 20 mA.
func Amperes(amps float64) string {
	switch size := math.Abs(amps); {
	case size < 0.000995:
		return "0 A"
	case size < 0.995:
		return figures(amps*1000, 2) + " mA"
	default:
		return figures(amps, 2) + " A"
	}
}

// Volts writes a voltage as a meter shows it: 51.2 V, 0.21 V, 13 mV.
func Volts(volts float64) string {
	switch size := math.Abs(volts); {
	case size < 0.0005:
		return "0 V"
	case size < 0.0995:
		return figures(volts*1000, 2) + " mV"
	default:
		return figures(volts, 3) + " V"
	}
}

// figures writes a number to so many figures, to all those before the point, without
// zeros at the end of its decimals.
func figures(x float64, n int) string {
	decimals := max(0, n-1-int(math.Floor(math.Log10(math.Abs(x)))))
	scale := math.Pow10(decimals)
	return strconv.FormatFloat(math.Round(x*scale)/scale, 'f', -1, 64)
}
