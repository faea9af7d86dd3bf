package png

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"hash/crc32"
	"image"
	"image/color"
	"image/png"
	"io"

	"example.com/lugbook/diagram/ink"
	"example.com/lugbook/diagram/scene"
)

// DefaultDPI is the resolution where none is asked for: at it the smallest letters are
// twenty pixels high.
const DefaultDPI = 200

// The resolutions that can be asked for. More would take gigabytes for a sheet.
const (
	LeastDPI = 50
	MostDPI  = 600
)

// Options chooses how a page is painted.
type Options struct {
	DPI int // pixels per inch; 0 for [DefaultDPI]
}

// Render paints a page on its sheet of paper and writes it as a PNG file that knows its
// size on paper. It fails if the resolution is out of range, and with the error of the
// writer.
func Render(w io.Writer, p *scene.Page, o Options) error {
	if o.DPI == 0 {
		o.DPI = DefaultDPI
	}
	if o.DPI < LeastDPI || o.DPI > MostDPI {
		return fmt.Errorf("%d pixels per inch: expected %d to %d", o.DPI, LeastDPI, MostDPI)
	}
	picture, err := paint(ink.Set(p), o.DPI)
	if err != nil {
		return err
	}
	var file bytes.Buffer
	if err := png.Encode(&file, picture); err != nil {
		return err
	}
	_, err = w.Write(sized(file.Bytes(), o.DPI))
	return err
}

// nanometresPerInch is the length of an inch.
const nanometresPerInch = 25_400_000

// paint draws a sheet.
func paint(s *ink.Sheet, dpi int) (*image.RGBA, error) {
	c := canvas{scale: ratio{s.Unit * dpi * sub, ink.Fine * nanometresPerInch}, letters: map[letter][]polygon{}}
	width := pixels(s.Paper.WidthMM, dpi)
	height := pixels(s.Paper.HeightMM, dpi)
	c.picture = image.NewRGBA(image.Rect(0, 0, width, height))
	for i := range c.picture.Pix {
		c.picture.Pix[i] = 0xff
	}
	for _, g := range s.Groups {
		for _, m := range g.Marks {
			if m.Shape != ink.Letters {
				c.mark(m)
			} else if err := c.text(m); err != nil {
				return nil, err
			}
		}
	}
	return c.picture, nil
}

// pixels is the whole number of pixels in a length.
func pixels(mm float64, dpi int) int { return max(1, int(mm*1e6+0.5)*dpi/nanometresPerInch) }

// mark fills a mark and draws its line.
func (c *canvas) mark(m ink.Mark) {
	paths := c.flatten(m.Outline())
	if shade, ok := m.Pen.Fill.Light(); ok {
		var areas []polygon
		for _, p := range paths {
			areas = append(areas, p.points)
		}
		c.fill(areas, rgba(shade))
	}
	if shade, ok := m.Pen.Line.Light(); ok {
		width := c.scale.of(m.Pen.Width * ink.Fine / 10)
		on, off := c.scale.of(m.Pen.Dash.On*ink.Fine), c.scale.of(m.Pen.Dash.Off*ink.Fine)
		var areas []polygon
		for _, p := range paths {
			for _, piece := range p.dashed(on, off) {
				areas = append(areas, piece.stroke(width)...)
			}
		}
		c.fill(areas, rgba(shade))
	}
}

func rgba(s ink.Shade) color.RGBA { return color.RGBA{s[0], s[1], s[2], 0xff} }

// headerEnd is where the first chunk of a PNG file ends: after the signature of 8 bytes
// and a header of 13 with its length, name and checksum.
const headerEnd = 8 + 12 + 13

// sized adds the chunk that tells the pixels per metre, right after the header.
func sized(file []byte, dpi int) []byte {
	perMetre := uint32((dpi*10000 + 127) / 254)
	chunk := binary.BigEndian.AppendUint32(nil, 9)
	chunk = append(chunk, "pHYs"...)
	chunk = binary.BigEndian.AppendUint32(chunk, perMetre)
	chunk = binary.BigEndian.AppendUint32(chunk, perMetre)
	chunk = append(chunk, 1) // the unit is the metre
	chunk = binary.BigEndian.AppendUint32(chunk, crc32.ChecksumIEEE(chunk[4:]))
	return append(file[:headerEnd:headerEnd], append(chunk, file[headerEnd:]...)...)
}
