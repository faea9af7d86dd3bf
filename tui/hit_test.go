package tui

import (
	"image"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/scene/scenetest"
	"example.com/lugbook/diagram/text"
	"example.com/lugbook/tui/overview"
)

// drawnAt is what a page shows in a cell: the topmost thing there; of a box the terminal whose
// name is written there.
func drawnAt(p *scene.Page, c scene.Point) thing {
	for _, r := range p.At(c) {
		if r.Kind == scene.ZoneKind {
			break
		}
		if r.Kind != scene.BoxKind {
			return ofRef(r)
		}
		for _, b := range p.Boxes {
			if b.ID != r.ID {
				continue
			}
			inside := scene.Inside(b)
			for _, w := range inside.Writings {
				if w.Port >= 0 && c.Y == w.At.Y && c.X >= w.At.X && c.X < w.At.X+scene.Width(w.Text) {
					return ofRef(scene.PortRef(b.ID, b.Ports[w.Port]))
				}
			}
			for _, br := range inside.Brackets {
				for _, cell := range scene.Cells([]scene.Point{br.From, br.To}) {
					if cell == c {
						return ofRef(scene.PortRef(b.ID, b.Ports[br.Port]))
					}
				}
			}
		}
		return ofRef(r)
	}
	return thing{}
}

// In every cell of a picture, as it is and squeezed, the mouse is on what is drawn there: frame,
// terminal, wire, of two that cross the upright one, a label's wire, a flag.
func TestTheMouseIsOnWhatIsDrawn(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		page := scenetest.Random(func(n int) int { return rapid.IntRange(0, n-1).Draw(rt, "pick") })
		requireHits(rt, page, rapid.Bool().Draw(rt, "ascii"))
		small := overview.Squeeze(page, rapid.SampledFrom([]overview.Form{overview.Unlabelled, overview.Unnamed, overview.Designated}).Draw(rt, "form"))
		requireHits(rt, &small.Page, false)
	})
}

func requireHits(rt *rapid.T, page *scene.Page, ascii bool) {
	p := pictureOf(page, ascii)
	for y := range page.H {
		for x := range page.W {
			at := image.Pt(x, y)
			require.Equal(rt, drawnAt(page, scene.Point{X: x, Y: y}), hit(p.grid, at), "at %v", at)
		}
	}
}

// A press selects what is drawn in the cell, wherever the drawing's pane lies on it.
func TestAPressSelectsWhatIsDrawn(t *testing.T) {
	r := recorded(t)
	r.d.drawer = quickDrawing
	r.press("/b1<enter>T")
	p := r.d.work.picture
	pane := r.d.plan.Canvas
	seen := map[thing]bool{}
	for _, view := range []image.Point{{}, {X: 7, Y: 3}, {X: 20, Y: 12}} {
		for y := pane.Min.Y; y < pane.Max.Y; y++ {
			for x := pane.Min.X; x < pane.Max.X; x++ {
				r.d.view = view
				cell := view.Add(image.Pt(x, y)).Sub(pane.Min)
				want := drawnAt(p.page, scene.Point{X: cell.X, Y: cell.Y})
				if c := p.grid.At(cell.X, cell.Y); want.kind == noThing || c.Role == text.Blank {
					continue
				}
				r.d.pressed(cell)
				require.Equal(t, want, r.d.cursor)
				seen[want] = true
			}
		}
	}
	require.Greater(t, len(seen), 20)
}
