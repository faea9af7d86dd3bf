package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"strings"
	"unicode/utf16"

	"example.com/lugbook/model/clean"
)

// printAsJSON prints a value as one indented JSON text.
func (c *cli) printAsJSON(value any) error {
	var b bytes.Buffer
	encoder := json.NewEncoder(&b)
	encoder.SetEscapeHTML(false)
	encoder.SetIndent("", "  ")
	if err := encoder.Encode(value); err != nil {
		return err
	}
	_, err := io.WriteString(c.out, escapeHidden(b.String()))
	return err
}

// escapeHidden writes every character of a JSON text that would steer a terminal or not
// be seen on it as its escape, which means the same.
func escapeHidden(text string) string {
	var b strings.Builder
	for _, r := range text {
		switch {
		case r == '\n' || clean.Line(string(r)) == string(r):
			b.WriteRune(r)
		case r > 0xFFFF:
			high, low := utf16.EncodeRune(r)
			fmt.Fprintf(&b, "\\u%04x\\u%04x", high, low)
		default:
			fmt.Fprintf(&b, "\\u%04x", r)
		}
	}
	return b.String()
}
