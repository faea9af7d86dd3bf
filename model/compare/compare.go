// Package compare tells what became of each part, wire and terminal from one sheet of a
// job to another. Ids persist across sheets, so a thing is the same thing where its id is.
package compare

import (
	"example.com/lugbook/model"
)

// What says what became of a thing.
type What string

// What can become of a thing. Where several hold, the first of moved, changed, kept counts.
const (
	Kept    What = "kept"
	Removed What = "removed"
	Added   What = "added"
	Moved   What = "moved"   // a part to another zone, or an end of a wire to another place
	Changed What = "changed" // in its properties
)

// Difference is one property that is not the same. Either side may be empty: not recorded.
type Difference struct {
	Field   string // as the job file names it
	Was, Is string
}

// Part is what became of a part.
type Part struct {
	ID      model.PartID
	What    What
	Was, Is *model.Part // nil where the sheet has none
	Differs []Difference
}

// Wire is what became of a wire.
type Wire struct {
	ID      model.WireID
	What    What
	Was, Is *model.Wire // nil where the sheet has none
	Differs []Difference
}

// Terminal is a terminal of a part on both sheets on which something else than its wires
// differs: what is recorded of it, or the order of lugs that stay.
type Terminal struct {
	At      model.TerminalRef
	Differs []Difference
}

// Comparison holds every part and wire of two sheets, those of the later sheet in its
// order and then those that are only on the earlier.
type Comparison struct {
	Was, Is   *model.Sheet
	Parts     []Part
	Wires     []Wire
	Terminals []Terminal // only those that differ
}

// Of compares an earlier sheet with a later one. Both are only read.
func Of(was, is *model.Sheet) *Comparison {
	c := &Comparison{Was: was, Is: is}
	for i := range is.Parts {
		p := &is.Parts[i]
		c.Parts = append(c.Parts, partOf(was.Part(p.ID), p))
	}
	for i := range was.Parts {
		if p := &was.Parts[i]; is.Part(p.ID) == nil {
			c.Parts = append(c.Parts, Part{ID: p.ID, What: Removed, Was: p})
		}
	}
	for i := range is.Wires {
		w := &is.Wires[i]
		c.Wires = append(c.Wires, wireOf(was.Wire(w.ID), w))
	}
	for i := range was.Wires {
		if w := &was.Wires[i]; is.Wire(w.ID) == nil {
			c.Wires = append(c.Wires, Wire{ID: w.ID, What: Removed, Was: w})
		}
	}
	c.terminals()
	return c
}

// Count is how many parts and how many wires became of a kind.
func (c *Comparison) Count(what What) (parts, wires int) {
	for i := range c.Parts {
		if c.Parts[i].What == what {
			parts++
		}
	}
	for i := range c.Wires {
		if c.Wires[i].What == what {
			wires++
		}
	}
	return parts, wires
}

// Before is the sheet of the job that comes before a sheet in the order of the work; nil
// if there is none.
func Before(j *model.Job, name model.SheetName) *model.Sheet {
	var last *model.Sheet
	for _, n := range model.SheetName("").Names() {
		if model.SheetName(n) == name {
			return last
		}
		if s := j.Sheet(model.SheetName(n)); s != nil {
			last = s
		}
	}
	return nil
}
