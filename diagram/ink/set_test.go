package ink

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"example.com/lugbook/diagram/paper"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/scene/scenetest"
	"example.com/lugbook/diagram/symbol"
	_ "example.com/lugbook/model/fixedseed"
)

// TestACellHasItsSizeOnPaper sets pages that just fill their paper: nothing is shrunk, a
// cell takes 2.1 x 4.2 mm and capitals are at least 2.5 mm high.
func TestACellHasItsSizeOnPaper(t *testing.T) {
	for _, size := range paper.All {
		for _, lies := range []scene.Paper{size.Landscape(), size.Portrait()} {
			columns, rows := paper.Cells(lies)
			s := Set(&scene.Page{W: columns, H: rows, Paper: lies})
			require.Equal(t, 100, s.Percent())
			require.Equal(t, 2_100_000, s.Unit*CellW)
			require.Equal(t, 4_200_000, s.Unit*CellH)
			require.GreaterOrEqual(t, s.TextHeight(), 2500)
			require.Equal(t, lies, s.Paper)
			s = Set(&scene.Page{W: columns, H: rows + 1, Paper: lies})
			require.Less(t, s.Percent(), 100, "what does not fit is shrunk")
		}
	}
}

func TestAPageWithoutPaperTakesTheA4ThatShrinksItLess(t *testing.T) {
	for _, c := range []struct {
		w, h int
		lies scene.Paper
	}{
		{160, 40, paper.A4.Landscape()}, {60, 100, paper.A4.Portrait()}, {40, 20, paper.A4.Landscape()}, {0, 0, paper.A4.Landscape()},
	} {
		s := Set(&scene.Page{W: c.w, H: c.h})
		require.Equal(t, c.lies, s.Paper)
		require.LessOrEqual(t, s.Percent(), 100, "nothing is enlarged")
	}
	require.Less(t, Set(&scene.Page{W: 5000, H: 5000}).Percent(), 3)
}

// places lists every place that a mark touches.
func (m Mark) places() []Point {
	switch m.Shape {
	case Rect:
		return []Point{m.At, {m.At.X + m.W, m.At.Y + m.H}}
	case Circle:
		return []Point{{m.At.X - m.R, m.At.Y - m.R}, {m.At.X + m.R, m.At.Y + m.R}}
	case Dots:
		return m.Dots
	case Letters:
		return []Point{m.At, {m.At.X + m.Cells*CellW, m.At.Y}}
	}
	var list []Point
	for i, s := range m.Path {
		if s.Op == Half {
			_, top := bulge(m.Path[i-1].To, s.To)
			list = append(list, top)
		}
		if s.Op != Close {
			list = append(list, s.To)
		}
	}
	return list
}

func TestNothingLeavesTheFrame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pick := func(n int) int { return rapid.IntRange(0, n-1).Draw(t, "pick") }
		plain := scenetest.Random(pick)
		p := plain.In(scenetest.RandomState(plain, pick))
		s := Set(&p)
		frame := s.Groups[0].Marks[1]
		for _, g := range s.Groups[1:] {
			for _, m := range g.Marks {
				for _, at := range m.places() {
					require.True(t, at.X >= frame.At.X && at.X <= frame.At.X+frame.W && at.Y >= frame.At.Y && at.Y <= frame.At.Y+frame.H, "%v: %+v", at, m)
				}
			}
		}
		require.Equal(t, s, Set(&p))
	})
}

