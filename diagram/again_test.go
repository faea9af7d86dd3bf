package diagram_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/diagram"
	"example.com/lugbook/diagram/paper"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/part"
)

// What was printed and kept comes out the same again, and after a small change nearly so.
func TestKeptPagesArePrintedAsTheyWere(t *testing.T) {
	if testing.Short() {
		t.Skip("draws much at full effort")
	}
	s := openCart(t, "quarry-inspection", model.Plan)
	o := diagram.Options{Quick: true}
	for _, lies := range []scene.Paper{paper.A4.Portrait(), paper.A4.Landscape()} {
		columns, rows := paper.Cells(lies)
		o.Shapes = append(o.Shapes, diagram.Shape{Columns: columns, Rows: rows, Paper: lies})
	}
	first, err := diagram.Draw(s.Job(), model.Plan, part.Library(), o)
	require.NoError(t, err)
	require.Greater(t, len(first.Pages), 1)

	job := s.Job().Clone()
	sheet := job.Sheet(model.Plan)
	first.KeepIn(sheet, o.KeptFor())
	again, err := diagram.Draw(job, model.Plan, part.Library(), o)
	require.NoError(t, err)
	require.Equal(t, first.Pages, again.Pages)

	gone := sheet.Wires[len(sheet.Wires)/2]
	h := edit.NewHistory(job, part.Library())
	require.NoError(t, h.Do(edit.RemoveWire{Sheet: model.Plan, ID: gone.ID}))
	less, err := diagram.Draw(h.Job(), model.Plan, part.Library(), o)
	require.NoError(t, err)
	require.Len(t, less.Pages, len(first.Pages))
	for i := range first.Pages {
		require.Empty(t, scene.Check(&less.Pages[i]))
		moved := 0
		for k, b := range first.Pages[i].Boxes {
			require.Equal(t, b.ID, less.Pages[i].Boxes[k].ID)
			if b.Rect != less.Pages[i].Boxes[k].Rect && b.ID != string(gone.From.At.Part) && b.ID != string(gone.To.At.Part) {
				moved++
			}
		}
		require.Zero(t, moved, "page %d", i+1)
	}
}
