package layouttest_test

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/diagram/layout"
	"example.com/lugbook/diagram/layout/layouttest"
)

func TestHarnessesAreWhatTheirShapeSays(t *testing.T) {
	for seed := range uint64(60) {
		s := layouttest.AnyShape(seed, 40)
		g := layouttest.Harness(seed, s)
		require.Len(t, g.Boxes, max(s.Boxes, 2), s)
		require.Len(t, g.Wires, s.Wires, s)
		require.Equal(t, s.Zoned, len(g.Zones) > 0)
		for _, b := range g.Boxes {
			require.Equal(t, s.Zoned, b.Zone != "")
			for _, p := range b.Ports {
				require.Equal(t, s.Free, p.Offset < 0)
			}
		}
		text, err := json.Marshal(g)
		require.NoError(t, err)
		again, err := json.Marshal(layouttest.Harness(seed, s))
		require.NoError(t, err)
		require.Equal(t, string(text), string(again))
		_, err = layout.Place(g, layout.Options{Moves: 1})
		require.NoError(t, err, "a graph that a layout takes: %s", s)
	}
}

// TestClassicsHaveTheirSizes checks boxes, edges and degrees against the names, and the crossing numbers against the
// bound that Euler's formula gives: a graph without triangles has at least m - 2(n-2) crossings, any graph m - 3(n-2).
func TestClassicsHaveTheirSizes(t *testing.T) {
	degree := map[string]int{"K5": 4, "K10": 9, "K4,4": 4, "Petersen": 3, "Heawood": 3, "Möbius-Kantor": 3, "Pappus": 3,
		"Desargues": 3, "Nauru": 3, "Q4": 4, "C3 x C3": 4, "C5 x C5": 4}
	all := layouttest.Classics()
	require.Len(t, all, 23)
	for _, c := range all {
		seen := map[[2]int]bool{}
		degrees := make([]int, c.Boxes)
		for _, e := range c.Edges {
			require.NotEqual(t, e[0], e[1], c.Name)
			key := [2]int{min(e[0], e[1]), max(e[0], e[1])}
			require.False(t, seen[key], "%s has edge %v twice", c.Name, key)
			seen[key] = true
			degrees[e[0]]++
			degrees[e[1]]++
		}
		if want, ok := degree[c.Name]; ok {
			for _, d := range degrees {
				require.Equal(t, want, d, c.Name)
			}
		}
		require.GreaterOrEqual(t, c.Crossings, len(c.Edges)-3*(c.Boxes-2), c.Name)
		require.Positive(t, c.Crossings)
		require.NotEmpty(t, c.Source)
		require.Len(t, c.Graph().Wires, len(c.Edges))
	}
}

func TestEditsChangeWhatTheySay(t *testing.T) {
	g := layouttest.Harness(3, layouttest.Shape{Boxes: 10, Wires: 20, Zoned: true})
	require.Len(t, layouttest.WithoutWire(g, 7).Wires, 19)
	more := layouttest.WithBox(g, 7)
	require.Equal(t, g.Boxes, more.Boxes[:10])
	require.Equal(t, g.Wires, more.Wires[:20])
	require.Len(t, more.Boxes, 11)
	require.Len(t, more.Wires, 22)
	require.Len(t, g.Wires, 20, "the graph itself stays")
	free := layouttest.Freed(layouttest.Unzoned(g))
	require.Empty(t, free.Zones)
	require.Equal(t, -1, free.Boxes[0].Ports[0].Offset)
	require.NotEqual(t, -1, g.Boxes[0].Ports[0].Offset)
}

func TestChannelsAreRoutedInNoFewerTracksThanTheirDensity(t *testing.T) {
	for seed := range uint64(12) {
		c := layouttest.NewChannel(seed, 8)
		d, err := layout.Route(c.Graph, c.Drawing, layout.Options{})
		require.NoError(t, err)
		m, err := layout.Measure(c.Graph, d)
		require.NoError(t, err)
		require.Zero(t, m.Faults(), "%+v", m)
		require.GreaterOrEqual(t, layouttest.Tracks(d), c.Density)
	}
}
