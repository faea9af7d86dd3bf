package layout

import (
	"errors"
	"fmt"
	"testing"

	_ "example.com/lugbook/model/fixedseed"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// drawAnyGraph makes small graphs without regard to sense: flags, ports on any side, pins anywhere, narrow pages.
func drawAnyGraph(t *rapid.T) Graph {
	var g Graph
	zones := rapid.IntRange(0, 2).Draw(t, "zones")
	for z := range zones {
		g.Zones = append(g.Zones, Zone{ID: fmt.Sprint("z", z), Title: rapid.IntRange(0, 20).Draw(t, "title")})
	}
	var refs []PortRef
	for i := range rapid.IntRange(1, 7).Draw(t, "boxes") {
		b := Box{ID: fmt.Sprint("b", i), W: rapid.IntRange(1, 12).Draw(t, "w"), H: rapid.IntRange(0, 6).Draw(t, "h")}
		if zones > 0 && rapid.Bool().Draw(t, "zoned") {
			b.Zone = fmt.Sprint("z", rapid.IntRange(0, zones-1).Draw(t, "zone"))
		}
		for k := range rapid.IntRange(0, 4).Draw(t, "ports") {
			p := Port{ID: fmt.Sprint(k), Sides: Sides(rapid.IntRange(1, 15).Draw(t, "sides")), Offset: -1}
			if rapid.Bool().Draw(t, "grouped") {
				p.Group = "g"
			}
			b.Ports = append(b.Ports, p)
			refs = append(refs, PortRef{b.ID, p.ID})
		}
		if rapid.IntRange(0, 5).Draw(t, "pin") == 0 {
			b.Pin = &Point{X: rapid.IntRange(0, 60).Draw(t, "x"), Y: rapid.IntRange(0, 40).Draw(t, "y")}
		}
		g.Boxes = append(g.Boxes, b)
	}
	for i := range rapid.IntRange(0, 9).Draw(t, "wires") {
		if len(refs) < 2 {
			break
		}
		w := Wire{ID: fmt.Sprint("w", i), From: rapid.SampledFrom(refs).Draw(t, "from"), To: rapid.SampledFrom(refs).Draw(t, "to")}
		if rapid.Bool().Draw(t, "labelled") {
			w.Labels = []string{"17 2.5 RD", "17"}
		}
		g.Wires = append(g.Wires, w)
	}
	return g
}

func TestAnyGraphIsDrawnOrRefused(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := drawAnyGraph(t)
		o := Options{MaxWidth: rapid.SampledFrom([]int{0, 40, 118}).Draw(t, "width"), Moves: 300}
		d, err := Layout(g, o)
		var refused *GraphError
		var narrow *WidthError
		var pinned *PinError
		if errors.As(err, &refused) || errors.As(err, &narrow) || errors.As(err, &pinned) {
			return
		}
		requireDrawnOrUnrouted(t, g, d, err)
	})
}

// requireDrawnOrUnrouted allows no fault but wires that the error names, and no pinned box off its pin.
func requireDrawnOrUnrouted(t *rapid.T, g Graph, d Drawing, err error) {
	m, measured := Measure(g, d)
	require.NoError(t, measured)
	left := 0
	var unrouted *UnroutedError
	if errors.As(err, &unrouted) {
		left = len(unrouted.IDs)
	} else {
		require.NoError(t, err)
	}
	require.Equal(t, left, m.Unrouted)
	require.Equal(t, left, m.Faults(), "faults: %+v", m)
	for i, b := range g.Boxes {
		if b.Pin != nil {
			require.Equal(t, *b.Pin, Point{X: d.Boxes[i].Rect.X, Y: d.Boxes[i].Rect.Y})
		}
	}
}

// TestAnyGraphFollowsAnyOther draws a graph on the places of another of about the same ids.
func TestAnyGraphFollowsAnyOther(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		before, g := drawAnyGraph(t), drawAnyGraph(t)
		o := Options{MaxWidth: rapid.SampledFrom([]int{0, 40, 118}).Draw(t, "width"), Moves: 300}
		d, err := Layout(before, o)
		var refused *GraphError
		var narrow *WidthError
		var clash *PinError
		if errors.As(err, &refused) || errors.As(err, &narrow) || errors.As(err, &clash) {
			return
		}
		o.Previous = &d
		d, err = Layout(g, o)
		if errors.As(err, &refused) || errors.As(err, &narrow) || pinned(&g) && errors.As(err, &clash) {
			return
		}
		requireDrawnOrUnrouted(t, g, d, err)
		if x, err := newIndex(&g); err == nil && !pinned(&g) && o.MaxWidth == 0 {
			_, err := extend(&g, x, o.filled(labelled(&g)))
			require.NoError(t, err, "room can be made")
		}
	})
}
