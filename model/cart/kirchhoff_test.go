package cart_test

import (
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model/cart"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/part"
)

// TestCurrentAndPowerBalanceOnEveryCart holds Kirchhoff's current law at every node, and
// the sum of all powers, to 1e-9 of the largest, on every sheet in every state.
func TestCurrentAndPowerBalanceOnEveryCart(t *testing.T) {
	solved := 0
	for _, name := range cart.Names() {
		job := decoded(t, name).Job
		for i := range job.Sheets {
			n := network.Build(job, &job.Sheets[i], part.Library())
			for _, s := range n.States() {
				solution, err := n.Solve(s)
				if chatter := (*network.ChatterError)(nil); errors.As(err, &chatter) {
					continue
				}
				require.NoError(t, err, "%s %s %s", name, job.Sheets[i].Name, s.Name)
				requireBalance(t, n, solution)
				solved++
			}
		}
	}
	require.Greater(t, solved, 60)
}

func requireBalance(t *testing.T, n *network.Network, s *network.Solution) {
	t.Helper()
	into, most, power, through := make([]float64, n.Size()), 0.0, 0.0, 0.0
	for i := range n.Links() {
		l := &n.Links()[i]
		amps, watts := s.Current(l), s.Power(l)
		into[l.A] -= amps
		into[l.B] += amps
		most = max(most, math.Abs(amps))
		power += watts
		through = max(through, math.Abs(watts))
	}
	for at, amps := range into {
		require.LessOrEqual(t, math.Abs(amps), 1e-9*most, "%s at %s", s.State.Name, n.Point(network.Node(at)))
	}
	require.LessOrEqual(t, math.Abs(power), 1e-9*through, s.State.Name)
}
