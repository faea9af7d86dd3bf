package offgrid_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/diagram/layout/geom"
	"example.com/lugbook/diagram/layout/metrics"
	"example.com/lugbook/diagram/layout/metrics/offgrid"
)

// storedCase is a drawing with the figures that an independent measurement gave for it.
type storedCase struct {
	Name  string
	Nodes []struct {
		ID         string
		X, Y, W, H float64
		Ports      []struct {
			ID, Side string
			Offset   float64
		}
	}
	Edges []struct {
		ID       string
		From, To [2]string
	}
	Paths    map[string][]offgrid.Point
	Expected map[string]float64
}

func (c storedCase) scene() ([]offgrid.Box, []offgrid.Wire) {
	var boxes []offgrid.Box
	ends := map[[2]string]offgrid.End{}
	for i, n := range c.Nodes {
		boxes = append(boxes, offgrid.Box{X: n.X, Y: n.Y, W: n.W, H: n.H})
		for k, p := range n.Ports {
			e := offgrid.End{Box: i, Port: k}
			switch p.Side {
			case "N":
				e.At, e.Out = offgrid.Point{n.X + p.Offset, n.Y}, offgrid.Point{0, -1}
			case "E":
				e.At, e.Out = offgrid.Point{n.X + n.W, n.Y + p.Offset}, offgrid.Point{1, 0}
			case "S":
				e.At, e.Out = offgrid.Point{n.X + p.Offset, n.Y + n.H}, offgrid.Point{0, 1}
			default:
				e.At, e.Out = offgrid.Point{n.X, n.Y + p.Offset}, offgrid.Point{-1, 0}
			}
			ends[[2]string{n.ID, p.ID}] = e
		}
	}
	var wires []offgrid.Wire
	for _, e := range c.Edges {
		wires = append(wires, offgrid.Wire{From: ends[e.From], To: ends[e.To], Path: c.Paths[e.ID]})
	}
	return boxes, wires
}

func storedCases(t *testing.T) []storedCase {
	t.Helper()
	var out []storedCase
	for _, name := range []string{"../../testdata/faults.json", "../../testdata/layouts.json", "testdata/libraries.json"} {
		data, err := os.ReadFile(filepath.FromSlash(name))
		require.NoError(t, err)
		var file struct{ Cases []storedCase }
		require.NoError(t, json.Unmarshal(data, &file))
		require.NotEmpty(t, file.Cases)
		out = append(out, file.Cases...)
	}
	return out
}

func TestMeasureAgreesWithTheReferenceMeasurement(t *testing.T) {
	exercised := map[string]bool{}
	for _, c := range storedCases(t) {
		t.Run(c.Name, func(t *testing.T) {
			text, err := json.Marshal(offgrid.Measure(c.scene()))
			require.NoError(t, err)
			var got map[string]float64
			require.NoError(t, json.Unmarshal(text, &got))
			for key, want := range c.Expected {
				require.Contains(t, got, key)
				require.InDelta(t, want, got[key], 0.051, key) // printed to a tenth
				exercised[key] = exercised[key] || want != 0
			}
			for key := range got {
				require.Contains(t, c.Expected, key, "every figure has a reference")
			}
		})
	}
	for key, seen := range exercised {
		require.True(t, seen, "%s is zero in every stored drawing", key)
	}
}

// onGrid is the drawing for the measurement that knows whole cells only, if it lies on the grid.
func (c storedCase) onGrid() (metrics.Scene, bool) {
	boxes, wires := c.scene()
	ok := true
	whole := func(p offgrid.Point) geom.Point {
		q := geom.Point{X: int(p[0]), Y: int(p[1])}
		ok = ok && float64(q.X) == p[0] && float64(q.Y) == p[1]
		return q
	}
	var s metrics.Scene
	for _, b := range boxes {
		at, size := whole(offgrid.Point{b.X, b.Y}), whole(offgrid.Point{b.W, b.H})
		s.Boxes = append(s.Boxes, geom.Rect{X: at.X, Y: at.Y, W: size.X, H: size.Y})
	}
	terminal := func(e offgrid.End) metrics.Terminal {
		side, _ := geom.Toward(geom.Point{}, whole(e.Out))
		return metrics.Terminal{Box: e.Box, Key: e.Port, At: whole(e.At), Side: side}
	}
	for _, w := range wires {
		wire := metrics.Wire{From: terminal(w.From), To: terminal(w.To)}
		for _, p := range w.Path {
			wire.Path = append(wire.Path, whole(p))
		}
		s.Wires = append(s.Wires, wire)
	}
	return s, ok
}

func TestBothMeasurementsAgreeOnTheGrid(t *testing.T) {
	compared := 0
	for _, c := range storedCases(t) {
		s, ok := c.onGrid()
		if !ok {
			continue
		}
		on := metrics.Measure(s)
		if on.Oblique > 0 {
			continue // lengths along the grid are no measure of these
		}
		off := offgrid.Measure(c.scene())
		compared++
		require.Equal(t, offgrid.Report{Unrouted: on.Unrouted, Through: on.Through, ThroughOwn: on.ThroughOwn,
			Graze: on.Graze, Overlap: float64(on.Overlap), OverlapSame: float64(on.OverlapSame), Touches: on.Touches,
			Tight: float64(on.Tight), PortMiss: on.PortMiss, PortDir: on.PortDir, NodeOverlap: on.NodeOverlap,
			Crossings: on.Crossings, CrossPoints: on.CrossPoints, Bends: on.Bends, MaxBends: on.MaxBends,
			Length: float64(on.Length), Width: float64(on.Width), Height: float64(on.Height), Area: float64(on.Area)}, off, c.Name)
	}
	require.Greater(t, compared, 10)
}

func TestFaultsAndSoundness(t *testing.T) {
	require.True(t, offgrid.Report{Tight: 2, OverlapSame: 4, Crossings: 9}.Sound())
	require.Equal(t, 1, offgrid.Report{Tight: 2, OverlapSame: 4, Crossings: 9}.Faults())
	require.False(t, offgrid.Report{Overlap: 0.5}.Sound())
	require.Equal(t, 3, offgrid.Report{Overlap: 0.5, Touches: 2}.Faults())
	require.Equal(t, offgrid.Report{}, offgrid.Measure(nil, nil))
}
