package export

import (
	"io"

	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/svg"
)

// SVG is one page of a drawing for browsers and printers.
var SVG = Format{
	Name: "svg", Ext: ".svg", About: "one file for each sheet of paper, for browsers and printers",
	Paper: true, Single: true,
	Write: func(w io.Writer, pages []scene.Page) error {
		_, err := svg.Render(w, &pages[0], svg.Options{})
		return err
	},
}
