package unit

import (
	"cmp"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// Gauge is the size of a conductor: an AWG size from 22 to 4/0, or an area in
// square millimetres.
type Gauge struct {
	awg        int8  // 23 minus the AWG number, 1/0 counting as 0, 4/0 as -3; zero if not AWG
	millionths int64 // area in mm2 if not AWG
}

// awgNumbers are the sizes that are made, thinnest first; 0 to -3 are 1/0 to 4/0.
var awgNumbers = []int{22, 20, 18, 16, 14, 12, 10, 8, 6, 4, 3, 2, 1, 0, -1, -2, -3}

const (
	awgBase  = 23
	largest  = 1000 // mm2, greater than any conductor on a cart
	gaugeSay = "a gauge such as 6 AWG, 2/0 AWG or 16 mm2"
)

// The sizes from 22 to 4/0 with their usual spellings, and areas.
const (
	awgPattern   = `(?:AWG\s*|#\s*|[Nn]o\.?\s*)?([0-9]{1,2}|0{3,4}|[1-4]/0)\s*(?:AWG|awg|ga\.?|gauge|Ga\.?)?`
	areaPattern  = `([0-9]{1,4}(?:\.[0-9]{1,6})?|\.[0-9]{1,6})\s*(?:mm2|mm²|mm\^2|sq\.?\s?mm|mm\s?sq\.?)`
	gaugePattern = `^\s*(?:` + awgPattern + `|` + areaPattern + `)\s*$`
)

var gaugeForm = regexp.MustCompile(gaugePattern)

// ParseGauge reads a conductor size. A bare number is taken as AWG if it is a size
// that is made: 6, 2/0, 00.
func ParseGauge(text string) (Gauge, error) {
	text = strings.TrimSpace(text)
	m := gaugeForm.FindStringSubmatch(text)
	switch {
	case m == nil:
		return Gauge{}, fmt.Errorf("%q is not a conductor size: expected %s", text, gaugeSay)
	case m[1] != "":
		n, ok := awgNumber(m[1])
		if !ok {
			return Gauge{}, fmt.Errorf("%q is not an AWG size from 22 to 4/0: expected %s", text, gaugeSay)
		}
		return AWG(n), nil
	}
	n, ok := parseDecimal(m[2])
	if !ok || n <= 0 || n > largest*1e6 {
		return Gauge{}, fmt.Errorf("%q is out of range: expected an area above 0 and up to %d mm2", text, largest)
	}
	return Gauge{millionths: n}, nil
}

// awgNumber reads the number of an AWG size that is made.
func awgNumber(text string) (int, bool) {
	if zeros, ok := strings.CutSuffix(text, "/0"); ok {
		n, err := strconv.Atoi(zeros)
		return 1 - n, err == nil
	}
	if strings.Trim(text, "0") == "" {
		return 1 - len(text), true
	}
	n, err := strconv.Atoi(text)
	return n, err == nil && text[0] != '0' && slices.Contains(awgNumbers, n)
}

// statesGaugeUnit reports whether a gauge says that it is AWG or an area.
func statesGaugeUnit(text string) bool { return strings.ContainsAny(text, "GgMm") }

// AWG is the AWG size of a number, where 0, -1, -2 and -3 are 1/0 to 4/0; not stated
// if no such size is made.
func AWG(number int) Gauge {
	if !slices.Contains(awgNumbers, number) {
		return Gauge{}
	}
	return Gauge{awg: int8(awgBase - number)}
}

// AWGSizes lists the AWG sizes from 22 to 4/0, thinnest first.
func AWGSizes() []Gauge {
	sizes := make([]Gauge, len(awgNumbers))
	for i, n := range awgNumbers {
		sizes[i] = AWG(n)
	}
	return sizes
}

// MM2 is a conductor of an area in square millimetres; not stated if the area is not
// above 0 and at most 1000.
func MM2(area float64) Gauge {
	if !(area > 0 && area <= largest) {
		return Gauge{}
	}
	return Gauge{millionths: int64(math.Round(area * 1e6))}
}

// IsZero reports whether the size is not stated.
func (g Gauge) IsZero() bool { return g == Gauge{} }

// IsAWG reports whether it is an AWG size.
func (g Gauge) IsAWG() bool { return g.awg != 0 }

// AWG is the number of an AWG size, where 0, -1, -2 and -3 are 1/0 to 4/0.
func (g Gauge) AWG() (number int, ok bool) {
	if !g.IsAWG() {
		return 0, false
	}
	return awgBase - int(g.awg), true
}

// DiameterMM is the diameter in mm of the solid round wire of that area. For AWG it
// is 0.127 x 92^((36-n)/39), ASTM B258. It is 0 if not stated.
func (g Gauge) DiameterMM() float64 {
	if n, ok := g.AWG(); ok {
		return 0.127 * math.Pow(92, float64(36-n)/39)
	}
	return 2 * math.Sqrt(g.AreaMM2()/math.Pi)
}

// AreaMM2 is the area of the conductor in square millimetres; 0 if not stated.
func (g Gauge) AreaMM2() float64 {
	if g.IsAWG() {
		d := g.DiameterMM()
		return math.Pi / 4 * d * d
	}
	return float64(g.millionths) / 1e6
}

// Compare orders sizes by area: negative if g is the thinner.
func (g Gauge) Compare(other Gauge) int { return cmp.Compare(g.AreaMM2(), other.AreaMM2()) }

// String is the size as people write it: 6 AWG, 2/0 AWG, 16 mm2; empty if not stated.
func (g Gauge) String() string {
	n, ok := g.AWG()
	switch {
	case ok && n > 0:
		return strconv.Itoa(n) + " AWG"
	case ok:
		return strconv.Itoa(1-n) + "/0 AWG"
	case g.IsZero():
		return ""
	}
	return printDecimal(g.millionths) + " mm2"
}

// MarshalText is String as bytes.
func (g Gauge) MarshalText() ([]byte, error) { return []byte(g.String()), nil }

// UnmarshalText parses a size; an empty text is one that is not stated.
func (g *Gauge) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*g = Gauge{}
		return nil
	}
	parsed, err := ParseGauge(string(text))
	if err == nil {
		*g = parsed
	}
	return err
}

// FormHint is an anchored regular expression of the accepted texts, and an example.
func (Gauge) FormHint() (pattern, example string) { return gaugePattern, "6 AWG" }

// Any is the size as a quantity of dimension area.
func (g Gauge) Any() Any {
	if g.IsZero() {
		return Any{}
	}
	return Any{of: Area, gauge: g}
}
