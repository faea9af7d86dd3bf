package unit

import (
	"regexp"
	"strconv"
	"strings"
)

// metresPerInch is the inch, 25.4 mm by definition.
const metresPerInch = 0.0254

// Length is a length such as 24 in, 0.6 m, 2 ft or 2 ft 6 in. It is never negative.
type Length struct{ quantity[metres] }

// ParseLength reads a length. Fractions of an inch and feet with inches are
// understood: 24 1/2 in prints as 24.5 in, 2'6" as 2 ft 6 in.
func ParseLength(text string) (Length, error) {
	q, err := parse[metres](text)
	return Length{q}, err
}

// LengthFromMetres is a length in metres, or in millimetres if it is short. A
// value that is negative or not finite gives a length that is not stated.
func LengthFromMetres(m float64) Length { return Length{fromSI[metres](m)} }

// Inches is a length in inches. A value that is negative or not finite gives a
// length that is not stated.
func Inches(in float64) Length {
	n, ok := lengthScale.inUnit(in, markInch)
	if !ok {
		return Length{}
	}
	return Length{quantity[metres]{n, markInch}}
}

// Metres is the length in metres; 0 if not stated.
func (l Length) Metres() float64 { return l.SI() }

type metres struct{}

func (metres) scale() *scale { return &lengthScale }

// Numbers of the units that compound forms are read into.
const (
	markInch     uint8 = 4
	markFeetInch uint8 = 6
)

var lengthScale = scale{
	of: Distance, what: "a length", examples: "24 in, 0.6 m, 2 ft", example: "24 in",
	marks: []mark{
		{print: "m", also: []string{"metre", "metres", "meter", "meters"}, worth: 1},
		{print: "cm", worth: 1e-2},
		{print: "mm", worth: 1e-3, auto: true},
		{print: "in", also: []string{`"`, "”", "″", "inch", "inches"}, worth: metresPerInch},
		{print: "ft", also: []string{"'", "’", "′", "foot", "feet"}, worth: 12 * metresPerInch},
		{worth: metresPerInch, show: printFeetInches},
	},
	compound: parseInches,
	pattern:  feetInchesPattern + "|" + fractionPattern,
}

const (
	feetPattern       = `(?:ft|'|’|′|foot|feet)`
	inchPattern       = `(?:in|"|”|″|inch|inches)`
	feetInchesPattern = `([0-9]{1,7})\s*` + feetPattern + `\s*([0-9]{1,2}(?:\.[0-9]{1,6})?)\s*` + inchPattern
	fractionPattern   = `(?:([0-9]{1,7})[ -])?([0-9]{1,2})/(2|4|8|16|32|64)\s*` + inchPattern
)

var (
	feetInches     = regexp.MustCompile("^" + feetInchesPattern + "$")
	fractionInches = regexp.MustCompile("^" + fractionPattern + "$")
)

// parseInches reads feet with inches below twelve, and binary fractions of an
// inch, which six decimals hold exactly.
func parseInches(text string) (int64, uint8, bool) {
	if m := feetInches.FindStringSubmatch(text); m != nil {
		feet, okFeet := parseDecimal(m[1])
		inches, ok := parseDecimal(m[2])
		return feet*12 + inches, markFeetInch, okFeet && ok && inches < 12e6
	}
	m := fractionInches.FindStringSubmatch(text)
	if m == nil {
		return 0, 0, false
	}
	whole, _ := parseDecimal(m[1])
	over, okOver := parseDecimal(m[2])
	under, err := strconv.ParseInt(m[3], 10, 64)
	ok := okOver && err == nil && over < under*1e6
	if !ok {
		return 0, 0, false
	}
	return whole + over/under, markInch, true
}

// printFeetInches writes millionths of an inch as feet and inches.
func printFeetInches(millionths int64) string {
	feet, inches := millionths/12e6, millionths%12e6
	return strings.Join([]string{strconv.FormatInt(feet, 10), "ft", printDecimal(inches), "in"}, " ")
}
