// Package face holds the letters that are embedded in drawings: the Go Mono fonts, in
// three cuts, and what they have no letter for.
package face

import (
	"bytes"

	"golang.org/x/image/font/gofont/gomono"
	"golang.org/x/image/font/gofont/gomonobold"
	"golang.org/x/image/font/gofont/gomonoitalic"
	"golang.org/x/image/font/sfnt"

	"example.com/lugbook/diagram/ink"
)

// Measures of Go Mono, in thousandths of an em: the advance of its letters and the height
// of its capitals.
const (
	Advance   = 600
	CapHeight = 723
)

// files are the TrueType files of the faces.
var files = [...][]byte{ink.Plain: gomono.TTF, ink.Bold: gomonobold.TTF, ink.Italic: gomonoitalic.TTF}

// Data is the TrueType file of a face: a copy, for a reader that changes what it reads.
func Data(f ink.Face) []byte { return bytes.Clone(files[f]) }

// Parse reads the font of a face.
func Parse(f ink.Face) (*sfnt.Font, error) { return sfnt.Parse(files[f]) }

// missing stands for what a font has no letter for.
const missing = '□'

// Known replaces letters that a font does not have.
func Known(font *sfnt.Font, text string) string {
	var buf sfnt.Buffer
	letters := []rune(text)
	for i, r := range letters {
		if glyph, err := font.GlyphIndex(&buf, r); err != nil || glyph == 0 {
			letters[i] = missing
		}
	}
	return string(letters)
}
