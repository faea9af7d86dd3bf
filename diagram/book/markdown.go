package book

import (
	"fmt"
	"io"
	"strings"

	"example.com/lugbook/model/clean"
)

// markdown is the book as one Markdown file, the examples drawn in characters.
var markdown = Form{
	Name: "markdown", Ext: ".md", About: "one Markdown file, the examples drawn in characters",
	Write: writeMarkdown,
}

func writeMarkdown(w io.Writer, pages []*Page) error {
	var b strings.Builder
	fmt.Fprintf(&b, "# The rules\n\n%s\n", markdownText(Cautions))
	for _, c := range chapters(pages) {
		fmt.Fprintf(&b, "\n%s:\n\n", capital(string(c.Family)))
		for _, p := range c.Pages {
			fmt.Fprintf(&b, "- [%s](#%s): %s\n", p.Rule.ID, p.Rule.ID, markdownText(p.Rule.Title))
		}
	}
	for _, c := range chapters(pages) {
		fmt.Fprintf(&b, "\n## %s\n", capital(string(c.Family)))
		for _, p := range c.Pages {
			p.markdown(&b)
		}
	}
	_, err := io.WriteString(w, b.String())
	return err
}

func (p *Page) markdown(b *strings.Builder) {
	fmt.Fprintf(b, "\n### %s\n\n%s. Usually %s.\n", p.Rule.ID, markdownText(p.Rule.Title), p.Rule.Severity)
	for _, e := range p.entries() {
		fmt.Fprintf(b, "\n**%s.** %s\n", e.heading, markdownText(e.text))
	}
	for _, half := range []struct {
		heading string
		plate   *Plate
	}{{"Wrong", &p.Wrong}, {"Right", &p.Right}} {
		fmt.Fprintf(b, "\n**%s:** %s\n\n```text\n%s```\n", half.heading, markdownText(half.plate.Caption), half.plate.text(false))
		for _, f := range half.plate.Says {
			fmt.Fprintf(b, "\n> %s: %s\n", f.Severity, markdownText(clean.Line(f.Message)))
		}
	}
}

// markdownText keeps a text from being read as marks.
func markdownText(s string) string {
	return strings.NewReplacer(`\`, `\\`, "*", `\*`, "_", `\_`, "`", "\\`", "<", "&lt;", "[", `\[`, "#", `\#`).Replace(s)
}

func capital(s string) string { return strings.ToUpper(s[:1]) + s[1:] }
