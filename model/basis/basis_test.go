package basis_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model/basis"
)

func TestEveryLimitIsWhole(t *testing.T) {
	seen := map[string]bool{}
	for _, l := range basis.Limits() {
		require.False(t, seen[l.Name], "%s is there once", l.Name)
		seen[l.Name] = true
		require.NotEmpty(t, l.Means, l.Name)
		require.NotEmpty(t, l.Source, l.Name)
		base, _ := l.Of(false)
		require.False(t, base.IsZero(), "%s: %q", l.Name, l.Base)
		house, source := l.Of(true)
		require.Equal(t, base.Dimension(), house.Dimension(), l.Name)
		require.Equal(t, l.House == "", l.Why == "", "%s: a reason for what differs", l.Name)
		if l.House != "" {
			require.NotEqual(t, base, house, l.Name)
			require.Contains(t, source, l.Why)
		}
		found, ok := basis.Find(l.Name)
		require.True(t, ok)
		require.Equal(t, l, found)
	}
	_, ok := basis.Find("no-such-limit")
	require.False(t, ok)
}
