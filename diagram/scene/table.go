package scene

// Table is a list that is printed under a drawing, in columns.
type Table struct {
	Head []string
	Rows [][]string // each as long as Head
}

// Entry is a text of a table in its place.
type Entry struct {
	Column int // of the line's first letter
	Text   string
	Head   bool
}

// Blanks between the columns of a table, at least and at best, and between blocks that stand
// side by side.
const (
	leastGap = 1
	tableGap = 2
	blockGap = 4
)

// Set sets the table in lines of a number of columns, from left to right. As many blocks stand
// side by side as find room, filled one after the other, each under its own head. A table
// that is too wide for the lines even alone loses the ends of its longest texts.
func (t Table) Set(columns int) [][]Entry {
	if len(t.Rows) == 0 || len(t.Head) == 0 {
		return nil
	}
	gap, widths, blocks := t.fit(columns)
	whole := extent(widths, gap)
	deep := (len(t.Rows) + blocks - 1) / blocks
	lines := make([][]Entry, deep+1)
	for i, row := range t.Rows {
		left := i / deep * (whole + blockGap)
		if i%deep == 0 {
			lines[0] = append(lines[0], setRow(t.Head, widths, left, gap, true)...)
		}
		lines[i%deep+1] = append(lines[i%deep+1], setRow(row, widths, left, gap, false)...)
	}
	return lines
}

// fit chooses the gap and how many blocks stand side by side: the wider gap, unless the
// narrower one makes room for another block.
func (t Table) fit(columns int) (gap int, widths []int, blocks int) {
	for _, g := range []int{tableGap, leastGap} {
		w := t.widths(columns, g)
		n := max(1, min((columns+blockGap)/(extent(w, g)+blockGap), len(t.Rows)))
		if n > blocks {
			gap, widths, blocks = g, w, n
		}
	}
	return gap, widths, blocks
}

// extent is the width of a block.
func extent(widths []int, gap int) int {
	sum := (len(widths) - 1) * gap
	for _, w := range widths {
		sum += w
	}
	return sum
}

// widths are the columns' widths; the widest give way until all fit.
func (t Table) widths(columns, gap int) []int {
	widths := make([]int, len(t.Head))
	for _, row := range append([][]string{t.Head}, t.Rows...) {
		for c := range min(len(row), len(widths)) {
			widths[c] = max(widths[c], Width(row[c]))
		}
	}
	for over := extent(widths, gap) - columns; over > 0; over-- {
		widest := 0
		for c, w := range widths {
			if w > widths[widest] {
				widest = c
			}
		}
		if widths[widest] <= 1 {
			break
		}
		widths[widest]--
	}
	return widths
}

func setRow(row []string, widths []int, left, gap int, head bool) []Entry {
	var entries []Entry
	for c := range min(len(row), len(widths)) {
		if text := Shorten(Clean(row[c]), widths[c]); text != "" {
			entries = append(entries, Entry{Column: left, Text: text, Head: head})
		}
		left += widths[c] + gap
	}
	return entries
}
