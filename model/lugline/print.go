package lugline

import (
	"strings"
	"unicode"

	"example.com/lugbook/model"
)

// Print writes the line that would enter a wire at the stud of the context, with the
// condition of its joint there. It says what a line can say of the wire and no more.
func Print(w *model.Wire, c Context) string {
	e := EntryOf(w, c.At)
	if t := c.Sheet.Terminal(c.At); t != nil {
		_, joint := split(t.Condition)
		e.Condition = union(e.Condition, joint)
	}
	return e.Line(c)
}

// Line writes the entry in its shortest plain form. Entered in the same context, it
// reads as the same entry.
func (e Entry) Line(c Context) string {
	var words []string
	add := func(mark, text string) {
		if text != "" {
			words = append(words, mark+text)
		}
	}
	add("", string(e.Verdict))
	add("", e.look())
	add("", e.far(c))
	add("!", shortConditions(e.Condition))
	add("@", quote(e.Mark))
	add("*", quote(e.Bundle))
	words = append(words, e.Unknown...)
	if e.Note != "" {
		words = append(words, ";"+clean(e.Note))
	}
	return strings.Join(words, " ")
}

func (e Entry) look() string {
	var hue, size string
	if !e.Colour.IsZero() {
		hue = shortHue(e.Colour) + question(e.ColourJudged)
	}
	if !e.Gauge.IsZero() {
		size = shortSize(e.Gauge) + question(e.GaugeJudged)
	}
	look := hue + size
	if e.NoLook {
		look = strings.TrimSpace(look + " ??")
	}
	return look
}

func question(judged bool) string {
	if judged {
		return "?"
	}
	return ""
}

func (e Entry) far(c Context) string {
	switch {
	case e.None:
		return "%"
	case e.Far.IsZero():
		return ""
	case e.Far.IsLoose():
		return looseSign(e.Far.Loose, e.FarJudged)
	}
	return short(c.studs(), e.Far.At) + question(e.FarJudged)
}

func looseSign(l model.Loose, judged bool) string {
	switch {
	case l == model.Cut:
		return "#" + question(judged)
	case l == model.Capped:
		return "=" + question(judged)
	case judged:
		return "unk?" // ?? has a meaning of its own
	}
	return "?"
}

// quote puts a text in double quotes if it could not stand on a line without.
func quote(text string) string {
	text = clean(text)
	if text != "" && !strings.ContainsFunc(text, func(r rune) bool { return r == ';' || r == '"' || unicode.IsSpace(r) }) {
		return text
	}
	if text == "" {
		return ""
	}
	return `"` + strings.ReplaceAll(text, `"`, `""`) + `"`
}

// clean is a typed text as a line and a job file can keep it: valid, every break a blank,
// without control characters or blanks around it.
func clean(text string) string {
	text = strings.Map(func(r rune) rune {
		switch {
		case unicode.IsSpace(r):
			return ' '
		case unicode.IsControl(r):
			return -1
		}
		return r
	}, strings.ToValidUTF8(text, "\uFFFD"))
	return strings.TrimSpace(text)
}
