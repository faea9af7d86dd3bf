package model

import (
	"slices"
	"strings"
)

// closed is a type whose values come from a list of words.
type closed interface {
	~string
	Names() []string
}

// words checks that values are words of their list; nothing recorded is right too.
func words[T closed](c *checker, path []string, values ...T) {
	for _, v := range values {
		if names := v.Names(); v != "" && !slices.Contains(names, string(v)) {
			c.report(Fault{Path: path, Text: string(v), Message: "not a known word", Expected: "one of " + strings.Join(names, ", "), Known: names})
		}
	}
}

func (c *checker) partWords(path []string, p *Part) {
	words(c, join(path, "secured"), p.Secured)
	words(c, join(path, "condition"), p.Condition...)
	words(c, join(path, "confidence"), p.Confidence)
}

func (c *checker) wireWords(path []string, w *Wire) {
	words(c, join(path, "serves"), w.Serves)
	words(c, join(path, "judged"), w.Judged...)
	words(c, join(path, "material"), w.Material)
	words(c, join(path, "strain-relief"), w.Relieved)
	words(c, join(path, "guarded"), w.Guarded)
	words(c, join(path, "condition"), w.Condition...)
	words(c, join(path, "confidence"), w.Confidence)
	if text := w.Colour.String(); text != "" {
		if parsed, err := ParseColour(text); err != nil || parsed != w.Colour {
			c.report(Fault{Path: join(path, "colour"), Text: text, Message: "no such colour", Expected: "colour codes of IEC 60757, such as RD or RD/WH", Known: ColourCodes()})
		}
	}
}

func (c *checker) terminalWords(path []string, t *Terminal) {
	words(c, join(path, "cover"), t.Cover)
	words(c, join(path, "washer"), t.Washer)
	words(c, join(path, "material"), t.Material)
	words(c, join(path, "condition"), t.Condition...)
	words(c, join(path, "confidence"), t.Confidence)
}
