// Package frame divides the screen: it turns a size into the rectangles of the panes.
//
// A smaller screen shows less and never refuses. What goes first is the list of
// findings, then the card, the route, the notice, the hints' room, the drawing and the
// header. The entry line is the last to go.
package frame

import "image"

// Plan says where each pane is. A pane that is not shown has an empty rectangle.
type Plan struct {
	Header  image.Rectangle // one row: job, sheet, what the cursor is on
	Canvas  image.Rectangle // the drawing
	Side    image.Rectangle // the card, or what is open instead
	Below   image.Rectangle // the findings under the card
	Route   image.Rectangle // one row: the studs of the walk
	Reading image.Rectangle // one row: what is selected or typed, in words
	Entry   image.Rectangle // one row
	Notice  image.Rectangle // one row: what happened last, or a finding
	Hints   image.Rectangle // one row: what the keys do now
}

// Sizes from which there is room for more.
const (
	wideColumns   = 180 // card and findings, one above the other
	middleColumns = 110 // card or findings
	splitColumns  = 70  // an open list beside the drawing

	wideSide   = 56
	middleSide = 28
	openSide   = 46
	narrowSide = 40

	routeRows  = 22
	noticeRows = 20
	canvasRows = 8
	hintRows   = 4
	headerRows = 3

	leastCanvas = 30 // columns
)

// Arrange divides a screen of w columns and h rows. open says that a list, a form or a
// card is in use and wants room; walking that the route is wanted.
func Arrange(w, h int, open, walking bool) Plan {
	var p Plan
	w, h = max(w, 1), max(h, 1)
	bottom := h
	row := func(r *image.Rectangle, wanted bool) {
		if wanted && bottom > 0 {
			*r = image.Rect(0, bottom-1, w, bottom)
			bottom--
		}
	}
	row(&p.Hints, h >= hintRows)
	row(&p.Notice, h >= noticeRows)
	row(&p.Entry, true)
	row(&p.Reading, h > 1)
	row(&p.Route, walking && h >= routeRows)
	top := 0
	if h >= headerRows {
		p.Header = image.Rect(0, 0, w, 1)
		top = 1
	}
	if bottom <= top {
		return p
	}
	body := image.Rect(0, top, w, bottom)
	if (h < canvasRows || w < leastCanvas) && !open {
		return p
	}
	p.Canvas = body
	if side := sideWidth(w, open); side > 0 {
		p.Side = image.Rect(max(0, w-side), top, w, bottom)
		p.Canvas.Max.X = max(0, w-side-1)
	}
	if w >= wideColumns && body.Dy() >= 24 {
		middle := top + body.Dy()*3/5
		p.Below = image.Rect(p.Side.Min.X, middle, w, bottom)
		p.Side.Max.Y = middle
	}
	return p
}

// sideWidth is the width of the side column; 0 if there is none.
func sideWidth(w int, open bool) int {
	switch {
	case w >= wideColumns:
		return wideSide
	case w >= middleColumns && open:
		return openSide
	case w >= middleColumns:
		return middleSide
	case !open:
		return 0
	case w >= splitColumns:
		return narrowSide
	default:
		return w
	}
}
