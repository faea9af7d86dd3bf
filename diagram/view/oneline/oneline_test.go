package oneline_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/view/oneline"
	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/part"
	"example.com/lugbook/model/unit"
)

func traced(s model.Sheet) []*oneline.Node {
	j := &model.Job{Version: 1, Sheets: []model.Sheet{s}}
	return oneline.Trace(network.Build(j, &j.Sheets[0], part.Library()))
}

func main(id model.WireID, from model.PartID, at string, to model.PartID, on string) model.Wire {
	return model.Wire{ID: id, From: model.On(from, at), To: model.On(to, on), Gauge: unit.AWG(2), Serves: model.Traction}
}

// next is the part that follows on the only path.
func next(t *testing.T, n *oneline.Node) *oneline.Node {
	t.Helper()
	require.Len(t, n.Out, 1, n.ID)
	return n.Out[0].To
}

func rating(name, value string) model.Rating {
	v, err := unit.ParseAny(value)
	if err != nil {
		panic(err)
	}
	return model.Rating{Name: name, Value: v, Source: "label"}
}

// TestAPathIsFollowedFromPackToMotor: fuse and solenoid lie on it; the coil's wires, the
// return and a fuse that feeds nothing do not.
func TestAPathIsFollowedFromPackToMotor(t *testing.T) {
	s := model.Sheet{
		Parts: []model.Part{
			{ID: "pack", Kind: "lithium-pack-16", Name: "pack, 105 Ah", Ratings: []model.Rating{rating("capacity", "105 Ah"), rating("voltage", "51.2 V")}},
			{ID: "fu1", Kind: "fuse-class-t"}, {ID: "sol", Kind: "contactor-48v"}, {ID: "ctrl", Kind: "controller-series"}, {ID: "motor", Kind: "motor-series"},
			{ID: "fu9", Kind: "fuse-holder"}, {ID: "key", Kind: "key-switch"},
		},
		Wires: []model.Wire{
			main("w1", "pack", "POS", "fu1", "in"), main("w2", "fu1", "out", "sol", "L1"), main("w3", "ctrl", "B+", "sol", "L2"), main("w4", "ctrl", "B-", "pack", "NEG"),
			main("m1", "ctrl", "B+", "motor", "A1"), main("m2", "motor", "A2", "ctrl", "A2"), main("w9", "sol", "L1", "fu9", "in"),
			{ID: "k1", From: model.On("sol", "L1"), To: model.On("key", "BAT"), Gauge: unit.AWG(16), Serves: model.Controls},
		},
	}
	roots := traced(s)
	require.Len(t, roots, 1)
	pack := roots[0]
	require.Equal(t, "pack, 105 Ah, 51.2 V, 200 A?", pack.Words(), "what the name says is not said twice; a usual figure is in doubt")
	path := []string{pack.ID}
	for n := pack; len(n.Out) > 0; {
		n = next(t, n)
		path = append(path, n.ID)
	}
	require.Equal(t, []string{"pack", "fu1", "sol", "ctrl", "motor"}, path)
}

