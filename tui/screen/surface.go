// Package screen is a rectangle of character cells that is written to with texts and
// roles and read out as lines of exactly its width.
//
// Every text is cleaned on its way in, so that one letter takes one cell and none can
// steer the terminal. A surface in ASCII lets nothing else out.
package screen

import (
	"strings"

	"example.com/lugbook/diagram/scene"
)

// Surface is a rectangle of cells. Writing outside of it does nothing.
type Surface struct {
	W, H  int
	ASCII bool

	cells []cell
}

type cell struct {
	letter rune // 0 is a blank
	prefix string
}

// New is a blank surface. Sizes below zero count as zero.
func New(w, h int, ascii bool) *Surface {
	w, h = max(w, 0), max(h, 0)
	return &Surface{W: w, H: h, ASCII: ascii, cells: make([]cell, w*h)}
}

// Put sets one cell. prefix is the escape sequence of its role.
func (s *Surface) Put(x, y int, letter rune, prefix string) {
	if x >= 0 && y >= 0 && x < s.W && y < s.H {
		s.cells[y*s.W+x] = cell{letter, prefix}
	}
}

// Write puts a text into a row and gives the column behind it.
func (s *Surface) Write(x, y int, text, prefix string) int {
	for _, letter := range scene.Clean(text) {
		s.Put(x, y, letter, prefix)
		x++
	}
	return x
}

// WriteIn puts a text into a row, cut to the given number of cells.
func (s *Surface) WriteIn(x, y, cells int, text, prefix string) int {
	if cells <= 0 {
		return x
	}
	return s.Write(x, y, scene.Shorten(scene.Clean(text), cells), prefix)
}

// Lines reads the surface out: H lines of W cells. The prefix is written where it
// changes; reset ends a line that had one. A role that is plain text has the reset
// sequence, or nothing, for its prefix. Blanks that were never written take the prefix of
// what stands before them if it does not show on a blank: that saves a quarter of the
// bytes of a coloured drawing.
func (s *Surface) Lines(reset string) []string {
	lines := make([]string, s.H)
	var b strings.Builder
	for y := range lines {
		b.Reset()
		now := reset
		for _, c := range s.cells[y*s.W : (y+1)*s.W] {
			switch {
			case c.letter == 0 && !showsOnBlank(now):
				c.prefix = now
			case c.prefix == "":
				c.prefix = reset
			}
			if c.prefix != now {
				b.WriteString(c.prefix)
				now = c.prefix
			}
			b.WriteRune(s.letter(c.letter))
		}
		if now != reset {
			b.WriteString(reset)
		}
		lines[y] = b.String()
	}
	return lines
}

// showsOnBlank reports whether a sequence may set underline or reverse (SGR 4 and 7 of
// ECMA-48). Some colours are taken for these, which costs bytes and nothing else.
func showsOnBlank(sequence string) bool {
	return strings.Contains(sequence, ";4") || strings.Contains(sequence, ";7")
}

// letter is what a cell shows.
func (s *Surface) letter(r rune) rune {
	switch {
	case r == 0:
		return ' '
	case !s.ASCII || r < 0x7f:
		return r
	}
	if twin, ok := asciiTwins[r]; ok {
		return twin
	}
	return '?'
}

// asciiTwins stand for the letters that the program itself writes.
var asciiTwins = map[rune]rune{
	'…': '~', '│': '|', '─': '-', '═': '=', '║': '#', '·': '.', '◆': '@', '°': 'd', 'Ω': 'O', 'µ': 'u', '²': '2', '±': '+',
}

// Blit copies another surface so that its first cell comes to lie at a place.
func (s *Surface) Blit(from *Surface, x, y int) {
	for row := range from.H {
		for column := range from.W {
			c := from.cells[row*from.W+column]
			s.Put(x+column, y+row, c.letter, c.prefix)
		}
	}
}
