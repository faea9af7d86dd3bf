package svg

import (
	"strings"

	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/symbol"
)

// blockLine is a line of the title block: text at the left and the right, or samples.
type blockLine struct {
	left, right string
	bold        bool
	samples     []sample
}

// sample is a piece of legend: a line of a weight or the mark of a flag, then words.
type sample struct {
	col    int
	weight scene.Weight
	flag   scene.FlagKind
	isFlag bool
	energy scene.Energy
	flows  bool // a line that carries current
	words  string
}

var weightWords = [...]string{scene.Control: "control", scene.Power: "power", scene.Traction: "traction", scene.Mains: "mains", scene.Trunk: "run with all its wires"}

var flagWords = [...]string{scene.OffPage: "goes on where named", scene.Cut: "cut end", scene.Capped: "capped end", scene.Untraced: "not traced further"}

// block is what a title block says, before it is set in lines.
type block struct {
	left, right, remarks, key string
	samples                   []sample
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
		remarks: strings.Join(p.Title.Remarks(), " "), key: strings.Join(key, " "),
	}
	for _, w := range use.Weights {
		b.samples = append(b.samples, sample{weight: w, words: weightWords[w]})
	}
	for _, e := range use.Energies {
		b.samples = append(b.samples, sample{weight: scene.Power, energy: e, words: e.String()})
	}
	if use.Carries {
		b.samples = append(b.samples, sample{weight: scene.Power, energy: scene.Live, flows: true, words: "carries current"})
	}
	for _, f := range use.Flags {
		b.samples = append(b.samples, sample{isFlag: true, flag: f, words: flagWords[f]})
	}
	return b
}

// set sets the title block in lines of a number of columns.
func (b block) set(columns int) []blockLine {
	var lines []blockLine
	switch width := scene.Width(b.left) + scene.Width(b.right); {
	case width == 0:
	case width+2 <= columns:
		lines = append(lines, blockLine{left: b.left, right: b.right, bold: true})
	default:
		lines = folded(folded(lines, b.left, columns, true), b.right, columns, true)
	}
	lines = folded(lines, b.remarks, columns, false)
	lines = append(lines, b.legend(columns)...)
	return folded(lines, b.key, columns, false)
}

func folded(lines []blockLine, text string, columns int, bold bool) []blockLine {
	for _, l := range scene.Fold(text, columns) {
		lines = append(lines, blockLine{left: l, bold: bold})
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
	if s.isFlag {
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
