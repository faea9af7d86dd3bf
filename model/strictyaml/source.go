package strictyaml

import (
	"bytes"
	"fmt"
	"strings"
	"unicode/utf8"
)

// source is a file's text with a cursor that turns lines and columns into offsets. The
// cursor makes a walk in the order of the file cost one pass.
type source struct {
	text   string
	starts []int // offset of each line
	cursor place
}

func newSource(text string) *source {
	s := &source{text: text, starts: []int{0}, cursor: place{line: 1, column: 1}}
	for i := range len(text) {
		if text[i] == '\n' {
			s.starts = append(s.starts, i+1)
		}
	}
	return s
}

// place finds the offset of a line and column. A column past the end of its line is
// the end of the line.
func (s *source) place(line, column int) place {
	line = min(max(line, 1), len(s.starts))
	if line != s.cursor.line || column < s.cursor.column {
		s.cursor = place{line: line, column: 1, offset: s.starts[line-1]}
	}
	for s.cursor.column < column && s.cursor.offset < len(s.text) && s.text[s.cursor.offset] != '\n' {
		_, size := utf8.DecodeRuneInString(s.text[s.cursor.offset:])
		s.cursor.offset += size
		s.cursor.column++
	}
	return place{line: line, column: max(column, 1), offset: s.cursor.offset}
}

// sourceLine is the text of a line, without its end.
func sourceLine(data []byte, line int) (string, bool) {
	for ; line > 1; line-- {
		i := bytes.IndexByte(data, '\n')
		if i < 0 {
			return "", false
		}
		data = data[i+1:]
	}
	if line < 1 {
		return "", false
	}
	text, _, _ := strings.Cut(string(data), "\n")
	return strings.TrimSuffix(text, "\r"), true
}

// rawFault is a character that may not stand in a file as it is.
type rawFault struct {
	at      place
	message string
}

// rawFaults checks the characters of a file before anything else looks at them. Of the
// controls on one line it reports the first; an excerpt shows the others.
func rawFaults(text string, most int) []rawFault {
	var faults []rawFault
	line, column := 1, 1
	for i := 0; i < len(text) && len(faults) < most; {
		r, size := utf8.DecodeRuneInString(text[i:])
		at := place{line: line, column: column, offset: i}
		switch {
		case r == utf8.RuneError && size == 1:
			message := fmt.Sprintf("not UTF-8 text: byte 0x%02X at offset %d", text[i], i)
			return append(faults, rawFault{at: at, message: message})
		case r == '\n':
			line, column = line+1, 0
		case r == '\r' && strings.HasPrefix(text[i:], "\r\n"):
		case forbidden(r) && (len(faults) == 0 || faults[len(faults)-1].at.line < line):
			message := fmt.Sprintf("control character U+%04X", r)
			faults = append(faults, rawFault{at: at, message: message})
		}
		column++
		i += size
	}
	return faults
}

// forbidden reports controls and the characters that YAML or an editor may take for
// the end of a line. They can be written as escapes in double quotes.
func forbidden(r rune) bool {
	switch {
	case r == '\t':
		return false
	case r < ' ' || r >= 0x7F && r < 0xA0:
		return true
	}
	return r == '\u2028' || r == '\u2029' || r == '\ufeff' || r == '\ufffe' || r == '\uffff'
}
