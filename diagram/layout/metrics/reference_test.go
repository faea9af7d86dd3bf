package metrics

import (
	"encoding/json"
	"os"
	"path/filepath"
	"testing"

	"example.com/lugbook/diagram/layout/geom"
	"github.com/stretchr/testify/require"
)

// referenceCase is a drawing with the figures that an independent measurement gave for it.
type referenceCase struct {
	Name  string
	Nodes []struct {
		ID         string
		X, Y, W, H int
		Ports      []struct {
			ID, Side string
			Offset   int
		}
	}
	Edges []struct {
		ID       string
		From, To [2]string
	}
	Paths    map[string][][2]int
	Expected map[string]float64
}

func (c referenceCase) scene() Scene {
	var s Scene
	terminals := map[[2]string]Terminal{}
	for i, n := range c.Nodes {
		s.Boxes = append(s.Boxes, geom.Rect{X: n.X, Y: n.Y, W: n.W, H: n.H})
		for k, p := range n.Ports {
			t := Terminal{Box: i, Key: k}
			switch p.Side {
			case "N":
				t.Side, t.At = geom.North, geom.Point{X: n.X + p.Offset, Y: n.Y}
			case "E":
				t.Side, t.At = geom.East, geom.Point{X: n.X + n.W, Y: n.Y + p.Offset}
			case "S":
				t.Side, t.At = geom.South, geom.Point{X: n.X + p.Offset, Y: n.Y + n.H}
			default:
				t.Side, t.At = geom.West, geom.Point{X: n.X, Y: n.Y + p.Offset}
			}
			terminals[[2]string{n.ID, p.ID}] = t
		}
	}
	for _, e := range c.Edges {
		w := Wire{From: terminals[e.From], To: terminals[e.To]}
		for _, p := range c.Paths[e.ID] {
			w.Path = append(w.Path, geom.Point{X: p[0], Y: p[1]})
		}
		s.Wires = append(s.Wires, w)
	}
	return s
}

func referenceCases(t *testing.T) []referenceCase {
	t.Helper()
	var out []referenceCase
	for _, name := range []string{"faults.json", "layouts.json"} {
		data, err := os.ReadFile(filepath.Join("..", "testdata", name))
		require.NoError(t, err)
		var file struct{ Cases []referenceCase }
		require.NoError(t, json.Unmarshal(data, &file))
		require.NotEmpty(t, file.Cases)
		out = append(out, file.Cases...)
	}
	return out
}

func TestMeasureAgreesWithTheReferenceMeasurement(t *testing.T) {
	for _, c := range referenceCases(t) {
		t.Run(c.Name, func(t *testing.T) {
			m := Measure(c.scene())
			got := map[string]int{"unrouted": m.Unrouted, "crossings": m.Crossings, "crossPoints": m.CrossPoints,
				"bends": m.Bends, "maxBends": m.MaxBends, "length": m.Length, "through": m.Through,
				"throughOwn": m.ThroughOwn, "graze": m.Graze, "overlap": m.Overlap, "overlapSame": m.OverlapSame,
				"touches": m.Touches, "tight": m.Tight, "portMiss": m.PortMiss, "portDir": m.PortDir,
				"oblique": m.Oblique, "nodeOverlap": m.NodeOverlap, "width": m.Width, "height": m.Height, "area": m.Area}
			for key, want := range c.Expected {
				if key == "length" && m.Oblique > 0 {
					continue // oblique segments are a fault; their length along the grid is no measure
				}
				require.InDelta(t, want, got[key], 0.01, key)
			}
		})
	}
}
