package size

import (
	"math"
	"strconv"

	"example.com/lugbook/model/heat"
)

// amps writes a current as people read it: three figures, two below 10 A.
func amps(a float64) string { return figure(a) + " A" }

// figure writes a number to the third figure at most, without zeros at the end.
func figure(x float64) string {
	decimals := 0
	for limit := 100.0; decimals < 3 && math.Abs(x) < limit; limit /= 10 {
		decimals++
	}
	scale := math.Pow(10, float64(decimals))
	return strconv.FormatFloat(math.Round(x*scale)/scale, 'f', -1, 64)
}

// percent writes a share in per cent.
func percent(share float64) string { return figure(share*100) + " %" }

// duration writes a time in seconds.
func duration(t float64) string { return figure(t) + " s" }

// rounded is a duty with its currents to a tenth of an ampere, to be read.
func rounded(d heat.Duty) heat.Duty {
	list := make(heat.Duty, len(d))
	for i, s := range d {
		list[i] = heat.Stage{Amps: math.Round(s.Amps*10) / 10, Seconds: s.Seconds}
	}
	return list
}
