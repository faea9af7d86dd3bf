package tui

import (
	"image"

	"example.com/lugbook/diagram/text"
	"example.com/lugbook/tui/overview"
)

// The glyphs of what is selected: a box gets a double frame, a wire a double line (a heavy
// one if it is double by nature), the selected terminal a mark of its own, the ends of the
// lit wire and the other lugs of the selected terminal another one.
const (
	cursorMark      = '◆'
	endMark         = '◇'
	cursorMarkASCII = '@'
	endMarkASCII    = 'O'
	lineASCII       = '#'
)

var doubled = map[rune]rune{
	'─': '═', '│': '║', '┌': '╔', '┐': '╗', '└': '╚', '┘': '╝', '╭': '╔', '╮': '╗', '╰': '╚', '╯': '╝',
	'━': '═', '┃': '║', '┏': '╔', '┓': '╗', '┗': '╚', '┛': '╝', '╌': '═', '╎': '║', '╍': '═', '╏': '║',
	'═': '━', '║': '┃', '╔': '┏', '╗': '┓', '╚': '┗', '╝': '┛',
}

// marks is what is selected, looked up for every cell of the drawing.
type marks struct {
	cursor thing
	wire   thing          // lit end to end
	ends   [2]image.Point // of it, on the drawing
	ascii  bool
}

// marks collects what is selected.
func (d *desk) marks() marks {
	m := marks{cursor: d.cursor, ascii: d.session.ASCII, ends: [2]image.Point{{X: -1}, {X: -1}}}
	id := d.litWire()
	if _, pulling := topOf[*pullLayer](d); pulling || id == "" {
		return m
	}
	m.wire = ofWire(id)
	if w := d.onScreen().wire(id); w != nil && len(w.Path) > 0 {
		first, last := w.Path[0], w.Path[len(w.Path)-1]
		m.ends = [2]image.Point{{X: first.X, Y: first.Y}, {X: last.X, Y: last.Y}}
	}
	return m
}

// glyph is the letter that a cell shows, and whether it is selected.
func (m *marks) glyph(c text.Cell, at image.Point) (rune, bool) {
	if c.Owner.ID == "" {
		return c.Rune, false
	}
	of := ofRef(c.Owner)
	atCursor := of == m.cursor && of.kind != noThing
	switch {
	case c.Role == text.StrongWriting && atCursor:
		return m.token(c.Rune), true
	case c.Role == text.BoxFrame && atCursor, c.Role == text.WireLine && of == m.wire:
		return m.double(c.Rune), true
	case c.Role == text.WireLabel, c.Role == text.WireFigure, c.Role == text.FlowArrow:
		return c.Rune, of == m.wire
	case c.Role != text.PortJoin && c.Role != text.FlagMark:
		return c.Rune, atCursor
	}
	lit := at == m.ends[0] || at == m.ends[1]
	switch {
	case atCursor && (lit || m.wire.kind == noThing):
		return m.pick(cursorMark, cursorMarkASCII), true
	case atCursor || lit:
		return m.pick(endMark, endMarkASCII), true
	}
	return c.Rune, false
}

// token is a letter of the chosen part on the drawing of the whole job.
func (m *marks) token(r rune) rune {
	switch r {
	case '[':
		return '<'
	case ']':
		return '>'
	case overview.Dot:
		return m.pick(cursorMark, cursorMarkASCII)
	}
	return r
}

func (m *marks) pick(mark, ascii rune) rune {
	if m.ascii {
		return ascii
	}
	return mark
}

func (m *marks) double(r rune) rune {
	if m.ascii {
		return lineASCII
	}
	if d, ok := doubled[r]; ok {
		return d
	}
	return r
}
