package svg

import "example.com/lugbook/diagram/scene"

// Paper is a size of paper.
type Paper uint8

// The papers.
const (
	A4     Paper = iota // 297 x 210 mm (ISO 216)
	Letter              // 279.4 x 215.9 mm (ANSI Y14.1 size A)
)

// size is the paper's long and short side in micrometres.
func (p Paper) size() (long, short int) {
	if p == Letter {
		return 279400, 215900
	}
	return 297000, 210000
}

const (
	cellW, cellH = 8, 16 // units of a cell
	margin       = 10000 // micrometres on every side
	fullScale    = 312   // micrometres of a unit where nothing is shrunk: a column is 2.5 mm
	inset        = 8     // units between the sheet's frame and what is in it
	leastColumns = 20    // of the title block, however narrow the paper
)

// sheet is the paper divided up: where the drawing and the title block lie.
type sheet struct {
	landscape        bool
	paperW, paperH   int // micrometres
	scale            int // micrometres of a unit
	viewW, viewH     int // units
	frameX, frameY   int // units: the frame within the margins
	frameW, frameH   int
	drawX, drawY     int // units: origin of the drawing
	blockY, blockCol int // top of the title block in units, its width in columns
	block            []blockLine
}

// fit chooses the way up of the paper that shrinks the page less, landscape if equal.
func fit(p *scene.Page, paper Paper) sheet {
	long, short := paper.size()
	wide, tall := divide(p, long, short), divide(p, short, long)
	wide.landscape = true
	if tall.scale > wide.scale {
		return tall
	}
	return wide
}

// divide finds the largest scale at which drawing and title block fit a paper. The
// block takes fewer lines the smaller the scale, so it is set anew at each.
func divide(p *scene.Page, paperW, paperH int) sheet {
	s := sheet{paperW: paperW, paperH: paperH}
	innerW, innerH := paperW-2*margin, paperH-2*margin
	needW, needH := p.W*cellW+2*inset, p.H*cellH+4*inset
	words := blockWords(p)
	for s.scale = max(1, min(fullScale, innerW/needW, innerH/needH)); ; s.scale-- {
		s.blockCol = max((innerW/s.scale-2*inset)/cellW, leastColumns)
		s.block = words.set(s.blockCol)
		if s.scale == 1 || (needH+len(s.block)*cellH)*s.scale <= innerH {
			break
		}
	}
	s.viewW, s.viewH = paperW/s.scale, paperH/s.scale
	s.frameX, s.frameY = margin/s.scale, margin/s.scale
	s.frameW, s.frameH = s.viewW-2*s.frameX, s.viewH-2*s.frameY
	s.blockY = s.frameY + s.frameH - len(s.block)*cellH - inset
	s.drawX = s.frameX + (s.frameW-p.W*cellW)/2
	s.drawY = s.frameY + (s.blockY-s.frameY-p.H*cellH)/2
	return s
}
