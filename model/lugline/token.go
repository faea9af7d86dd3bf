package lugline

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// token is a word of the line with its place.
type token struct {
	text  string
	start int
}

func (t token) end() int { return t.start + len(t.text) }

// tokens takes a line apart at its blanks. The note is one token from ; to the end, a
// quoted mark or bundle is one token, and each ditto sign before a word is one.
func tokens(line string) []token {
	var list []token
	for at := 0; at < len(line); {
		r, size := utf8.DecodeRuneInString(line[at:])
		if unicode.IsSpace(r) {
			at += size
			continue
		}
		n := tokenLength(line[at:])
		list = append(list, token{line[at : at+n], at})
		at += n
	}
	return list
}

// tokenLength is the length of the token that a text starts with.
func tokenLength(s string) int {
	switch {
	case s[0] == ';':
		return len(s)
	case s[0] == '\'' || s[0] == '"':
		return 1
	case strings.HasPrefix(s, `@"`) || strings.HasPrefix(s, `*"`):
		n, _ := quoted(s)
		return n
	}
	n := strings.IndexFunc(s, func(r rune) bool { return r == ';' || unicode.IsSpace(r) })
	if n < 0 {
		return len(s)
	}
	return n
}

// quoted is the length of a sign and the quoted text after it. Two quotes in the text are
// one of its own; a text that is not closed goes to the end of the line.
func quoted(s string) (length int, closed bool) {
	for i := 2; i < len(s); i++ {
		if s[i] != '"' {
			continue
		}
		if i+1 < len(s) && s[i+1] == '"' {
			i++
			continue
		}
		return i + 1, true
	}
	return len(s), false
}

// open reports whether a token is quoted and not closed.
func open(token string) bool {
	if len(token) < 2 || token[1] != '"' {
		return false
	}
	_, closed := quoted(token)
	return !closed
}

// unquote is the text of a mark or bundle.
func unquote(s string) string {
	body, quoted := strings.CutPrefix(s, `"`)
	if !quoted {
		return clean(s)
	}
	if n := len(body) - len(strings.TrimRight(body, `"`)); n%2 == 1 {
		body = body[:len(body)-1]
	}
	return clean(strings.ReplaceAll(body, `""`, `"`))
}
