package text_test

import (
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/scene/scenetest"
	"example.com/lugbook/diagram/text"
	_ "example.com/lugbook/model/fixedseed"
)

var update = flag.Bool("update", false, "write the golden files anew")

func golden(t *testing.T, name, got string) {
	t.Helper()
	file := filepath.Join("testdata", name)
	if *update {
		require.NoError(t, os.MkdirAll("testdata", 0o755))
		require.NoError(t, os.WriteFile(file, []byte(got), 0o644))
	}
	want, err := os.ReadFile(file)
	require.NoError(t, err)
	require.Equal(t, string(want), got, "run go test -update if the change is meant")
}

func TestSamplePages(t *testing.T) {
	cart, glyphs := scenetest.Cart(), scenetest.Glyphs()
	golden(t, "cart.txt", text.Render(cart, text.Options{}).String())
	golden(t, "cart.ascii.txt", text.Render(cart, text.Options{ASCII: true}).String())
	driving := cart.In(scenetest.CartState())
	golden(t, "cart.state.txt", text.Render(&driving, text.Options{}).String())
	golden(t, "cart.state.ascii.txt", text.Render(&driving, text.Options{ASCII: true}).String())
	golden(t, "glyphs.txt", text.Render(glyphs, text.Options{}).String())
	golden(t, "changes.txt", text.Render(scenetest.Changes(), text.Options{}).String())
	golden(t, "changes.ascii.txt", text.Render(scenetest.Changes(), text.Options{ASCII: true}).String())
	golden(t, "glyphs.ascii.txt", text.Render(glyphs, text.Options{ASCII: true, Bare: true}).String())
}

// tidy fails if a painted page has anything that plain text must not have.
func tidy(t require.TestingT, g *text.Grid, o text.Options) {
	out := g.String()
	require.NotContains(t, out, "┼")
	lines := strings.Split(out, "\n")
	require.Empty(t, lines[len(lines)-1], "the last line ends in a newline")
	require.Len(t, lines, g.H+1)
	for _, line := range lines {
		require.Equal(t, strings.TrimRight(line, " \t"), line)
		require.LessOrEqual(t, scene.Width(line), g.W)
		for _, r := range line {
			require.False(t, unicode.In(r, unicode.C, unicode.M), "%U", r)
			if o.ASCII {
				require.True(t, r >= 0x20 && r <= 0x7E, "%q", r)
			}
		}
	}
}

func TestRandomPages(t *testing.T) {
	wires := 0
	rapid.Check(t, func(t *rapid.T) {
		p := scenetest.Random(func(n int) int { return rapid.IntRange(0, n-1).Draw(t, "pick") })
		require.Empty(t, scene.Check(p))
		wires += len(p.Wires)
		o := text.Options{ASCII: rapid.Bool().Draw(t, "ascii"), Bare: rapid.Bool().Draw(t, "bare")}
		g := text.Render(p, o)
		tidy(t, g, o)
		require.Equal(t, g.String(), text.Render(p, o).String())
		ownersAgree(t, p, g)
		crossingsAreCut(t, p, g)
		for _, w := range p.Wires {
			traceable(t, g, w)
		}
	})
	if testing.Short() {
		return // fewer pages are drawn
	}
	require.Greater(t, wires, 50, "the pages drawn at random have too few wires to test anything")
}

// TestRandomStates paints random states on random pages: still no fault, every wire can be
// followed, and the characters show what the page says of the state.
func TestRandomStates(t *testing.T) {
	arrows, notes := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		pick := func(n int) int { return rapid.IntRange(0, n-1).Draw(t, "pick") }
		plain := scenetest.Random(pick)
		p := plain.In(scenetest.RandomState(plain, pick))
		require.Empty(t, scene.Check(&p))
		for i := range p.Wires {
			require.Equal(t, plain.Wires[i].Path, p.Wires[i].Path)
			require.Equal(t, plain.Wires[i].Label, p.Wires[i].Label)
		}
		o := text.Options{ASCII: rapid.Bool().Draw(t, "ascii"), Bare: true}
		g := text.Render(&p, o)
		tidy(t, g, o)
		ownersAgree(t, &p, g)
		crossingsAreCut(t, &p, g)
		for _, w := range p.Wires {
			traceable(t, g, w)
			n := flowsAgree(t, g, w, o.ASCII)
			arrows += n
			notes += min(1, len(w.Flow.Note.Text))
		}
	})
	if testing.Short() {
		return
	}
	require.Greater(t, arrows, 50, "too few arrows to test anything")
	require.Greater(t, notes, 50, "too few figures to test anything")
}

