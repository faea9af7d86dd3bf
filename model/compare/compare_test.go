package compare_test

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"example.com/lugbook/model"
	"example.com/lugbook/model/cart"
	"example.com/lugbook/model/compare"
	_ "example.com/lugbook/model/fixedseed"
	"example.com/lugbook/model/jobfile"
	"example.com/lugbook/model/part"
	"example.com/lugbook/model/unit"
)

func amps(a float64) model.Rating {
	return model.Rating{Name: "fuse-rating", Value: unit.A(a).Any(), Source: "label"}
}

func twoSheets() (was, is *model.Sheet) {
	was = &model.Sheet{
		Name: model.AsFound,
		Parts: []model.Part{
			{ID: "b1", Kind: "lead-battery-6v", Zone: "tray"},
			{ID: "sol", Kind: "contactor-48v", Zone: "bay"},
			{ID: "fu1", Kind: "fuse-cartridge", Zone: "tray", Ratings: []model.Rating{amps(10)}},
			{ID: "horn", Kind: "horn-48v", Zone: "bay"},
		},
		Wires: []model.Wire{
			{ID: "w1", From: model.On("b1", "+"), To: model.On("sol", "L1"), Gauge: unit.AWG(4)},
			{ID: "w2", From: model.On("sol", "L1"), To: model.On("fu1", "in"), Gauge: unit.AWG(16), FromLug: lug("5/16 in")},
			{ID: "w3", From: model.On("fu1", "out"), To: model.On("horn", "+")},
			{ID: "w4", From: model.On("horn", "-"), To: model.On("sol", "coil-"), Note: "old"},
		},
		Terminals: []model.Terminal{{At: model.TerminalRef{Part: "sol", Name: "L1"}, Stack: []model.WireID{"w2", "w1"}}},
	}
	is = &model.Sheet{
		Name: model.Plan,
		Parts: []model.Part{
			{ID: "pack", Kind: "lithium-pack-16", Zone: "tray"},
			{ID: "sol", Kind: "contactor-48v", Zone: "bay", Note: "dressed"},
			{ID: "fu1", Kind: "fuse-cartridge", Zone: "tray", Ratings: []model.Rating{amps(5)}},
			{ID: "horn", Kind: "horn-48v", Zone: "dash"},
		},
		Wires: []model.Wire{
			{ID: "w1", From: model.On("pack", "POS"), To: model.On("sol", "L1"), Gauge: unit.AWG(2)},
			{ID: "w2", From: model.On("fu1", "in"), To: model.On("sol", "L1"), Gauge: unit.AWG(16), ToLug: lug("5/16 in")},
			{ID: "w3", From: model.On("fu1", "out"), To: model.On("horn", "+"), Colour: model.Colour{Body: "RD"}},
			{ID: "w5", From: model.On("horn", "-"), To: model.LooseEnd(model.Capped)},
		},
		Terminals: []model.Terminal{{At: model.TerminalRef{Part: "sol", Name: "L1"}, Stack: []model.WireID{"w1", "w2"}, Cover: model.CoverFitted}},
	}
	return was, is
}

func lug(s string) unit.Stud {
	l, err := unit.ParseStud(s)
	if err != nil {
		panic(err)
	}
	return l
}

