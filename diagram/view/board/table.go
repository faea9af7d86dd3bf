package board

import (
	"slices"
	"strings"

	"example.com/lugbook/diagram/scene"
)

// Table is a list under a title, in columns. Texts that find no room in their column are
// folded; nothing is left out.
type Table struct {
	Title string
	Note  string // below the title; may be empty
	Head  []string
	Rows  []Row
	Empty string // what is said where there are no rows; without it the table is left out
}

// Row is a line of a table.
type Row struct {
	Cells []string // as many as the head has
	Of    scene.Ref
}

const (
	columnGap   = 2
	leastColumn = 3 // cells to which a column may shrink
	tableAbove  = 1 // rows between what stands above a table and its title
	fewRows     = 3 // of a table that stand under its title at least
	shortTable  = 9 // rows of a table that is not parted
)

// Table sets a table below what is on the last page.
func (b *Board) Table(t Table) {
	if len(t.Rows) == 0 && t.Empty == "" {
		return
	}
	widths := t.widths(b.columns)
	head, again := t.head(widths, b.columns, ""), t.head(widths, b.columns, ", goes on")
	if len(t.Rows) == 0 {
		for _, line := range scene.Fold(t.Empty, b.columns) {
			head.Write(0, head.H, line)
		}
		b.below(head, head.H)
		return
	}
	rows := make([]Item, len(t.Rows))
	together := head.H
	for i := range rows {
		rows[i] = t.row(i, widths)
		if i < fewRows || len(rows) <= shortTable {
			together += rows[i].H
		}
	}
	b.below(head, together)
	for _, row := range rows {
		if !b.fits(row.H) && b.y > again.H {
			b.next()
			b.add(again)
		}
		b.add(row)
	}
}

// below starts a table below what is on the last page, or on a new one where it finds no
// room for its first rows.
func (b *Board) below(it Item, rows int) {
	switch {
	case len(b.pages) == 0 || b.y > 0 && !b.fits(rows+tableAbove):
		b.next()
	case b.y > 0:
		b.y += tableAbove
	}
	b.add(it)
}

func (b *Board) add(it Item) {
	b.put(it, 0, b.y)
	b.y += it.H
}

// head is the title, the note, the names of the columns and a rule.
func (t *Table) head(widths []int, columns int, more string) Item {
	var it Item
	for _, line := range scene.Fold(t.Title+more, columns) {
		it.Write(0, it.H, line).Strong = true
	}
	for _, line := range scene.Fold(t.Note, columns) {
		it.Write(0, it.H, line)
	}
	if len(t.Rows) == 0 {
		return it
	}
	it.cells(it.H, t.Head, widths, scene.Ref{}, true)
	whole := -columnGap
	for _, w := range widths {
		whole += w + columnGap
	}
	it.Add(scene.Piece{Kind: scene.Rule, Rect: scene.Rect{Y: it.H, W: max(whole, 1), H: 1}})
	return it
}

func (t *Table) row(i int, widths []int) Item {
	var it Item
	it.cells(0, t.Rows[i].Cells, widths, t.Rows[i].Of, false)
	it.H = max(it.H, 1)
	return it
}

// cells writes the texts of one line of a table from a row on.
func (it *Item) cells(y int, cells []string, widths []int, of scene.Ref, strong bool) {
	x := 0
	for c := range min(len(cells), len(widths)) {
		for k, line := range scene.Fold(cells[c], widths[c]) {
			p := it.Write(x, y+k, line)
			p.Of, p.Strong = of, strong
		}
		x += widths[c] + columnGap
	}
}

// widths are the widths of the columns. Until all fit the widest give way, first down to
// their longest words.
func (t *Table) widths(columns int) []int {
	widths, words := make([]int, len(t.Head)), make([]int, len(t.Head))
	lines := [][]string{t.Head}
	for _, r := range t.Rows {
		lines = append(lines, r.Cells)
	}
	for _, cells := range lines {
		for c := range min(len(cells), len(widths)) {
			widths[c] = max(widths[c], scene.Width(cells[c]), 1)
			for _, word := range strings.Fields(cells[c]) {
				words[c] = max(words[c], scene.Width(word))
			}
		}
	}
	over := columnGap*(len(widths)-1) - columns
	for _, w := range widths {
		over += w
	}
	over = narrow(widths, over, words)
	narrow(widths, over, slices.Repeat([]int{leastColumn}, len(widths)))
	return widths
}

// narrow takes cells from the widest columns, from none that has its least, and returns how
// many are still over.
func narrow(widths []int, over int, least []int) int {
	for ; over > 0; over-- {
		widest := -1
		for c, w := range widths {
			if w > least[c] && (widest < 0 || w > widths[widest]) {
				widest = c
			}
		}
		if widest < 0 {
			break
		}
		widths[widest]--
	}
	return over
}
