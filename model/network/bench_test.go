package network_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model/mini"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/part"
	"example.com/lugbook/model/state"
)

// BenchmarkSolve500 solves one cart of more than 500 parts in one state.
func BenchmarkSolve500(b *testing.B) {
	var text strings.Builder
	text.WriteString(motor + "part red reducer-common-negative\nwire r1 sol.L1 red.IN+\nwire r2 red.NEG pack.NEG\nwire r3 key.IGN red.WAKE\n")
	for i := range 160 {
		fmt.Fprintf(&text, "part xf%d fuse-inline\npart xs%d light-switch\npart xl%d lamp-tail\n", i, i, i)
		fmt.Fprintf(&text, "wire xa%d red.OUT+ xf%d.in\nwire xb%d xf%d.out xs%d.IN\nwire xc%d xs%d.OUT xl%d.+\nwire xd%d xl%d.- red.NEG\n", i, i, i, i, i, i, i, i, i, i)
	}
	j, err := mini.Job(text.String())
	require.NoError(b, err)
	n := network.Build(j, &j.Sheets[0], part.Library())
	s, ok := state.Find(n.States(), state.DriveForward)
	require.True(b, ok)
	lit := s.With("lights", "on")
	for b.Loop() {
		_, err := n.Solve(lit)
		require.NoError(b, err)
	}
}
