package main

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/clean"
	"example.com/lugbook/model/meter"
)

// cellWidth is the width of a state's column in the table of states.
const cellWidth = 10

// statesReport is what the states command prints.
type statesReport struct {
	job   *model.Job
	sheet model.SheetName
	table meter.Table
	trial meter.Trial // of every setting of the controls; empty if some states alone were asked for
	by    string      // by what it is judged whether the cart moves; empty if there is nothing to judge
}

// mostBreaches is how many settings that break the rule are listed one by one.
const mostBreaches = 8

// breaches lists what is wrong: first in the states, then in other settings.
func (r statesReport) breaches() []string {
	list := r.table.Breaches()
	for i, breach := range r.trial.Breaches {
		if i == mostBreaches {
			return append(list, fmt.Sprintf("and %d settings more", len(r.trial.Breaches)-i))
		}
		list = append(list, breach)
	}
	return list
}

// text is the table for a person to read, in blocks as wide as the page.
func (r statesReport) text(width int) string {
	var b strings.Builder
	t := r.table
	fmt.Fprintf(&b, "%s, sheet %s: volts by test point and state\n", clean.Line(r.job.Title), r.sheet)
	first := labelWidth(t)
	first = min(first, max(cellWidth, width-cellWidth))
	for columns := range slices.Chunk(t.Columns, max(1, (width-first)/cellWidth)) {
		b.WriteByte('\n')
		writeHead(&b, first, columns)
		for i, p := range t.Points {
			writeRow(&b, first, p.Name(), columns, func(c meter.Column) string { return cellText(c, i) })
		}
		writeRow(&b, first, "contactors closed", columns, func(c meter.Column) string { return partNames(c.Motion.Closed) })
		writeRow(&b, first, "drives", columns, func(c meter.Column) string {
			return map[bool]string{true: "yes", false: "no"}[c.Motion.Drives]
		})
		writeRow(&b, first, "must", columns, func(c meter.Column) string {
			return map[meter.Duty]string{meter.Drive: "drive", meter.Stay: "stay"}[c.Motion.Must]
		})
	}
	b.WriteString("\n")
	if len(t.Points) > 0 {
		fmt.Fprintf(&b, "Black probe on %s, or on the second terminal where two are named.\n"+
			"~ floats: nothing drives it there, the figure is what the meter pulls it to.\n* is set by pedal and speed.\nMeter: %s.\n", t.Points[0].Black, meter.Of(r.job.Meter))
	}
	if r.by != "" {
		fmt.Fprintf(&b, "%s\n", r.by)
	}
	breaches := r.breaches()
	for _, breach := range breaches {
		fmt.Fprintf(&b, "%s\n", clean.Line(breach))
	}
	if len(breaches) == 0 {
		fmt.Fprintf(&b, "By what the file says %s.\n", r.verdict())
	}
	return b.String()
}

// verdict is what the states and settings come to if nothing is wrong in any. Where the
// cart must drive in none, that it drives where it must would say nothing.
func (r statesReport) verdict() string {
	if r.trial.Tried == 0 {
		if slices.ContainsFunc(r.table.Columns, func(c meter.Column) bool { return c.Motion.Must == meter.Drive }) {
			return "it drives where it must and nowhere else in these states"
		}
		return "it drives in none of these states, and must in none: nothing shows that it can"
	}
	if r.trial.Asked > 0 {
		return fmt.Sprintf("it drives where it must and nowhere else, in all %d settings of the controls", r.trial.Tried)
	}
	return fmt.Sprintf("it drives in no setting of the controls, and must in none (%d tried): nothing shows that it can", r.trial.Tried)
}

// labelWidth is the width of the first column.
func labelWidth(t meter.Table) int {
	width := len("contactors closed")
	for _, p := range t.Points {
		width = max(width, len(p.Name()))
	}
	return width + 1
}

// writeHead writes the names of the states, broken at their hyphens.
func writeHead(b *strings.Builder, first int, columns []meter.Column) {
	var heads [][]string
	most := 0
	for _, c := range columns {
		head := headWords(clean.Line(c.State.Name))
		heads = append(heads, head)
		most = max(most, len(head))
	}
	for line := range most {
		fmt.Fprintf(b, "%-*s", first, "")
		for _, head := range heads {
			text := ""
			if line >= most-len(head) {
				text = head[line-(most-len(head))]
			}
			fmt.Fprintf(b, "%*s", cellWidth, text)
		}
		b.WriteByte('\n')
	}
}

