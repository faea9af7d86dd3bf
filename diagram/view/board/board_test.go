package board_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"example.com/lugbook/diagram"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/scene/scenetest"
	"example.com/lugbook/diagram/text"
	"example.com/lugbook/diagram/view/board"
	_ "example.com/lugbook/model/fixedseed"
)

func table(rows int) board.Table {
	t := board.Table{Title: "Wires", Head: []string{"wire", "goes"}}
	for i := range rows {
		t.Rows = append(t.Rows, board.Row{Cells: []string{fmt.Sprint("w", i+1), "to the controller"}})
	}
	return t
}

func bare(p scene.Page) string { return text.Render(&p, text.Options{Bare: true}).String() }

func TestTablesGoOnUnderTheirHeads(t *testing.T) {
	b := board.New(diagram.Shape{Columns: 40, Rows: 22}, scene.Page{})
	b.Table(table(40))
	pages := b.Pages()
	require.Greater(t, len(pages), 1)
	all := ""
	for i := range pages {
		require.Empty(t, scene.Check(&pages[i]))
		require.LessOrEqual(t, pages[i].H+board.Foot(pages[i], 40), 22)
		require.Equal(t, []int{i + 1, len(pages)}, []int{pages[i].Title.Page, pages[i].Title.Pages})
		head := strings.SplitN(bare(pages[i]), "\n", 3)
		require.Equal(t, "Wires"+map[bool]string{true: ", goes on"}[i > 0], head[0])
		require.Contains(t, head[1], "wire")
		all += bare(pages[i])
	}
	for i := range 40 {
		require.Contains(t, all, fmt.Sprintf("w%d ", i+1))
	}
}

func TestShortTablesAreNotParted(t *testing.T) {
	b := board.New(diagram.Shape{Columns: 40, Rows: 24}, scene.Page{})
	b.Table(table(10))
	b.Table(table(8))
	pages := b.Pages()
	require.Len(t, pages, 2)
	require.Contains(t, bare(pages[1]), "w1 ")
	require.NotContains(t, bare(pages[1]), "goes on")
}

func TestLongTextsAreFolded(t *testing.T) {
	b := board.New(diagram.Shape{Columns: 24}, scene.Page{})
	b.Table(board.Table{Title: "T", Head: []string{"a", "b"}, Rows: []board.Row{{Cells: []string{"x", "one two three four five six seven"}}}})
	p := b.Pages()[0]
	require.Empty(t, scene.Check(&p))
	require.LessOrEqual(t, p.W, 24)
	require.Equal(t, "one two three four five six seven", strings.Join(strings.Fields(strings.SplitN(bare(p), "x", 2)[1]), " "))
}

func TestEmptyTables(t *testing.T) {
	b := board.New(diagram.Shape{}, scene.Page{})
	b.Table(board.Table{Title: "Nothing"})
	b.Table(board.Table{Title: "Parts", Empty: "None."})
	require.Equal(t, "Parts\nNone.\n", bare(b.Pages()[0]))
}

// TestCardsFillColumns sets random cards: none lies on another, none is lost, and without
// a limit the columns are as level as can be.
func TestCardsFillColumns(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		shape := diagram.Shape{Columns: rapid.IntRange(20, 100).Draw(t, "columns"), Rows: rapid.SampledFrom([]int{0, 20, 40}).Draw(t, "rows")}
		var cards []board.Item
		n := rapid.IntRange(1, 20).Draw(t, "cards")
		for i := range n {
			var it board.Item
			it.Write(1, 1, fmt.Sprint("c", i))
			it.Add(scene.Piece{Kind: scene.Frame, Rect: scene.Rect{W: 18, H: rapid.IntRange(3, 9).Draw(t, "height")}})
			cards = append(cards, it)
		}
		b := board.New(shape, scene.Page{})
		b.Cards(cards)
		seen := 0
		pages := b.Pages()
		for i := range pages {
			require.Empty(t, scene.Check(&pages[i]))
			require.LessOrEqual(t, pages[i].W, shape.Columns)
			seen += len(pages[i].Pieces) / 2
		}
		require.Equal(t, n, seen)
		if shape.Rows == 0 {
			require.Len(t, pages, 1)
		}
	})
}

func TestFewestTakesTheShapeWithFewestPages(t *testing.T) {
	small, large := diagram.Shape{Columns: 40, Rows: 20}, diagram.Shape{Columns: 40, Rows: 80}
	set := func(s diagram.Shape) ([]scene.Page, error) {
		b := board.New(s, scene.Page{})
		b.Table(table(30))
		return b.Pages(), nil
	}
	pages, err := board.Fewest(diagram.Options{Shapes: []diagram.Shape{small, large}}, set)
	require.NoError(t, err)
	require.Len(t, pages, 1)
	pages, err = board.Fewest(diagram.Options{Shapes: []diagram.Shape{small}, Whole: true}, set)
	require.NoError(t, err)
	require.Len(t, pages, 1, "all on one page")
	_, err = board.Fewest(diagram.Options{}, func(diagram.Shape) ([]scene.Page, error) { return nil, fmt.Errorf("too wide") })
	require.EqualError(t, err, "too wide")
}

// TestTrimTakesBlankEdgesOnly trims random pages: they stay sound and say the same.
func TestTrimTakesBlankEdgesOnly(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := scenetest.Random(func(n int) int { return rapid.IntRange(0, n-1).Draw(t, "pick") })
		if len(p.Boxes) == 0 {
			return
		}
		before := bare(*p)
		trimmed := board.Trim(*p)
		require.Equal(t, before, bare(*p), "the page that was given is left as it was")
		require.Empty(t, scene.Check(&trimmed))
		require.LessOrEqual(t, trimmed.W, p.W)
		require.LessOrEqual(t, trimmed.H, p.H)
		by := scene.Point{X: trimmed.Boxes[0].Rect.X - p.Boxes[0].Rect.X, Y: trimmed.Boxes[0].Rect.Y - p.Boxes[0].Rect.Y}
		for i, w := range p.Wires {
			for k, at := range w.Path {
				require.Equal(t, at.Add(by.X, by.Y), trimmed.Wires[i].Path[k])
			}
		}
		again := board.Trim(trimmed)
		require.Equal(t, trimmed, again, "nothing is left to take")
	})
}
