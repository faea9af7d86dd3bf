package both_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/diagram"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/view/both"
	"example.com/lugbook/model"
	"example.com/lugbook/model/compare"
	"example.com/lugbook/model/part"
	"example.com/lugbook/model/unit"
)

// conversion is a solenoid whose line stud loses a battery's wire and gains a pack's.
func conversion() *model.Job {
	stack := func(ids ...model.WireID) []model.Terminal {
		return []model.Terminal{{At: model.TerminalRef{Part: "sol", Name: "L1"}, Stack: ids}}
	}
	found := model.Sheet{
		Name:  model.AsFound,
		Parts: []model.Part{{ID: "b1", Kind: "lead-battery-6v"}, {ID: "sol", Kind: "contactor-48v"}, {ID: "key", Kind: "key-switch"}},
		Wires: []model.Wire{
			{ID: "w1", From: model.On("b1", "+"), To: model.On("sol", "L1"), Gauge: unit.AWG(4)},
			{ID: "k1", From: model.On("sol", "L1"), To: model.On("key", "BAT"), Gauge: unit.AWG(16)},
			{ID: "k2", From: model.On("key", "IGN"), To: model.On("sol", "coil+")},
		},
		Terminals: stack("k1", "w1"),
	}
	plan := model.Sheet{
		Name:  model.Plan,
		Parts: []model.Part{{ID: "pack", Kind: "lithium-pack-16"}, {ID: "sol", Kind: "contactor-48v"}, {ID: "key", Kind: "key-switch", Name: "new key"}},
		Wires: []model.Wire{
			{ID: "w2", From: model.On("pack", "POS"), To: model.On("sol", "L1"), Gauge: unit.AWG(2)},
			{ID: "k1", From: model.On("sol", "L1"), To: model.On("key", "BAT"), Gauge: unit.AWG(14)},
			{ID: "k2", From: model.On("key", "IGN"), To: model.On("sol", "coil-")},
		},
		Terminals: stack("w2", "k1"),
	}
	return &model.Job{Version: 1, Title: "conversion", Sheets: []model.Sheet{found, plan}}
}

func TestEachThingBearsWhatBecameOfIt(t *testing.T) {
	j := conversion()
	c := compare.Of(j.Sheet(model.AsFound), j.Sheet(model.Plan))
	merged := both.Merge(j, c)
	require.Len(t, merged.Sheets, 1)
	require.Len(t, merged.Sheets[0].Parts, 4)
	require.Len(t, j.Sheet(model.Plan).Parts, 3, "the job itself is left as it was")
	d, err := diagram.Draw(merged, model.Plan, part.Library(), diagram.Options{Quick: true})
	require.NoError(t, err)
	both.Mark(d.Pages, c)
	p := &d.Pages[0]
	require.Empty(t, scene.Check(p))
	boxes, wires := map[string]scene.Change{}, map[string]scene.Change{}
	for _, b := range p.Boxes {
		boxes[b.ID] = b.Change
	}
	for _, w := range p.Wires {
		wires[w.ID] = w.Change
	}
	require.Equal(t, map[string]scene.Change{"b1": scene.Removed, "pack": scene.Added, "sol": scene.Kept, "key": scene.Changed}, boxes)
	require.Equal(t, map[string]scene.Change{"w1": scene.Removed, "w2": scene.Added, "k1": scene.Changed, "k2": scene.Moved}, wires)
	require.Equal(t, map[string]int{"w1": 0, "w2": 1, "k1": 2}, seats(p, "sol", "L1"), "positions are those of the plan; what comes off has none")
	require.Equal(t, map[string]int{"w1": 1}, seats(p, "b1", "+"), "on a part that goes, positions are those that were")
}

func TestAConditionThatIsNotRecordedIsGood(t *testing.T) {
	require.Equal(t, "condition good, was dirty", both.Words(compare.Difference{Field: "condition", Was: "dirty"}))
	require.Equal(t, "colour not recorded, was RD", both.Words(compare.Difference{Field: "colour", Was: "RD"}))
}

// seats are the positions on a stud by the wires there.
func seats(p *scene.Page, box, stud string) map[string]int {
	at := map[scene.Point]string{}
	for _, w := range p.Wires {
		at[w.Path[0]], at[w.Path[len(w.Path)-1]] = w.ID, w.ID
	}
	out := map[string]int{}
	for _, b := range p.Boxes {
		for _, port := range b.Ports {
			if b.ID == box && port.ID == stud {
				out[at[port.At]] = port.Seat
			}
		}
	}
	return out
}

func TestListsSayWhatDiffers(t *testing.T) {
	j := conversion()
	tables := both.Tables(compare.Of(j.Sheet(model.AsFound), j.Sheet(model.Plan)), part.Library())
	var rows [][]string
	for _, table := range tables {
		for _, r := range table.Rows {
			rows = append(rows, r.Cells)
		}
	}
	require.Equal(t, [][]string{
		{"b1", "removed", "Lead-acid battery, 6 V"},
		{"pack", "added", "Lithium pack, 16 LiFePO4 cells, 48 V class"},
		{"key", "changed", "name new key, was not recorded"},
		{"w1", "removed", "b1.+ to sol.L1, 4 AWG"},
		{"w2", "added", "pack.POS to sol.L1, 2 AWG"},
		{"k2", "moved", "to sol.coil-, was sol.coil+"},
		{"k1", "changed", "gauge 14 AWG, was 16 AWG"},
	}, rows)
}
