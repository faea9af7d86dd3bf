package strictyaml

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"example.com/lugbook/model/clean"
)

// Problem is one thing that is wrong with a file. All its texts are safe to print.
type Problem struct {
	File     string
	Line     int    // from 1
	Column   int    // in characters, from 1
	Text     string // the offending text, if there is one
	Message  string // what is wrong
	Expected string // what should stand there, if that helps
	Nearest  string // a known name that looks like Text, if there is one
}

// Error is the problem in one line.
func (p Problem) Error() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s:%d:%d: %s", p.File, p.Line, p.Column, p.Message)
	if p.Text != "" {
		fmt.Fprintf(&b, ": \"%s\"", p.Text)
	}
	if p.Expected != "" {
		b.WriteString("; expected " + p.Expected)
	}
	if p.Nearest != "" {
		fmt.Fprintf(&b, "; did you mean \"%s\"?", p.Nearest)
	}
	return b.String()
}

// Problems are all the problems of a file, in the order of the file.
type Problems []Problem

// Error lists the problems, one a line.
func (p Problems) Error() string {
	lines := make([]string, len(p))
	for i := range p {
		lines[i] = p[i].Error()
	}
	return strings.Join(lines, "\n")
}

// Err is the problems as an error, nil if there are none.
func (p Problems) Err() error {
	if len(p) == 0 {
		return nil
	}
	return p
}

// Sort puts the problems in the order of the file.
func (p Problems) Sort() {
	slices.SortStableFunc(p, func(a, b Problem) int {
		return cmp.Or(cmp.Compare(a.Line, b.Line), cmp.Compare(a.Column, b.Column))
	})
}

// Excerpt is the source line of a problem and a caret under its column, two lines that
// each end in a newline; "" if the source has no such line. A long line is cut
// around the caret.
func (p Problem) Excerpt(source []byte) string {
	const before, width = 60, 100
	line, ok := sourceLine(source, p.Line)
	if !ok {
		return ""
	}
	runes := []rune(line)
	at := min(max(p.Column-1, 0), len(runes))
	start := max(at-before, 0)
	end := min(start+width, len(runes))
	head, tail := clean.Line(string(runes[start:at])), clean.Line(string(runes[at:end]))
	number := fmt.Sprintf("%5d | ", p.Line)
	pad := strings.Repeat(" ", len(number)-2) + "| " + strings.Repeat(" ", len([]rune(head)))
	return strings.TrimRight(number+head+tail, " ") + "\n" + pad + "^\n"
}

// shorten cleans a text and cuts it to what fits in a message.
func shorten(s string) string {
	const most = 60
	if len(s) > 8*most {
		s = strings.ToValidUTF8(s[:8*most], "")
	}
	runes := []rune(clean.Line(s))
	if len(runes) > most {
		return string(runes[:most-3]) + "..."
	}
	return string(runes)
}

// expectation is what an error text says was expected: what follows that word, or all
// of it.
func expectation(err error) string {
	text := clean.Error(err)
	if _, after, found := strings.Cut(text, "expected "); found {
		return after
	}
	return text
}
