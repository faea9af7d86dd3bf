package export

import (
	"io"

	"example.com/lugbook/diagram"
	"example.com/lugbook/diagram/text"
)

// Text pages in cells: what is wider than a page, or higher, is split by zone.
const (
	textColumns = 120
	textRows    = 150
)

// Text is a drawing in box-drawing characters.
var Text = Format{
	Name: "text", Ext: ".txt", About: "box-drawing characters, for terminals and plain files",
	Page:  textPage,
	Write: func(w io.Writer, d *diagram.Drawing) error { return writeText(w, d, text.Options{}) },
}

func textPage(columns int) diagram.Options {
	if columns == 0 {
		columns = textColumns
	}
	return diagram.Options{Width: columns, Height: textRows}
}

// writeText writes the pages one after the other, a blank line between them.
func writeText(w io.Writer, d *diagram.Drawing, o text.Options) error {
	for i := range d.Pages {
		page := text.Render(&d.Pages[i], o).String()
		if i > 0 {
			page = "\n" + page
		}
		if _, err := io.WriteString(w, page); err != nil {
			return err
		}
	}
	return nil
}
