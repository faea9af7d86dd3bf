package svg

import (
	"fmt"
	"io"
	"slices"
	"strconv"
	"unicode/utf8"

	"example.com/lugbook/diagram/ink"
	"example.com/lugbook/diagram/scene"
)

// Options chooses how a page is painted.
type Options struct {
	// IDPrefix goes before every id of the file, so that several drawings can stand
	// in one HTML page.
	IDPrefix string
}

// Result tells how the page came out on paper.
type Result struct {
	Landscape  bool
	Scale      int     // per cent of full size, where a column is 2.1 mm wide
	TextHeight float64 // height of capital letters in mm
}

// Render writes a page as an SVG file that fills one sheet of paper. Equal pages
// give equal bytes. The error is that of the writer.
func Render(w io.Writer, p *scene.Page, o Options) (Result, error) {
	s := ink.Set(p)
	body := painter{document: document{ids: map[string]int{}, pre: o.IDPrefix}, classes: map[string]bool{}}
	title, desc := body.id("title"), body.id("desc")
	body.groups(s.Groups)
	head := document{ids: body.ids, pre: o.IDPrefix}
	head.open("svg", attr{"xmlns", "http://www.w3.org/2000/svg"}, attr{"class", "lb"},
		attr{"viewBox", fmt.Sprintf("0 0 %d %d", s.W, s.H)},
		attr{"width", millimetres(s.Paper.WidthMM)}, attr{"height", millimetres(s.Paper.HeightMM)},
		attr{"fill", "none"}, attr{"role", "img"}, attr{"aria-labelledby", title + " " + desc})
	head.text("title", s.Heading, attr{"id", title})
	head.text("desc", s.About, attr{"id", desc})
	head.open("style")
	head.buf.WriteString(style(body.rules, o.IDPrefix != ""))
	if o.IDPrefix == "" {
		// A file by itself says what it is printed on; within a page that is the page's to say.
		fmt.Fprintf(&head.buf, "@page{size:%s %s;margin:0}\n", millimetres(s.Paper.WidthMM), millimetres(s.Paper.HeightMM))
	}
	head.close("style")
	body.close("svg")
	_, err := w.Write(append(head.buf.Bytes(), body.buf.Bytes()...))
	return Result{
		Landscape:  s.Paper.WidthMM >= s.Paper.HeightMM,
		Scale:      s.Percent(),
		TextHeight: float64(s.TextHeight()) / 1000,
	}, err
}

func millimetres(mm float64) string { return strconv.FormatFloat(mm, 'f', -1, 64) + "mm" }

type painter struct {
	document
	classes map[string]bool
	rules   []rule // of the pens in use, in the order of first use
	shared  int    // paths that several strokes of a wire share
}

var (
	groupClasses = [...]string{ink.Ground: "g", ink.ZoneGroup: "z", ink.WireGroup: "w", ink.PartGroup: "n", ink.FlagGroup: "e", ink.PieceGroup: "x", ink.BlockGroup: "b"}
	idPrefixes   = [...]string{ink.Ground: "", ink.ZoneGroup: "z-", ink.WireGroup: "w-", ink.PartGroup: "p-", ink.FlagGroup: "f-", ink.PieceGroup: "", ink.BlockGroup: ""}
)

// groups writes groups, those of one kind that follow each other within one of their own.
func (d *painter) groups(groups []ink.Group) {
	for i, g := range groups {
		if i == 0 || groups[i-1].Kind != g.Kind {
			d.open("g", attr{"class", groupClasses[g.Kind]})
			d.buf.WriteByte('\n')
		}
		d.group(g)
		if i+1 == len(groups) || groups[i+1].Kind != g.Kind {
			d.close("g")
		}
	}
}

func (d *painter) group(g ink.Group) {
	id := ""
	if before := idPrefixes[g.Kind]; before != "" {
		id = d.id(before + g.ID)
	}
	d.document.group(id, g.Title)
	shared := ""
	for i, m := range g.Marks {
		switch {
		case m.Pen.Line == ink.Hit:
			d.shared++
			shared = d.id("_" + strconv.Itoa(d.shared))
			d.empty("path", attr{"id", shared}, attr{"d", data(m.Path)})
		case shared != "" && m.Shape == ink.Line && slices.Equal(m.Path, g.Marks[0].Path) && i > 0:
			d.empty("use", attr{"href", "#" + shared}, attr{"class", d.class(m.Pen, false, false)})
		default:
			d.mark(m)
		}
	}
	d.close("g")
}

// class is the class of a pen, with its rule in the style sheet.
func (d *painter) class(p ink.Pen, letters, round bool) string {
	name := class(p, letters)
	if round {
		name = "o" + name
	}
	if name != "" && !d.classes[name] {
		d.classes[name] = true
		d.rules = append(d.rules, rule{name, p, letters, round})
	}
	return name
}

func (d *painter) mark(m ink.Mark) {
	switch m.Shape {
	case ink.Line:
		d.empty("path", attr{"class", d.class(m.Pen, false, false)}, attr{"d", data(m.Path)})
	case ink.Rect:
		attrs := []attr{{"class", d.class(m.Pen, false, false)}, {"x", m.At.X}, {"y", m.At.Y}, {"width", m.W}, {"height", m.H}}
		if m.R > 0 {
			attrs = append(attrs, attr{"rx", m.R})
		}
		d.empty("rect", attrs...)
	case ink.Circle:
		d.empty("circle", attr{"class", d.class(m.Pen, false, false)}, attr{"cx", m.At.X}, attr{"cy", m.At.Y}, attr{"r", m.R})
	case ink.Dots:
		pen := ink.Pen{Line: m.Pen.Fill, Width: 20 * m.R}
		d.empty("path", attr{"class", d.class(pen, false, true)}, attr{"d", dots(m.Dots)})
	case ink.Letters:
		d.letters(m)
	}
}

// pinned is the fewest letters of a text whose length is written out: so few letters of
// another font are not far off.
const pinned = 16

// letters writes a text. Long ones are pinned to their cells, whatever the font.
func (d *painter) letters(m ink.Mark) {
	name := d.class(m.Pen, true, false)
	base := ink.Baseline
	if m.Pen.Size > 0 {
		base = m.Pen.Size * ink.Baseline * 10 / ink.Em
	}
	attrs := []attr{{"x", m.At.X}, {"y", m.At.Y + base}}
	switch {
	case m.Cells == 0:
		name += " mid"
	case utf8.RuneCountInString(m.Text) >= pinned:
		attrs = append(attrs, attr{"textLength", m.Cells * ink.CellW})
	}
	d.text("text", m.Text, append(attrs, attr{"class", name})...)
}
