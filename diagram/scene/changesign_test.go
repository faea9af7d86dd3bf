package scene_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/scene/scenetest"
)

// TestSignsOfChangesStandOnTheirLinesAlone changes wires of random pages at random: each sign
// has three cells to itself, with its own line on both sides of them or above and below.
func TestSignsOfChangesStandOnTheirLinesAlone(t *testing.T) {
	signs := 0
	rapid.Check(t, func(t *rapid.T) {
		pick := func(n int) int { return rapid.IntRange(0, n-1).Draw(t, "pick") }
		p := scenetest.Random(pick)
		for i := range p.Wires {
			p.Wires[i].Change = scene.Change(pick(6))
		}
		taken := map[scene.Point]bool{}
		for _, s := range p.ChangeSigns() {
			signs++
			i := slices.IndexFunc(p.Wires, func(w scene.Wire) bool { return w.ID == s.Wire })
			require.Equal(t, p.Wires[i].Change, s.Change)
			require.NotEmpty(t, s.Change.Sign())
			line := scene.Cells(p.Wires[i].Path)
			at := slices.Index(line, s.At)
			require.True(t, at > 0 && at+1 < len(line), "on the line, not at its end")
			level := line[at-1].Y == s.At.Y
			for dx := -1; dx <= 1; dx++ {
				cell := s.At.Add(dx, 0)
				require.False(t, taken[cell], "two signs in one place")
				taken[cell] = true
				for _, ref := range p.At(cell) {
					own := ref == scene.Ref{Kind: scene.WireKind, ID: s.Wire}
					require.True(t, ref.Kind == scene.ZoneKind || own && (level || dx == 0), "%v at %v", ref, cell)
				}
			}
			before, after := s.At.Add(-2, 0), s.At.Add(2, 0)
			if !level {
				before, after = s.At.Add(0, -1), s.At.Add(0, 1)
			}
			require.Contains(t, line, before)
			require.Contains(t, line, after)
		}
	})
	if testing.Short() {
		return
	}
	require.Greater(t, signs, 30, "too few signs to test anything")
}

func TestOnlyWhatChangedIsSigned(t *testing.T) {
	require.Empty(t, scenetest.Cart().ChangeSigns())
	p := scenetest.Changes()
	signed := map[scene.Change]int{}
	for _, s := range p.ChangeSigns() {
		signed[s.Change]++
	}
	require.Len(t, signed, 4)
	require.Zero(t, signed[scene.Kept])
	for i := range p.Wires {
		p.Wires[i].Path = p.Wires[i].Path[:1]
	}
	require.NotPanics(t, func() { p.ChangeSigns() })
}
