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
	State   bool       // leave room for what the legend says of a state
	OnePage bool       // the whole sheet on one page, however small its letters or wide its rows
}

// Pages of characters: what is wider or higher is split.
const (
	textColumns = 120
	textRows    = 150
)

// stateRows is the room that the legend of a state takes on paper: the kinds of wires, what
// arrows and words in frames stand for.
const stateRows = 5

// Layout says how a sheet is laid out for the format.
func (f Format) Layout(a Ask) diagram.Options {
	if f.Paper {
		return diagram.Options{Shapes: a.onPaper(), Whole: a.OnePage}
	}
	shape := diagram.Shape{Columns: a.Columns, Rows: textRows}
	switch {
	case a.OnePage:
		shape.Rows = 0
	case a.Columns == 0:
		shape.Columns = textColumns
	}
	return diagram.Options{Shapes: []diagram.Shape{shape}, Whole: a.OnePage}
}

// onPaper is what a paper holds, either way that it can lie.
func (a Ask) onPaper() []diagram.Shape {
	size, below := a.Paper, 0
	if size == (paper.Size{}) {
		size = paper.A4
	}
	if a.State {
		below = stateRows
	}
	var shapes []diagram.Shape
	for _, lies := range []scene.Paper{size.Landscape(), size.Portrait()} {
		columns, rows := paper.Cells(lies)
		shapes = append(shapes, diagram.Shape{Columns: columns, Rows: rows - below, Paper: lies})
	}
	return shapes
}
