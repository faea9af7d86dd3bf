package export_test

import (
	"bytes"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/diagram"
	"example.com/lugbook/diagram/export"
	"example.com/lugbook/diagram/ink"
	"example.com/lugbook/diagram/live"
	"example.com/lugbook/diagram/paper"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/model"
	"example.com/lugbook/model/cart"
	"example.com/lugbook/model/jobfile"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/part"
)

// TestPagesOnPaperHaveLettersOfFullSize sets a worked cart on both papers, at rest and in a
// state, with the legend and the list that stand below: no page has to be shrunk.
func TestPagesOnPaperHaveLettersOfFullSize(t *testing.T) {
	if testing.Short() {
		t.Skip("draws much at full effort")
	}
	data, err := cart.Read("quarry-inspection")
	require.NoError(t, err)
	job, problems := jobfile.Decode("quarry-inspection", data, part.Library())
	require.Empty(t, problems)
	n := network.Build(job.Job, job.Job.Sheet(model.AsFound), part.Library())
	state := n.States()[0]
	solved, err := n.Solve(state)
	require.NoError(t, err)
	for _, size := range paper.All {
		o := export.SVG.Layout(export.Ask{Paper: size, State: true})
		o.Quick = true
		d, err := diagram.Draw(job.Job, model.AsFound, part.Library(), o)
		require.NoError(t, err)
		for _, pages := range [][]scene.Page{d.Pages, d.In(live.Of(n, solved)).Pages} {
			for i := range pages {
				require.Equal(t, size.Name, pages[i].Paper.Name)
				require.Equal(t, 100, ink.Set(&pages[i]).Percent(), "%s page %d: %d x %d cells", size.Name, i+1, pages[i].W, pages[i].H)
			}
		}
	}
}

func TestSeveralPagesAreFilesOfTheirOwnWhereAFileHoldsOne(t *testing.T) {
	pages := []scene.Page{{W: 10, H: 5, Title: scene.TitleBlock{Job: "first"}}, {W: 10, H: 5, Title: scene.TitleBlock{Job: "second"}}}
	files, err := export.SVG.Files(pages)
	require.NoError(t, err)
	require.Len(t, files, 2)
	require.Equal(t, "dir/plan-1.svg", files[0].Name("dir/plan.svg"))
	require.Equal(t, "dir/plan-2.svg", files[1].Name("dir/plan.svg"))
	require.True(t, bytes.Contains(files[1].Data, []byte("second")) && !bytes.Contains(files[1].Data, []byte("first")))

	files, err = export.Text.Files(pages)
	require.NoError(t, err)
	require.Len(t, files, 1)
	require.Contains(t, string(files[0].Data), "first")
	require.Contains(t, string(files[0].Data), "second")
}
