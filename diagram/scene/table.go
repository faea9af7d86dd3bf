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

// Blanks between the columns of a table, and between blocks that stand side by side.
const (
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
	widths := t.widths(columns)
	whole := -tableGap
	for _, w := range widths {
		whole += w + tableGap
	}
	blocks := max(1, min((columns+blockGap)/(whole+blockGap), len(t.Rows)))
	deep := (len(t.Rows) + blocks - 1) / blocks
	lines := make([][]Entry, deep+1)
	for i, row := range t.Rows {
		left := i / deep * (whole + blockGap)
		if i%deep == 0 {
			lines[0] = append(lines[0], setRow(t.Head, widths, left, true)...)
		}
		lines[i%deep+1] = append(lines[i%deep+1], setRow(row, widths, left, false)...)
	}
	return lines
}

// widths are the columns' widths; the widest give way until all fit.
func (t Table) widths(columns int) []int {
	widths := make([]int, len(t.Head))
	sum := (len(widths) - 1) * tableGap
	for _, row := range append([][]string{t.Head}, t.Rows...) {
		for c := range min(len(row), len(widths)) {
			widths[c] = max(widths[c], Width(row[c]))
		}
	}
	for _, w := range widths {
		sum += w
	}
	for ; sum > columns; sum-- {
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

func setRow(row []string, widths []int, left int, head bool) []Entry {
	var entries []Entry
	for c := range min(len(row), len(widths)) {
		if text := Shorten(Clean(row[c]), widths[c]); text != "" {
			entries = append(entries, Entry{Column: left, Text: text, Head: head})
		}
		left += widths[c] + tableGap
	}
	return entries
}
