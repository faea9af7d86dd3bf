package layout

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestADrawingOfTheSameGraphStaysAsItIs(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		seed := rapid.Uint64Range(0, 999).Draw(rt, "seed")
		boxes := rapid.IntRange(3, 16).Draw(rt, "boxes")
		g := newRandomGraph(seed, boxes, boxes+rapid.IntRange(0, boxes).Draw(rt, "more"), rapid.Bool().Draw(rt, "free"),
			rapid.Bool().Draw(rt, "zones"), rapid.Bool().Draw(rt, "labels"))
		for i := range g.Wires {
			if len(g.Wires[i].Labels) > 0 && rapid.IntRange(0, 2).Draw(rt, "long") == 0 {
				g.Wires[i].Labels = append([]string{"a text too long for most"}, g.Wires[i].Labels...)
			}
		}
		o := Options{Moves: 1500, RowCost: 2, MaxWidth: rapid.SampledFrom([]int{0, 118, 170}).Draw(rt, "width")}
		first, err := Layout(g, o)
		if err != nil {
			rt.Skip("the page is too narrow")
		}
		o.Previous = &first
		again, err := Layout(g, o)
		require.NoError(t, err)
		requireSame(t, first, again)
	})
}

func TestRemovingAWireDrawsFewOthersAnew(t *testing.T) {
	changed, seen := 0, 0
	for seed := range uint64(10) {
		g := newRandomGraph(seed+40, 14, 24, seed%2 == 0, seed%3 == 0, true)
		before, err := Layout(g, Options{Moves: 1500, RowCost: 2})
		require.NoError(t, err)
		at := int(seed) * 2
		g.Wires = slices.Delete(slices.Clone(g.Wires), at, at+1)
		after, err := Layout(g, Options{Moves: 1500, RowCost: 2, Previous: &before})
		require.NoError(t, err)
		require.Equal(t, before.Boxes, after.Boxes)
		for i, w := range slices.Delete(slices.Clone(before.Wires), at, at+1) {
			seen++
			if !slices.Equal(w.Path, after.Wires[i].Path) {
				changed++
			}
		}
	}
	require.LessOrEqual(t, 100*changed, 3*seen, "%d of %d", changed, seen)
}
