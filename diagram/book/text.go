package book

import (
	"fmt"
	"strings"

	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/text"
	"example.com/lugbook/model/clean"
)

// leastText is the narrowest column of text.
const leastText = 30

// Text is the page as plain text, its paragraphs at most width columns wide; the drawings take
// what they take, at most 78. ASCII keeps to printable ASCII in the drawings.
func (p *Page) Text(width int, ascii bool) string {
	width = max(leastText, width)
	var b strings.Builder
	fmt.Fprintf(&b, "%s\n%s\n\n", p.Rule.ID, wrap(p.Rule.Title, width))
	fmt.Fprintf(&b, "%s, usually %s\n", p.Rule.Family, p.Rule.Severity)
	for _, e := range p.entries() {
		fmt.Fprintf(&b, "\n%s\n%s\n", strings.ToUpper(e.heading), wrap(e.text, width))
	}
	for _, half := range []struct {
		heading string
		plate   *Plate
	}{{"WRONG", &p.Wrong}, {"RIGHT", &p.Right}} {
		fmt.Fprintf(&b, "\n%s\n", wrap(half.heading+": "+half.plate.Caption, width))
		b.WriteString(half.plate.text(ascii))
		for _, f := range half.plate.Says {
			b.WriteString(wrap(fmt.Sprintf("%s: %s", f.Severity, clean.Line(f.Message)), width) + "\n")
		}
	}
	return b.String()
}

// text is the drawing of a plate in characters.
func (p *Plate) text(ascii bool) string {
	return text.Render(&p.Drawn, text.Options{ASCII: ascii, Bare: true}).String()
}

// wrap breaks a text into lines at its spaces.
func wrap(s string, width int) string { return strings.Join(scene.Fold(s, width), "\n") }
