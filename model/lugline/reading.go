package lugline

import (
	"example.com/lugbook/model"
)

// Class is what an item of a line is. Each class but Unknown has one slot.
type Class string

// The classes.
const (
	DittoItem     Class = "ditto"
	VerdictItem   Class = "verdict"
	ColourItem    Class = "colour"
	GaugeItem     Class = "gauge"
	FarItem       Class = "far end"
	ConditionItem Class = "condition"
	MarkItem      Class = "mark"
	BundleItem    Class = "bundle"
	NoteItem      Class = "note"
	UnknownItem   Class = "unknown"
)

// Item is a stretch of the line that was recognised, or kept as unknown.
type Item struct {
	Class      Class
	Start, End int  // bytes of the line, End not included
	Judged     bool // marked as judged, not proved
	Struck     bool // a later item of its class won
}

// Reading is what a line means where it was entered.
type Reading struct {
	Entry
	Written  string
	Items    []Item              // in the order of the line
	Among    []model.TerminalRef // studs that the far end fits equally well; none is chosen
	OrStud   model.TerminalRef   // stud that a token read as a look would name with > in front
	Confirms model.WireID        // expected wire that the entry is about; empty if none

	here Context
}

// Parse reads a line as entered at a stud. It never fails: what it cannot read it keeps
// as unknown.
func Parse(line string, at Context) Reading {
	at.list = at.studs()
	p := parser{reading: Reading{Entry: Entry{At: at.At}, Written: line, here: at}, studs: at.list, slots: map[Class]int{}}
	for _, t := range tokens(line) {
		p.token(t)
	}
	return p.finish()
}

// inVain reports whether the line says + or - though no wire that agrees is expected.
func (r Reading) inVain() bool { return r.Verdict != "" && r.Confirms == "" }
