package export

import "example.com/lugbook/diagram/pdf"

// PDF is a drawing for printers, all pages in one file.
var PDF = Format{
	Name: "pdf", Ext: ".pdf", About: "one file with all pages, for printers and to send on",
	Paper: true,
	Write: pdf.Render,
}
