package lugline

import (
	"strings"

	"example.com/lugbook/model"
)

// Text is the reading in words, to be shown while the line is typed. It is empty for
// an empty line.
func (r Reading) Text() string {
	said := r.said()
	if r.OrStud != (model.TerminalRef{}) && r.Far.IsZero() && len(r.Among) == 0 {
		said = append(said, "or "+Name(r.OrStud)+": type >")
	}
	return strings.Join(said, ", ")
}

func (r Reading) said() []string {
	switch {
	case r.IsBlank():
		return nil
	case r.None:
		return append([]string{Name(r.At) + ": nothing on this stud"}, r.remarks()...)
	case !r.IsWire():
		return append([]string{Name(r.At)}, r.remarks()...)
	case r.inVain():
		return append([]string{"no such wire is expected at " + Name(r.At)}, r.wireWords()...)
	case r.Verdict == NotHere:
		return append([]string{"not here: " + r.wireWords()[0]}, r.wireWords()[1:]...)
	case r.Verdict == Seen:
		return append([]string{"seen: " + r.wireWords()[0]}, r.wireWords()[1:]...)
	}
	return r.wireWords()
}

// wireWords describe the wire: look, way, condition, remarks.
func (r Reading) wireWords() []string {
	var words []string
	if !r.Colour.IsZero() {
		words = append(words, r.Colour.Word()+perhaps(r.ColourJudged))
	}
	if !r.Gauge.IsZero() {
		words = append(words, r.Gauge.String()+perhaps(r.GaugeJudged))
	}
	if r.NoLook {
		words = append(words, r.untold())
	}
	words = append(words, r.way())
	if len(r.Condition) == 0 {
		words = append(words, "sound")
	}
	return append(words, r.remarks()...)
}

// untold says what of the look cannot be told.
func (r Reading) untold() string {
	switch {
	case !r.Colour.IsZero():
		return "size not to be told"
	case !r.Gauge.IsZero():
		return "colour not to be told"
	}
	return "colour and size not to be told"
}

func perhaps(judged bool) string {
	if judged {
		return " (judged)"
	}
	return ""
}

// way is where the wire goes.
func (r Reading) way() string {
	from := Name(r.At)
	switch {
	case len(r.Among) > 0:
		names := make([]string, len(r.Among))
		for i, at := range r.Among {
			names[i] = Name(at)
		}
		return from + " to one of " + strings.Join(names, " or ")
	case r.Far.IsZero():
		return "from " + from + " and not followed"
	case r.Far.Loose == model.Untraced:
		return from + " to out of sight" + perhaps(r.FarJudged)
	case r.Far.Loose == model.Cut:
		return from + " to a bare cut end" + perhaps(r.FarJudged)
	case r.Far.Loose == model.Capped:
		return from + " to a capped end" + perhaps(r.FarJudged)
	}
	return from + " to " + Name(r.Far.At) + perhaps(r.FarJudged)
}

// remarks are the conditions, mark, bundle, note and what could not be read.
func (r Reading) remarks() []string {
	var words []string
	for _, is := range r.Condition {
		words = append(words, strings.ReplaceAll(string(is), "-", " "))
	}
	if r.Mark != "" {
		words = append(words, "marked "+r.Mark)
	}
	if r.Bundle != "" {
		words = append(words, "in "+r.Bundle)
	}
	if r.Note != "" {
		words = append(words, `note "`+r.Note+`"`)
	}
	if len(r.Unknown) > 0 && len(r.Among) == 0 {
		words = append(words, "needs a look: "+clean(strings.Join(r.Unknown, " ")))
	}
	return words
}
