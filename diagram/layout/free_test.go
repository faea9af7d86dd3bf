package layout_test

import (
	"fmt"
	"testing"

	"example.com/lugbook/diagram/layout"
	"example.com/lugbook/diagram/layout/layouttest"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestDraftsReachKnownCrossingNumbers(t *testing.T) {
	for _, c := range layouttest.Classics() {
		t.Run(c.Name, func(t *testing.T) {
			g := c.Graph()
			d, err := layout.Layout(g, layout.Options{})
			require.NoError(t, err)
			m, err := layout.Measure(g, d)
			require.NoError(t, err)
			require.Zero(t, m.Faults(), "%+v", m)
			require.Equal(t, c.Crossings, m.Crossings, c.Source)
			require.LessOrEqual(t, m.Bends, 2*len(g.Wires))
			again, err := layout.Layout(g, layout.Options{Previous: &d})
			require.NoError(t, err)
			require.Equal(t, d, again, "a drawing is its own successor")
		})
	}
}

func TestFullEffortDrawsFreeEndsNoWorse(t *testing.T) {
	if testing.Short() {
		t.Skip("draws much at full effort")
	}
	for _, c := range layouttest.Classics()[:3] {
		g := c.Graph()
		d, err := layout.Layout(g, layout.Options{Effort: layout.Full})
		require.NoError(t, err)
		m, err := layout.Measure(g, d)
		require.NoError(t, err)
		require.Zero(t, m.Faults(), "%+v", m)
		require.Equal(t, c.Crossings, m.Crossings, c.Source)
	}
}

// drawFreeGraph draws a graph all of whose ports may sit anywhere; some have several wires, some none.
func drawFreeGraph(t *rapid.T) layout.Graph {
	var g layout.Graph
	n := rapid.IntRange(2, 12).Draw(t, "boxes")
	for i := range n {
		g.Boxes = append(g.Boxes, layout.Box{ID: fmt.Sprint("b", i), W: rapid.IntRange(3, 16).Draw(t, "w"),
			H: rapid.IntRange(2, 8).Draw(t, "h"), Head: rapid.IntRange(0, 3).Draw(t, "head")})
	}
	port := func(box int) layout.PortRef {
		b := &g.Boxes[box]
		if len(b.Ports) == 0 || rapid.IntRange(0, 9).Draw(t, "share") > 1 {
			b.Ports = append(b.Ports, layout.Port{ID: fmt.Sprint("p", len(b.Ports)), Sides: layout.AnySide, Offset: -1})
		}
		return layout.PortRef{Box: b.ID, Port: b.Ports[len(b.Ports)-1].ID}
	}
	labels := rapid.Bool().Draw(t, "labels")
	for i := range rapid.IntRange(1, 2*n).Draw(t, "wires") {
		u := rapid.IntRange(0, n-1).Draw(t, "u")
		v := (u + rapid.IntRange(1, n-1).Draw(t, "v")) % n
		w := layout.Wire{ID: fmt.Sprint("w", i), From: port(u), To: port(v)}
		if labels {
			w.Labels = []string{fmt.Sprint(i, " 2.5 RD"), fmt.Sprint(i)}
		}
		g.Wires = append(g.Wires, w)
	}
	if rapid.Bool().Draw(t, "spare") {
		g.Boxes[0].Ports = append(g.Boxes[0].Ports, layout.Port{ID: "spare", Sides: layout.AnySide, Offset: -1})
	}
	return g
}

func TestGraphsWithFreeEndsAreDrawnLegally(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := drawFreeGraph(t)
		o := layout.Options{RowCost: rapid.IntRange(1, 2).Draw(t, "row"), MaxWidth: rapid.SampledFrom([]int{0, 100, 160}).Draw(t, "page"),
			Moves: 2000}
		d, err := layout.Layout(g, o)
		require.NoError(t, err)
		m, err := layout.Measure(g, d)
		require.NoError(t, err)
		require.Zero(t, m.Faults(), "%+v", m)
		if o.MaxWidth > 0 {
			require.LessOrEqual(t, d.W, o.MaxWidth)
		}
		for i, w := range d.Wires {
			require.True(t, w.Label.OK || len(g.Wires[i].Labels) == 0, "label of %s", w.ID)
		}
	})
}

func TestWiresThatShareBothPortsAllFindAWay(t *testing.T) {
	var g layout.Graph
	for _, id := range []string{"a", "b"} {
		g.Boxes = append(g.Boxes, layout.Box{ID: id, W: 3, H: 2, Ports: []layout.Port{{ID: "p", Sides: layout.AnySide, Offset: -1}}})
	}
	g.Boxes[0].Ports = append(g.Boxes[0].Ports, layout.Port{ID: "q", Sides: layout.AnySide, Offset: -1})
	for i, port := range []string{"p", "p", "q"} {
		g.Wires = append(g.Wires, layout.Wire{ID: fmt.Sprint(i), From: layout.PortRef{Box: "a", Port: port}, To: layout.PortRef{Box: "b", Port: "p"}})
	}
	d, err := layout.Layout(g, layout.Options{})
	require.NoError(t, err)
	m, err := layout.Measure(g, d)
	require.NoError(t, err)
	require.Zero(t, m.Faults(), "%+v", m)
}
