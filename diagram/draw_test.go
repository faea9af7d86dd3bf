package diagram_test

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/diagram"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/svg"
	"example.com/lugbook/diagram/text"
	"example.com/lugbook/model"
	"example.com/lugbook/model/part"
	"example.com/lugbook/model/unit"
)

// randomJob wires parts of the library at random: lugs on studs, loose ends, missing
// data and all.
func randomJob(seed uint64) *model.Job {
	r := rand.New(rand.NewPCG(seed, 1))
	zones := []model.ZoneID{"tray", "rear", "dash", ""}
	lib := part.Library()
	kinds := append([]string{model.UnknownKind}, lib.Kinds()...)
	s := model.Sheet{Name: model.AsFound}
	var ends []model.TerminalRef
	for i := range 3 + r.IntN(20) {
		p := model.Part{ID: model.PartID(fmt.Sprintf("p%d", i)), Kind: kinds[r.IntN(len(kinds))], Zone: zones[r.IntN(len(zones))]}
		s.Parts = append(s.Parts, p)
		if d := lib.Definition(p.Kind); d != nil {
			for _, t := range d.Terminals {
				ends = append(ends, model.TerminalRef{Part: p.ID, Name: t.Name})
			}
		}
	}
	for i := range len(s.Parts) * 3 / 2 {
		w := model.Wire{ID: model.WireID(fmt.Sprintf("w%d", i)), From: randomEnd(r, ends), To: randomEnd(r, ends)}
		if w.From == w.To {
			continue
		}
		if r.IntN(4) > 0 {
			w.Gauge = []unit.Gauge{gauge("2/0 AWG"), gauge("6 AWG"), gauge("16 AWG"), gauge("25 mm2")}[r.IntN(4)]
			w.Colour = model.Colour{Body: "RD"}
		}
		s.Wires = append(s.Wires, w)
	}
	return &model.Job{Version: 1, Title: "random", Zones: []model.Zone{{ID: "tray"}, {ID: "rear"}, {ID: "dash"}}, Sheets: []model.Sheet{s}}
}

func randomEnd(r *rand.Rand, ends []model.TerminalRef) model.End {
	loose := []model.Loose{model.Cut, model.Capped, model.Untraced}
	if len(ends) == 0 || r.IntN(12) == 0 {
		return model.LooseEnd(loose[r.IntN(len(loose))])
	}
	at := ends[r.IntN(len(ends))]
	return model.End{At: at}
}

func gauge(s string) unit.Gauge {
	g, err := unit.ParseGauge(s)
	if err != nil {
		panic(err)
	}
	return g
}

// TestRandomHarnessesAreDrawnWithoutFault draws random sheets, paged and not, and finds
// no box on another, no wire through a box or on another wire, no label on anything.
func TestRandomHarnessesAreDrawnWithoutFault(t *testing.T) {
	n := 300
	if testing.Short() {
		n = 8
	}
	const lanes = 4
	for lane := range lanes {
		t.Run(fmt.Sprint(lane), func(t *testing.T) {
			t.Parallel()
			for seed := lane; seed < n; seed += lanes {
				j := randomJob(uint64(seed))
				o := diagram.Options{Quick: true, Unwired: seed%3 == 0}
				if seed%2 == 0 {
					o.Shapes = []diagram.Shape{{Columns: 200}}
				}
				d, err := diagram.Draw(j, model.AsFound, part.Library(), o)
				require.NoError(t, err, "seed %d", seed)
				drawnOnce(t, j, d, seed)
			}
		})
	}
}

// drawnOnce checks the pages of a drawing: no fault, and every wire with its two ends.
func drawnOnce(t *testing.T, j *model.Job, d *diagram.Drawing, seed int) {
	t.Helper()
	seen := map[string]int{}
	for i := range d.Pages {
		p := &d.Pages[i]
		require.Empty(t, scene.Check(p), "seed %d page %d\n%s", seed, i, text.Render(p, text.Options{}))
		for _, w := range p.Wires {
			seen[w.ID]++
			require.GreaterOrEqual(t, len(w.Path), 2, "seed %d: %s", seed, w.ID)
		}
	}
	for _, w := range j.Sheets[0].Wires {
		require.Positive(t, seen[string(w.ID)], "seed %d: %s is drawn", seed, w.ID)
	}
}

func TestEqualJobsGiveEqualBytes(t *testing.T) {
	if testing.Short() {
		t.Skip("draws much at full effort")
	}
	render := func() []byte {
		d, err := diagram.Draw(randomJob(7), model.AsFound, part.Library(), diagram.Options{Shapes: []diagram.Shape{{Columns: 160}}})
		require.NoError(t, err)
		var b bytes.Buffer
		for i := range d.Pages {
			b.WriteString(text.Render(&d.Pages[i], text.Options{}).String())
			_, err := svg.Render(&b, &d.Pages[i], svg.Options{})
			require.NoError(t, err)
		}
		return b.Bytes()
	}
	require.Equal(t, string(render()), string(render()))
}

func TestAWireTakenAwayMovesNoBox(t *testing.T) {
	if testing.Short() {
		t.Skip("draws much at full effort")
	}
	j := randomJob(11)
	before, err := diagram.Draw(j, model.AsFound, part.Library(), diagram.Options{})
	require.NoError(t, err)
	less := j.Clone()
	less.Sheets[0].Wires = less.Sheets[0].Wires[1:]
	after, err := diagram.Draw(less, model.AsFound, part.Library(), diagram.Options{Previous: before})
	require.NoError(t, err)
	was := map[string]scene.Rect{}
	for _, b := range before.Pages[0].Boxes {
		was[b.ID] = b.Rect
	}
	// What stood at the edge may be gone, so the whole drawing may shift.
	first := after.Pages[0].Boxes[0]
	dx, dy := first.Rect.X-was[first.ID].X, first.Rect.Y-was[first.ID].Y
	for _, b := range after.Pages[0].Boxes {
		require.Equal(t, was[b.ID].X+dx, b.Rect.X, b.ID)
		require.Equal(t, was[b.ID].Y+dy, b.Rect.Y, b.ID)
	}
}

func TestAMissingSheetIsNamed(t *testing.T) {
	_, err := diagram.Draw(randomJob(1), model.Plan, part.Library(), diagram.Options{})
	require.EqualError(t, err, "the job has no plan sheet")
}

func TestAnEmptySheetIsAnEmptyPage(t *testing.T) {
	j := &model.Job{Version: 1, Title: "new", Sheets: []model.Sheet{{Name: model.AsFound}}}
	d, err := diagram.Draw(j, model.AsFound, part.Library(), diagram.Options{Shapes: []diagram.Shape{{Columns: 80}}})
	require.NoError(t, err)
	require.Len(t, d.Pages, 1)
	require.Contains(t, text.Render(&d.Pages[0], text.Options{}).String(), "new / sheet as-found")
}
