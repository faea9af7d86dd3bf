package view_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/diagram/view"
)

func TestEveryViewIsFoundByItsName(t *testing.T) {
	for _, v := range view.All {
		found, err := view.Find(v.Name)
		require.NoError(t, err)
		require.Equal(t, v.About, found.About)
		require.NotEmpty(t, v.About)
	}
	_, err := view.Find("sideways")
	require.ErrorContains(t, err, `no view "sideways"; there are wiring`)
}
