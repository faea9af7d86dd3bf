package tui

import (
	"example.com/lugbook/diagram/text"
	"example.com/lugbook/model/edit"
)

// The glyphs of what is selected: a box gets a double frame, a wire a double line (a heavy
// one if it is double by nature), a terminal and the ends of a wire a mark of their own.
const (
	endMark      = '◆'
	endMarkASCII = '@'
	lineASCII    = '#'
)

var doubled = map[rune]rune{
	'─': '═', '│': '║', '┌': '╔', '┐': '╗', '└': '╚', '┘': '╝', '╭': '╔', '╮': '╗', '╰': '╚', '╯': '╝',
	'━': '═', '┃': '║', '┏': '╔', '┓': '╗', '┗': '╚', '┛': '╝', '╌': '═', '╎': '║', '╍': '═', '╏': '║',
	'═': '━', '║': '┃', '╔': '┏', '╗': '┓', '╚': '┗', '╝': '┛',
}

// marks is what is selected, looked up for every cell of the drawing.
type marks struct {
	cursor thing
	wire   thing    // lit end to end
	ends   [2]thing // of it
	ascii  bool
}

// marks collects what is selected.
func (d *desk) marks() marks {
	m := marks{cursor: d.cursor, ascii: d.session.ASCII}
	if id := d.litWire(); id != "" {
		w := d.sheet().Wire(id)
		m.wire = ofWire(id)
		m.ends = [2]thing{ofEnd(w, edit.From), ofEnd(w, edit.To)}
	}
	return m
}

// glyph is the letter that a cell shows, and whether it is selected.
func (m *marks) glyph(c text.Cell) (rune, bool) {
	if c.Owner.ID == "" {
		return c.Rune, false
	}
	of := ofRef(c.Owner)
	atCursor := of == m.cursor && of.kind != noThing
	switch c.Role {
	case text.BoxFrame:
		if atCursor {
			return m.double(c.Rune), true
		}
	case text.WireLine:
		if of == m.wire {
			return m.double(c.Rune), true
		}
	case text.PortJoin, text.FlagMark:
		if atCursor || of.kind != noThing && (of == m.ends[0] || of == m.ends[1]) && m.lands(c, of) {
			return m.end(), true
		}
	case text.WireLabel:
		return c.Rune, of == m.wire
	}
	return c.Rune, atCursor
}

// lands reports whether a terminal's cell is a place where the lit wire may end: on a
// terminal with several lugs all are lit only if it is the selected one.
func (m *marks) lands(c text.Cell, of thing) bool {
	return of != m.cursor || c.Role == text.PortJoin
}

func (m *marks) end() rune {
	if m.ascii {
		return endMarkASCII
	}
	return endMark
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
