package layout_test

import (
	"encoding/json"
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"example.com/lugbook/diagram/layout"
	"example.com/lugbook/diagram/layout/layouttest"
	_ "example.com/lugbook/model/fixedseed"
)

// place is where a box stands, by its id.
func place(d layout.Drawing, box string) layout.Point {
	i := slices.IndexFunc(d.Boxes, func(b layout.BoxAt) bool { return b.ID == box })
	return layout.Point{X: d.Boxes[i].Rect.X, Y: d.Boxes[i].Rect.Y}
}

// changed counts the boxes of the first drawing that stand elsewhere in the second, and the wires of both that run
// differently. A shift of the whole, told by the first box, is no change.
func changed(before, after layout.Drawing) (boxes, wires int) {
	shift := place(after, before.Boxes[0].ID).Sub(place(before, before.Boxes[0].ID))
	for _, b := range before.Boxes {
		if place(after, b.ID) != place(before, b.ID).Add(shift) {
			boxes++
		}
	}
	for _, w := range before.Wires {
		i := slices.IndexFunc(after.Wires, func(o layout.WireAt) bool { return o.ID == w.ID })
		if i >= 0 && !slices.EqualFunc(w.Path, after.Wires[i].Path, func(p, q layout.Point) bool { return p.Add(shift) == q }) {
			wires++
		}
	}
	return boxes, wires
}

func requireNoFaults(t *testing.T, g layout.Graph, d layout.Drawing) {
	t.Helper()
	m, err := layout.Measure(g, d)
	require.NoError(t, err)
	require.Zerof(t, m.Faults(), "%+v", m)
}

func TestRemovingAWireMovesNoBoxAndHardlyAWire(t *testing.T) {
	if testing.Short() {
		t.Skip("draws much at full effort")
	}
	for seed := range uint64(40) {
		s := layouttest.AnyShape(seed, 24)
		t.Run(fmt.Sprintf("%d: %s", seed, s), func(t *testing.T) {
			g := layouttest.Harness(seed, s)
			before, err := layout.Layout(g, layout.Options{Moves: 2000})
			require.NoError(t, err)
			for _, at := range []int{0, len(g.Wires) / 2, len(g.Wires) - 1} {
				less := layouttest.WithoutWire(g, at)
				after, err := layout.Layout(less, layout.Options{Moves: 2000, Previous: &before})
				require.NoError(t, err)
				requireNoFaults(t, less, after)
				require.Equal(t, before.Boxes, after.Boxes)
				_, wires := changed(before, after)
				require.LessOrEqual(t, wires, max(1, len(less.Wires)*3/100), "wires changed")
			}
		})
	}
}

// TestAddingABoxMovesFewOthers adds boxes to harnesses of 40 boxes and 120 wires: one box in twenty may move, taken
// over all of them.
func TestAddingABoxMovesFewOthers(t *testing.T) {
	if testing.Short() {
		t.Skip("large harnesses")
	}
	moved, boxes, rerouted, wires := 0, 0, 0, 0
	for seed := range uint64(3) {
		g := layouttest.Harness(seed+70, layouttest.Shape{Boxes: 40, Wires: 120, Zoned: seed == 1})
		before, err := layout.Layout(g, layout.Options{})
		require.NoError(t, err)
		for _, at := range []int{10, 60, 110} {
			more := layouttest.WithBox(g, at)
			after, err := layout.Layout(more, layout.Options{Previous: &before})
			require.NoError(t, err)
			requireNoFaults(t, more, after)
			b, w := changed(before, after)
			moved, rerouted = moved+b, rerouted+w
			boxes, wires = boxes+len(g.Boxes), wires+len(g.Wires)
		}
	}
	t.Logf("%d of %d boxes moved, %d of %d wires changed", moved, boxes, rerouted, wires)
	require.LessOrEqual(t, 20*moved, boxes)
	require.LessOrEqual(t, 100*rerouted, 15*wires)
}

// TestLayoutIsAPureFunction draws graphs twice and finds equal bytes, and the graph and the earlier drawing as they
// were: whoever stores drawings can go back to any of them.
func TestLayoutIsAPureFunction(t *testing.T) {
	if testing.Short() {
		t.Skip("draws much at full effort")
	}
	bytes := func(v any) string {
		text, err := json.Marshal(v)
		require.NoError(t, err)
		return string(text)
	}
	for seed := range uint64(16) {
		o := layout.Options{Moves: 1500}
		most := 16
		if seed%5 == 0 {
			o.Effort, o.Seeds, most = layout.Full, 2, 6
		}
		g := layouttest.Harness(seed+200, layouttest.AnyShape(seed+200, most))
		graph := bytes(g)
		first, err := layout.Layout(g, o)
		require.NoError(t, err)
		stored := bytes(first)
		again, err := layout.Layout(g, o)
		require.NoError(t, err)
		require.Equal(t, stored, bytes(again))

		o.Previous = &first
		more := layouttest.WithBox(g, len(g.Wires)/2)
		edited, err := layout.Layout(more, o)
		require.NoError(t, err)
		once, err := layout.Layout(more, o)
		require.NoError(t, err)
		require.Equal(t, bytes(edited), bytes(once))
		require.Equal(t, stored, bytes(first), "the earlier drawing stays as it is")
		require.Equal(t, graph, bytes(g), "the graph stays as it is")
	}
}

// TestAnyEditsLeaveALegalDrawing follows a drawing through edits, each drawn on the places of the one before.
func TestAnyEditsLeaveALegalDrawing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		seed := rapid.Uint64Range(0, 1<<20).Draw(t, "seed")
		g := layouttest.Harness(seed, layouttest.AnyShape(seed, 14))
		d, err := layout.Layout(g, layout.Options{Moves: 500})
		require.NoError(t, err)
		for range rapid.IntRange(1, 5).Draw(t, "edits") {
			at := rapid.IntRange(0, len(g.Wires)-1).Draw(t, "wire")
			removes := len(g.Wires) > 1 && rapid.Bool().Draw(t, "removes")
			before := d
			if removes {
				g = layouttest.WithoutWire(g, at)
			} else {
				g = layouttest.WithBox(g, at)
			}
			d, err = layout.Layout(g, layout.Options{Moves: 500, Previous: &before})
			require.NoError(t, err)
			m, err := layout.Measure(g, d)
			require.NoError(t, err)
			require.Zerof(t, m.Faults(), "%+v", m)
			if boxes, _ := changed(before, d); removes {
				require.Zero(t, boxes, "removing a wire moves no box")
			}
		}
	})
}
