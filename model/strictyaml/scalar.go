package strictyaml

import (
	"encoding"
	"errors"
	"fmt"
	"math"
	"reflect"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"
)

var (
	wholeForm   = regexp.MustCompile(`^-?(0|[1-9][0-9]*)$`)
	decimalForm = regexp.MustCompile(`^-?(0|[1-9][0-9]*)(\.[0-9]+)?$`)
)

// refusal is why a scalar cannot be a value of its type.
type refusal struct {
	message, expected string
	known             []string // words to suggest from
}

// readScalar sets v, of a scalar class, from a scalar of a file; nil if that went well.
func readScalar(v reflect.Value, t *tree) *refusal {
	c := classOf(v.Type())
	if t.plain && isNull(t.text) {
		message := "empty value"
		if t.text != "" {
			message = "not a value but YAML's word for none"
		}
		return &refusal{message: message, expected: scalarNoun(v.Type()) + ", or the field left out"}
	}
	switch c {
	case textClass:
		return readText(v, t.text)
	case stringClass:
		words := wordsOf(v.Type())
		if words != nil && !slices.Contains(words, t.text) {
			return &refusal{message: "unknown word", expected: oneOf(words), known: words}
		}
		v.SetString(t.text)
		return nil
	}
	if !t.plain {
		return &refusal{message: "text in quotes", expected: scalarNoun(v.Type()) + " without quotes"}
	}
	switch c {
	case boolClass:
		return readBool(v, t.text)
	case intClass:
		return readInt(v, t.text)
	}
	return readFloat(v, t.text)
}

func readText(v reflect.Value, text string) *refusal {
	words := wordsOf(v.Type())
	if err := v.Addr().Interface().(encoding.TextUnmarshaler).UnmarshalText([]byte(text)); err != nil {
		return &refusal{message: "not usable", expected: expectation(err), known: words}
	}
	return nil
}

func readBool(v reflect.Value, text string) *refusal {
	if text != "true" && text != "false" {
		return &refusal{message: "not true or false", expected: "true or false"}
	}
	v.SetBool(text == "true")
	return nil
}

func readInt(v reflect.Value, text string) *refusal {
	if !wholeForm.MatchString(text) {
		return &refusal{message: "not a whole number", expected: "decimal digits only, such as 12" + numberHint(text)}
	}
	n, err := strconv.ParseInt(text, 10, v.Type().Bits())
	if err != nil {
		return &refusal{message: "a number too large", expected: "a smaller number"}
	}
	v.SetInt(n)
	return nil
}

func readFloat(v reflect.Value, text string) *refusal {
	if !decimalForm.MatchString(text) {
		return &refusal{message: "not a decimal number", expected: "digits and at most one point, such as 12.5" + numberHint(text)}
	}
	f, err := strconv.ParseFloat(text, 64)
	if err != nil {
		return &refusal{message: "a number too large", expected: "a smaller number"}
	}
	v.SetFloat(f)
	return nil
}

// numberHint says what a number that other YAML readers would take is taken for.
func numberHint(text string) string {
	digits := strings.ToLower(strings.TrimLeft(text, "+-"))
	switch {
	case strings.HasPrefix(digits, "0x"), strings.HasPrefix(digits, "0o"), strings.HasPrefix(digits, "0b"):
		return "; no other base than ten"
	case strings.Contains(digits, "_"):
		return "; no underscores"
	case len(digits) > 1 && digits[0] == '0' && digits[1] >= '0' && digits[1] <= '9':
		return "; no leading zero"
	case strings.Contains(digits, "inf"), strings.Contains(digits, "nan"):
		return "; a finite number"
	case len(digits) > 1 && digits[0] >= '0' && digits[0] <= '9' && strings.Contains(digits, "e"):
		return "; no exponent"
	}
	return ""
}

// scalarNoun names what a scalar type expects.
func scalarNoun(t reflect.Type) string {
	if words := wordsOf(t); words != nil {
		return oneOf(words)
	}
	if _, example := formOf(t); example != "" {
		return "a value such as " + example
	}
	switch classOf(t) {
	case boolClass:
		return "true or false"
	case intClass:
		return "a whole number"
	case floatClass:
		return "a number"
	}
	return "a text"
}

func oneOf(words []string) string {
	if len(words) == 1 {
		return words[0]
	}
	return "one of " + strings.Join(words, ", ")
}

// writeScalar is the written form of v, of a scalar class, and whether it needs no
// quotes whatever it looks like.
func writeScalar(v reflect.Value) (text string, plain bool, err error) {
	switch classOf(v.Type()) {
	case textClass:
		text, err = marshalText(v)
	case stringClass:
		text = v.String()
	case boolClass:
		return strconv.FormatBool(v.Bool()), true, nil
	case intClass:
		return strconv.FormatInt(v.Int(), 10), true, nil
	default:
		f := v.Float()
		if math.IsInf(f, 0) || math.IsNaN(f) {
			return "", false, fmt.Errorf("%v is no number that a file can hold", f)
		}
		return strconv.FormatFloat(f, 'f', -1, 64), true, nil
	}
	if err == nil && !utf8.ValidString(text) {
		err = errors.New("the text is not UTF-8")
	}
	if most := (Limits{}).orDefaults().Text; err == nil && len(text) > most {
		err = fmt.Errorf("the text has %d bytes; at most %d can be read back", len(text), most)
	}
	return text, false, err
}

func marshalText(v reflect.Value) (string, error) {
	m, ok := v.Interface().(encoding.TextMarshaler)
	if !ok {
		p := reflect.New(v.Type())
		p.Elem().Set(v)
		m = p.Interface().(encoding.TextMarshaler)
	}
	text, err := m.MarshalText()
	return string(text), err
}