// headWords breaks the name of a state at its hyphens into lines that fit a column.
func headWords(name string) []string {
	var lines []string
	for _, word := range strings.SplitAfter(name, "-") {
		last := len(lines) - 1
		switch {
		case last >= 0 && len(lines[last])+len(word) < cellWidth:
			lines[last] += word
		default:
			lines = append(lines, cut(word, cellWidth-1))
		}
	}
	return lines
}

// cut shortens a plain text to a width.
func cut(text string, width int) string {
	if len(text) <= width {
		return text
	}
	return text[:max(0, width-2)] + ".."
}

func writeRow(b *strings.Builder, first int, name string, columns []meter.Column, cell func(meter.Column) string) {
	fmt.Fprintf(b, "%-*s", first, cut(clean.Line(name), first-1))
	for _, c := range columns {
		fmt.Fprintf(b, "%*s", cellWidth, cut(cell(c), cellWidth-1))
	}
	b.WriteByte('\n')
}

// cellText is one reading; the word chatter where the sheet comes to no rest.
func cellText(c meter.Column, i int) string {
	if len(c.Chatter) > 0 {
		return "chatter"
	}
	r := c.Cells[i]
	text := fmt.Sprintf("%.2f", r.Value+0)
	if text == "-0.00" {
		text = "0.00"
	}
	switch {
	case r.Floating:
		return "~" + text
	case !r.Known:
		return "*" + text
	}
	return text
}

// partNames lists parts for a column; a count of them if they are too many.
func partNames(ids []model.PartID) string {
	names := make([]string, len(ids))
	for i, id := range ids {
		names[i] = string(id)
	}
	text := strings.Join(names, ",")
	switch {
	case text == "":
		return "-"
	case len(text) >= cellWidth:
		return fmt.Sprintf("%d closed", len(ids))
	}
	return text
}

type statesJSON struct {
	Job    string          `json:"job"`
	Sheet  model.SheetName `json:"sheet"`
	Meter  string          `json:"meter"`
	By     string          `json:"judged-by,omitempty"`
	States []stateJSON     `json:"states"`
	Tried  int             `json:"settings-tried,omitempty"`
	Asked  int             `json:"settings-to-drive"`
	Broken []string        `json:"broken"`
}

type stateJSON struct {
	Name     string             `json:"name"`
	About    string             `json:"about"`
	Must     meter.Duty         `json:"must"`
	Drives   bool               `json:"drives"`
	Asks     bool               `json:"asks-for-current"`
	But      []string           `json:"but,omitempty"`
	Right    bool               `json:"right"`
	Closed   []model.PartID     `json:"contactors-closed"`
	Chatter  []model.PartID     `json:"chatter,omitempty"`
	Readings []pointReadingJSON `json:"readings"`
}

type pointReadingJSON struct {
	Red   string `json:"red"`
	Black string `json:"black"`
	Means string `json:"means"`
	readingJSON
}

func (r statesReport) json() statesJSON {
	t := r.table
	report := statesJSON{Job: r.job.Title, Sheet: r.sheet, Meter: meter.Of(r.job.Meter).String(), By: r.by, States: []stateJSON{},
		Tried: r.trial.Tried, Asked: r.trial.Asked, Broken: append(t.Breaches(), r.trial.Breaches...)}
	if report.Broken == nil {
		report.Broken = []string{}
	}
	for _, c := range t.Columns {
		s := stateJSON{Name: c.State.Name, About: c.State.About, Must: c.Motion.Must, Drives: c.Motion.Drives, Asks: c.Motion.Asks, But: c.Motion.But, Right: c.Breach() == "",
			Closed: append([]model.PartID{}, c.Motion.Closed...), Chatter: c.Chatter, Readings: []pointReadingJSON{}}
		for i, r := range c.Cells {
			p := t.Points[i]
			s.Readings = append(s.Readings, pointReadingJSON{p.Red.String(), p.Black.String(), p.Means, jsonOf(r)})
		}
		report.States = append(report.States, s)
	}
	return report
}

// rounded is a figure to the microvolt: more would be noise of the computation.
func rounded(v float64) float64 { return math.Round(v*1e6)/1e6 + 0 }
