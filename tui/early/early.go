// Package early keeps the terminal libraries from questioning the terminal before main runs.
//
// Bubble Tea v1 asks for the background colour inside its package init, with five seconds of patience.
// A terminal that never answers (a serial line, some relays) therefore shows nothing for five seconds,
// whatever the program does, because no line of main has run yet. The libraries ask no questions when
// TERM says "dumb", so this package says so during init and [Restore] takes it back, first thing in main.
//
// Two conditions make it work, and a test holds both:
//
//   - The Go specification initialises, of all packages whose imports are ready, the one whose import path
//     sorts first. The module path begins with "example.com", which sorts before "github.com".
//     A module path that sorts later brings the stall back without any error.
//   - This package imports nothing outside the standard library, so it is ready as soon as "os" is.
//
// The package is imported by whichever package imports Bubble Tea; import order in a file does not matter.
package early

import "os"

// hush is what the terminal libraries take as "ask nothing, expect nothing".
const hush = "dumb"

var (
	term    string // TERM as the user set it
	hadTerm bool   // whether it was set at all
)

func init() {
	term, hadTerm = os.LookupEnv("TERM")
	// A failure leaves TERM as it was: the program then starts slowly on a silent terminal, and works.
	_ = os.Setenv("TERM", hush)
}

// Restore puts TERM back to what the user set. Call it first in main, before anything looks at TERM or starts
// another program. A second call changes nothing, nor does a call after something else has set TERM.
func Restore() {
	if os.Getenv("TERM") != hush {
		return
	}
	if !hadTerm {
		_ = os.Unsetenv("TERM")
		return
	}
	_ = os.Setenv("TERM", term)
}
