package text

import (
	"strings"

	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/symbol"
)

// leastWidth is the width that a title block gets below a narrower drawing: the
// narrowest page that can be asked for.
const leastWidth = 40

// line is a row below the drawing.
type line struct {
	text string
	role Role
}

// titleBlock is what stands below the drawing: what is shown and which issue of it,
// remarks, and the legend of what the page makes use of.
func titleBlock(p *scene.Page, g *glyphs, width int) []line {
	what, issue := p.Title.Heading()
	left, right := strings.Join(what, " / "), strings.Join(issue, " / ")
	lines := []line{{strings.Repeat(string(g.rule), width), Heading}}
	switch room := width - scene.Width(left) - scene.Width(right); {
	case left == "" && right == "":
	case room >= 2:
		lines = append(lines, line{left + strings.Repeat(" ", room) + right, Heading})
	default:
		for _, part := range []string{left, right} {
			lines = appendFolded(lines, part, width, Heading)
		}
	}
	for _, remark := range p.Title.Remarks() {
		lines = appendFolded(lines, remark, width, Heading)
	}
	use := p.Use()
	lines = appendItems(lines, samples(use, g), width)
	for _, l := range p.Key(use) {
		lines = appendFolded(lines, l, width, Legend)
	}
	if len(use.Symbols) > 0 {
		lines = appendFolded(lines, "Drawn with "+symbol.Note+".", width, Legend)
	}
	lines = append(lines, table(p.Table, width)...)
	if g.ascii {
		for i := range lines {
			lines[i].text = asciiOnly(lines[i].text)
		}
	}
	return lines
}

// table sets the list of a page in columns, a blank line before it.
func table(t scene.Table, width int) []line {
	rows := t.Set(width)
	if len(rows) == 0 {
		return nil
	}
	lines := []line{{"", Legend}}
	for _, row := range rows {
		text := ""
		for _, e := range row {
			text += strings.Repeat(" ", max(0, e.Column-scene.Width(text))) + e.Text
		}
		lines = append(lines, line{text, Legend})
	}
	return lines
}

func appendFolded(lines []line, text string, width int, role Role) []line {
	for _, l := range scene.Fold(text, width) {
		lines = append(lines, line{l, role})
	}
	return lines
}

// appendItems sets items in lines, three blanks apart, and breaks no item.
func appendItems(lines []line, items []string, width int) []line {
	row := ""
	for _, item := range items {
		if row != "" && scene.Width(row)+3+scene.Width(item) > width {
			lines, row = append(lines, line{row, Legend}), ""
		}
		if row != "" {
			row += "   "
		}
		row += item
	}
	if row == "" {
		return lines
	}
	return append(lines, line{row, Legend})
}

// samples explains the line weights and end marks in use, each behind a sample.
func samples(u scene.Usage, g *glyphs) []string {
	var parts []string
	for _, p := range []pen{light, heavy, double} {
		var words []string
		for _, w := range u.Weights {
			if penOf(w) == p {
				words = append(words, w.String())
			}
		}
		if len(words) > 0 {
			parts = append(parts, strings.Repeat(string(g.wire[p][east|west]), 3)+" "+strings.Join(words, "/"))
		}
	}
	for _, e := range u.Energies {
		parts = append(parts, energySample(e, g)+" "+e.String())
	}
	if u.Carries {
		line := g.wire[light][east|west]
		parts = append(parts, string([]rune{line, g.arrow[scene.East], line})+" carries current")
	}
	for _, c := range u.Changes {
		if c.Sign() != "" {
			edge := g.line(scene.Wire{Change: c}, east|west, scene.Point{})
			parts = append(parts, string(edge)+"("+c.Sign()+")"+string(edge)+" "+c.String())
		}
	}
	for _, f := range u.Flags {
		mark, ok := g.flag[f]
		if !ok {
			mark = g.offPage[scene.West]
		}
		parts = append(parts, string(mark)+" "+f.String())
	}
	return parts
}

// sampleCells is the length of the sample of a pattern: two gaps of the widest.
const sampleCells = 8

// energySample is a piece of line in the pattern of what a state does to a wire.
func energySample(e scene.Energy, g *glyphs) string {
	w := scene.Wire{Flow: scene.Flow{Energy: e}}
	cells := make([]rune, sampleCells-1)
	for x := range cells {
		cells[x] = g.line(w, east|west, scene.Point{X: x})
	}
	if e == scene.Unjudged {
		cells = []rune{cells[0], unjudgedSign, cells[0]}
	}
	return string(cells)
}
