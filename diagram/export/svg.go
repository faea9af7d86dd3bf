package export

import (
	"io"

	"example.com/lugbook/diagram"
	"example.com/lugbook/diagram/svg"
)

// svgColumns is the width at which a sheet of some fifty wires has about the
// proportions of an A4 page.
const svgColumns = 160

// SVG is a drawing on one A4 page.
var SVG = Format{
	Name: "svg", Ext: ".svg", About: "one A4 page for browsers and printers",
	Page: func(columns int) diagram.Options {
		if columns == 0 {
			columns = svgColumns
		}
		return diagram.Options{Width: columns}
	},
	Write: func(w io.Writer, d *diagram.Drawing) error {
		_, err := svg.Render(w, &d.Pages[0], svg.Options{})
		return err
	},
}
