package paper_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/diagram/paper"
	"example.com/lugbook/diagram/scene"
)

func TestPagesHoldWhatFitsAtReadableSize(t *testing.T) {
	// By hand: (297 - 20) / 2.1 = 131.9 columns and (210 - 20) / 4.2 = 45.2 rows, less two each.
	for _, c := range []struct {
		lies          scene.Paper
		columns, rows int
	}{
		{paper.A4.Landscape(), 129, 43},
		{paper.A4.Portrait(), 88, 63},
		{paper.Letter.Landscape(), 121, 44},
		{paper.Letter.Portrait(), 91, 59},
		{scene.Paper{}, 0, 0},
	} {
		columns, rows := paper.Cells(c.lies)
		require.Equal(t, []int{c.columns, c.rows}, []int{columns, rows}, c.lies)
	}
}

func TestPapersAreFoundByName(t *testing.T) {
	for _, name := range paper.Names() {
		found, err := paper.Find(name)
		require.NoError(t, err)
		require.Less(t, found.Short, found.Long)
		require.Less(t, found.Portrait().WidthMM, found.Landscape().WidthMM)
	}
	found, err := paper.Find("LETTER")
	require.NoError(t, err)
	require.Equal(t, paper.Letter, found)
	_, err = paper.Find("a3")
	require.EqualError(t, err, `no paper "a3"; there are a4, letter`)
}
