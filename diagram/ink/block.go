package ink

import (
	"strings"

	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/symbol"
)

// blockLine is a line of what stands below the drawing: texts and samples, each at a column.
type blockLine struct {
	rule    bool // no more than a rule
	texts   []blockText
	samples []sample
}

type blockText struct {
	col  int
	pen  Pen
	text string
}

// sample is a piece of legend: a line of a weight, the mark of a flag or the sign of a
// change, then words.
type sample struct {
	kind   sampleKind
	col    int
	weight scene.Weight
	flag   scene.FlagKind
	energy scene.Energy
	change scene.Change
	words  string
}

type sampleKind uint8

const (
	lineSample sampleKind = iota
	flowSample            // a line that carries current
	flagSample
	changeSample // a line of a wire that changed
)

// block is what stands below the drawing, before it is set in lines.
type block struct {
	left, right, remarks, key string
	samples                   []sample
	table                     scene.Table
}

func blockWords(p *scene.Page) block {
	what, issue := p.Title.Heading()
	use := p.Use()
	key := p.Key(use)
	if len(use.Symbols) > 0 {
		key = append(key, "Drawn with "+symbol.Note+".")
	}
	b := block{
		left: strings.Join(what, " / "), right: strings.Join(issue, " / "),
		remarks: strings.Join(p.Title.Remarks(), " "), key: strings.Join(key, " "), table: p.Table,
	}
	for _, w := range use.Weights {
		b.samples = append(b.samples, sample{weight: w, words: w.String()})
	}
	for _, e := range use.Energies {
		b.samples = append(b.samples, sample{weight: scene.Power, energy: e, words: e.String()})
	}
	if use.Carries {
		b.samples = append(b.samples, sample{kind: flowSample, weight: scene.Power, energy: scene.Live, words: "carries current"})
	}
	for _, c := range use.Changes {
		if c.Sign() != "" {
			b.samples = append(b.samples, sample{kind: changeSample, weight: scene.Power, change: c, words: c.String()})
		}
	}
	for _, f := range use.Flags {
		b.samples = append(b.samples, sample{kind: flagSample, flag: f, words: f.String()})
	}
	return b
}

// set sets the block in lines of a number of columns.
func (b block) set(columns int) []blockLine {
	var lines []blockLine
	for _, row := range b.table.Set(columns) {
		l := blockLine{}
		for _, e := range row {
			pen := penText
			if e.Head {
				pen = penBold
			}
			l.texts = append(l.texts, blockText{e.Column, pen, e.Text})
		}
		lines = append(lines, l)
	}
	if len(lines) > 0 {
		lines = append(lines, blockLine{rule: true})
	}
	switch width := scene.Width(b.left) + scene.Width(b.right); {
	case width == 0:
	case width+2 <= columns:
		right := blockText{columns - scene.Width(b.right), penBold, b.right}
		lines = append(lines, blockLine{texts: []blockText{{0, penBold, b.left}, right}})
	default:
		lines = folded(folded(lines, b.left, columns, penBold), b.right, columns, penBold)
	}
	lines = folded(lines, b.remarks, columns, penText)
	lines = append(lines, b.legend(columns)...)
	return folded(lines, b.key, columns, penText)
}

func folded(lines []blockLine, text string, columns int, pen Pen) []blockLine {
	for _, l := range scene.Fold(text, columns) {
		lines = append(lines, blockLine{texts: []blockText{{0, pen, l}}})
	}
	return lines
}

const (
	lineCols = 5 // columns of a sampled line, with the blank behind it
	markCols = 2 // columns of a sampled mark, likewise
	gapCols  = 3
)

// cols is the number of columns before the words.
func (s sample) cols() int {
	if s.kind == flagSample {
		return markCols
	}
	return lineCols
}

// legend sets the samples in lines.
func (b block) legend(columns int) []blockLine {
	var lines []blockLine
	col := 0
	for _, s := range b.samples {
		width := s.cols() + scene.Width(s.words)
		if len(lines) == 0 || col+width > columns {
			lines, col = append(lines, blockLine{}), 0
		}
		s.col = col
		last := &lines[len(lines)-1]
		last.samples = append(last.samples, s)
		col += width + gapCols
	}
	return lines
}

// marks draws a sample that begins at a place.
func (s sample) marks(x, middle int) []Mark {
	const length = (lineCols - 1) * CellW
	words := written(x+s.cols()*CellW, middle, penText, s.words)
	if s.kind == flagSample {
		return append(flagMark(s.flag, scene.West, x+CellW/2, middle), words)
	}
	path := straight(x, middle, x+length, middle)
	var marks []Mark
	if s.energy == scene.Live {
		marks = append(marks, Mark{Pen: penGlow, Path: path})
	}
	wire := scene.Wire{Weight: s.weight, Change: s.change, Flow: scene.Flow{Energy: s.energy}}
	body := Ink
	if s.weight == scene.Trunk {
		body, _ = Insulation("") // as runs are drawn: they have no colour of their own
	}
	marks = append(marks, strokes(wire, body, "", path)...)
	switch {
	case s.kind == flowSample:
		marks = append(marks, arrow(x+length/2, middle, scene.East))
	case s.kind == changeSample:
		marks = append(marks, signAt(x+length/2, middle, s.change)...)
	case s.energy == scene.Unjudged:
		left := x + (length-CellW)/2
		ground := Mark{Shape: Rect, Pen: penPaper, At: Point{left, middle - CellH/2}, W: CellW, H: CellH}
		marks = append(marks, ground, written(left, middle, penAlarm, "?"))
	}
	return append(marks, words)
}
