package export

import (
	"io"

	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/text"
)

// Text is a drawing in box-drawing characters.
var Text = Format{
	Name: "text", Ext: ".txt", About: "box-drawing characters, for terminals and plain files",
	Write: func(w io.Writer, pages []scene.Page) error { return writeText(w, pages, text.Options{}) },
}

// writeText writes the pages one after the other, a blank line between them.
func writeText(w io.Writer, pages []scene.Page, o text.Options) error {
	for i := range pages {
		page := text.Render(&pages[i], o).String()
		if i > 0 {
			page = "\n" + page
		}
		if _, err := io.WriteString(w, page); err != nil {
			return err
		}
	}
	return nil
}
