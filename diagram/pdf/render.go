package pdf

import (
	"io"
	"strings"
	"time"

	"codeberg.org/go-pdf/fpdf"
	"golang.org/x/image/font/sfnt"

	"example.com/lugbook/diagram/ink"
	"example.com/lugbook/diagram/ink/face"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/model/clean"
)

// producer is the program that the file names as its maker.
const producer = "lugbook"

// undated stands for the date of a drawing that has none: the file must not tell when it
// was written, or no two would be equal.
var undated = time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)

// Render writes pages as a PDF file, each on its own sheet of paper. The error is that of
// the writer.
func Render(w io.Writer, pages []scene.Page) error {
	d := document{Fpdf: fpdf.NewCustom(&fpdf.InitType{UnitStr: "mm"}), fonts: map[ink.Face]*sfnt.Font{}}
	d.SetCatalogSort(true)
	d.SetProducer(producer, true)
	d.SetCreator(producer, true)
	d.SetMargins(0, 0, 0)
	d.SetAutoPageBreak(false, 0)
	d.SetLineJoinStyle("round")
	leads := targets(pages)
	for i := range pages {
		s := ink.Set(&pages[i])
		if i == 0 {
			d.about(s, &pages[0])
		}
		if err := d.page(s, leads[i]); err != nil {
			return err
		}
		if len(pages) > 1 {
			d.Bookmark(clean.Line(s.Heading), 0, 0)
		}
	}
	return d.Output(w)
}

type document struct {
	*fpdf.Fpdf
	fonts map[ink.Face]*sfnt.Font
	unit  float64 // millimetres of a hundredth of a unit
}

// about fills in what the file says of itself.
func (d *document) about(s *ink.Sheet, p *scene.Page) {
	what, _ := p.Title.Heading()
	d.SetTitle(strings.Join(what, ", "), true)
	d.SetSubject(clean.Line(s.About), true)
	words := []string{"wiring drawing"}
	for _, word := range []string{p.Title.View, p.Title.Sheet, p.Title.System} {
		if word != "" {
			words = append(words, clean.Line(word))
		}
	}
	d.SetKeywords(strings.Join(words, ", "), true)
	made, err := time.Parse(time.DateOnly, p.Title.Date)
	if err != nil {
		made = undated
	}
	d.SetCreationDate(made)
	d.SetModificationDate(made)
}

// page adds a sheet, of which some flags lead to other pages. It fails if an embedded font
// cannot be read.
func (d *document) page(s *ink.Sheet, leads map[string]int) error {
	d.unit = float64(s.Unit) / 1e6 / ink.Fine
	d.AddPageFormat("P", fpdf.SizeType{Wd: s.Paper.WidthMM, Ht: s.Paper.HeightMM})
	for _, g := range s.Groups {
		for _, m := range g.Marks {
			if m.Shape != ink.Letters {
				d.stroke(m)
			} else if err := d.letters(m); err != nil {
				return err
			}
		}
		if to := leads[g.ID]; g.Kind == ink.FlagGroup && to > 0 {
			d.link(g, to)
		}
	}
	return nil
}

// stroke draws a mark along its outline. What is never seen is left out.
func (d *document) stroke(m ink.Mark) {
	style := ""
	if c, ok := m.Pen.Fill.Light(); ok {
		d.SetFillColor(int(c[0]), int(c[1]), int(c[2]))
		style = "F"
	}
	if c, ok := m.Pen.Line.Light(); ok {
		d.SetDrawColor(int(c[0]), int(c[1]), int(c[2]))
		d.SetLineWidth(float64(m.Pen.Width) * ink.Fine / 10 * d.unit)
		d.dash(m.Pen.Dash)
		style += "D"
	}
	if style == "" {
		return
	}
	for _, c := range m.Outline() {
		x, y := d.at(c.To)
		switch {
		case c.Op == ink.Move:
			d.MoveTo(x, y)
		case c.Op == ink.Close:
			d.ClosePath()
		case c.Cubic:
			byX, byY := d.at(c.By)
			onX, onY := d.at(c.On)
			d.CurveBezierCubicTo(byX, byY, onX, onY, x, y)
		default:
			d.LineTo(x, y)
		}
	}
	d.DrawPath(style)
}

func (d *document) at(p ink.Point) (x, y float64) {
	return float64(p.X) * d.unit, float64(p.Y) * d.unit
}

func (d *document) dash(dash ink.Dash) {
	if dash.On == 0 {
		d.SetDashPattern(nil, 0)
		return
	}
	d.SetDashPattern([]float64{float64(dash.On) * ink.Fine * d.unit, float64(dash.Off) * ink.Fine * d.unit}, 0)
}

// family is the name of the font inside the file.
const family = "mono"

var styles = [...]string{ink.Plain: "", ink.Bold: "B", ink.Italic: "I"}

// letters writes a text. A face is embedded when it is first used.
func (d *document) letters(m ink.Mark) error {
	font := d.fonts[m.Pen.Face]
	if font == nil {
		parsed, err := face.Parse(m.Pen.Face)
		if err != nil {
			return err
		}
		font = parsed
		d.fonts[m.Pen.Face] = font
		d.AddUTF8FontFromBytes(family, styles[m.Pen.Face], face.Data(m.Pen.Face))
	}
	text := face.Known(font, m.Text)
	at, em := m.Letters()
	c, _ := m.Pen.Fill.Light()
	d.SetTextColor(int(c[0]), int(c[1]), int(c[2]))
	d.SetFont(family, styles[m.Pen.Face], 1)
	d.SetFontUnitSize(float64(em) * d.unit)
	x, y := d.at(at)
	d.Text(x, y, text)
	return nil
}
