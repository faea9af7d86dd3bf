package unit

import (
	"fmt"
	"regexp"
	"strings"
)

// dimension is implemented by one empty type per scale.
type dimension interface{ scale() *scale }

// quantity is a number with a unit of the scale of D.
type quantity[D dimension] struct {
	millionths int64
	mark       uint8 // number of the unit on the scale, from one; zero if not stated
}

func scaleOf[D dimension]() *scale {
	var d D
	return d.scale()
}

// IsZero reports whether the quantity is not stated.
func (q quantity[D]) IsZero() bool { return q.mark == 0 }

// String is the quantity as people write it; empty if not stated.
func (q quantity[D]) String() string { return scaleOf[D]().print(q.millionths, q.mark) }

// MarshalText is String as bytes.
func (q quantity[D]) MarshalText() ([]byte, error) { return []byte(q.String()), nil }

// UnmarshalText parses a quantity; an empty text is one that is not stated.
func (q *quantity[D]) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*q = quantity[D]{}
		return nil
	}
	parsed, err := parse[D](string(text))
	if err == nil {
		*q = parsed
	}
	return err
}

// FormHint is an anchored regular expression of the accepted texts, and an example.
func (q quantity[D]) FormHint() (pattern, example string) {
	s := scaleOf[D]()
	return s.regexp(), s.example
}

// Any is the quantity with its dimension known at run time only.
func (q quantity[D]) Any() Any {
	if q.IsZero() {
		return Any{}
	}
	return Any{of: scaleOf[D]().of, millionths: q.millionths, mark: q.mark}
}

// SI is the value in volts, amperes, ohms, ampere-hours, watts, farads, degrees
// Celsius, newton metres, seconds, metres, or as a plain number; 0 if not stated.
func (q quantity[D]) SI() float64 {
	if q.IsZero() {
		return 0
	}
	return scaleOf[D]().si(q.millionths, q.mark)
}

// fromSI makes a quantity of a value in SI. A value that is not finite or outside
// the limits gives one that is not stated.
func fromSI[D dimension](si float64) quantity[D] {
	n, mark, _ := scaleOf[D]().nearest(si)
	return quantity[D]{n, mark}
}

// parse reads a quantity of the scale of D.
func parse[D dimension](text string) (quantity[D], error) {
	n, mark, err := scaleOf[D]().parse(text)
	return quantity[D]{n, mark}, err
}

// parse reads a number and its unit.
func (s *scale) parse(text string) (int64, uint8, error) {
	text = strings.TrimSpace(text)
	n, number, ok := s.compounded(text)
	if !ok {
		digits, spelling := splitNumber(text)
		n, ok = parseDecimal(digits)
		switch {
		case ok && spelling == "":
			return 0, 0, fmt.Errorf("%q has no unit: expected %s", text, s.expected())
		case !ok && strings.Trim(digits, "-") != "":
			return 0, 0, fmt.Errorf("%q has a number that cannot be read: expected %s, with at most %d decimals", text, s.expected(), places)
		case ok:
			number, ok = s.find(spelling)
		}
	}
	if !ok {
		return 0, 0, fmt.Errorf("%q is not %s: expected %s", text, s.what, s.expected())
	}
	if si := s.si(n, number); !s.fits(si) {
		return 0, 0, fmt.Errorf("%q is out of range: expected %s", text, s.expected())
	}
	if s.whole && n%1e6 != 0 {
		return 0, 0, fmt.Errorf("%q is not a whole number: expected %s", text, s.expected())
	}
	return n, number, nil
}

// compounded reads the forms that are more than a number and a unit.
func (s *scale) compounded(text string) (int64, uint8, bool) {
	if s.compound == nil {
		return 0, 0, false
	}
	return s.compound(text)
}

// expected says what a text should have been.
func (s *scale) expected() string { return s.what + " such as " + s.examples }

// print writes a number in the unit of that number on the scale.
func (s *scale) print(millionths int64, number uint8) string {
	if number == 0 {
		return ""
	}
	m := s.marks[number-1]
	if m.show != nil {
		return m.show(millionths)
	}
	return printDecimal(millionths) + " " + m.print
}

// regexp is an anchored pattern of the texts that parse accepts, limits aside. It
// stays within what the regular expressions of JSON schemas know.
func (s *scale) regexp() string {
	var spellings []string
	for _, m := range s.marks {
		if m.show == nil {
			spellings = append(spellings, spelled(m.print))
		}
		for _, a := range m.also {
			spellings = append(spellings, spelled(a))
		}
	}
	sign, fraction := "", `(\.[0-9]{1,6})?`
	if s.min < 0 {
		sign = "-?"
	}
	if s.whole {
		fraction = `(\.0{1,6})?`
	}
	form := sign + `([0-9]+` + fraction + `|\.[0-9]{1,6})\s*(` + strings.Join(spellings, "|") + ")"
	if s.pattern != "" {
		form = "(" + form + "|" + s.pattern + ")"
	}
	return `^\s*` + form + `\s*$`
}

// spelled is the pattern of one spelling of a unit.
func spelled(spelling string) string {
	pattern := regexp.QuoteMeta(spelling)
	for _, separator := range []string{" ", "~"} {
		pattern = strings.ReplaceAll(pattern, separator, `[ .·-]*`)
	}
	return pattern
}
