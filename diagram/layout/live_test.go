package layout

import (
	"fmt"
	"slices"
	"testing"

	_ "example.com/lugbook/model/fixedseed"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

type openKey struct {
	seed  uint64
	zones bool
}

// opened are the drawings that tests have opened so far.
var opened = map[openKey]Drawing{}

// openRandom opens one of fifteen drawings of random graphs with zones, or of as many without.
func openRandom(t *testing.T, seed uint64, zones bool) (Graph, *Live) {
	t.Helper()
	g := newRandomGraph(seed, 8+int(seed%14), 10+int(seed%18), seed%2 == 0, zones, seed%3 != 0)
	d, known := opened[openKey{seed, zones}]
	if !known {
		var err error
		d, err = Layout(g, Options{RowCost: 2, Moves: 2000})
		require.NoError(t, err)
		opened[openKey{seed, zones}] = d
	}
	l, err := Open(g, d, Options{RowCost: 2})
	require.NoError(t, err)
	requireSame(t, d, l.Drawing(), "opening changes nothing")
	return g, l
}

// requireSame fails when two drawings differ, and says where first.
func requireSame(t *testing.T, want, got Drawing, why ...any) {
	t.Helper()
	require.Equal(t, want.Zones, got.Zones, why...)
	require.Equal(t, want.Boxes, got.Boxes, why...)
	require.Equal(t, len(want.Wires), len(got.Wires), why...)
	for i := range want.Wires {
		require.Equal(t, want.Wires[i], got.Wires[i], why...)
	}
	require.True(t, want.W == got.W && want.H == got.H, why...)
}

func TestAnyChangesByHandLeaveALegalDrawing(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		seed := rapid.Uint64Range(0, 14).Draw(rt, "seed")
		g, l := openRandom(t, seed, rapid.Bool().Draw(rt, "zones"))
		for step := range 12 {
			before := l.Drawing()
			switch rapid.IntRange(0, 5).Draw(rt, "kind") {
			case 0:
				from, to := drawRef(rt, g), drawRef(rt, g)
				w := Wire{ID: fmt.Sprint("new", step), From: from, To: to, Labels: []string{"77 6 BK", "77"}}
				if err := l.Connect(w); err == nil {
					g.Wires = append(slices.Clone(g.Wires), w)
				} else {
					requireSame(t, before, l.Drawing())
				}
			case 1:
				if len(g.Wires) > 0 {
					k := rapid.IntRange(0, len(g.Wires)-1).Draw(rt, "wire")
					require.NoError(t, l.Disconnect(g.Wires[k].ID))
					g.Wires = slices.Delete(slices.Clone(g.Wires), k, k+1)
				}
			case 2:
				to := Point{X: rapid.IntRange(0, before.W+5).Draw(rt, "x"), Y: rapid.IntRange(0, before.H+5).Draw(rt, "y")}
				path := l.Trace(drawRef(rt, g), to)
				requireSame(t, before, l.Drawing(), "tracing changes nothing")
				if len(path) > 0 {
					require.Equal(t, to, path[len(path)-1])
				}
			default:
				b := rapid.IntRange(0, len(g.Boxes)-1).Draw(rt, "box")
				by := Point{X: rapid.IntRange(-9, 30).Draw(rt, "dx"), Y: rapid.IntRange(-9, 12).Draw(rt, "dy")}
				if l.Move(g.Boxes[b].ID, by) != nil {
					requireSame(t, before, l.Drawing())
				}
			}
			requireLegal(t, g, l.Drawing(), 0)
		}
	})
}

func drawRef(rt *rapid.T, g Graph) PortRef {
	b := g.Boxes[rapid.IntRange(0, len(g.Boxes)-1).Draw(rt, "box")]
	if len(b.Ports) == 0 {
		return PortRef{Box: b.ID}
	}
	return PortRef{Box: b.ID, Port: b.Ports[rapid.IntRange(0, len(b.Ports)-1).Draw(rt, "port")].ID}
}

func TestAChangeByHandLeavesTheRestAlone(t *testing.T) {
	for seed := range uint64(12) {
		g, l := openRandom(t, seed, false)
		before := l.Drawing()
		box := g.Boxes[int(seed)%len(g.Boxes)].ID
		if l.Move(box, Point{X: 1}) != nil {
			continue
		}
		after := l.Drawing()
		changed := 0
		for i, w := range g.Wires {
			if w.From.Box != box && w.To.Box != box && !slices.Equal(before.Wires[i].Path, after.Wires[i].Path) {
				changed++
			}
		}
		require.LessOrEqual(t, 4*changed, len(g.Wires), "one step of a box is in the way of few")
		for i := range before.Boxes {
			if before.Boxes[i].ID != box {
				require.Equal(t, before.Boxes[i].Rect, after.Boxes[i].Rect)
			}
		}
		require.NoError(t, l.Disconnect(g.Wires[0].ID))
		require.Equal(t, after.Boxes, l.Drawing().Boxes)
	}
}

func TestChangesByHandThatCannotBeAreRefused(t *testing.T) {
	g, l := openRandom(t, 2, true)
	before := l.Drawing()
	require.Error(t, l.Move("nobody", Point{X: 1}))
	require.Error(t, l.Move(g.Boxes[0].ID, Point{X: -500}))
	require.Error(t, l.Disconnect("nobody"))
	require.Error(t, l.Connect(g.Wires[0]), "the id is taken")
	require.Error(t, l.Connect(Wire{ID: "loop", From: g.Wires[0].From, To: g.Wires[0].From}))
	require.Nil(t, l.Trace(PortRef{Box: "nobody"}, Point{}))
	require.Nil(t, l.Trace(g.Wires[0].From, Point{X: -3}))
	requireSame(t, before, l.Drawing())
	on := before.Boxes[1].Rect
	require.Error(t, l.Move(g.Boxes[0].ID, Point{X: on.X - before.Boxes[0].Rect.X, Y: on.Y - before.Boxes[0].Rect.Y}))
	requireSame(t, before, l.Drawing())
}

func TestAPulledWireEndsWhereThePointerIs(t *testing.T) {
	g, l := openRandom(t, 4, false)
	d := l.Drawing()
	from := g.Wires[0].From
	corner := Point{X: d.W - 1, Y: d.H - 1}
	path := l.Trace(from, corner)
	require.NotEmpty(t, path)
	require.Equal(t, corner, path[len(path)-1])
	x, err := newIndex(&g)
	require.NoError(t, err)
	end := x.wires[len(x.wires)-1].To
	port := d.Boxes[end.Box].Ports[end.Port]
	path = l.Trace(from, port.At)
	require.NotEmpty(t, path, "a taken port can be joined")
	require.Equal(t, port.At, path[len(path)-1])
	requireSame(t, d, l.Drawing())
}
