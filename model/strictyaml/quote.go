package strictyaml

import (
	"fmt"
	"regexp"
	"strings"
	"unicode"
)

var (
	// numberLike is what some YAML reader takes for a number: YAML 1.2.2 core schema and the
	// int and float types of YAML 1.1, with octal, underscores and base sixty.
	numberLike = regexp.MustCompile(`^[-+]?(\.?[0-9][0-9_.]*([eE][-+]?[0-9]+)?|0[xob][0-9a-fA-F_]+|[0-9][0-9_]*(:[0-5]?[0-9])+(\.[0-9_]*)?)$`)

	// wordLike is what some YAML reader takes for a bool, none, merge or a special float.
	wordLike = regexp.MustCompile(`^(?i:null|true|false|yes|no|on|off|[-+]?\.inf|\.nan|<<|=|~)$`)
)

// quoted is a text as a scalar: plain if every reader takes it as this text, else in
// double quotes. inside says that it stands in brackets.
func quoted(s string, inside bool) string {
	if isPlain(s, inside) {
		return s
	}
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range s {
		b.WriteString(escaped(r))
	}
	b.WriteByte('"')
	return b.String()
}

func escaped(r rune) string {
	switch {
	case r == '"' || r == '\\':
		return `\` + string(r)
	case r == '\n':
		return `\n`
	case r == '\t':
		return `\t`
	case r == '\r':
		return `\r`
	case unicode.IsPrint(r):
		return string(r)
	case r < 0x100:
		return fmt.Sprintf(`\x%02X`, r)
	case r < 0x10000:
		return fmt.Sprintf(`\u%04X`, r)
	}
	return fmt.Sprintf(`\U%08X`, r)
}

// isPlain is stricter than YAML 1.2.2, section 7.3.3: it leaves out texts that are
// legal but that a reader of another version, or a person, may take for something else.
func isPlain(s string, inside bool) bool {
	if s == "" || s[0] == ' ' || s[len(s)-1] == ' ' || strings.HasPrefix(s, "...") {
		return false
	}
	if strings.IndexByte("?:,[]{}#&*!|>'\"%@`", s[0]) >= 0 || s[0] == '-' && !letterOrDigit(s[1:]) {
		return false
	}
	if strings.Contains(s, ": ") || strings.Contains(s, " #") || strings.HasSuffix(s, ":") {
		return false
	}
	if inside && strings.ContainsAny(s, ",[]{}:") {
		return false
	}
	for _, r := range s {
		if !unicode.IsPrint(r) {
			return false
		}
	}
	return !wordLike.MatchString(s) && !numberLike.MatchString(s)
}

// letterOrDigit reports whether s starts with an ASCII letter or digit.
func letterOrDigit(s string) bool {
	if s == "" {
		return false
	}
	c := s[0]
	return c >= '0' && c <= '9' || c|0x20 >= 'a' && c|0x20 <= 'z'
}
