package overview_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/scene/scenetest"
	"example.com/lugbook/diagram/text"
	_ "example.com/lugbook/model/fixedseed"
	"example.com/lugbook/tui/overview"
)

func randomPage(rt *rapid.T) *scene.Page {
	return scenetest.Random(func(n int) int { return rapid.IntRange(0, n-1).Draw(rt, "pick") })
}

// meetings lists which wires cross which, and how often.
func meetings(p *scene.Page) map[string]int {
	out := map[string]int{}
	for _, c := range p.Crossings() {
		out[c.Over+" over "+c.Under]++
	}
	return out
}

// A squeezed page is a legal page of the same parts and wires: each wire ends where it did and
// crosses what it crossed.
func TestASqueezedPageReadsTheSame(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		p := randomPage(rt)
		f := rapid.SampledFrom([]overview.Form{overview.Unlabelled, overview.Unnamed, overview.Designated}).Draw(rt, "form")
		s := overview.Squeeze(p, f)
		q := &s.Page
		require.Empty(rt, scene.Check(q))
		require.LessOrEqual(rt, q.W, p.W)
		require.LessOrEqual(rt, q.H, p.H)
		require.Equal(rt, meetings(p), meetings(q))
		require.Len(rt, q.Boxes, len(p.Boxes))
		require.Len(rt, q.Wires, len(p.Wires))
		for i, b := range q.Boxes {
			require.Equal(rt, p.Boxes[i].ID, b.ID)
			require.Equal(rt, s.Rect(p.Boxes[i].Rect), b.Rect)
		}
		painted := text.Render(q, text.Options{Bare: true})
		for i, w := range q.Wires {
			require.Equal(rt, ends(p, p.Wires[i]), ends(q, w))
			require.LessOrEqual(rt, len(w.Path), len(p.Wires[i].Path))
		}
		for _, b := range q.Boxes {
			require.Contains(rt, painted.String(), b.ID, "designators go last")
		}
	})
}

// A packed page is a legal page of the same parts and wires, too.
func TestAPackedPageReadsTheSame(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		p := randomPage(rt)
		q, form := overview.Fill(p, -1, -1)
		require.Equal(rt, overview.Packed, form)
		require.Empty(rt, scene.Check(&q))
		require.Equal(rt, meetings(p), meetings(&q))
		squeezed := overview.Squeeze(p, overview.Designated)
		require.LessOrEqual(rt, q.W, squeezed.Page.W)
		require.LessOrEqual(rt, q.H, squeezed.Page.H)
		for i, w := range q.Wires {
			require.Equal(rt, ends(p, p.Wires[i]), ends(&q, w))
		}
	})
}

// ends names the terminals in which a wire's path ends on a page.
func ends(p *scene.Page, w scene.Wire) [2]string {
	var out [2]string
	for _, b := range p.Boxes {
		for _, port := range b.Ports {
			for k, at := range []scene.Point{w.Path[0], w.Path[len(w.Path)-1]} {
				if port.At == at {
					out[k] = b.ID + "." + port.Terminal()
				}
			}
		}
	}
	return out
}

// On a screen with the whole job each line joins the two parts that its wires do, lines cross
// at right angles only, and lie on no part.
func TestLinesOfTheWholeJoinWhatTheirWiresJoin(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		p := randomPage(rt)
		w, h := rapid.IntRange(1, 90).Draw(rt, "columns"), rapid.IntRange(1, 30).Draw(rt, "rows")
		all := overview.Fit(p, w, h)
		want := map[string]int{}
		for _, wire := range p.Wires {
			if e := parts(p, wire); e[0] != e[1] {
				want[e[0]+" "+e[1]]++
			}
		}
		requireLines(rt, p, &all.Page, want, all.Starred)
		if !all.Starred {
			require.Len(rt, all.Page.Wires, len(want))
			return
		}
		for _, b := range p.Boxes {
			page, left := all.Of(b.ID)
			own := map[string]int{}
			for key, n := range want {
				if strings.HasPrefix(key, b.ID+" ") || strings.HasSuffix(key, " "+b.ID) {
					own[key] = n
				}
			}
			requireLines(rt, p, &page, own, false)
			require.Equal(rt, len(own), len(page.Wires)+left)
		}
	})
}

// parts are the parts that a wire joins, in alphabetic order.
func parts(p *scene.Page, w scene.Wire) [2]string {
	e := ends(p, w)
	a, _, _ := strings.Cut(e[0], ".")
	b, _, _ := strings.Cut(e[1], ".")
	return [2]string{min(a, b), max(a, b)}
}

func requireLines(rt *rapid.T, large, p *scene.Page, want map[string]int, none bool) {
	if none {
		require.Empty(rt, p.Wires)
	}
	at := map[scene.Point]string{}
	for _, piece := range p.Pieces {
		for x := range piece.Rect.W {
			cell := scene.Point{X: piece.Rect.X + x, Y: piece.Rect.Y}
			require.True(rt, cell.X >= 0 && cell.Y >= 0 && cell.X < p.W && cell.Y < p.H)
			require.Empty(rt, at[cell], "two parts in one cell")
			at[cell] = piece.Of.ID
		}
	}
	level, upright := map[scene.Point]bool{}, map[scene.Point]bool{}
	seen := map[string]bool{}
	for _, w := range p.Wires {
		cells := scene.Cells(w.Path)
		a, b := at[cells[0]], at[cells[len(cells)-1]]
		key := min(a, b) + " " + max(a, b)
		require.NotZero(rt, want[key], "a line from %s to %s", a, b)
		require.False(rt, seen[key], "one line for two parts")
		seen[key] = true
		if n := want[key]; w.Label.Text != "" {
			require.Equal(rt, fmt.Sprint(n), w.Label.Text)
		} else {
			require.Equal(rt, n > 1, w.Weight == scene.Trunk)
		}
		for i := 1; i+1 < len(cells); i++ {
			require.Empty(rt, at[cells[i]], "a line over a part")
			straight := cells[i-1].X == cells[i+1].X || cells[i-1].Y == cells[i+1].Y
			for _, way := range []struct {
				on   map[scene.Point]bool
				here bool
			}{{level, !straight || cells[i-1].Y == cells[i+1].Y}, {upright, !straight || cells[i-1].X == cells[i+1].X}} {
				if way.here {
					require.False(rt, way.on[cells[i]], "lines lie on each other")
					way.on[cells[i]] = true
				}
			}
		}
	}
}
