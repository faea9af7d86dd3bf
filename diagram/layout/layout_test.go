package layout

import (
	"runtime"
	"testing"

	"github.com/stretchr/testify/require"
)

var testOptions = Options{MaxWidth: 118, ColumnCost: 1, RowCost: 2, Moves: 4000}

func TestEqualInputGivesEqualDrawingsOnAnyNumberOfCores(t *testing.T) {
	g := newRandomGraph(5, 20, 34, true, true, true)
	o := testOptions
	o.Seeds, o.Effort, o.Moves = 3, Full, 8000
	old := runtime.GOMAXPROCS(1)
	one, err := Layout(g, o)
	require.NoError(t, err)
	runtime.GOMAXPROCS(4)
	many, err := Layout(g, o)
	runtime.GOMAXPROCS(old)
	require.NoError(t, err)
	require.Equal(t, one, many)
	requireLegal(t, g, one, 118)
}

func TestFullEffortIsNoWorseThanADraft(t *testing.T) {
	if testing.Short() {
		t.Skip("draws much at full effort")
	}
	g := newRandomGraph(8, 14, 22, true, true, true)
	draft, err := Layout(g, Options{MaxWidth: 118, RowCost: 2})
	require.NoError(t, err)
	full, err := Layout(g, Options{MaxWidth: 118, RowCost: 2, Effort: Full})
	require.NoError(t, err)
	requireLegal(t, g, full, 118)
	a, err := Measure(g, draft)
	require.NoError(t, err)
	b, err := Measure(g, full)
	require.NoError(t, err)
	price := func(crossings, bends, length int) int { return 20*crossings + 12*bends + length }
	require.Less(t, price(b.Crossings, b.Bends, b.Length), price(a.Crossings, a.Bends, a.Length))
}

func TestGroupsStayTogether(t *testing.T) {
	g := newRandomGraph(21, 20, 40, true, true, false)
	d, err := Layout(g, testOptions)
	require.NoError(t, err)
	groups := 0
	for i, b := range g.Boxes {
		for k := 1; k < len(b.Ports); k++ {
			if b.Ports[k].Group == "" || b.Ports[k].Group != b.Ports[k-1].Group {
				continue
			}
			groups++
			x, y := d.Boxes[i].Ports[k-1], d.Boxes[i].Ports[k]
			require.Equal(t, x.Side, y.Side)
			require.Contains(t, []int{-2, 2}, x.At.Y-y.At.Y)
		}
	}
	require.Positive(t, groups)
}

func TestPinnedBoxesNeverMove(t *testing.T) {
	g := newRandomGraph(3, 12, 18, true, false, true)
	g.Boxes[2].Pin, g.Boxes[7].Pin = &Point{X: 40, Y: 9}, &Point{X: 40, Y: 30}
	for _, effort := range []Effort{Draft, Full} {
		o := testOptions
		o.Effort = effort
		d, err := Layout(g, o)
		require.NoError(t, err)
		requireLegal(t, g, d, 118)
		require.Equal(t, Point{X: 40, Y: 9}, Point{X: d.Boxes[2].Rect.X, Y: d.Boxes[2].Rect.Y})
		require.Equal(t, Point{X: 40, Y: 30}, Point{X: d.Boxes[7].Rect.X, Y: d.Boxes[7].Rect.Y})
	}
}

func TestRemovingAWireMovesNothing(t *testing.T) {
	g := newRandomGraph(4, 16, 26, true, true, true)
	before, err := Layout(g, testOptions)
	require.NoError(t, err)
	g.Wires = append(append([]Wire(nil), g.Wires[:5]...), g.Wires[6:]...)
	o := testOptions
	o.Previous = &before
	after, err := Layout(g, o)
	require.NoError(t, err)
	requireLegal(t, g, after, 118)
	require.Equal(t, before.Boxes, after.Boxes)
	require.Equal(t, before.Zones, after.Zones)
	for i, w := range after.Wires {
		old := before.Wires[i]
		if i >= 5 {
			old = before.Wires[i+1]
		}
		require.Equal(t, old.Path, w.Path)
	}
}

func TestAddingABoxMovesNoneAside(t *testing.T) {
	g := newRandomGraph(6, 16, 24, true, true, true)
	before, err := Layout(g, testOptions)
	require.NoError(t, err)
	g.Boxes = append(append([]Box(nil), g.Boxes...), Box{ID: "new", Zone: g.Boxes[0].Zone, W: 16, H: 4, Head: 2,
		Ports: []Port{{ID: "a", Sides: SidesOf(East, West), Offset: -1}}})
	g.Boxes[0].Ports = append(append([]Port(nil), g.Boxes[0].Ports...), Port{ID: "x", Sides: SidesOf(East, West), Offset: -1})
	g.Wires = append(append([]Wire(nil), g.Wires...), Wire{ID: "wx", From: PortRef{"b0", "x"}, To: PortRef{"new", "a"}})
	o := testOptions
	o.Previous = &before
	after, err := Layout(g, o)
	require.NoError(t, err)
	requireLegal(t, g, after, 118)
	moved := 0
	for i := range before.Boxes {
		if before.Boxes[i].Rect.X != after.Boxes[i].Rect.X {
			moved++
		}
	}
	require.LessOrEqual(t, moved, 1, "only the box that got a port may move sideways")
}

