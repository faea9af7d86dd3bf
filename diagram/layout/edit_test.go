package layout

import (
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
)

// without is the graph with one box and its wires taken out.
func without(g Graph, box int) Graph {
	id := g.Boxes[box].ID
	g.Boxes = slices.Delete(slices.Clone(g.Boxes), box, box+1)
	g.Wires = slices.DeleteFunc(slices.Clone(g.Wires), func(w Wire) bool { return w.From.Box == id || w.To.Box == id })
	return g
}

func TestEditsLeaveTheRestOfTheDrawingAlone(t *testing.T) {
	moved, kept := 0, 0
	for seed := range uint64(40) {
		t.Run(fmt.Sprint(seed), func(t *testing.T) {
			full := newRandomGraph(seed+500, 8+int(seed)%12, 12+int(seed)%14, seed%2 == 0, seed%3 != 0, true)
			box := int(seed) % len(full.Boxes)
			small := without(full, box)
			o := Options{Moves: 2000, RowCost: 2}
			if seed%2 == 0 {
				o.MaxWidth = 118
			}
			before, err := Layout(full, o)
			require.NoError(t, err)
			o.Previous = &before
			removed, err := Layout(small, o)
			require.NoError(t, err)
			requireLegal(t, small, removed, o.MaxWidth)
			require.Equal(t, slices.Delete(slices.Clone(before.Boxes), box, box+1), removed.Boxes, "removing moves nothing")

			o.Previous = &removed
			again, err := Layout(full, o)
			require.NoError(t, err)
			requireLegal(t, full, again, o.MaxWidth)
			kept += len(small.Boxes)
			for i, b := range small.Boxes {
				at := slices.IndexFunc(again.Boxes, func(a BoxAt) bool { return a.ID == b.ID })
				if again.Boxes[at].Rect != removed.Boxes[i].Rect {
					moved++
				}
			}
		})
	}
	require.Less(t, moved*20, kept, "one box in twenty may move aside for a new one")
}
