package layout

import (
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
)

// tally counts what happened to the boxes that an edit was not about.
type tally struct{ seen, moved, turned int }

// compare holds the boxes of two drawings against each other, those named in about aside. A box has turned when
// another that was left of it or above is so no longer.
func (c *tally) compare(before, after *Drawing, about []string) {
	was := map[string]Rect{}
	for _, b := range before.Boxes {
		if !slices.Contains(about, b.ID) {
			was[b.ID] = b.Rect
		}
	}
	for _, b := range after.Boxes {
		old, stays := was[b.ID]
		if !stays {
			continue
		}
		c.seen++
		if old.X != b.Rect.X || old.Y != b.Rect.Y {
			c.moved++
		}
		turned := slices.ContainsFunc(after.Boxes, func(o BoxAt) bool {
			r, stays := was[o.ID]
			return stays && (r.X < old.X && o.Rect.X > b.Rect.X || r.Y < old.Y && o.Rect.Y > b.Rect.Y)
		})
		if turned {
			c.turned++
		}
	}
}

// requireGroups checks that the ports of a group follow each other on one side, in the order given or its reverse.
func requireGroups(t *testing.T, g Graph, d Drawing) {
	t.Helper()
	for i, b := range g.Boxes {
		for k := 1; k < len(b.Ports); k++ {
			if b.Ports[k].Group == "" || b.Ports[k].Group != b.Ports[k-1].Group {
				continue
			}
			x, y := d.Boxes[i].Ports[k-1], d.Boxes[i].Ports[k]
			require.Equal(t, x.Side, y.Side)
			require.Contains(t, []int{-2, 2}, x.At.Y-y.At.Y)
		}
	}
}

func TestAnyEditLeavesTheRestInItsPlace(t *testing.T) {
	steps := 12
	if testing.Short() {
		steps = 4
	}
	var all tally
	for seed := range uint64(24) {
		s := newSheet(seed, int(seed%4), 4+int(seed)%14, 6+int(seed)%20)
		d, err := Layout(s.graph(), Options{RowCost: 2, Moves: 2000})
		require.NoError(t, err)
		for step := range steps {
			what, about := s.edit()
			g := s.graph()
			name := fmt.Sprintf("seed %d step %d: %s", seed, step, what)
			x, err := newIndex(&g)
			require.NoError(t, err, name)
			o := Options{RowCost: 2, Previous: &d}
			next, err := extend(&g, x, o.filled(true))
			require.NoError(t, err, name)
			m, err := Measure(g, next)
			require.NoError(t, err)
			require.Zero(t, m.Faults(), "%s: %+v", name, m)
			requireLegal(t, g, next, 0)
			requireGroups(t, g, next)
			was := all
			all.compare(&d, &next, about)
			if all.turned > was.turned {
				t.Log(name, "turned", all.turned-was.turned)
			}
			if what == "remove wire" {
				require.Equal(t, was.moved, all.moved, name)
			}
			d = next
		}
	}
	t.Logf("%+v", all)
	require.LessOrEqual(t, 20*all.turned, all.seen, "one box in twenty may change its order with another")
}

func TestPinningABoxMovesOnlyWhatIsInItsWay(t *testing.T) {
	var all tally
	for seed := range uint64(12) {
		s := newSheet(seed+70, int(seed%3), 8+int(seed), 12+int(seed))
		g := s.graph()
		d, err := Layout(g, Options{RowCost: 2, Moves: 2000})
		require.NoError(t, err)
		k := int(seed) % len(s.parts)
		at := d.Boxes[k].Rect
		for _, by := range []Point{{}, {X: 1, Y: 1}, {X: 3, Y: -1}} {
			pin := Point{X: max(0, at.X+by.X), Y: max(0, at.Y+by.Y)}
			g.Boxes[k].Pin = &pin
			next, err := Layout(g, Options{RowCost: 2, Previous: &d})
			require.NoError(t, err)
			requireLegal(t, g, next, 0)
			require.Equal(t, pin, Point{X: next.Boxes[k].Rect.X, Y: next.Boxes[k].Rect.Y})
			was := all
			all.compare(&d, &next, []string{g.Boxes[k].ID})
			if by == (Point{}) {
				require.Equal(t, was.moved, all.moved, "a box pinned where it is moves nothing")
			}
		}
	}
	require.LessOrEqual(t, 20*all.moved, all.seen, "%+v", all)
}
