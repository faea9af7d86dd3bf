package unit

import (
	"cmp"
	"fmt"
	"regexp"
	"strings"
)

// Stud is the size of a stud, or of the hole of a lug made for that stud: M8,
// 5/16 in, #10.
type Stud struct {
	row uint8 // row of studs, from one
}

// studs are the sizes with their nominal diameters, smallest first. Inch and
// numbered sizes: ASME B1.1. Metric sizes: ISO 261, diameter as named.
var studs = []struct {
	print string
	mm    float64
}{
	{"M3", 3},
	{"#6", 0.138 * 25.4},
	{"M4", 4},
	{"#8", 0.164 * 25.4},
	{"#10", 0.190 * 25.4},
	{"M5", 5},
	{"M6", 6},
	{"1/4 in", 0.250 * 25.4},
	{"5/16 in", 0.3125 * 25.4},
	{"M8", 8},
	{"3/8 in", 0.375 * 25.4},
	{"M10", 10},
	{"7/16 in", 0.4375 * 25.4},
	{"M12", 12},
	{"1/2 in", 0.500 * 25.4},
}

const studPattern = `^\s*(?:[Mm]\s?(3|4|5|6|8|10|12)|(?:#|[Nn]o\.?)\s*(6|8|10)|(1/4|5/16|3/8|7/16|1/2)\s*(?:in|"|”|″|inch|-inch)?)\s*$`

var studForm = regexp.MustCompile(studPattern)

// ParseStud reads a stud size. A bare fraction is one of an inch; a bare whole
// number is an error, as it may be a metric or a numbered size.
func ParseStud(text string) (Stud, error) {
	text = strings.TrimSpace(text)
	m := studForm.FindStringSubmatch(text)
	if m == nil {
		return Stud{}, fmt.Errorf("%q is not a stud size: expected one such as M8, 5/16 in or #10", text)
	}
	name := m[3] + " in"
	switch {
	case m[1] != "":
		name = "M" + m[1]
	case m[2] != "":
		name = "#" + m[2]
	}
	for i, s := range studs {
		if s.print == name {
			return Stud{uint8(i + 1)}, nil
		}
	}
	return Stud{}, fmt.Errorf("%q is not a known stud size: expected one such as M8, 5/16 in or #10", text)
}

// Studs lists the known sizes, smallest first.
func Studs() []Stud {
	all := make([]Stud, len(studs))
	for i := range studs {
		all[i] = Stud{uint8(i + 1)}
	}
	return all
}

// IsZero reports whether the size is not stated.
func (s Stud) IsZero() bool { return s.row == 0 }

// DiameterMM is the nominal diameter of the stud in mm; 0 if not stated.
func (s Stud) DiameterMM() float64 {
	if s.IsZero() {
		return 0
	}
	return studs[s.row-1].mm
}

// IsMetric reports whether it is a metric size.
func (s Stud) IsMetric() bool { return strings.HasPrefix(s.String(), "M") }

// Compare orders sizes by diameter: negative if s is the smaller.
func (s Stud) Compare(other Stud) int { return cmp.Compare(s.row, other.row) }

// String is the size as people write it: M8, 5/16 in, #10; empty if not stated.
func (s Stud) String() string {
	if s.IsZero() {
		return ""
	}
	return studs[s.row-1].print
}

// MarshalText is String as bytes.
func (s Stud) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText parses a size; an empty text is one that is not stated.
func (s *Stud) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*s = Stud{}
		return nil
	}
	parsed, err := ParseStud(string(text))
	if err == nil {
		*s = parsed
	}
	return err
}

// FormHint is an anchored regular expression of the accepted texts, and an example.
func (Stud) FormHint() (pattern, example string) { return studPattern, "5/16 in" }