func TestMovingABoxDrawsOnlyWhatItTouches(t *testing.T) {
	g := newRandomGraph(9, 14, 20, true, false, true)
	before, err := Layout(g, Options{RowCost: 2, Moves: 4000})
	require.NoError(t, err)
	var moved Drawing
	id := ""
	for _, b := range g.Boxes {
		if moved, err = MoveBox(g, before, b.ID, Point{X: 1}); err == nil {
			id = b.ID
			break
		}
	}
	require.NotEmpty(t, id, "some box can move")
	after, err := Route(g, moved, Options{RowCost: 2})
	require.NoError(t, err)
	requireLegal(t, g, after, 0)
	same := 0
	for i, w := range g.Wires {
		if w.From.Box != id && w.To.Box != id && samePath(before.Wires[i].Path, after.Wires[i].Path) {
			same++
		}
	}
	require.Greater(t, same, len(g.Wires)/2)
	_, err = MoveBox(g, before, id, Point{X: -1000})
	require.Error(t, err)
}

func samePath(a, b []Point) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if a[i] != b[i] {
			return false
		}
	}
	return true
}

func TestFlagsOfOneRow(t *testing.T) {
	g := Graph{Boxes: []Box{
		{ID: "part", W: 14, H: 4, Ports: []Port{{ID: "1", Sides: SidesOf(East, West), Offset: -1}}},
		{ID: "mark", W: 6, H: 0, Ports: []Port{{ID: "1", Sides: SidesOf(East, West), Offset: -1}}}},
		Wires: []Wire{{ID: "w", From: PortRef{"part", "1"}, To: PortRef{"mark", "1"}, Labels: []string{"7 2.5 RD", "7"}}}}
	d, err := Layout(g, testOptions)
	require.NoError(t, err)
	requireLegal(t, g, d, 118)
	require.Zero(t, d.Boxes[1].Rect.H)
	require.Len(t, d.Wires[0].Path, 2, "a mark stands straight before its terminal")
	require.True(t, d.Wires[0].Label.OK)
	require.Zero(t, d.Wires[0].Label.Index)
}

func TestPlaceLeavesTheWiresOut(t *testing.T) {
	g := newRandomGraph(2, 10, 14, true, true, true)
	d, err := Place(g, testOptions)
	require.NoError(t, err)
	require.Empty(t, d.Wires[0].Path)
	routed, err := Route(g, d, testOptions)
	require.NoError(t, err)
	requireLegal(t, g, routed, 118)
}

func TestFaultyGraphsAreRefused(t *testing.T) {
	port := []Port{{ID: "1", Sides: AnySide, Offset: -1}, {ID: "2", Sides: AnySide, Offset: -1}}
	box := func(id string) Box { return Box{ID: id, W: 8, H: 3, Ports: port} }
	wire := func(from, to PortRef) []Wire { return []Wire{{ID: "w", From: from, To: to}} }
	for name, g := range map[string]Graph{
		"box twice":     {Boxes: []Box{box("a"), box("a")}},
		"no such zone":  {Boxes: []Box{{ID: "a", Zone: "z", W: 8, H: 3}}},
		"zone twice":    {Zones: []Zone{{ID: "z"}, {ID: "z"}}},
		"no width":      {Boxes: []Box{{ID: "a"}}},
		"no such port":  {Boxes: []Box{box("a"), box("b")}, Wires: wire(PortRef{"a", "1"}, PortRef{"b", "9"})},
		"loop":          {Boxes: []Box{box("a")}, Wires: wire(PortRef{"a", "1"}, PortRef{"a", "1"})},
		"port off box":  {Boxes: []Box{{ID: "a", W: 8, H: 3, Ports: []Port{{ID: "1", Sides: SidesOf(East), Offset: 9}}}}},
		"port sideless": {Boxes: []Box{{ID: "a", W: 8, H: 3, Ports: []Port{{ID: "1", Offset: -1}}}}},
	} {
		_, err := Layout(g, Options{})
		var wrong *GraphError
		require.ErrorAs(t, err, &wrong, name)
		require.NotEmpty(t, wrong.Error())
	}
}

func TestAnEmptyGraphIsAnEmptyDrawing(t *testing.T) {
	d, err := Layout(Graph{}, Options{Effort: Full})
	require.NoError(t, err)
	require.Empty(t, d.Boxes)
}

func TestTooNarrowAPageIsReported(t *testing.T) {
	g := newRandomGraph(2, 10, 14, true, true, true)
	_, err := Layout(g, Options{MaxWidth: 20})
	var narrow *WidthError
	require.ErrorAs(t, err, &narrow)
	require.Positive(t, narrow.Missing)
}
