package ink

import (
	"example.com/lugbook/diagram/paper"
	"example.com/lugbook/diagram/scene"
)

// Measures of a sheet. The blank between the frame of the sheet and what is in it is a
// column on either hand; half a row above and below the drawing and the title block.
const (
	cellSize     = paper.CellWidth * 1000 / CellW // nanometres of a unit where a cell has its full size
	insetX       = CellW
	insetY       = CellH / 2
	leastColumns = 20 // of the title block, however narrow the paper
)

// place is the paper divided up: where the drawing and the title block lie.
type place struct {
	unit             int // nanometres
	w, h             int // units of the paper
	frame            Mark
	drawX, drawY     int // units: origin of the drawing
	blockY, blockCol int // top of the title block in units, its width in columns
	block            []blockLine
}

// fit sets a page on its paper; on A4, whichever way up shrinks it less, if it names none.
func fit(p *scene.Page) (scene.Paper, place) {
	if p.Paper.WidthMM > 0 && p.Paper.HeightMM > 0 {
		return p.Paper, divide(p, p.Paper)
	}
	wide, tall := divide(p, paper.A4.Landscape()), divide(p, paper.A4.Portrait())
	if tall.unit > wide.unit {
		return paper.A4.Portrait(), tall
	}
	return paper.A4.Landscape(), wide
}

// divide finds the largest size, up to the full one, at which drawing and title block fit
// a paper. The block takes fewer lines the smaller the letters, so it is set anew at each.
func divide(p *scene.Page, sheet scene.Paper) place {
	const margin = paper.Margin * 1000
	width, height := nanometres(sheet.WidthMM), nanometres(sheet.HeightMM)
	innerW, innerH := max(width-2*margin, 1), max(height-2*margin, 1)
	needW, needH := p.W*CellW+2*insetX, p.H*CellH+4*insetY
	words := blockWords(p)
	var at place
	for unit := max(1, min(cellSize, innerW/max(needW, 1), innerH/max(needH, 1))); ; unit = max(1, unit-unit/200-1) {
		at.unit = unit
		at.blockCol = max((innerW/unit-2*insetX)/CellW, leastColumns)
		at.block = words.set(at.blockCol)
		if unit == 1 || (needH+len(at.block)*CellH)*unit <= innerH {
			break
		}
	}
	at.w, at.h = width/at.unit, height/at.unit
	x, y := margin/at.unit, margin/at.unit
	at.frame = Mark{Shape: Rect, Pen: penSheet, At: Point{x, y}, W: at.w - 2*x, H: at.h - 2*y}
	at.blockY = y + at.frame.H - len(at.block)*CellH - insetY
	at.drawX = x + (at.frame.W-p.W*CellW)/2
	at.drawY = y + (at.blockY-insetY-y-p.H*CellH)/2
	return at
}

// nanometres of a length in millimetres that is given to the micrometre.
func nanometres(mm float64) int { return int(mm*1000+0.5) * 1000 }

// Percent is the size of the drawing, where 100 is the full size: a column of 2.1 mm.
func (s *Sheet) Percent() int { return s.Unit * 100 / cellSize }

// capHeight is the height of capitals in thousandths of an em, measured on DejaVu Sans
// Mono and about that of other common monospaced fonts.
const capHeight = 729

// TextHeight is the height of capitals in micrometres.
func (s *Sheet) TextHeight() int { return Em * capHeight / 1000 * s.Unit / 10 / 1000 }
