package svg

import (
	"fmt"
	"io"
	"strconv"
	"strings"

	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/model/clean"
)

// Options chooses how a page is painted.
type Options struct {
	Paper Paper
	// IDPrefix goes before every id of the file, so that several drawings can stand
	// in one HTML page.
	IDPrefix string
}

// Result tells how the page came out on paper.
type Result struct {
	Landscape  bool
	Scale      int     // per cent of full size, where a column is 2.5 mm wide
	TextHeight float64 // height of capital letters in mm
}

// capHeight is the height of capitals of the 13-unit letters, in thousandths of a
// unit, measured on DejaVu Sans Mono (0.729 em).
const capHeight = 13 * 729

// Render writes a page as an SVG file that fills one sheet of paper. Equal pages
// give equal bytes. The error is that of the writer.
func Render(w io.Writer, p *scene.Page, o Options) (Result, error) {
	s := fit(p, o.Paper)
	d := painter{document: document{ids: map[string]int{}, pre: o.IDPrefix}, page: p, sheet: s}
	d.head()
	d.open("g", attr{"transform", fmt.Sprintf("translate(%d %d)", s.drawX, s.drawY)})
	d.zones()
	for _, b := range p.Boxes {
		d.box(b)
	}
	d.wires()
	ends := d.wireEnds()
	for _, b := range p.Boxes {
		d.terminals(b, ends)
	}
	for _, f := range p.Flags {
		d.flag(f)
	}
	d.labels()
	d.flows()
	d.pieces()
	d.close("g")
	d.titleBlock()
	d.close("svg")
	_, err := w.Write(d.buf.Bytes())
	return Result{
		Landscape:  s.landscape,
		Scale:      s.scale * 100 / fullScale,
		TextHeight: float64(capHeight*s.scale/10000) / 100,
	}, err
}

type painter struct {
	document
	page  *scene.Page
	sheet sheet
}

func millimetres(micrometres int) string {
	return strconv.FormatFloat(float64(micrometres)/1000, 'f', -1, 64) + "mm"
}

// head opens the file: size, title, description and style.
func (d *painter) head() {
	s := d.sheet
	title, desc := d.id("title"), d.id("desc")
	d.open("svg", attr{"xmlns", "http://www.w3.org/2000/svg"}, attr{"class", "lb"},
		attr{"viewBox", fmt.Sprintf("0 0 %d %d", s.viewW, s.viewH)},
		attr{"width", millimetres(s.paperW)}, attr{"height", millimetres(s.paperH)},
		attr{"role", "img"}, attr{"aria-labelledby", title + " " + desc})
	what, issue := d.page.Title.Heading()
	d.text("title", strings.Join(append(what, issue...), ", "), attr{"id", title})
	d.text("desc", d.description(), attr{"id", desc})
	d.open("style")
	d.buf.WriteString(style())
	d.close("style")
	d.empty("rect", attr{"class", "page"}, attr{"width", s.viewW}, attr{"height", s.viewH})
	d.empty("rect", attr{"class", "sheet"}, attr{"x", s.frameX}, attr{"y", s.frameY}, attr{"width", s.frameW}, attr{"height", s.frameH})
}

// description says in words what the drawing holds.
func (d *painter) description() string {
	p := d.page
	kind := "Wiring drawing"
	if p.Title.View != "" {
		kind = "Drawing of kind " + clean.Line(p.Title.View)
	}
	text := fmt.Sprintf("%s with %s and %s", kind, count(len(p.Boxes), "part"), count(len(p.Wires), "wire"))
	var names []string
	for _, z := range p.Zones {
		name := z.Name
		if name == "" {
			name = z.ID
		}
		names = append(names, clean.Line(name))
	}
	if len(names) > 0 {
		text += fmt.Sprintf(" in %s: %s", count(len(names), "zone"), strings.Join(names, ", "))
	}
	text += "."
	for _, remark := range p.Title.Remarks() {
		text += " " + remark
	}
	return text
}

func count(n int, word string) string {
	if n == 1 {
		return "1 " + word
	}
	return strconv.Itoa(n) + " " + word + "s"
}

// baseline is how far below the middle of its row a text stands, so that its capitals
// are centred.
const baseline = 5

// line writes text into cells, pinned to their width whatever the font. The row is
// given by its middle in units.
func (d *painter) line(x, middle int, class, text string) {
	attrs := []attr{{"x", x}, {"y", middle + baseline}}
	if class != "" {
		attrs = append(attrs, attr{"class", class})
	}
	if n := scene.Width(text); n > 1 {
		attrs = append(attrs, attr{"textLength", n * cellW}, attr{"lengthAdjust", "spacingAndGlyphs"})
	}
	d.text("text", text, attrs...)
}

// write writes text into the cells of the drawing.
func (d *painter) write(at scene.Point, class, text string) {
	trimmed := strings.TrimLeft(text, " ")
	at.X += scene.Width(text) - scene.Width(trimmed)
	if trimmed = strings.TrimRight(trimmed, " "); trimmed != "" {
		d.line(at.X*cellW, at.Y*cellH+cellH/2, class, trimmed)
	}
}

// plate covers the lines behind a text of n cells, and some units more to the left
// and right.
func (d *painter) plate(at scene.Point, n, more int) {
	d.empty("rect", attr{"class", "plate"}, attr{"x", at.X*cellW - more}, attr{"y", at.Y*cellH + 1},
		attr{"width", n*cellW + 2*more}, attr{"height", cellH - 2})
}
