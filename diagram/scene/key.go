package scene

import (
	"strconv"
	"strings"
)

var (
	weightWords = [...]string{Control: "control", Power: "power", Traction: "traction", Mains: "mains", Trunk: "run with all its wires"}
	flagWords   = [...]string{OffPage: "goes on where named", Cut: "cut end", Capped: "capped end", Untraced: "not traced further"}
	changeWords = [...]string{NoChange: "", Kept: "", Removed: "removed", Added: "added", Changed: "changed", Moved: "moved"}
)

// String is the word for it in a legend.
func (w Weight) String() string { return weightWords[w] }

// String is the word for it in a legend.
func (k FlagKind) String() string { return flagWords[k] }

// String is the word for it in a legend; empty for what stays, which needs none.
func (c Change) String() string { return changeWords[c] }

// Key is the part of the legend that needs no samples, in sentences: how to read
// stud positions, crossings, changes and colour codes, then the page's own lines.
func (p *Page) Key(u Usage) []string {
	var lines []string
	if u.Seats {
		lines = append(lines, "Figures at a stud count its lugs from the seat: 1 is on the seat.")
	}
	if u.Crossings {
		lines = append(lines, "Lines that cross are not joined.")
	}
	if u.Carries {
		lines = append(lines, "Arrows go the way of the current; A at a line is that current, V its voltage against the minus side.")
	}
	if u.Works {
		lines = append(lines, "The word in the frame of a part is its state, in capitals if the part is closed or at work; symbols stay as at rest.")
	}
	var changes []string
	for _, c := range u.Changes {
		if c.Sign() != "" {
			changes = append(changes, c.Sign()+" "+c.String())
		}
	}
	if len(changes) > 0 {
		lines = append(lines, "Before a name, in the corners of a part and on a line: "+strings.Join(changes, ", ")+".")
	}
	if unsigned := p.unsigned(); len(unsigned) > 0 {
		lines = append(lines, "Without room for a sign: "+strings.Join(unsigned, ", ")+".")
	}
	if colours := colourKey(u); colours != "" {
		lines = append(lines, colours)
	}
	for _, line := range p.Legend {
		lines = append(lines, Clean(line))
	}
	return lines
}

// Heading is the title block in two parts: what is shown, and which issue of it.
func (t TitleBlock) Heading() (what, issue []string) {
	add := func(to []string, before, text, after string) []string {
		if text == "" {
			return to
		}
		return append(to, before+Clean(text)+after)
	}
	what = add(what, "", t.Job, "")
	what = add(what, "sheet ", t.Sheet, "")
	what = add(what, "", t.View, "")
	what = add(what, "", t.System, "")
	issue = add(issue, "", t.Date, "")
	issue = add(issue, "rev ", t.Revision, "")
	if t.Page > 0 {
		page := "page " + strconv.Itoa(t.Page)
		if t.Pages > 0 {
			page += " of " + strconv.Itoa(t.Pages)
		}
		issue = append(issue, page)
	}
	return what, issue
}

// Remarks is the rest of the title block: the state that is shown, then the notes.
func (t TitleBlock) Remarks() []string {
	var lines []string
	if t.Shown != "" {
		lines = append(lines, "Shown: "+Clean(t.Shown)+".")
	}
	for _, note := range t.Notes {
		lines = append(lines, Clean(note))
	}
	return lines
}

// unsigned lists the wires whose lines have no room to say what became of them. The line
// of a removed one says it by itself.
func (p *Page) unsigned() []string {
	has := map[string]bool{}
	for _, sign := range p.ChangeSigns() {
		has[sign.Wire] = true
	}
	var list []string
	for _, w := range p.Wires {
		if w.Change.Sign() != "" && w.Change != Removed && !has[w.ID] {
			list = append(list, Clean(w.ID)+" "+w.Change.String())
		}
	}
	return list
}
