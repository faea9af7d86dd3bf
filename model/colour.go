package model

import (
	"slices"
	"strings"
)

// Colour is the colour of a wire's insulation after IEC 60757: a body and perhaps
// a stripe. It is an observation, never an identification: polarity and function are
// traced, not read off a colour. The zero value means not recorded.
type Colour struct {
	Body, Stripe string
}

// colourCodes holds the letter codes of IEC 60757 with their English words.
var colourCodes = []struct{ code, word string }{
	{"BK", "black"}, {"BN", "brown"}, {"RD", "red"}, {"OG", "orange"}, {"YE", "yellow"},
	{"GN", "green"}, {"BU", "blue"}, {"VT", "violet"}, {"GY", "grey"}, {"WH", "white"},
	{"PK", "pink"}, {"GD", "gold"}, {"TQ", "turquoise"}, {"SR", "silver"}, {"GNYE", "green-and-yellow"},
}

// colourTwins holds words that people use for a colour of the table.
var colourTwins = []struct{ word, code string }{
	{"gray", "GY"}, {"purple", "VT"}, {"green-yellow", "GNYE"}, {"tan", "BN"},
}

// ColourCodes lists the codes of IEC 60757 in the order of the standard's table.
func ColourCodes() []string {
	codes := make([]string, len(colourCodes))
	for i, c := range colourCodes {
		codes[i] = c.code
	}
	return codes
}

// ParseColour reads a code or an English word, with a stripe after a slash: RD, red, RD/WH.
func ParseColour(s string) (Colour, error) {
	body, stripe, striped := strings.Cut(strings.TrimSpace(s), "/")
	c := Colour{Body: colourCode(body)}
	if striped {
		c.Stripe = colourCode(stripe)
	}
	if c.Body == "" || striped && c.Stripe == "" {
		return Colour{}, Expected("an IEC 60757 colour code or a colour word, with a stripe after a slash: RD, black, RD/WH")
	}
	return c, nil
}

func colourCode(s string) string {
	s = strings.TrimSpace(s)
	for _, c := range colourCodes {
		if strings.EqualFold(s, c.code) || strings.EqualFold(s, c.word) {
			return c.code
		}
	}
	for _, t := range colourTwins {
		if strings.EqualFold(s, t.word) {
			return t.code
		}
	}
	return ""
}

// IsZero reports whether no colour is recorded.
func (c Colour) IsZero() bool { return c == Colour{} }

// String is the code, with the stripe after a slash; empty if not recorded.
func (c Colour) String() string {
	if c.Stripe == "" {
		return c.Body
	}
	return c.Body + "/" + c.Stripe
}

// Word is the colour in English words, such as red with white stripe.
func (c Colour) Word() string {
	words := make([]string, 0, 2)
	for _, code := range []string{c.Body, c.Stripe} {
		if i := slices.IndexFunc(colourCodes, func(e struct{ code, word string }) bool { return e.code == code }); i >= 0 {
			words = append(words, colourCodes[i].word)
		}
	}
	if len(words) == 2 {
		return words[0] + " with " + words[1] + " stripe"
	}
	return strings.Join(words, "")
}

// MarshalText writes the code.
func (c Colour) MarshalText() ([]byte, error) { return []byte(c.String()), nil }

// UnmarshalText reads what ParseColour reads.
func (c *Colour) UnmarshalText(text []byte) error {
	parsed, err := ParseColour(string(text))
	if err == nil {
		*c = parsed
	}
	return err
}

// FormHint describes the written form to the job file's schema.
func (Colour) FormHint() (pattern, example string) {
	codes := strings.Join(ColourCodes(), "|")
	return "^(" + codes + ")(/(" + codes + "))?$", "RD/WH"
}