// TestStatesAreShownByMoreThanColour sets random states: each wire has the pattern of what
// it does and a band if it is live, one head for each arrow, its figure as text, and each
// part its word.
func TestStatesAreShownByMoreThanColour(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pick := func(n int) int { return rapid.IntRange(0, n-1).Draw(t, "pick") }
		plain := scenetest.Random(pick)
		p := plain.In(scenetest.RandomState(plain, pick))
		wires, parts, bands := map[string]Group{}, map[string]Group{}, 0
		for _, g := range Set(&p).Groups {
			switch g.Kind {
			case WireGroup:
				wires[g.ID] = g
			case PartGroup:
				parts[g.ID] = g
			case Ground:
				bands += marksOf(g, func(m Mark) bool { return m.Pen == penGlow })
			}
		}
		for _, w := range p.Wires {
			g := wires[w.ID]
			if w.Change != scene.Removed {
				require.Equal(t, patterns[w.Flow.Energy].line, g.Marks[1].Pen.Dash, "wire %s is %s", w.ID, w.Flow.Energy)
			}
			heads := marksOf(g, func(m Mark) bool { return m.Pen == penArrow })
			if w.Flow.Carries() {
				require.Len(t, w.Flow.Arrows, heads)
			} else {
				require.Zero(t, heads)
			}
			if w.Flow.Energy == scene.Live {
				bands--
			}
			if text := w.Flow.Note.Text; text != "" {
				require.Positive(t, marksOf(g, func(m Mark) bool { return m.Text == text }))
			}
		}
		require.Zero(t, bands, "one band for each live wire")
		for _, b := range p.Boxes {
			if word := b.Works.Word; word != "" && !scene.Inside(b).Unsaid {
				require.Positive(t, marksOf(parts[b.ID], func(m Mark) bool { return m.Text == word }))
				require.Equal(t, b.Works.Active, marksOf(parts[b.ID], func(m Mark) bool { return m.Pen == penInvert }) > 0)
			}
		}
	})
}

func marksOf(g Group, is func(Mark) bool) int {
	n := 0
	for _, m := range g.Marks {
		if is(m) {
			n++
		}
	}
	return n
}

// TestChangesAreToldApartWithoutColour holds the frames and the signs of the five kinds
// of change against each other.
func TestChangesAreToldApartWithoutColour(t *testing.T) {
	p := scenetest.Changes()
	frames, signed := map[string]scene.Change{}, map[string]int{}
	for _, g := range Set(p).Groups {
		for _, b := range p.Boxes {
			if g.Kind == PartGroup && g.ID == b.ID && b.ID[0] == 'a' {
				look := ""
				for _, m := range g.Marks[:2] {
					if m.Pen.Line == Ink && m.Shape != Letters {
						look += string(m.Pen.Line) + " " + string(rune('0'+m.Pen.Width/16)) + string(rune('0'+m.Pen.Dash.On)) + "; "
					}
				}
				require.NotContains(t, frames, look)
				frames[look] = b.Change
				require.Equal(t, b.Change.Sign() != "", marksOf(g, func(m Mark) bool { return m.Pen == penSign }) == 2, b.ID)
			}
		}
		if g.Kind == WireGroup {
			signed[g.ID] = marksOf(g, func(m Mark) bool { return m.Pen == penSign })
		}
	}
	require.Len(t, frames, 5)
	for _, w := range p.Wires {
		require.Equal(t, w.Change.Sign() != "", signed[w.ID] > 0, w.ID)
	}
}

// TestSymbolsUseTheirRoom draws every symbol in a room of 7 x 3 cells and in one row.
func TestSymbolsUseTheirRoom(t *testing.T) {
	large := 0
	for _, name := range symbol.Names() {
		drawing, _ := symbol.Lookup(name)
		for _, rows := range []int{3, 1} {
			b := scene.Box{Rect: scene.Rect{W: 13, H: rows + 2}}
			room := scene.Rect{X: 3, Y: 1, W: 7, H: rows}
			top, bottom, left, right := 1<<30, 0, 1<<30, 0
			for _, m := range symbolMarks(drawing, b, scene.Layout{Symbol: room}) {
				for _, at := range m.places() {
					top, bottom, left, right = min(top, at.Y), max(bottom, at.Y), min(left, at.X), max(right, at.X)
				}
			}
			require.GreaterOrEqual(t, left, room.X*CellW, name)
			require.LessOrEqual(t, right, (room.X+room.W)*CellW, name)
			require.GreaterOrEqual(t, top, room.Y*CellH-toWriting, name)
			require.LessOrEqual(t, bottom, (room.Y+room.H)*CellH+toFrame, name)
			if rows == 3 {
				require.True(t, right-left >= 6*CellW || bottom-top >= 2*CellH, "%s is drawn small in a room of 7 x 3 cells", name)
			} else if right-left == 7*CellW {
				large++
			}
		}
	}
	require.Greater(t, large, 8, "flat symbols are as wide as a row of 7 cells")
}

