package export

import (
	"io"

	"example.com/lugbook/diagram"
	"example.com/lugbook/diagram/text"
)

// ASCII is a drawing in printable ASCII alone.
var ASCII = Format{
	Name: "ascii", Ext: ".asc", About: "printable ASCII alone, for any printer and terminal",
	Page:  textPage,
	Write: func(w io.Writer, d *diagram.Drawing) error { return writeText(w, d, text.Options{ASCII: true}) },
}
