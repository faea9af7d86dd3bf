package export_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/diagram/export"
	"example.com/lugbook/model"
	"example.com/lugbook/model/part"
)

func TestEveryFormatNamesEveryWireAndRepeatsItself(t *testing.T) {
	if testing.Short() {
		t.Skip("draws much at full effort")
	}
	job := &model.Job{Version: 1, Title: "two", Sheets: []model.Sheet{{
		Name:  model.Plan,
		Parts: []model.Part{{ID: "b1", Kind: "lead-battery-6v"}, {ID: "b2", Kind: "lead-battery-6v"}},
		Wires: []model.Wire{{ID: "j1", From: model.On("b1", "+"), To: model.On("b2", "-")}, {ID: "x7", From: model.On("b2", "+"), To: model.LooseEnd(model.Cut)}},
	}}}
	seen := map[string]bool{}
	for _, f := range export.All {
		require.False(t, seen[f.Name] || seen[f.Ext], "%s: name and ending are its own", f.Name)
		seen[f.Name], seen[f.Ext] = true, true
		first, err := f.Sheet(job, model.Plan, part.Library(), nil)
		require.NoError(t, err)
		second, err := f.Sheet(job, model.Plan, part.Library(), nil)
		require.NoError(t, err)
		require.Equal(t, first, second, f.Name)
		require.Len(t, first, 1)
		require.Equal(t, "out"+f.Ext, first[0].Name("out"+f.Ext))
		if f.Name == export.PDF.Name || f.Name == export.PNG.Name {
			continue // no plain text: their own tests read them
		}
		for _, word := range []string{"b1", "b2", "j1", "x7", "two"} {
			require.Contains(t, string(first[0].Data), word, f.Name)
		}
		found, err := export.Find(f.Name)
		require.NoError(t, err)
		require.Equal(t, f.Ext, found.Ext)
	}
}

func TestAnUnknownFormatIsRefused(t *testing.T) {
	_, err := export.Find("pfd")
	require.EqualError(t, err, `no format "pfd"; there are text, ascii, svg, pdf, png`)
}
