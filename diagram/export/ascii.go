package export

import (
	"io"

	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/text"
)

// ASCII is a drawing in printable ASCII alone.
var ASCII = Format{
	Name: "ascii", Ext: ".asc", About: "printable ASCII alone, for any printer and terminal",
	Write: func(w io.Writer, pages []scene.Page) error {
		return writeText(w, pages, text.Options{ASCII: true})
	},
}
