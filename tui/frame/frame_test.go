package frame_test

import (
	"flag"
	"fmt"
	"image"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/tui/frame"
)

var update = flag.Bool("update", false, "rewrite the drawn plans")

// panes names the rectangles of a plan by the letter that they are drawn with.
func panes(p frame.Plan) []struct {
	letter rune
	at     image.Rectangle
} {
	return []struct {
		letter rune
		at     image.Rectangle
	}{{'H', p.Header}, {'.', p.Canvas}, {'S', p.Side}, {'B', p.Below}, {'R', p.Route}, {'r', p.Reading}, {'>', p.Entry}, {'n', p.Notice}, {'k', p.Hints}}
}

// The plans of some sizes are drawn in a file, a quarter as wide as they are.
func TestPlansAsDrawn(t *testing.T) {
	var b strings.Builder
	for _, c := range []struct {
		w, h          int
		open, walking bool
	}{{200, 60, false, false}, {200, 60, true, true}, {120, 36, false, false}, {120, 36, true, false}, {80, 24, false, true}, {80, 24, true, false}, {60, 18, false, false}, {40, 12, false, false}, {40, 12, true, false}, {28, 7, false, false}, {8, 2, false, false}, {4, 1, true, true}} {
		p := frame.Arrange(c.w, c.h, c.open, c.walking)
		fmt.Fprintf(&b, "%dx%d open=%v walking=%v\n", c.w, c.h, c.open, c.walking)
		rows := make([][]rune, c.h)
		for y := range rows {
			rows[y] = []rune(strings.Repeat(" ", (c.w+3)/4))
		}
		for _, pane := range panes(p) {
			for y := pane.at.Min.Y; y < pane.at.Max.Y; y++ {
				for x := pane.at.Min.X; x < pane.at.Max.X; x++ {
					rows[y][x/4] = pane.letter
				}
			}
		}
		for _, row := range rows {
			fmt.Fprintf(&b, "  %s\n", strings.TrimRight(string(row), " "))
		}
	}
	const path = "testdata/plans.txt"
	if *update {
		require.NoError(t, os.MkdirAll("testdata", 0o755))
		require.NoError(t, os.WriteFile(path, []byte(b.String()), 0o644))
	}
	want, err := os.ReadFile(path)
	require.NoError(t, err)
	require.Equal(t, string(want), b.String())
}

// At every size the panes lie apart and on the screen, and the entry line is there.
func TestPanesLieApartAtEverySize(t *testing.T) {
	for w := 1; w <= 300; w++ {
		for h := 1; h <= 100; h++ {
			for i := range 4 {
				p := frame.Arrange(w, h, i&1 != 0, i&2 != 0)
				screen := image.Rect(0, 0, w, h)
				list := panes(p)
				for k, a := range list {
					if !a.at.In(screen) {
						t.Fatalf("%dx%d: %c at %v is off the screen", w, h, a.letter, a.at)
					}
					for _, b := range list[k+1:] {
						if a.at.Overlaps(b.at) {
							t.Fatalf("%dx%d: %c at %v and %c at %v overlap", w, h, a.letter, a.at, b.letter, b.at)
						}
					}
				}
				if p.Entry.Dx() != w {
					t.Fatalf("%dx%d has no entry line", w, h)
				}
			}
		}
	}
}
