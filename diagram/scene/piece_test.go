package scene_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/diagram/scene"
)

// card is a page with a part, a wire that leaves it for a flag, and a card of its own.
func card() *scene.Page {
	s := small()
	s.Pieces = []scene.Piece{
		{Kind: scene.Frame, Rect: scene.Rect{X: 22, Y: 14, W: 20, H: 5}},
		scene.Write(scene.Point{X: 24, Y: 15}, "sol.L1"),
		{Kind: scene.Lug, Rect: scene.Rect{X: 24, Y: 16, W: 7, H: 1}, Colour: "RD/WH", Of: scene.Ref{Kind: scene.PortKind, ID: "sol", Port: "L1", Seat: 1}},
		{Kind: scene.Rule, Rect: scene.Rect{X: 24, Y: 17, W: 9, H: 1}},
	}
	return &s.Page
}

func TestPiecesStandAlone(t *testing.T) {
	require.Empty(t, scene.Check(card()))
	for want, spoil := range map[string]func(p *scene.Page){
		`the writing "sol.L1" leaves the page`:              func(p *scene.Page) { p.Pieces[1].Rect.X = 56 },
		`the writing "sol.L1" lies on piece 0`:              func(p *scene.Page) { p.Pieces[1].Rect.X = 21 },
		`the writing "sol.L1" lies on a`:                    func(p *scene.Page) { p.Pieces[1].Rect = scene.Rect{X: 6, Y: 6, W: 6, H: 1} },
		`the writing "sol.L1" lies on wire w2`:              func(p *scene.Page) { p.Pieces[1].Rect.X, p.Pieces[1].Rect.Y = 21, 10 },
		`the writing "sol.L1" lies on z`:                    func(p *scene.Page) { p.Pieces[1].Rect.X, p.Pieces[1].Rect.Y = 16, 15 },
		`the writing "sol.L1" has not the size of its kind`: func(p *scene.Page) { p.Pieces[1].Rect.W++ },
		"piece 2 has not the size of its kind":              func(p *scene.Page) { p.Pieces[2].Rect.H = 2; p.Pieces = p.Pieces[:3] },
		"piece 0 has not the size of its kind":              func(p *scene.Page) { p.Pieces[0].Rect.W = 2; p.Pieces = p.Pieces[:1] },
		"is not clean":                                      func(p *scene.Page) { p.Pieces[1].Text = "sol.\x1b1" },
	} {
		p := card()
		spoil(p)
		faults := scene.Check(p)
		require.NotEmpty(t, faults, want)
		require.Contains(t, faults[0].Text, want)
	}
}

// TestAPieceMayStandWithinABox that it names, but not on its frame nor on another piece.
func TestAPieceMayStandWithinABox(t *testing.T) {
	p := &small().Page
	p.Boxes[1].Ports, p.Wires = nil, p.Wires[1:]
	p.Pieces = []scene.Piece{scene.Write(scene.Point{X: 41, Y: 6}, "list")}
	p.Pieces[0].In = "b"
	require.Empty(t, scene.Check(p))
	p.Pieces[0].Rect.X = 40
	require.NotEmpty(t, scene.Check(p), "on the frame")
	p.Pieces[0].Rect.X = 41
	p.Pieces[0].In = "a"
	require.NotEmpty(t, scene.Check(p), "within another box")
	p.Pieces[0].In = "b"
	p.Pieces = append(p.Pieces, p.Pieces[0])
	require.NotEmpty(t, scene.Check(p), "on another piece")
}

func TestPiecesAreFoundByTheirCells(t *testing.T) {
	p := card()
	require.Equal(t, scene.Ref{Kind: scene.PortKind, ID: "sol", Port: "L1", Seat: 1}, p.At(scene.Point{X: 26, Y: 16})[0])
	require.Empty(t, p.At(scene.Point{X: 26, Y: 17}), "a rule tells of nothing")
	require.Equal(t, []string{"BK", "RD", "WH"}, p.Use().Colours, "lugs are in the legend")
	require.True(t, p.Use().Striped)
}

func TestWritingIsCleaned(t *testing.T) {
	w := scene.Write(scene.Point{X: 1, Y: 2}, "a\x00b\tc")
	require.Equal(t, "a"+string(scene.Substitute)+"b c", w.Text)
	require.Equal(t, scene.Rect{X: 1, Y: 2, W: 5, H: 1}, w.Rect)
}
