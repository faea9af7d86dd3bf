package diagram

import (
	"errors"
	"math"

	"example.com/lugbook/diagram/layout"
	"example.com/lugbook/diagram/scene"
)

// widenings is how often a page that is too narrow is widened before its width is left open.
const widenings = 4

// whole puts all on one page: of characters as wide as the shape says, on paper of the
// proportions of that shape which shrinks it least.
func (b *builder) whole(all []section) (*Drawing, error) {
	if first := b.options.Shapes[0]; first.Paper == (scene.Paper{}) {
		return b.on(Shape{Columns: first.Columns}).draw([][]section{all})
	}
	var best *builder
	shrunk := math.Inf(1)
	for _, shape := range b.options.Shapes {
		try := b.on(Shape{Paper: shape.Paper})
		p, err := try.draftAbout(all, shape)
		if err != nil {
			return nil, err
		}
		drawn := try.scene(&p, nil)
		width := max(float64(p.drawing.W)/float64(shape.Columns), 1)
		height := float64(p.drawing.H+below(&drawn, p.drawing.W)) / float64(shape.Rows)
		if scale := max(width, height); scale < shrunk {
			best, shrunk = try, scale
		}
	}
	return best.draw([][]section{all})
}

// draftAbout sets the width at which a drawing has about the proportions of a shape, and
// gives a draft of that width. A drawing that is carried on keeps its own.
func (b *builder) draftAbout(all []section, s Shape) (page, error) {
	if b.options.Previous != nil {
		return b.draft(all)
	}
	b.shape.Columns = s.Columns
	cells := b.rows(all) * s.Columns
	b.shape.Columns = max(s.Columns/2, int(math.Sqrt(float64(cells*s.Columns/s.Rows))))
	for range widenings {
		p, err := b.draft(all)
		var narrow *layout.WidthError
		if !errors.As(err, &narrow) {
			return p, err
		}
		b.shape.Columns += max(narrow.Missing, b.shape.Columns/10)
		b.drafts = map[string]draft{}
	}
	b.shape.Columns = 0
	return b.draft(all)
}
