package diagram_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/diagram"
	"example.com/lugbook/diagram/live"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/text"
	"example.com/lugbook/model"
	"example.com/lugbook/model/cart"
	"example.com/lugbook/model/jobfile"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/part"
	"example.com/lugbook/model/state"
)

// TestWorkedCartsAreDrawnWithoutFault draws every sheet of every worked cart, in pages of
// 120 columns and on one page, and finds every wire with a label that names it. Then it
// paints every state over each drawing.
func TestWorkedCartsAreDrawnWithoutFault(t *testing.T) {
	if testing.Short() {
		t.Skip("draws much at full effort")
	}
	names := cart.Names()
	if testing.Short() {
		names = names[:1]
	}
	for _, name := range names {
		data, err := cart.Read(name)
		require.NoError(t, err)
		d, problems := jobfile.Decode(name, data, part.Library())
		require.Empty(t, problems)
		for _, s := range d.Job.Sheets {
			for _, columns := range []int{0, 120} {
				o := diagram.Options{Quick: true}
				if columns > 0 {
					o.Shapes = []diagram.Shape{{Columns: columns, Rows: 150}}
				}
				if testing.Short() && columns > 0 {
					continue
				}
				t.Run(fmt.Sprintf("%s %s %d", name, s.Name, columns), func(t *testing.T) {
					t.Parallel()
					drawing, err := diagram.Draw(d.Job, s.Name, part.Library(), o)
					require.NoError(t, err)
					for i := range drawing.Pages {
						p := &drawing.Pages[i]
						require.Empty(t, scene.Check(p))
						if columns > 0 {
							require.LessOrEqual(t, p.W, columns)
						}
						for _, w := range p.Wires {
							require.Contains(t, w.Label.Text, w.ID)
						}
					}
					statesAreDrawn(t, d.Job, s.Name, drawing)
				})
			}
		}
	}
}

// statesAreDrawn paints every state of a sheet over its drawing and finds no fault, nothing
// moved, and every wire with the current that the network gives, along its path.
func statesAreDrawn(t *testing.T, j *model.Job, sheet model.SheetName, d *diagram.Drawing) {
	t.Helper()
	n := network.Build(j, j.Sheet(sheet), part.Library())
	for _, at := range n.States() {
		solved, err := n.Solve(at)
		require.NoError(t, err, at.Name)
		painted := d.In(live.Of(n, solved))
		for i := range painted.Pages {
			p, plain := &painted.Pages[i], &d.Pages[i]
			require.Empty(t, scene.Check(p), at.Name)
			require.Contains(t, p.Title.Shown, at.Name)
			for k, w := range p.Wires {
				require.Equal(t, plain.Wires[k].Path, w.Path)
				require.Equal(t, plain.Wires[k].Label, w.Label)
				require.NotEqual(t, scene.NotShown, w.Flow.Energy, "%s: %s", at.Name, w.ID)
				amps, ok := solved.WireCurrent(model.WireID(w.ID))
				require.True(t, ok)
				if w.Flow.Carries() {
					require.InDelta(t, amps, w.Flow.Amps, 1e-12, "%s: %s", at.Name, w.ID)
				} else if w.Flow.Energy != scene.Unjudged {
					require.InDelta(t, 0, amps, live.Least, "%s: %s", at.Name, w.ID)
				}
			}
		}
	}
}

// BenchmarkState measures what a change of the state in force costs: the network solved, and
// the drawing painted anew.
func BenchmarkState(b *testing.B) {
	data, err := cart.Read("festival-bowser")
	require.NoError(b, err)
	decoded, problems := jobfile.Decode("festival-bowser", data, part.Library())
	require.Empty(b, problems)
	d, err := diagram.Draw(decoded.Job, model.Plan, part.Library(), diagram.Options{Quick: true})
	require.NoError(b, err)
	for b.Loop() {
		n := network.Build(decoded.Job, decoded.Job.Sheet(model.Plan), part.Library())
		s, _ := state.Find(n.States(), state.DriveForward)
		solved, err := n.Solve(s)
		require.NoError(b, err)
		page := d.In(live.Of(n, solved)).Pages[0]
		text.Render(&page, text.Options{Bare: true})
	}
}
