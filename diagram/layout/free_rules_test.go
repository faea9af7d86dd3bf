package layout

import (
	"fmt"
	"testing"

	"example.com/lugbook/diagram/layout/geom"
	_ "example.com/lugbook/model/fixedseed"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// drawBoundGraph draws a graph of boxes with ports on their left and right, in groups or on faces, and of flags.
func drawBoundGraph(t *rapid.T) Graph {
	var g Graph
	zone := ""
	if rapid.Bool().Draw(t, "zone") {
		zone = "z"
		g.Zones = []Zone{{ID: zone, Title: rapid.IntRange(0, 12).Draw(t, "title")}}
	}
	n := rapid.IntRange(2, 9).Draw(t, "boxes")
	for i := range n {
		b := Box{ID: fmt.Sprint("b", i), Zone: zone, W: rapid.IntRange(4, 14).Draw(t, "w"), H: rapid.IntRange(2, 6).Draw(t, "h"),
			Head: rapid.IntRange(0, 2).Draw(t, "head"), Ordered: rapid.Bool().Draw(t, "ordered")}
		faced := rapid.Bool().Draw(t, "faced")
		for k := range rapid.IntRange(1, 5).Draw(t, "ports") {
			p := Port{ID: fmt.Sprint("p", k), Sides: SidesOf(East, West), Offset: -1}
			if faced {
				p.Face = 1 + k%2
			}
			if rapid.Bool().Draw(t, "grouped") {
				p.Group = fmt.Sprint("g", p.Face, k/4)
			}
			b.Ports = append(b.Ports, p)
		}
		g.Boxes = append(g.Boxes, b)
	}
	free := func(box int) (PortRef, bool) {
		b := &g.Boxes[box]
		for _, p := range b.Ports {
			taken := false
			for _, w := range g.Wires {
				taken = taken || w.From == (PortRef{b.ID, p.ID}) || w.To == (PortRef{b.ID, p.ID})
			}
			if !taken {
				return PortRef{b.ID, p.ID}, true
			}
		}
		return PortRef{}, false
	}
	for i := range rapid.IntRange(1, 2*n).Draw(t, "wires") {
		u := rapid.IntRange(0, n-1).Draw(t, "u")
		from, ok := free(u)
		v := (u + rapid.IntRange(1, n-1).Draw(t, "v")) % n
		to, okTo := free(v)
		if !ok {
			continue
		}
		if !okTo {
			flag := Box{ID: fmt.Sprint("f", i), Zone: zone, W: 6, Ports: []Port{{ID: "p", Sides: SidesOf(East, West), Offset: -1}}}
			g.Boxes = append(g.Boxes, flag)
			to = PortRef{flag.ID, "p"}
		}
		g.Wires = append(g.Wires, Wire{ID: fmt.Sprint("w", i), From: from, To: to, Labels: []string{fmt.Sprint(i, " 2.5 RD"), fmt.Sprint(i)}})
	}
	return g
}

// requireSeats checks that the ports of a box are where they may be.
func requireSeats(t require.TestingT, b *Box, at *BoxAt, o Options) {
	facings, order := AnySide, []string{}
	groups := map[string][]int{}
	for i, p := range b.Ports {
		q := at.Ports[i]
		require.True(t, p.Sides.Has(q.Side))
		require.Equal(t, q.Side == West, q.At.X == at.Rect.X)
		require.Equal(t, q.Side == East, q.At.X == at.Rect.Right())
		require.True(t, at.Rect.Contains(q.At))
		for _, other := range at.Ports[:i] {
			require.True(t, other.Side != q.Side || geom.Abs(other.At.Y-q.At.Y) >= o.Pitch, "two ports too near: %v", at)
		}
		switch p.Face {
		case 1:
			facings &= geom.Of(q.Side)
		case 2:
			facings &= geom.Of(q.Side.Opposite())
		}
		key := p.Group
		if key == "" {
			key = "alone " + p.ID
		}
		if groups[key] == nil {
			order = append(order, key)
		}
		groups[key] = append(groups[key], i)
	}
	require.NotZero(t, facings, "faces sit across from each other: %+v %+v", b, at)
	up, down := false, false
	var last [3]int
	for _, key := range order {
		ports := groups[key]
		first, end := at.Ports[ports[0]], at.Ports[ports[len(ports)-1]]
		require.Equal(t, first.Side, end.Side)
		require.Equal(t, (len(ports)-1)*o.Pitch, geom.Abs(end.At.Y-first.At.Y), "group %s: %+v", key, at)
		if face := b.Ports[ports[0]].Face; face > 0 && b.Ordered {
			row := first.At.Y - at.Rect.Y + 1
			up, down = up || last[face] > row, down || last[face] > 0 && last[face] < row
			last[face] = row
		}
	}
	require.False(t, up && down, "faces keep their order: %+v %+v", b, at)
}

func TestPlaneDrawingsKeepTheRulesForPorts(t *testing.T) {
	drawn, tried := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		g := drawBoundGraph(t)
		x, err := newIndex(&g)
		require.NoError(t, err)
		free, bound := freeEnded(&g, x)
		if !free {
			return // no wire at all
		}
		require.True(t, bound)
		o := Options{MaxWidth: rapid.SampledFrom([]int{0, 120}).Draw(t, "page")}.filled(labelled(&g))
		tried++
		d, ok := o.planar(&g, x, bound)
		if !ok {
			return
		}
		drawn++
		m, err := Measure(g, d)
		require.NoError(t, err)
		require.Zero(t, m.Faults(), "%+v", m)
		for i := range g.Boxes {
			requireSeats(t, &g.Boxes[i], &d.Boxes[i], o)
		}
		for i, z := range d.Zones {
			for k, b := range d.Boxes {
				require.Equal(t, z.Rect, z.Rect.Union(b.Rect.Grow(2, 1, 2, 1)), "box %s is not within zone %s", g.Boxes[k].ID, g.Zones[i].ID)
			}
		}
	})
	require.Greater(t, 2*drawn, tried, "most graphs get a plane drawing")
}
