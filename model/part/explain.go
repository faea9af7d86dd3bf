package part

import (
	"fmt"
	"strings"
	"text/tabwriter"

	"example.com/lugbook/model"
	"example.com/lugbook/model/clean"
)

// width is the column at which running text is wrapped.
const width = 78

// Explain prints a kind for a person: what it is, its terminals, its control, what is
// electrically inside and its figures with their sources. Every text in it is safe to
// print.
func Explain(d model.Definition) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s: %s\n", clean.Line(d.Kind), clean.Line(d.Title))
	fmt.Fprintf(&b, "family %s, designator %s\n\n%s", d.Family, clean.Line(d.Designator), wrap(clean.Line(d.About)))
	if c := d.Control; c != nil {
		fmt.Fprintf(&b, "\nFollows the control %s: %s; at rest %s.\n", c.Sets, clean.Line(strings.Join(c.Positions, ", ")), clean.Line(c.Rest))
	}
	table(&b, "Terminals", []string{"name", "form", "pole", "serves", "means"}, terminalRows(&d))
	table(&b, "Inside", []string{"name", "what it is"}, elementRows(&d))
	table(&b, "Figures", []string{"name", "value", "source"}, ratingRows(&d))
	return b.String()
}

func terminalRows(d *model.Definition) [][]string {
	var rows [][]string
	for _, t := range d.Terminals {
		form := string(t.Form)
		if !t.Stud.IsZero() {
			form += " " + t.Stud.String()
		}
		rows = append(rows, []string{t.Name, form, string(t.Pole), string(t.Serves), t.Means})
	}
	return rows
}

func elementRows(d *model.Definition) [][]string {
	var rows [][]string
	for i := range d.Elements {
		rows = append(rows, []string{d.Elements[i].ID, describe(d, &d.Elements[i])})
	}
	return rows
}

func ratingRows(d *model.Definition) [][]string {
	var rows [][]string
	for _, r := range d.Ratings {
		rows = append(rows, []string{r.Name, r.Value.String(), r.Source})
	}
	return rows
}

// table prints rows under a heading; nothing if there are none.
func table(b *strings.Builder, title string, head []string, rows [][]string) {
	if len(rows) == 0 {
		return
	}
	fmt.Fprintf(b, "\n%s\n", title)
	w := tabwriter.NewWriter(b, 0, 0, 2, ' ', 0)
	for _, row := range append([][]string{head}, rows...) {
		for i, cell := range row {
			if cell == "" {
				cell = "-"
			}
			row[i] = clean.Line(cell)
		}
		fmt.Fprintf(w, "  %s\n", strings.Join(row, "\t"))
	}
	w.Flush() // a strings.Builder takes everything
}

// wrap breaks running text into lines, each ended by a newline.
func wrap(text string) string {
	var b strings.Builder
	column := 0
	for _, word := range strings.Fields(text) {
		switch n := len([]rune(word)); {
		case column == 0:
			column = n
		case column+1+n > width:
			b.WriteByte('\n')
			column = n
		default:
			b.WriteByte(' ')
			column += 1 + n
		}
		b.WriteString(word)
	}
	b.WriteByte('\n')
	return b.String()
}
