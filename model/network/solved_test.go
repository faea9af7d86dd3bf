package network_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model/state"
)

// States that differ by name alone are solved once, and each is told by its own name.
func TestAStateIsToldByItsOwnName(t *testing.T) {
	rests := build(t, `
		part pack lithium-pack-16
		part rly relay-48v
		wire a pack.POS rly.86
		wire c rly.85 pack.NEG`)
	chatters := build(t, `
		part pack lithium-pack-16
		part rly relay-48v
		wire a pack.POS rly.30
		wire b rly.87a rly.86
		wire c rly.85 pack.NEG`)
	for _, name := range []string{"first", "second"} {
		solution, err := rests.Solve(state.State{Name: name})
		require.NoError(t, err)
		require.Equal(t, name, solution.State.Name)
		require.True(t, solution.On(rests.LinksAt(rests.Node(ref("rly.86")))[0]))
		_, err = chatters.Solve(state.State{Name: name})
		require.ErrorContains(t, err, name)
	}
}