// TestSymbolsStayClearOfWritingBelow draws every symbol in one row above a frame line with
// writing under the symbol, and beside it.
func TestSymbolsStayClearOfWritingBelow(t *testing.T) {
	lower := func(drawing symbol.Symbol, x int) (bottom int) {
		b := scene.Box{Rect: scene.Rect{W: 30, H: 3}}
		inside := scene.Layout{Symbol: scene.Rect{X: 3, Y: 1, W: 7, H: 1}, Writings: []scene.Writing{{At: scene.Point{X: x, Y: 2}, Text: " name "}}}
		for _, m := range symbolMarks(drawing, b, inside) {
			for _, at := range m.places() {
				bottom = max(bottom, at.Y)
			}
		}
		return bottom
	}
	larger := 0
	for _, name := range symbol.Names() {
		drawing, _ := symbol.Lookup(name)
		for _, x := range []int{-2, 4, 9} {
			require.LessOrEqual(t, lower(drawing, x), 2*CellH+toWriting, "%s over writing at %d", name, x)
		}
		if lower(drawing, 10) > 2*CellH+toWriting {
			larger++
		}
	}
	require.Positive(t, larger, "writing beside a symbol takes nothing from it")
}

// TestAboutCountsWhatAViewDraws: boxes and lines, which are parts and wires in the wiring
// alone, and nothing where there are none.
func TestAboutCountsWhatAViewDraws(t *testing.T) {
	p := *scenetest.Cart()
	require.Regexp(t, `^Wiring drawing with \d+ parts and \d+ wires in \d+ zones: `, Set(&p).About)
	p.Title.View = "harness"
	require.Regexp(t, `^Drawing: harness, with \d+ boxes and \d+ lines in \d+ zones: `, Set(&p).About)
	require.Equal(t, "Drawing: stud cards.", Set(&scene.Page{W: 9, H: 9, Title: scene.TitleBlock{View: "stud cards"}}).About)
	p.Title.View, p.Boxes, p.Wires = "", p.Boxes[:1], p.Wires[:1]
	require.Regexp(t, `^Wiring drawing with 1 part and 1 wire in `, Set(&p).About)
}

// TestSamplesOfRunsLookLikeRuns holds the legend of a harness to what it explains.
func TestSamplesOfRunsLookLikeRuns(t *testing.T) {
	p := &scene.Page{W: 20, H: 4, Wires: []scene.Wire{{ID: "run", Weight: scene.Trunk, Path: []scene.Point{{X: 2, Y: 2}, {X: 12, Y: 2}}}}}
	var drawn, sampled []Pen
	for _, g := range Set(p).Groups {
		for _, m := range g.Marks {
			switch {
			case g.Kind == WireGroup && m.Shape == Line && m.Pen != penHit:
				drawn = append(drawn, m.Pen)
			case g.Kind == BlockGroup && m.Shape == Line && m.Pen.Width >= widths[scene.Trunk].core:
				sampled = append(sampled, m.Pen)
			}
		}
	}
	require.NotEmpty(t, drawn)
	require.Equal(t, drawn, sampled)
}

// TestLinesThatPassUnderOthersStayClear holds the gap of every level line at a crossing to
// the width of the line above, with some blank on either hand.
func TestLinesThatPassUnderOthersStayClear(t *testing.T) {
	for _, p := range []*scene.Page{scenetest.Cart(), scenetest.Glyphs(), scenetest.Large()} {
		paths, over := map[string][]Step{}, map[string]int{}
		s := setter{Sheet: &Sheet{}, page: p, signs: map[string][]scene.ChangeSign{}}
		s.wires()
		for _, g := range s.Groups {
			if g.Kind == WireGroup {
				paths[g.ID], over[g.ID] = g.Marks[0].Path, g.Marks[1].Pen.Width
			}
		}
		require.NotEmpty(t, p.Crossings())
		for _, c := range p.Crossings() {
			x, y := centre(c.At)
			reach := over[c.Over]/20 + air/2
			var at Point
			for _, step := range paths[c.Under] {
				if step.Op == Draw && step.To.Y == y && at.Y == y {
					left, right := min(at.X, step.To.X), max(at.X, step.To.X)
					require.True(t, right <= x-reach || left >= x+reach, "%s runs into %s at %v", c.Under, c.Over, c.At)
				}
				at = step.To
			}
		}
	}
}
