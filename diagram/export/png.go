package export

import (
	"io"

	"example.com/lugbook/diagram/png"
	"example.com/lugbook/diagram/scene"
)

// PNG is one page of a drawing as a picture.
var PNG = Format{
	Name: "png", Ext: ".png", About: "one picture for each sheet of paper, 200 pixels per inch",
	Paper: true, Single: true,
	Write: func(w io.Writer, pages []scene.Page) error { return png.Render(w, &pages[0], png.Options{}) },
}
