package unit

// The scales of the other quantities.

type (
	celsius      struct{}
	newtonMetres struct{}
	seconds      struct{}
	percent      struct{}
	count        struct{}
)

func (celsius) scale() *scale      { return &celsiusScale }
func (newtonMetres) scale() *scale { return &torqueScale }
func (seconds) scale() *scale      { return &secondScale }
func (percent) scale() *scale      { return &percentScale }
func (count) scale() *scale        { return &countScale }

var celsiusScale = scale{
	of: Temperature, what: "a temperature", examples: "105 C, 40 °C, 77 °F", example: "105 C", min: -273.15,
	marks: []mark{
		{print: "C", also: []string{"°C", "°~C", "deg~C", "degrees~C"}, worth: 1},
		{print: "°F", also: []string{"°~F", "deg~F", "degrees~F"}, worth: 5.0 / 9, offset: -160.0 / 9},
	},
}

// 1 lbf in = 0.112985 N m and 1 lbf ft = 1.355818 N m, from the definitions of the
// pound (0.45359237 kg), the inch (25.4 mm) and standard gravity (9.80665 m/s2).
var torqueScale = scale{
	of: Torque, what: "a torque", examples: "11 N m, 100 lbf in, 12 lbf ft", example: "11 N m",
	marks: []mark{
		{print: "N m", also: []string{"n~m"}, worth: 1},
		{print: "lbf in", also: []string{"lb~in", "in~lb", "in~lbs", "in~lbf", "inch~pounds"}, worth: poundForce * metresPerInch},
		{print: "lbf ft", also: []string{"lb~ft", "ft~lb", "ft~lbs", "ft~lbf", "foot~pounds"}, worth: poundForce * 12 * metresPerInch},
	},
}

// poundForce is one pound-force in newtons, by definition.
const poundForce = 0.45359237 * 9.80665

var secondScale = scale{
	of: Time, what: "a time", examples: "5 s, 250 ms, 20 min", example: "5 s",
	marks: []mark{
		{print: "s", also: []string{"sec", "second", "seconds"}, worth: 1},
		{print: "ms", worth: 1e-3, auto: true},
		{print: "min", also: []string{"minute", "minutes"}, worth: 60},
		{print: "h", also: []string{"hour", "hours", "hr", "hrs"}, worth: 3600},
	},
}

var percentScale = scale{
	of: Ratio, what: "a percentage", examples: "92 %, 3.5 %", example: "92 %",
	marks: []mark{
		{print: "%", also: []string{"percent", "pct"}, worth: 0.01},
	},
}

var countScale = scale{
	of: Number, what: "a count", examples: "16 cells, 6 ways, 4 pcs", example: "16 cells", whole: true,
	marks: []mark{
		{print: "pcs", also: []string{"pc", "pieces", "piece"}, worth: 1},
		{print: "cells", also: []string{"cell"}, worth: 1},
		{print: "ways", also: []string{"way"}, worth: 1},
		{print: "poles", also: []string{"pole"}, worth: 1},
		{print: "times", worth: 1},
		{print: "days", also: []string{"day"}, worth: 1},
		{print: "strings", also: []string{"string"}, worth: 1},
		{print: "cycles", also: []string{"cycle"}, worth: 1},
	},
}
