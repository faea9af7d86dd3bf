// Package board sets lists and cards on pages: what a view says besides lines and boxes.
//
// A board has pages of a number of columns and rows. Lists go below each other and go on
// on the next page under their heads; cards stand side by side in columns that are filled
// one after the other. What does not fit a page even alone makes that page longer: it is
// never cut off.
package board

import (
	"example.com/lugbook/diagram"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/text"
)

// usualColumns is the width of a board whose pages may have any.
const usualColumns = 120

// mostPages stands for the number of a page that has none yet.
const mostPages = 99

// leastRows is the fewest rows of a page that are left for lists and cards, however much
// stands below them.
const leastRows = 12

// Board is pages in the making.
type Board struct {
	columns, rows int // rows is 0 for pages of any length
	limit         int // rows of the last page, likewise
	shape         diagram.Shape
	like          scene.Page
	pages         []scene.Page
	y             int // first free row of the last page
}

// New is a board without pages. Its pages are like a page without its drawing: title,
// legend, paper. The shape is that of a page with all that stands below it.
func New(shape diagram.Shape, like scene.Page) *Board {
	b := &Board{columns: shape.Columns, shape: shape, like: scene.Page{Title: like.Title, Legend: like.Legend, Paper: shape.Paper}}
	if b.columns == 0 {
		b.columns = usualColumns
	}
	if shape.Rows > 0 {
		b.rows = max(shape.Rows-Foot(like, b.columns), leastRows)
	}
	return b
}

// Foot is the number of rows that stand below a drawing of a number of columns. A page
// without a number counts as one that will have one.
func Foot(like scene.Page, columns int) int {
	like.W, like.H = columns, 0
	if like.Title.Page == 0 {
		like.Title.Page, like.Title.Pages = mostPages, mostPages
	}
	return text.Render(&like, text.Options{}).H
}

// Columns is the width of a page.
func (b *Board) Columns() int { return b.columns }

// Draw adds a drawn page with a title and legend of its own. Lists that follow stand below
// it if they find room there.
func (b *Board) Draw(p scene.Page) {
	b.pages = append(b.pages, p)
	b.y, b.limit = p.H, 0
	if b.shape.Rows > 0 {
		b.limit = b.shape.Rows - Foot(p, p.W)
	}
}

// Pages are the pages, numbered.
func (b *Board) Pages() []scene.Page {
	if len(b.pages) == 0 {
		b.next()
	}
	for i := range b.pages {
		p := &b.pages[i]
		p.Title.Page, p.Title.Pages = i+1, len(b.pages)
	}
	return b.pages
}

func (b *Board) next() {
	b.pages = append(b.pages, b.like)
	b.y, b.limit = 0, b.rows
}

// fits reports whether the last page has room for some rows.
func (b *Board) fits(rows int) bool {
	return len(b.pages) > 0 && (b.shape.Rows == 0 || b.y+rows <= b.limit)
}

// put sets an item on the last page.
func (b *Board) put(it Item, x, y int) {
	p := &b.pages[len(b.pages)-1]
	for _, piece := range it.Pieces {
		piece.Rect.X += x
		piece.Rect.Y += y
		p.Pieces = append(p.Pieces, piece)
	}
	p.W, p.H = max(p.W, x+it.W), max(p.H, y+it.H)
}

// Item is an arrangement of pieces that stays together, from column and row 0 on.
type Item struct {
	W, H   int
	Pieces []scene.Piece
}

// Write adds writing to an item, which grows with it.
func (it *Item) Write(x, y int, text string) *scene.Piece {
	return it.Add(scene.Write(scene.Point{X: x, Y: y}, text))
}

// Add adds a piece to an item, which grows with it.
func (it *Item) Add(p scene.Piece) *scene.Piece {
	it.Pieces = append(it.Pieces, p)
	it.W, it.H = max(it.W, p.Rect.X+p.Rect.W), max(it.H, p.Rect.Y+p.Rect.H)
	return &it.Pieces[len(it.Pieces)-1]
}

// Fewest is the pages of the shape that needs fewest, the first of several. Without a
// shape there is one of any size.
func Fewest(o diagram.Options, set func(diagram.Shape) ([]scene.Page, error)) ([]scene.Page, error) {
	shapes := o.Shapes
	if len(shapes) == 0 {
		shapes = []diagram.Shape{{}}
	}
	if o.Whole {
		return whole(shapes[0], set)
	}
	var best []scene.Page
	var failure error
	for _, s := range shapes {
		pages, err := set(s)
		switch {
		case err != nil && failure == nil:
			failure = err
		case err == nil && (best == nil || len(pages) < len(best)):
			best = pages
		}
	}
	if best == nil {
		return nil, failure
	}
	return best, nil
}

// mostGrowth is how many times wider than its shape a page may get that holds all, in
// halves.
const mostGrowth = 8

// whole is all on one page: the least one of the proportions of a shape, as far as that is
// no more than some times its size.
func whole(shape diagram.Shape, set func(diagram.Shape) ([]scene.Page, error)) ([]scene.Page, error) {
	var pages []scene.Page
	for halves := 2; halves <= mostGrowth; halves++ {
		grown, err := set(diagram.Shape{Columns: shape.Columns * halves / 2, Paper: shape.Paper})
		if err != nil {
			return pages, err
		}
		pages = grown
		if shape.Rows == 0 || pages[0].H+Foot(pages[0], pages[0].W) <= shape.Rows*halves/2 {
			break
		}
	}
	return pages, nil
}
