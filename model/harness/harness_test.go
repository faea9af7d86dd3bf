package harness_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"example.com/lugbook/model"
	"example.com/lugbook/model/cart"
	_ "example.com/lugbook/model/fixedseed"
	"example.com/lugbook/model/harness"
	"example.com/lugbook/model/jobfile"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/part"
	"example.com/lugbook/model/unit"
)

// yard is a cart with a ring of three runs, a branch to the mast and a zone that no run joins.
func yard() (*model.Job, *model.Sheet) {
	j := &model.Job{
		Zones: []model.Zone{{ID: "tray"}, {ID: "bay"}, {ID: "floor"}, {ID: "dash"}, {ID: "mast"}, {ID: "shed"}},
		Runs: []model.Run{
			run("tray", "bay", 0.6), run("tray", "floor", 0.8), run("floor", "bay", 1.1), run("floor", "dash", 0.7), run("dash", "mast", 1.2), run("dash", "floor", 9),
		},
	}
	s := &model.Sheet{Parts: []model.Part{
		{ID: "pack", Zone: "tray"}, {ID: "ctrl", Zone: "bay"}, {ID: "key", Zone: "dash"}, {ID: "lamp", Zone: "mast"}, {ID: "spare", Zone: "shed"}, {ID: "lost"},
	}}
	return j, s
}

func run(from, to model.ZoneID, metres float64) model.Run {
	return model.Run{From: from, To: to, Length: unit.LengthFromMetres(metres)}
}

func wire(id model.WireID, from, to model.PartID) model.Wire {
	return model.Wire{ID: id, From: model.On(from, "1"), To: model.On(to, "2")}
}

func TestWiresTakeTheShortestWay(t *testing.T) {
	j, s := yard()
	loose := model.Wire{ID: "w6", From: model.On("pack", "3"), To: model.End{Loose: model.Untraced, In: "dash"}}
	via := wire("w7", "pack", "ctrl")
	via.Via = []model.ZoneID{"bay", "floor", "tray"} // the long way round, and written from the far end
	measured := wire("w8", "pack", "lamp")
	measured.Length = unit.LengthFromMetres(4)
	gap := wire("w9", "pack", "key")
	gap.Via = []model.ZoneID{"tray", "dash"}
	s.Wires = []model.Wire{
		wire("w1", "ctrl", "lamp"), wire("w2", "pack", "spare"), wire("w3", "lost", "key"), wire("w4", "key", "key"), wire("w5", "pack", "ctrl"), loose, via, measured, gap,
	}
	h := harness.Of(j, s)
	of := map[model.WireID]harness.Wire{}
	for _, w := range h.Wires {
		of[w.Wire.ID] = w
	}
	require.Equal(t, []model.ZoneID{"bay", "floor", "dash", "mast"}, of["w1"].Along, "1.1 m over the floor, not 1.4 m over the tray")
	require.InDelta(t, 3.0, of["w1"].RunSum, 1e-9)
	require.Equal(t, harness.NoWay, of["w2"].Basis)
	require.Equal(t, [2]model.ZoneID{"tray", "shed"}, of["w2"].Gap)
	require.Equal(t, harness.NoZone, of["w3"].Basis)
	require.Equal(t, harness.Inside, of["w4"].Basis)
	require.Zero(t, of["w4"].Length)
	require.Equal(t, []model.ZoneID{"tray", "floor", "dash"}, of["w6"].Along)
	require.Equal(t, []model.ZoneID{"tray", "floor", "bay"}, of["w7"].Along)
	require.Equal(t, harness.Measured, of["w8"].Basis)
	require.Equal(t, 4.0, of["w8"].Length)
	require.Len(t, of["w8"].Along, 4)
	require.Equal(t, harness.NoWay, of["w9"].Basis, "what is recorded of a way is not made good by another")
	require.Equal(t, [2]model.ZoneID{"tray", "dash"}, of["w9"].Gap)

	wires := map[string][]model.WireID{}
	for _, r := range h.Runs {
		wires[string(r.From+" "+r.To)] = r.Wires
	}
	require.Equal(t, map[string][]model.WireID{
		"tray bay": {"w5"}, "tray floor": {"w6", "w7", "w8"}, "floor bay": {"w1", "w7"}, "floor dash": {"w1", "w6", "w8"}, "dash mast": {"w1", "w8"},
	}, wires, "the second run from dash to floor is none")
	for _, z := range h.Zones {
		require.Equal(t, z.ID == "floor", z.IsBranch(), z.ID)
	}
}

