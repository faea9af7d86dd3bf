package png

import (
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"example.com/lugbook/diagram/ink"
	"example.com/lugbook/diagram/ink/face"
)

// fonts are the faces that were read.
type fonts struct {
	faces [3]*sfnt.Font
	buf   sfnt.Buffer
}

// letter is one letter of a face in a size, in sixty-fourths of a pixel.
type letter struct {
	face ink.Face
	em   fixed.Int26_6
	rune rune
}

// text fills the letters of a text. It fails if an embedded font cannot be read.
func (c *canvas) text(m ink.Mark) error {
	font := &c.fonts.faces[m.Pen.Face]
	if *font == nil {
		parsed, err := face.Parse(m.Pen.Face)
		if err != nil {
			return err
		}
		*font = parsed
	}
	at, em := m.Letters()
	size := fixed.Int26_6(c.scale.of(em) * 64 / sub)
	var areas []polygon
	for i, r := range []rune(face.Known(*font, m.Text)) {
		outline, err := c.outline(*font, letter{m.Pen.Face, size, r})
		if err != nil {
			return err
		}
		origin := c.at(ink.Point{X: at.X + i*em*face.Advance/1000, Y: at.Y})
		for _, area := range outline {
			moved := make(polygon, len(area))
			for k, p := range area {
				moved[k] = point{p.x + origin.x, p.y + origin.y}
			}
			areas = append(areas, moved)
		}
	}
	if shade, ok := m.Pen.Fill.Light(); ok {
		c.fill(areas, rgba(shade))
	}
	return nil
}

// outline is the outline of a letter about the left end of its foot.
func (c *canvas) outline(font *sfnt.Font, l letter) ([]polygon, error) {
	if areas, ok := c.letters[l]; ok {
		return areas, nil
	}
	glyph, err := font.GlyphIndex(&c.fonts.buf, l.rune)
	if err != nil {
		return nil, err
	}
	segments, err := font.LoadGlyph(&c.fonts.buf, glyph, l.em, nil)
	if err != nil {
		return nil, err
	}
	var areas []polygon
	for _, s := range segments {
		if s.Op == sfnt.SegmentOpMoveTo {
			areas = append(areas, polygon{step(s.Args[0])})
			continue
		}
		now := &areas[len(areas)-1]
		from := (*now)[len(*now)-1]
		switch s.Op {
		case sfnt.SegmentOpQuadTo:
			by, to := step(s.Args[0]), step(s.Args[1])
			for i := 1; i <= curvePieces; i++ {
				*now = append(*now, quadratic(from, by, to, i))
			}
		case sfnt.SegmentOpCubeTo:
			for i := 1; i <= curvePieces; i++ {
				*now = append(*now, cubic(from, step(s.Args[0]), step(s.Args[1]), step(s.Args[2]), i))
			}
		default:
			*now = append(*now, step(s.Args[0]))
		}
	}
	c.letters[l] = areas
	return areas, nil
}

// step is a place in a font's outline in steps of a pixel.
func step(p fixed.Point26_6) point { return point{int(p.X) * sub / 64, int(p.Y) * sub / 64} }

// quadratic is the point of a quadratic curve some pieces from its start.
func quadratic(a, b, c point, i int) point {
	const n = curvePieces
	j := n - i
	mix := func(a, b, c int) int { return (a*j*j + 2*b*j*i + c*i*i) / (n * n) }
	return point{mix(a.x, b.x, c.x), mix(a.y, b.y, c.y)}
}
