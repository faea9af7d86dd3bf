package diagram

import (
	"strings"

	"example.com/lugbook/diagram/scene"
)

// Room below a drawing, in cells.
const (
	sampleRoom = 24 // a sample of a line or mark with its words
	ruleRows   = 2  // the rule above the title block, the blank between legend and table
	noteRows   = 1  // the remark on symbols
)

// below is the number of rows that the title block, the legend and the table take below a
// drawing, if they are set in so many columns.
func below(p *scene.Page, columns int) int {
	if columns <= 0 {
		return 0
	}
	folded := func(text string) int { return len(scene.Fold(text, columns)) }
	what, issue := p.Title.Heading()
	rows := ruleRows + folded(strings.Join(append(what, issue...), " / "))
	rows += folded(strings.Join(p.Title.Remarks(), " "))
	use := p.Use()
	samples := len(use.Weights) + len(use.Energies) + len(use.Flags)
	rows += (samples*sampleRoom + columns - 1) / columns
	rows += folded(strings.Join(p.Key(use), " "))
	if len(use.Symbols) > 0 {
		rows += noteRows
	}
	return rows + len(p.Table.Set(columns))
}
