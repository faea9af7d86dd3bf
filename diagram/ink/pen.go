package ink

import "example.com/lugbook/diagram/scene"

// Pen is how a mark looks. Pens can be compared.
type Pen struct {
	Line  Tone // of the line; empty for none
	Fill  Tone // of the area, or of letters; empty for none
	Width int  // of the line, in tenths of a unit
	Dash  Dash // of the line; zero for an unbroken one
	Face  Face // of letters
	Size  int  // height of small letters in units; 0 for those that fill cells
}

// Dash is a broken line: units drawn, then units left out.
type Dash struct{ On, Off int }

// Face is the cut of letters.
type Face uint8

// The faces.
const (
	Plain Face = iota
	Bold
	Italic
)

// Letters that fill cells. A column is as wide as a letter of common monospaced fonts,
// 0.6 em.
const (
	Em       = 265 // tenths of a unit
	Baseline = 10  // units from the middle of a row down to the foot of its letters
)

// The pens of all but wires.
var (
	penPaper   = Pen{Fill: Page}
	penSheet   = Pen{Line: Ink, Width: 20}
	penRule    = Pen{Line: Ink, Width: 20}
	penZone    = Pen{Line: Soft, Width: 20, Dash: Dash{6, 8}}
	penInner   = Pen{Line: Ink, Width: 16}
	penBracket = Pen{Line: Ink, Width: 16}
	penSymbol  = Pen{Line: Ink, Width: 20}
	penLink    = Pen{Line: Ink, Width: 20, Dash: Dash{4, 4}}
	penSolid   = Pen{Fill: Ink}
	penOpen    = Pen{Line: Ink, Fill: Page, Width: 24}
	penEnd     = Pen{Line: Ink, Width: 32}
	penArrow   = Pen{Line: Page, Fill: Ink, Width: 28}
	penGlow    = Pen{Line: Glow, Width: 240}
	penHit     = Pen{Line: Hit, Width: 240}
	penCard    = Pen{Line: Soft, Width: 18}
	penMetal   = Pen{Line: Ink, Fill: Metal, Width: 18}
	penSeat    = Pen{Line: Ink, Fill: Soft, Width: 18}
	penSign    = Pen{Line: Ink, Fill: Page, Width: 20}
)

// framePens are those of the frames of parts by what became of them.
var framePens = [...]Pen{
	scene.NoChange: {Line: Ink, Width: 32},
	scene.Kept:     {Line: Ink, Width: 32},
	scene.Removed:  {Line: Ink, Width: 32, Dash: Dash{6, 8}},
	scene.Added:    {Line: Ink, Width: 64},
	scene.Changed:  {Line: Ink, Width: 32},
	scene.Moved:    {Line: Ink, Width: 32, Dash: Dash{28, 8}},
}

// The pens of letters.
var (
	penText   = Pen{Fill: Ink}
	penBold   = Pen{Fill: Ink, Face: Bold}
	penSoft   = Pen{Fill: Soft}
	penItalic = Pen{Fill: Soft, Face: Italic}
	penAlarm  = Pen{Fill: Alarm, Face: Bold}
	penInvert = Pen{Fill: Page, Face: Bold}
)