func TestEachThingIsToldByWhatBecameOfIt(t *testing.T) {
	was, is := twoSheets()
	c := compare.Of(was, is)
	parts := map[model.PartID]compare.What{}
	for _, p := range c.Parts {
		parts[p.ID] = p.What
	}
	require.Equal(t, map[model.PartID]compare.What{
		"pack": compare.Added, "sol": compare.Kept, "fu1": compare.Changed, "horn": compare.Moved, "b1": compare.Removed,
	}, parts)
	wires := map[model.WireID]compare.What{}
	differs := map[model.WireID][]compare.Difference{}
	for _, w := range c.Wires {
		wires[w.ID], differs[w.ID] = w.What, w.Differs
	}
	require.Equal(t, map[model.WireID]compare.What{
		"w1": compare.Moved, "w2": compare.Kept, "w3": compare.Changed, "w4": compare.Removed, "w5": compare.Added,
	}, wires, "w2 is only written the other way round")
	require.Equal(t, []compare.Difference{{"from", "b1.+", "pack.POS"}, {"gauge", "4 AWG", "2 AWG"}}, differs["w1"])
	require.Equal(t, []compare.Difference{{"colour", "", "RD"}}, differs["w3"])
	require.Equal(t, []compare.Terminal{{
		At:      model.TerminalRef{Part: "sol", Name: "L1"},
		Differs: []compare.Difference{{"cover", "", "fitted"}, {"stack", "w2, w1", "w1, w2"}},
	}}, c.Terminals)
	n, m := c.Count(compare.Removed)
	require.Equal(t, []int{1, 1}, []int{n, m})
}

func TestTheSheetBefore(t *testing.T) {
	was, is := twoSheets()
	j := &model.Job{Sheets: []model.Sheet{*is, *was}}
	require.Nil(t, compare.Before(j, model.AsFound))
	require.Equal(t, model.AsFound, compare.Before(j, model.Plan).Name)
	require.Equal(t, model.Plan, compare.Before(j, model.AsBuilt).Name, "the plan comes before what is still to be built")
	require.Nil(t, compare.Before(j, "sideways"))
}

// TestComparisonsOfCarts compares the sheets of every worked cart with each other and with themselves.
func TestComparisonsOfCarts(t *testing.T) {
	for _, name := range cart.Names() {
		data, err := cart.Read(name)
		require.NoError(t, err)
		d, problems := jobfile.Decode(name, data, part.Library())
		require.Empty(t, problems)
		was, is := d.Job.Sheet(model.AsFound), d.Job.Sheet(model.Plan)
		self := compare.Of(is, is)
		kept, keptWires := self.Count(compare.Kept)
		require.Equal(t, len(is.Parts), kept)
		require.Equal(t, len(is.Wires), keptWires)
		require.Empty(t, self.Terminals)
		mirrored(t, compare.Of(was, is), compare.Of(is, was))
	}
}

// mirrored requires that what one comparison adds the other removes, and that the rest is
// told alike from either side.
func mirrored(t require.TestingT, there, back *compare.Comparison) {
	turned := map[compare.What]compare.What{
		compare.Added: compare.Removed, compare.Removed: compare.Added,
		compare.Kept: compare.Kept, compare.Moved: compare.Moved, compare.Changed: compare.Changed,
	}
	wires := map[model.WireID]compare.Wire{}
	for _, w := range back.Wires {
		wires[w.ID] = w
	}
	require.Len(t, wires, len(there.Wires))
	for _, w := range there.Wires {
		require.Equal(t, turned[w.What], wires[w.ID].What, w.ID)
		require.Len(t, wires[w.ID].Differs, len(w.Differs), w.ID)
	}
	for what, other := range turned {
		a, b := there.Count(what)
		c, d := back.Count(other)
		require.Equal(t, []int{a, b}, []int{c, d}, what)
	}
}

func TestRandomSheetsCompareAlikeFromEitherSide(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sheet := func(label string) *model.Sheet {
			s := &model.Sheet{}
			ends := []model.End{model.On("a", "1"), model.On("a", "2"), model.On("b", "1"), model.LooseEnd(model.Cut)}
			for _, id := range []model.WireID{"w1", "w2", "w3", "w4"} {
				if !rapid.Bool().Draw(t, label+string(id)) {
					continue
				}
				s.Wires = append(s.Wires, model.Wire{
					ID: id, From: rapid.SampledFrom(ends).Draw(t, "from"), To: rapid.SampledFrom(ends).Draw(t, "to"),
					Gauge: rapid.SampledFrom([]unit.Gauge{{}, unit.AWG(4), unit.AWG(16)}).Draw(t, "gauge"),
				})
			}
			return s
		}
		a, b := sheet("a"), sheet("b")
		mirrored(t, compare.Of(a, b), compare.Of(b, a))
	})
}
