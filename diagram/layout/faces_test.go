package layout

import (
	"fmt"
	"testing"

	"example.com/lugbook/diagram/layout/chance"
	"github.com/stretchr/testify/require"
)

// newFacedGraph is a random graph whose boxes have their free ports on faces; every second box is ordered.
func newFacedGraph(seed uint64, boxes, wires int) Graph {
	g := newRandomGraph(seed, boxes, wires, true, true, true)
	rnd := chance.New(seed)
	for i := range g.Boxes {
		b := &g.Boxes[i]
		b.Ordered = i%2 == 0
		faces := map[string]int{}
		for k := range b.Ports {
			p := &b.Ports[k]
			p.Face = 1 + rnd.Below(2)
			if face, seen := faces[p.Group]; seen && p.Group != "" {
				p.Face = face
			}
			faces[p.Group] = p.Face
		}
	}
	for i := range g.Wires {
		g.Wires[i].Onward = i%3 == 0
	}
	return g
}

// requireFaces checks that the faces of every box sit on opposite sides, in order where they have one, and that a
// single pair of them stands in one row.
func requireFaces(t *testing.T, g Graph, d Drawing) {
	t.Helper()
	for i, b := range g.Boxes {
		at := d.Boxes[i].Ports
		facing := AnySide
		var rows [3][]int
		group := ""
		for k, p := range b.Ports {
			switch p.Face {
			case 1:
				facing &= SidesOf(at[k].Side)
			case 2:
				facing &= SidesOf(at[k].Side.Opposite())
			}
			if p.Group == "" || p.Group != group {
				rows[p.Face] = append(rows[p.Face], at[k].At.Y)
			}
			group = p.Group
		}
		require.NotZero(t, facing, "faces of box %s", b.ID)
		if len(b.Ports) == 2 && len(rows[1]) == 1 && len(rows[2]) == 1 {
			require.Equal(t, rows[1], rows[2], "box %s", b.ID)
		}
		up, down := false, false
		for _, face := range rows[1:] {
			for k := 1; b.Ordered && k < len(face); k++ {
				up, down = up || face[k] < face[k-1], down || face[k] > face[k-1]
			}
		}
		require.False(t, up && down, "order of box %s: %v", b.ID, rows)
	}
}

func TestFacesHoldInEveryEffort(t *testing.T) {
	if testing.Short() {
		t.Skip("draws much at full effort")
	}
	for seed := range uint64(6) {
		g := newFacedGraph(seed+50, 12, 20)
		for _, o := range []Options{{Moves: 2000}, {Moves: 4000, Seeds: 2, Effort: Full, MaxWidth: 118, RowCost: 2}} {
			d, err := Layout(g, o)
			require.NoError(t, err)
			requireLegal(t, g, d, o.MaxWidth)
			requireFaces(t, g, d)
		}
	}
}

func TestFacesHoldWhenPortsAreAdded(t *testing.T) {
	for seed := range uint64(12) {
		t.Run(fmt.Sprint(seed), func(t *testing.T) {
			g := newFacedGraph(seed+70, 10, 14)
			before, err := Layout(g, Options{Moves: 2000, RowCost: 2})
			require.NoError(t, err)
			rnd := chance.New(seed)
			for i := range g.Boxes {
				b := &g.Boxes[i]
				at := rnd.Below(len(b.Ports) + 1)
				fresh := Port{ID: "fresh", Face: 1 + rnd.Below(2), Sides: SidesOf(East, West), Offset: -1}
				if at > 0 && at < len(b.Ports) && b.Ports[at].Group != "" && b.Ports[at-1].Group == b.Ports[at].Group {
					at++
				}
				b.Ports = append(append(append([]Port(nil), b.Ports[:at]...), fresh), b.Ports[at:]...)
			}
			o := Options{RowCost: 2, Previous: &before}
			after, err := Layout(g, o)
			require.NoError(t, err)
			requireLegal(t, g, after, 0)
			requireFaces(t, g, after)
		})
	}
}

func TestADrawingFromBeforeFacesWereKnownIsBroughtIntoOrder(t *testing.T) {
	g := newRandomGraph(33, 10, 16, true, true, true)
	before, err := Layout(g, Options{Moves: 2000, RowCost: 2})
	require.NoError(t, err)
	faced := newFacedGraph(33, 10, 16)
	after, err := Layout(faced, Options{RowCost: 2, Previous: &before})
	require.NoError(t, err)
	requireLegal(t, faced, after, 0)
	requireFaces(t, faced, after)
}

func TestFacesThatCannotSitAcrossAreRefused(t *testing.T) {
	port := func(id, group string, face int, sides ...Side) Port {
		return Port{ID: id, Group: group, Face: face, Sides: SidesOf(sides...), Offset: -1}
	}
	for want, ports := range map[string][]Port{
		"opposite":  {port("1", "", 1, East), port("2", "", 2, East)},
		"two faces": {port("1", "g", 1, East, West), port("2", "g", 2, East, West)},
		"no box":    {port("1", "", 3, East)},
	} {
		_, err := Layout(Graph{Boxes: []Box{{ID: "a", W: 8, H: 3, Ports: ports}}}, Options{})
		var wrong *GraphError
		require.ErrorAs(t, err, &wrong, want)
		require.ErrorContains(t, err, want)
	}
}
