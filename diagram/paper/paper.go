// Package paper knows the sizes of paper that drawings are printed on, and how many cells
// of a drawing a page holds at a size that can be read.
package paper

import (
	"fmt"
	"strings"

	"example.com/lugbook/diagram/scene"
)

// Measures of a printed page in micrometres. Capitals in a cell of this size are 2.5 mm
// high, the smallest lettering of ISO 3098 (from memory); that they take 0.6 of a row and
// a column half as wide as a row is high are the proportions of common monospaced letters.
const (
	CellWidth  = 2100
	CellHeight = 4200
	Margin     = 10000
)

// What a page's frame and the blank inside it take, in cells.
const (
	frameColumns = 2
	frameRows    = 2
)

// Size is a size of paper, whichever way it lies.
type Size struct {
	Name        string
	Short, Long int // sides in micrometres
}

// The sizes.
var (
	A4     = Size{"A4", 210000, 297000}     // ISO 216
	Letter = Size{"Letter", 215900, 279400} // ANSI/ASME Y14.1 size A
)

// All lists the sizes.
var All = []Size{A4, Letter}

// Names lists the names of all sizes, as commands take them.
func Names() []string {
	names := make([]string, len(All))
	for i, s := range All {
		names[i] = strings.ToLower(s.Name)
	}
	return names
}

// Find finds a size by name, in capitals or not. The error lists the names that there are.
func Find(name string) (Size, error) {
	for _, s := range All {
		if strings.EqualFold(s.Name, name) {
			return s, nil
		}
	}
	return Size{}, fmt.Errorf("no paper %q; there are %s", name, strings.Join(Names(), ", "))
}

// Landscape is the paper wider than high.
func (s Size) Landscape() scene.Paper { return s.lying(s.Long, s.Short) }

// Portrait is the paper higher than wide.
func (s Size) Portrait() scene.Paper { return s.lying(s.Short, s.Long) }

func (s Size) lying(width, height int) scene.Paper {
	return scene.Paper{Name: s.Name, WidthMM: float64(width) / 1000, HeightMM: float64(height) / 1000}
}

// Cells is the number of columns and rows that a paper holds within its margins and
// frame. The rows are those of the drawing and of all that stands below it.
func Cells(p scene.Paper) (columns, rows int) {
	columns = (int(p.WidthMM*1000)-2*Margin)/CellWidth - frameColumns
	rows = (int(p.HeightMM*1000)-2*Margin)/CellHeight - frameRows
	return max(columns, 0), max(rows, 0)
}
