package layout

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
)

// requireLegal fails on any fault of the drawing, labels and frames included.
func requireLegal(t *testing.T, g Graph, d Drawing, width int) {
	t.Helper()
	m, err := Measure(g, d)
	require.NoError(t, err)
	require.Zerof(t, m.Faults(), "faults: %+v", m)
	for _, b := range d.Boxes {
		require.True(t, Rect{W: d.W - 1, H: d.H - 1}.Union(b.Rect) == Rect{W: d.W - 1, H: d.H - 1}, "box %s is off the drawing", b.ID)
	}
	if width > 0 {
		require.LessOrEqual(t, d.W, width)
	}
	requireZones(t, g, d)
}

// requireZones checks that frames hold their boxes, with room, and nothing else.
func requireZones(t *testing.T, g Graph, d Drawing) {
	t.Helper()
	for i, z := range d.Zones {
		for j := range i {
			require.False(t, z.Rect.Overlaps(d.Zones[j].Rect), "zones %d and %d overlap", i, j)
		}
		for k, b := range g.Boxes {
			r := d.Boxes[k].Rect
			if b.Zone == z.ID {
				require.Equal(t, z.Rect, z.Rect.Union(r.Grow(2, 1, 2, 1)), "box %s is not within zone %s", b.ID, z.ID)
			} else {
				require.False(t, r.Overlaps(z.Rect), "box %s lies in the foreign zone %s", b.ID, z.ID)
			}
		}
	}
}

func TestRandomGraphsAreDrawnWithoutFaults(t *testing.T) {
	if testing.Short() {
		t.Skip("three hundred layouts")
	}
	failed := 0
	for seed := range uint64(300) {
		boxes := 5 + int(seed*7%26)
		wires := boxes + int(seed*11%uint64(boxes+1))
		free := seed%2 == 0
		t.Run(fmt.Sprint(seed), func(t *testing.T) {
			g := newRandomGraph(seed, boxes, wires, free, seed%3 != 0, seed%4 < 3)
			o := Options{Moves: 4000}
			if free {
				o.MaxWidth, o.ColumnCost, o.RowCost = 118, 1, 2
			}
			d, err := Layout(g, o)
			require.NoError(t, err)
			requireLegal(t, g, d, o.MaxWidth)
			for i, w := range d.Wires {
				if len(g.Wires[i].Labels) > 0 && !w.Label.OK {
					failed++
					t.Logf("wire %s has no label: %v", w.ID, w.Path)
				}
			}
		})
	}
	require.Zero(t, failed, "labels without a place")
}

func TestFullEffortKeepsTheRules(t *testing.T) {
	if testing.Short() {
		t.Skip("draws much at full effort")
	}
	for seed := range uint64(8) {
		g := newRandomGraph(seed+900, 10+int(seed), 15+int(seed), seed%2 == 0, seed != 3, seed%4 < 3)
		o := Options{Moves: 3000, Seeds: 2, Effort: Full, RowCost: 2}
		if seed%2 == 0 {
			o.MaxWidth = 118
		}
		d, err := Layout(g, o)
		require.NoError(t, err)
		requireLegal(t, g, d, o.MaxWidth)
	}
}
