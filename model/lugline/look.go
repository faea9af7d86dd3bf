package lugline

import (
	"slices"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/unit"
)

// hues are the letters for insulation colours with their codes of IEC 60757. Tan stands
// last, so that brown prints as n.
var hues = []struct{ letter, code string }{
	{"r", "RD"}, {"k", "BK"}, {"b", "BU"}, {"g", "GN"}, {"y", "YE"}, {"w", "WH"},
	{"o", "OG"}, {"n", "BN"}, {"v", "VT"}, {"p", "PK"}, {"e", "GY"}, {tanLetter, "BN"},
}

// Tan is a common insulation colour without a code of its own in IEC 60757.
const (
	tanLetter = "t"
	tanWord   = "tan"
)

// sizes are the bare AWG sizes of the grammar with their written form. Other sizes are
// written with their unit.
var sizes = []struct{ short, awg string }{
	{"22", "22"}, {"20", "20"}, {"18", "18"}, {"16", "16"}, {"14", "14"}, {"12", "12"}, {"10", "10"},
	{"8", "8"}, {"6", "6"}, {"4", "4"}, {"2", "2"}, {"1", "1"},
	{"1/0", "1/0"}, {"2/0", "2/0"}, {"3/0", "3/0"}, {"4/0", "4/0"},
	{"0", "1/0"}, {"00", "2/0"}, {"000", "3/0"}, {"0000", "4/0"},
}

// look is what a wire looks like from where one stands.
type look struct {
	colour                    model.Colour
	gauge                     unit.Gauge
	colourJudged, gaugeJudged bool
	tan                       bool
	sizeAt                    int // byte in the token at which the size starts
}

// parseLook reads a colour, a gauge or both glued together.
func parseLook(token string) (look, bool) {
	var l look
	rest := strings.ToLower(token)
	if hue := rest[:hueLength(rest)]; hue != "" {
		if !l.readHue(hue) {
			return look{}, false
		}
		rest, l.colourJudged = strings.CutPrefix(rest[len(hue):], "?")
	}
	l.sizeAt = len(token) - len(rest)
	if rest == "" {
		return l, !l.colour.IsZero()
	}
	size, judged := strings.CutSuffix(rest, "?")
	gauge, ok := parseSize(size)
	l.gauge, l.gaugeJudged = gauge, judged
	return l, ok
}

// hueLength is the length of the run of letters, with a stripe after a slash, that a
// token starts with.
func hueLength(s string) int {
	word := func(s string) int {
		n := strings.IndexFunc(s, func(r rune) bool { return r != '-' && (r < 'a' || r > 'z') })
		if n < 0 {
			return len(s)
		}
		return n
	}
	n := word(s)
	if n > 0 && n < len(s) && s[n] == '/' {
		return n + 1 + word(s[n+1:])
	}
	return n
}

func (l *look) readHue(s string) bool {
	body, stripe, striped := strings.Cut(s, "/")
	var bodyTan, stripeTan bool
	l.colour.Body, bodyTan = hueCode(body)
	if striped {
		l.colour.Stripe, stripeTan = hueCode(stripe)
	}
	l.tan = bodyTan || stripeTan
	return l.colour.Body != "" && (!striped || l.colour.Stripe != "")
}

// hueCode finds the code of a letter, a code or a colour word; empty if it is none.
func hueCode(s string) (code string, tan bool) {
	for _, h := range hues {
		if s == h.letter {
			return h.code, s == tanLetter
		}
	}
	c, err := model.ParseColour(s)
	if err != nil {
		return "", false
	}
	return c.Body, s == tanWord
}

func parseSize(s string) (unit.Gauge, bool) {
	if i := slices.IndexFunc(sizes, func(z struct{ short, awg string }) bool { return z.short == s }); i >= 0 {
		return gauge(sizes[i].awg + " AWG")
	}
	if n, ok := strings.CutSuffix(s, "awg"); ok {
		return gauge(n + " AWG")
	}
	if n, ok := strings.CutSuffix(s, "m"); ok {
		return gauge(n + " mm2")
	}
	return unit.Gauge{}, false
}

func gauge(text string) (unit.Gauge, bool) {
	g, err := unit.ParseGauge(text)
	return g, err == nil && !g.IsZero()
}

// shortHue writes a colour with the letters of the line.
func shortHue(c model.Colour) string {
	if c.Stripe == "" {
		return hueLetter(c.Body)
	}
	return hueLetter(c.Body) + "/" + hueLetter(c.Stripe)
}

func hueLetter(code string) string {
	for _, h := range hues {
		if h.code == code {
			return h.letter
		}
	}
	return strings.ToLower(code)
}

// shortSize writes a gauge as the line does.
func shortSize(g unit.Gauge) string {
	text := g.String()
	if n, ok := strings.CutSuffix(text, " mm2"); ok {
		return n + "m"
	}
	n, _ := strings.CutSuffix(text, " AWG")
	if slices.ContainsFunc(sizes, func(z struct{ short, awg string }) bool { return z.short == n }) {
		return n
	}
	return n + "awg"
}
