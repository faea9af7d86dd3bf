// Package clean makes text that came from a file or a person safe to print.
//
// A job file may hold any text, and so may file names and the error texts of the
// system. Printed raw, such text could move the cursor, change the window title,
// reverse the order of letters or hide some of them. Every text goes through [Line] or
// [Text] before it reaches a terminal, a log or a plain report. Nothing is interpreted
// and then allowed: what is on the list is marked, always.
//
// What is marked: all C0 controls, DEL and C1 controls; every format character of
// Unicode (category Cf: bidirectional controls, zero-width characters, tags, soft
// hyphen); line and paragraph separators; other characters that Unicode says are drawn
// as nothing (Default_Ignorable_Code_Point); noncharacters; bytes that are not UTF-8;
// and the fifth and later combining marks in a row. A marker shows the code point in
// visible hex, such as <U+202E>, or the byte, such as <0xFF>.
package clean

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// maxCombining is how many combining marks may follow one another: more than any
// living orthography stacks, few enough to stay inside a line.
const maxCombining = 4

// Suspect is one place in a text that is marked when the text is printed.
type Suspect struct {
	Offset int    // in bytes from the start of the text
	Marker string // what is printed instead, such as <U+202E>
}

// Line makes a text safe for a place that is one line high. A tab becomes one space;
// a newline is marked like any other control.
func Line(s string) string {
	return rewrite(s, false)
}

// Text makes a text safe for a place of several lines. Newlines stay, CR LF becomes a
// newline, and a tab becomes one space.
func Text(s string) string {
	return rewrite(strings.ReplaceAll(s, "\r\n", "\n"), true)
}

// Suspicious lists what [Text] would mark, in the order of the text; tabs, newlines
// and CR LF are not suspicious.
func Suspicious(s string) []Suspect {
	var found []Suspect
	scan(s, func(offset, size int, r rune, bad bool) {
		lineEnd := r == '\n' || r == '\r' && strings.HasPrefix(s[offset:], "\r\n")
		if bad && r != '\t' && !lineEnd {
			found = append(found, Suspect{Offset: offset, Marker: marker(s[offset:offset+size], r)})
		}
	})
	return found
}

func rewrite(s string, keepNewline bool) string {
	var b strings.Builder
	copied := 0
	scan(s, func(offset, size int, r rune, bad bool) {
		if !bad || r == '\n' && keepNewline {
			return
		}
		b.WriteString(s[copied:offset])
		copied = offset + size
		if r == '\t' {
			b.WriteByte(' ')
			return
		}
		b.WriteString(marker(s[offset:copied], r))
	})
	if copied == 0 {
		return s
	}
	b.WriteString(s[copied:])
	return b.String()
}

// scan visits every rune of s and says whether it may be printed as it is.
func scan(s string, visit func(offset, size int, r rune, bad bool)) {
	combining := 0
	for offset := 0; offset < len(s); {
		r, size := utf8.DecodeRuneInString(s[offset:])
		bad := r == utf8.RuneError && size == 1 || hidden(r)
		if unicode.In(r, unicode.Mn, unicode.Me) {
			combining++
			bad = bad || combining > maxCombining
		} else {
			combining = 0
		}
		visit(offset, size, r, bad)
		offset += size
	}
}

func hidden(r rune) bool {
	if r >= ' ' && r < 0x7F {
		return false
	}
	return unicode.In(r, unicode.Cc, unicode.Cf, unicode.Zl, unicode.Zp,
		unicode.Other_Default_Ignorable_Code_Point, unicode.Noncharacter_Code_Point) || supplementSelector(r)
}

// supplementSelector reports a variation selector that no font of a terminal uses and
// that can carry hidden text: U+E0100 to U+E01EF.
func supplementSelector(r rune) bool { return r >= 0xE0100 && r <= 0xE01EF }

func marker(raw string, r rune) string {
	if r == utf8.RuneError && len(raw) == 1 {
		return fmt.Sprintf("<0x%02X>", raw[0])
	}
	return fmt.Sprintf("<U+%04X>", r)
}

// Error makes the text of an error safe for one line; "" for no error. File names and
// input that an error quotes may hold anything.
func Error(err error) string {
	if err == nil {
		return ""
	}
	return Line(err.Error())
}
