package view_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/diagram"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/view"
	"example.com/lugbook/model"
	"example.com/lugbook/model/cart"
	"example.com/lugbook/model/part"
)

// TestOneLinesRunAsTheirWiresAreRecorded, since currents are told along the wire: a line
// that ran the other way would show a charger that feeds while it draws.
func TestOneLinesRunAsTheirWiresAreRecorded(t *testing.T) {
	against := 0
	for _, name := range cart.Names() {
		job := open(t, name)
		for i := range job.Sheets {
			sheet := &job.Sheets[i]
			drawn, err := view.OneLine.Draw(job, sheet.Name, part.Library(), diagram.Options{})
			require.NoError(t, err)
			for p := range drawn.Pages {
				page := &drawn.Pages[p]
				require.Empty(t, scene.Check(page), name)
				for _, line := range page.Wires {
					w := sheet.Wire(model.WireID(line.ID))
					if w == nil || line.From == "" {
						continue
					}
					if w.From.String() != line.From { // of a string, told by its name, or beyond a plug
						require.NotEqual(t, w.To.String(), line.From, "%s: %s", name, line.ID)
						require.NotEqual(t, w.From.String(), line.To, "%s: %s", name, line.ID)
					}
					if from, to := line.Path[0], line.Path[len(line.Path)-1]; from.X > to.X && from.Y == to.Y {
						against++
					}
				}
			}
		}
	}
	require.Positive(t, against, "some wires are recorded against the reading direction")
}
