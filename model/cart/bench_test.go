package cart_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/part"
)

// BenchmarkStatesOfTheBowser solves the plan of the 72 V cart in all its states.
func BenchmarkStatesOfTheBowser(b *testing.B) {
	job := decoded(b, "festival-bowser").Job
	for b.Loop() {
		n := network.Build(job, job.Sheet(model.Plan), part.Library())
		for _, s := range n.States() {
			_, err := n.Solve(s)
			require.NoError(b, err)
		}
	}
}