// TestCutLengths holds lengths against a sum by hand: 0.6 m of run, and at each of two ends
// two lugs of 17 + 5 mm for 2 AWG (88 mm in all) or of 7 + 5 mm for 16 AWG (48 mm).
func TestCutLengths(t *testing.T) {
	j, s := yard()
	main, thin, bare := wire("w1", "pack", "ctrl"), wire("w2", "pack", "ctrl"), wire("w3", "pack", "ctrl")
	main.Gauge, thin.Gauge = unit.AWG(2), unit.AWG(16)
	one := thin
	one.ID, one.To = "w4", model.End{Loose: model.Capped, In: "bay"}
	s.Wires = []model.Wire{main, thin, bare, one}
	h := harness.Of(j, s)
	require.InDelta(t, 0.088, h.Wires[0].Slack, 1e-9)
	require.InDelta(t, 0.700, h.Wires[0].Length, 1e-9, "688 mm, cut in steps of 25")
	require.InDelta(t, 0.048, h.Wires[1].Slack, 1e-9)
	require.InDelta(t, 0.650, h.Wires[1].Length, 1e-9, "648 mm, cut in steps of 10")
	require.Zero(t, h.Wires[2].Slack)
	require.InDelta(t, 0.600, h.Wires[2].Length, 1e-9)
	require.InDelta(t, 0.024, h.Wires[3].Slack, 1e-9, "a capped end takes no lug")
}

// TestHarnessesOfCarts requires of each sheet of each worked cart that every end hangs
// somewhere once, and that lengths agree with those that the network computes with where
// both go the same way.
func TestHarnessesOfCarts(t *testing.T) {
	for _, name := range cart.Names() {
		data, err := cart.Read(name)
		require.NoError(t, err)
		d, problems := jobfile.Decode(name, data, part.Library())
		require.Empty(t, problems)
		for i := range d.Job.Sheets {
			s := &d.Job.Sheets[i]
			h := harness.Of(d.Job, s)
			n := network.Build(d.Job, s, part.Library())
			require.Len(t, h.Wires, len(s.Wires))
			for _, w := range h.Wires {
				require.NotEqual(t, harness.NoWay, w.Basis, "%s %s %s", name, s.Name, w.Wire.ID)
				if metres, ok := n.Length(w.Wire); ok && len(w.Wire.Via) > 0 && w.Basis == harness.ByRuns {
					require.InDelta(t, metres, w.RunSum, 1e-9)
				}
			}
			consistent(t, h)
		}
	}
}

// consistent requires that runs, zones and wires of a harness tell one story.
func consistent(t require.TestingT, h *harness.Harness) {
	hung := map[model.WireID]int{}
	for _, z := range h.Zones {
		for _, p := range z.Parts {
			for _, id := range append(p.Away, p.Here...) {
				hung[id]++
			}
		}
	}
	inRuns := map[model.WireID]float64{}
	for _, r := range h.Runs {
		for _, id := range r.Wires {
			inRuns[id] += r.Length.Metres()
		}
	}
	for _, w := range h.Wires {
		parts := map[model.PartID]bool{}
		for _, e := range w.Wire.Ends() {
			if !e.IsLoose() {
				parts[e.At.Part] = true
			}
		}
		require.Equal(t, len(parts), hung[w.Wire.ID], w.Wire.ID)
		require.InDelta(t, w.RunSum, inRuns[w.Wire.ID], 1e-9, w.Wire.ID)
		if w.Basis == harness.ByRuns {
			require.GreaterOrEqual(t, w.Length+1e-9, w.RunSum+w.Slack)
			require.LessOrEqual(t, w.Length, w.RunSum+w.Slack+0.025)
		}
	}
}

// TestNoWayIsShorter compares the way of a wire with all ways there are, on random runs.
func TestNoWayIsShorter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		zone := rapid.IntRange(0, 5)
		j, s := &model.Job{}, &model.Sheet{}
		for range rapid.IntRange(0, 9).Draw(t, "runs") {
			a, b := zone.Draw(t, "a"), zone.Draw(t, "b")
			j.Runs = append(j.Runs, run(id(a), id(b), float64(rapid.IntRange(1, 9).Draw(t, "length"))/10))
		}
		for z := range 6 {
			s.Parts = append(s.Parts, model.Part{ID: model.PartID(id(z)), Zone: id(z)})
		}
		from, to := zone.Draw(t, "from"), zone.Draw(t, "to")
		s.Wires = []model.Wire{wire("w", model.PartID(id(from)), model.PartID(id(to)))}
		h := harness.Of(j, s)
		consistent(t, h)
		w := h.Wires[0]
		best, found := shortest(h.Runs, id(from), id(to), map[model.ZoneID]bool{})
		if from == to {
			require.Equal(t, harness.Inside, w.Basis)
			return
		}
		require.Equal(t, found, w.Basis == harness.ByRuns)
		if found {
			require.InDelta(t, best, w.RunSum, 1e-9)
		}
	})
}

func id(n int) model.ZoneID { return model.ZoneID(fmt.Sprintf("z%d", n)) }

// shortest tries every way that enters no zone twice.
func shortest(runs []harness.Run, from, to model.ZoneID, been map[model.ZoneID]bool) (best float64, found bool) {
	if from == to {
		return 0, true
	}
	been[from] = true
	defer delete(been, from)
	for _, r := range runs {
		next := r.To
		if r.To == from {
			next = r.From
		} else if r.From != from {
			continue
		}
		if been[next] {
			continue
		}
		if rest, ok := shortest(runs, next, to, been); ok && (!found || rest+r.Length.Metres() < best) {
			best, found = rest+r.Length.Metres(), true
		}
	}
	return best, found
}
