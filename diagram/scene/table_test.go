package scene_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/diagram/scene"
)

// set writes a table as rows of text.
func set(t *testing.T, table scene.Table, columns int) string {
	var b strings.Builder
	for _, line := range table.Set(columns) {
		row := ""
		for _, e := range line {
			require.LessOrEqual(t, len(row), e.Column, "entries overlap")
			row += strings.Repeat(" ", e.Column-scene.Width(row)) + e.Text
		}
		require.LessOrEqual(t, scene.Width(row), columns)
		b.WriteString(row + "\n")
	}
	return b.String()
}

func TestATableIsSetInAsManyBlocksAsFit(t *testing.T) {
	table := scene.Table{Head: []string{"wire", "from"}, Rows: [][]string{{"k1", "key.BAT"}, {"k2", "sol.A1"}, {"k3", ""}}}
	require.Equal(t, "wire from       wire from\nk1   key.BAT    k3\nk2   sol.A1\n", set(t, table, 28), "a narrower gap makes room for a second block")
	require.Equal(t, "wire  from\nk1    key.BAT\nk2    sol.A1\nk3\n", set(t, table, 20))
	require.Equal(t, "wire  from       wire  from\nk1    key.BAT    k3\nk2    sol.A1\n", set(t, table, 40))
	require.Equal(t, "wire  from\nk1    key…\nk2    sol…\nk3\n", set(t, table, 10))
	require.Empty(t, scene.Table{Head: table.Head}.Set(40))
}