// TestBatteriesInSeriesAreOneSource, one of them turned round, with a tap for two small
// lamps behind a switch and a splice.
func TestBatteriesInSeriesAreOneSource(t *testing.T) {
	lamp := func(id model.PartID, name string) model.Part {
		return model.Part{ID: id, Kind: "lamp-12v", Name: name}
	}
	feed := func(id model.WireID, from model.PartID, at string, to model.PartID, on string) model.Wire {
		return model.Wire{ID: id, From: model.On(from, at), To: model.On(to, on), Gauge: unit.AWG(14), Serves: model.Accessory}
	}
	s := model.Sheet{
		Parts: []model.Part{
			{ID: "b1", Kind: "lead-battery-12v"}, {ID: "b2", Kind: "lead-battery-12v"}, {ID: "b3", Kind: "lead-battery-12v"},
			{ID: "sp1", Kind: "splice"}, lamp("lt1", "headlamp, left"), lamp("lt2", "tail lamp"), {ID: "ctrl", Kind: "controller-series"},
		},
		Wires: []model.Wire{
			main("j1", "b1", "+", "b2", "-"), main("j2", "b2", "+", "b3", "+"), main("w1", "b3", "-", "ctrl", "B+"), main("w2", "ctrl", "B-", "b1", "-"),
			feed("a1", "b1", "+", "sp1", "J"), feed("a2", "sp1", "J", "lt1", "+"), feed("a3", "sp1", "J", "lt2", "+"),
		},
	}
	roots := traced(s)
	require.Len(t, roots, 1)
	require.Equal(t, "b1 to b3", roots[0].ID)
	require.Contains(t, roots[0].Words(), "3 batteries in series, 12 V, 1 turned round")
	require.Len(t, roots[0].Out, 2)
	require.Equal(t, "ctrl", roots[0].Out[0].To.ID, "the drive comes first")
	require.Equal(t, []string{"headlamp", "tail lamp"}, roots[0].Out[1].To.Loads, "small loads are told together")
}

// TestASecondPackJoins: two packs, each with a fuse, on one controller.
func TestASecondPackJoins(t *testing.T) {
	s := model.Sheet{
		Parts: []model.Part{
			{ID: "pack1", Kind: "lithium-pack-16"}, {ID: "pack2", Kind: "lithium-pack-16"}, {ID: "fu1", Kind: "fuse-class-t"}, {ID: "fu2", Kind: "fuse-class-t"},
			{ID: "ctrl", Kind: "controller-series"},
		},
		Wires: []model.Wire{
			main("w1", "pack1", "POS", "fu1", "in"), main("w2", "pack2", "POS", "fu2", "in"), main("w3", "fu1", "out", "ctrl", "B+"), main("w4", "fu2", "out", "ctrl", "B+"),
			main("n1", "pack1", "NEG", "ctrl", "B-"), main("n2", "pack2", "NEG", "ctrl", "B-"),
		},
	}
	roots := traced(s)
	require.Len(t, roots, 2)
	require.Equal(t, "ctrl", next(t, next(t, roots[0])).ID)
	fu2 := next(t, roots[1])
	require.Equal(t, "ctrl", fu2.Joins)
	p := oneline.Page(roots, 0, false)
	require.Empty(t, scene.Check(&p))
	require.Len(t, p.Flags, 1)
	require.Equal(t, "to ctrl", p.Flags[0].Text)
}

// TestBandsCrossNothing draws a long path with branches on ever narrower pages: no fault,
// every part, and no line over another.
func TestBandsCrossNothing(t *testing.T) {
	s := model.Sheet{Parts: []model.Part{{ID: "pack", Kind: "lithium-pack-16"}, {ID: "bus", Kind: "bus-bar-4"}}}
	s.Wires = []model.Wire{main("w0", "pack", "POS", "bus", "1")}
	for i, stud := range []string{"2", "3", "4", "4"} {
		before, at := model.PartID("bus"), stud
		for k := range 4 {
			id := model.PartID(string(rune('a'+i)) + string(rune('0'+k)))
			s.Parts = append(s.Parts, model.Part{ID: id, Kind: "fuse-class-t"})
			s.Wires = append(s.Wires, main(model.WireID("w"+id), before, at, id, "in"))
			before, at = id, "out"
		}
		pump := model.PartID(string(rune('a'+i)) + "pump")
		s.Parts = append(s.Parts, model.Part{ID: pump, Kind: "pump-motor"})
		s.Wires = append(s.Wires, main(model.WireID("w"+pump), before, "out", pump, "+"))
	}
	roots := traced(s)
	for columns := 200; columns >= 60; columns -= 7 {
		p := oneline.Page(roots, columns, columns%2 == 0)
		require.Empty(t, scene.Check(&p), columns)
		require.LessOrEqual(t, p.W, columns)
		require.Len(t, p.Boxes, len(s.Parts))
		require.Len(t, p.Wires, len(s.Wires))
		require.Empty(t, p.Crossings(), columns)
	}
}
