package screen_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	_ "example.com/lugbook/model/fixedseed"
	"example.com/lugbook/tui/screen"
)

const reset = "\x1b[m"

func TestRolesAreWrittenWhereTheyChange(t *testing.T) {
	s := screen.New(8, 2, false)
	end := s.Write(1, 0, "ab", "\x1b[1m")
	require.Equal(t, 3, end)
	s.Write(end, 0, "cd", reset)
	s.Put(7, 1, '─', "\x1b[1m")
	require.Equal(t, []string{" \x1b[1mab\x1b[mcd   ", "       \x1b[1m─\x1b[m"}, s.Lines(reset))
	s = screen.New(8, 1, false)
	s.Write(0, 0, "a", "\x1b[0;1m")
	s.Write(2, 0, "b", "\x1b[0;1m")
	s.Write(4, 0, "c", "\x1b[0;7m")
	s.Write(6, 0, "d", "\x1b[0;7m")
	require.Equal(t, "\x1b[0;1ma b \x1b[0;7mc\x1b[m \x1b[0;7md\x1b[m ", s.Lines(reset)[0], "bold passes over blanks, reverse does not")
	require.Equal(t, []string{" ab", "   "}, narrow(screen.New(3, 2, false), "ab"))
}

// narrow writes a text into the first row of a surface without roles.
func narrow(s *screen.Surface, text string) []string {
	s.WriteIn(1, 0, 2, text, "")
	return s.Lines("")
}

func TestTextsAreCutAndBlitted(t *testing.T) {
	s := screen.New(6, 1, true)
	s.WriteIn(0, 0, 4, "abcdef", "")
	require.Equal(t, "abc~  ", s.Lines("")[0])
	part := screen.New(3, 1, true)
	part.Write(0, 0, "xyz", "")
	s.Blit(part, 4, 0)
	require.Equal(t, "abc~xy", s.Lines("")[0])
}

// Whatever is written, wherever, the lines are as wide as the surface, hold no control
// characters, and in ASCII nothing else.
func TestAnyTextKeepsTheSize(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, h := rapid.IntRange(-1, 30).Draw(t, "w"), rapid.IntRange(-1, 5).Draw(t, "h")
		s := screen.New(w, h, rapid.Bool().Draw(t, "ascii"))
		for range rapid.IntRange(0, 5).Draw(t, "texts") {
			s.WriteIn(rapid.IntRange(-5, 35).Draw(t, "x"), rapid.IntRange(-1, 6).Draw(t, "y"), rapid.IntRange(-1, 40).Draw(t, "cells"), rapid.String().Draw(t, "text"), "")
		}
		lines := s.Lines("")
		if len(lines) != max(h, 0) {
			t.Fatalf("%d lines, not %d", len(lines), h)
		}
		for _, l := range lines {
			if n := len([]rune(l)); n != max(w, 0) {
				t.Fatalf("%q is %d wide, not %d", l, n, w)
			}
			if i := strings.IndexFunc(l, func(r rune) bool { return r < ' ' || s.ASCII && r > '~' }); i >= 0 {
				t.Fatalf("%q holds a letter that it must not", l)
			}
		}
	})
}
