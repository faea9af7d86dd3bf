package svg

import (
	"strconv"
	"strings"

	"example.com/lugbook/diagram/ink"
)

// pathData writes a path in steps from point to point, which takes the fewest bytes.
type pathData struct {
	strings.Builder
	at, start ink.Point
}

func data(path []ink.Step) string {
	var d pathData
	for _, s := range path {
		d.step(s)
	}
	return d.String()
}

func (d *pathData) step(s ink.Step) {
	dx, dy := s.To.X-d.at.X, s.To.Y-d.at.Y
	switch s.Op {
	case ink.Move:
		if d.Len() == 0 {
			d.write('M', s.To.X, s.To.Y)
		} else {
			d.write('m', dx, dy)
		}
		d.start = s.To
	case ink.Quad:
		d.write('q', s.By.X-d.at.X, s.By.Y-d.at.Y, dx, dy)
	case ink.Half:
		r := max(dx, -dx, dy, -dy) / 2
		d.write('a', r, r, 0, 0, 1, dx, dy)
	case ink.Close:
		d.WriteByte('z')
		d.at = d.start
		return
	default:
		d.line(dx, dy)
	}
	d.at = s.To
}

func (d *pathData) line(dx, dy int) {
	switch {
	case dy == 0 && dx != 0:
		d.write('h', dx)
	case dx == 0 && dy != 0:
		d.write('v', dy)
	case dx != 0:
		d.write('l', dx, dy)
	}
}

// write writes a letter and its numbers. A minus sign parts numbers as well as a blank.
func (d *pathData) write(letter byte, numbers ...int) {
	d.WriteByte(letter)
	for i, n := range numbers {
		if i > 0 && n >= 0 {
			d.WriteByte(' ')
		}
		d.WriteString(strconv.Itoa(n))
	}
}

// dots is a path of lines without length.
func dots(at []ink.Point) string {
	var d pathData
	for _, p := range at {
		d.step(ink.Step{Op: ink.Move, To: p})
		d.write('h', 0)
	}
	return d.String()
}
