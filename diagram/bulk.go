package diagram

import (
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/model"
)

// bulk is the room that the things of a sheet are expected to take, so that a page that is
// far too full need not be laid out to be known as such.
type bulk struct {
	parts []int    // cells of each part with the gap around it
	wires [][2]int // parts that each wire joins; -1 for an end on none
	marks []int    // columns of each wire's mark where it leaves the page or ends loose
}

func (b *builder) measure() *bulk {
	at := map[model.PartID]int{}
	m := &bulk{}
	for i := range b.sheet.Parts {
		at[b.sheet.Parts[i].ID] = i
		x := b.box(&b.sheet.Parts[i])
		w, h, _ := x.size()
		rows := max(h, (len(x.ports)+1)/2*2+1)
		m.parts = append(m.parts, (w+4)*(rows+2))
	}
	for i := range b.sheet.Wires {
		w := &b.sheet.Wires[i]
		ends := [2]int{-1, -1}
		mark := 0
		for k, e := range w.Ends() {
			if p, ok := at[e.At.Part]; ok {
				ends[k] = p
			}
			f := b.awayFlag(w, "", e)
			mark = max(mark, scene.Width(f.text)+2)
		}
		m.wires, m.marks = append(m.wires, ends), append(m.marks, mark)
	}
	return m
}

// Rows that things take on a page that is laid out with dear rows, in hundredths; fitted to
// drawings of the worked carts, which come out within a tenth of it as a rule (standard
// deviation).
const (
	rowsPerCell   = 190 // of the parts, over the columns of the page
	rowsPerMark   = 6   // of a mark, for each of its columns
	rowsPerZone   = 600 // frame and name
	rowsBelow     = 800 // title block and legend
	leastPerCent  = 85
	pageAsDrawing = 100
)

// rows is the number of rows that some sections are expected to take on a page.
func (b *builder) rows(sections []section) int {
	cells, zones := 0, len(joined(sections))
	marks := 0
	for _, s := range sections {
		cells += b.cells(s)
	}
	here := partsOn(sections)
	for i, ends := range b.bulk.wires {
		if here[ends[0]] != here[ends[1]] {
			marks += b.bulk.marks[i]
		}
	}
	return (rowsPerCell*cells/max(b.shape.Columns, 1) + rowsPerMark*marks + rowsPerZone*zones + rowsBelow) / pageAsDrawing
}

// partsOn are the parts of some sections.
func partsOn(sections []section) map[int]bool {
	here := map[int]bool{}
	for _, s := range sections {
		for _, i := range s.parts {
			here[i] = true
		}
	}
	return here
}

// wires counts the wires that a page of some sections shows.
func (b *builder) wires(sections []section) int {
	n := 0
	here := partsOn(sections)
	for _, ends := range b.bulk.wires {
		if here[ends[0]] || here[ends[1]] {
			n++
		}
	}
	for _, s := range sections {
		n += len(s.loose)
	}
	return n
}

// mostMisses is how often a draft may turn out not to fit before estimates are taken as they
// are, so that large sheets take no longer than they must.
const mostMisses = 24

// bar is the part of an estimate, in per cent, that a page is not worth trying without.
func (b *builder) bar() int {
	if b.misses > mostMisses {
		return 100
	}
	return leastPerCent
}

// tooFull reports whether a page need not be tried.
func (b *builder) tooFull(sections []section) bool {
	return b.shape.Rows > 0 &&
		(b.rows(sections)*b.bar() > 100*b.shape.Rows || b.wires(sections)*columnsPerWire > b.shape.Columns)
}

// cells is the room that a section takes of a page, without its marks.
func (b *builder) cells(s section) int {
	n := 0
	for _, i := range s.parts {
		n += b.bulk.parts[i]
	}
	for _, i := range s.loose {
		n += 2 * b.bulk.marks[i] * rowsPerMark * b.shape.Columns / rowsPerCell
	}
	return n
}
