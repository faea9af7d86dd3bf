package model

import (
	"fmt"
	"regexp"
)

var (
	idForm       = regexp.MustCompile(`^[A-Za-z0-9_-]{1,64}$`)
	terminalForm = regexp.MustCompile(`^[A-Za-z0-9_+-]{1,64}$`)
)

// ValidID reports whether s can name a part, a wire, a zone or a kind: 1 to 64 ASCII
// letters, digits, hyphens or underscores. The point is kept for part.terminal.
func ValidID(s string) bool { return idForm.MatchString(s) }

func validTerminalName(s string) bool { return terminalForm.MatchString(s) }

// ExpectedError says what a text should have been.
type ExpectedError struct{ What string }

// Error is the message for a person.
func (e *ExpectedError) Error() string { return "expected " + e.What }

// Expected is the error of a text that is not what it should be.
func Expected(what string) error { return &ExpectedError{What: what} }

// FreeID finds the first id made of a prefix and a number that is not taken: w1, w2, ...
func FreeID(prefix string, taken func(string) bool) string {
	for n := 1; ; n++ {
		if id := fmt.Sprintf("%s%d", prefix, n); !taken(id) {
			return id
		}
	}
}