// flowsAgree fails unless the figure of a wire stands where the page says, and its arrows
// too, pointing along the path the way that the current goes. It counts the arrows.
func flowsAgree(t require.TestingT, g *text.Grid, w scene.Wire, ascii bool) (arrows int) {
	for i, at := range w.Flow.Note.Cells() {
		require.Equal(t, []rune(w.Flow.Note.Text)[i], g.At(at.X, at.Y).Rune)
	}
	signs := map[scene.Point]rune{}
	for _, at := range scene.Cells(w.Path) {
		if c := g.At(at.X, at.Y); c.Role == text.FlowArrow {
			signs[at] = c.Rune
		}
	}
	require.Len(t, signs, len(w.Flow.Arrows))
	cells := scene.Cells(w.Path)
	for i := 1; i+1 < len(cells); i++ {
		sign, has := signs[cells[i]]
		if !has {
			continue
		}
		from, to := cells[i], cells[i+1]
		if w.Flow.Amps < 0 {
			from, to = to, from
		}
		dx, dy := to.X-from.X, to.Y-from.Y
		want := map[scene.Point]string{{X: 1}: "►>", {X: -1}: "◄<", {Y: 1}: "▼v", {Y: -1}: "▲^"}[scene.Point{X: dx, Y: dy}]
		if !w.Flow.Carries() {
			want = "??"
		}
		require.Equal(t, []rune(want)[map[bool]int{false: 0, true: 1}[ascii]], sign, "wire %s", w.ID)
	}
	return len(signs)
}

// ownersAgree fails if a cell says that it belongs to anything but what the page has
// on top there.
func ownersAgree(t require.TestingT, p *scene.Page, g *text.Grid) {
	for y := range p.H {
		for x := range p.W {
			if c := g.At(x, y); c.Owner.Kind != scene.Nothing && c.Role != text.PortName && c.Role != text.SeatNo && c.Role != text.SeatBracket {
				require.Equal(t, p.At(scene.Point{X: x, Y: y})[0], c.Owner, "column %d row %d: %c", x, y, c.Rune)
			}
		}
	}
}

// crossingsAreCut fails unless the upright wire is seen in each crossing.
func crossingsAreCut(t require.TestingT, p *scene.Page, g *text.Grid) {
	for _, c := range p.Crossings() {
		cell := g.At(c.At.X, c.At.Y)
		require.Equal(t, c.Over, cell.Owner.ID)
		require.Contains(t, "│┃║╎╏|:", string(cell.Rune))
	}
}

// traceable follows a wire by the grid alone, crossing under what crosses it, and
// fails if that does not lead from end to end.
func traceable(t require.TestingT, g *text.Grid, w scene.Wire) {
	cells := scene.Cells(w.Path)
	for i, at := range cells {
		c := g.At(at.X, at.Y)
		switch {
		case i == 0 || i == len(cells)-1:
			require.Contains(t, []text.Role{text.PortJoin, text.FlagMark}, c.Role)
		case c.Owner.ID != w.ID:
			before, after := cells[i-1], cells[i+1]
			require.Equal(t, before.Y, after.Y, "wire %s is hidden off a level run", w.ID)
			require.Equal(t, scene.WireKind, c.Owner.Kind)
		default:
			require.Contains(t, []text.Role{text.WireLine, text.WireLabel, text.WireFigure, text.FlowArrow, text.ChangeMark}, c.Role)
			require.Equal(t, w.Flow.Energy, c.Energy)
			require.Equal(t, w.Flow.Carries(), c.Flows)
			require.Equal(t, w.Weight, c.Weight)
			require.Equal(t, w.Colour, c.Colour)
		}
	}
}

func TestHostileTextStaysInItsCells(t *testing.T) {
	for _, s := range scenetest.Hostile {
		for _, o := range []text.Options{{}, {ASCII: true}} {
			tidy(t, text.Render(scenetest.Spoiled(s), o), o)
		}
	}
}

func TestPagesThatCannotBeDrawn(t *testing.T) {
	spoiled := scenetest.Cart()
	spoiled.W, spoiled.H = 40, 12
	for i := range spoiled.Wires {
		spoiled.Wires[i].Path = append(spoiled.Wires[i].Path, scene.Point{X: -3, Y: 99})
	}
	spoiled.Boxes[0].Rect = scene.Rect{X: 3, Y: 3, W: 1, H: 0}
	spoiled.Boxes[1].Rect = scene.Rect{X: 3, Y: 3, W: -4, H: -2}
	spoiled.Zones[0].Rect = scene.Rect{}
	for _, p := range []*scene.Page{{}, {W: -1, H: -1}, spoiled} {
		require.NotPanics(t, func() { _ = text.Render(p, text.Options{}).String() })
	}
}

func TestBareIsTheDrawingAlone(t *testing.T) {
	p := scenetest.Cart()
	bare, full := text.Render(p, text.Options{Bare: true}), text.Render(p, text.Options{})
	require.Equal(t, p.H, bare.H)
	require.Equal(t, p.W, bare.W)
	require.True(t, strings.HasPrefix(full.String(), bare.String()))
	require.Equal(t, text.Cell{}, full.At(-1, 0))
	require.Equal(t, text.Cell{}, full.At(0, full.H))
	require.Equal(t, text.Heading, full.At(0, p.H).Role)
}
