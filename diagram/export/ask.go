package export

import (
	"example.com/lugbook/diagram"
	"example.com/lugbook/diagram/paper"
	"example.com/lugbook/diagram/scene"
)

// Ask is how a person wants the pages of a drawing.
type Ask struct {
	Columns int        // width of a page of characters; 0 for the usual one
	Paper   paper.Size // of formats for paper; A4 if it is not said
	OnePage bool       // the whole sheet on one page, however small its letters or wide its rows
}

// Pages of characters: what is wider or higher is split.
const (
	textColumns = 120
	textRows    = 150
)

// Layout says how a sheet is laid out for the format.
func (f Format) Layout(a Ask) diagram.Options {
	if f.Paper {
		return diagram.Options{Shapes: onPaper(a.Paper), Whole: a.OnePage}
	}
	switch {
	case a.OnePage:
		return diagram.Options{Shapes: []diagram.Shape{{Columns: a.Columns}}}
	case a.Columns > 0:
		return diagram.Options{Shapes: []diagram.Shape{{Columns: a.Columns, Rows: textRows}}}
	}
	return diagram.Options{Shapes: []diagram.Shape{{Columns: textColumns, Rows: textRows}}}
}

// onPaper is what a paper holds, either way that it can lie.
func onPaper(size paper.Size) []diagram.Shape {
	if size == (paper.Size{}) {
		size = paper.A4
	}
	var shapes []diagram.Shape
	for _, lies := range []scene.Paper{size.Landscape(), size.Portrait()} {
		columns, rows := paper.Cells(lies)
		shapes = append(shapes, diagram.Shape{Columns: columns, Rows: rows, Paper: lies})
	}
	return shapes
}
