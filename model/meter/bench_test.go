package meter_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	"example.com/lugbook/model/cart"
	"example.com/lugbook/model/jobfile"
	"example.com/lugbook/model/meter"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/part"
)

func shuttle(b *testing.B) *network.Network {
	data, err := cart.Read("marina-shuttle")
	require.NoError(b, err)
	d, problems := jobfile.Decode("marina-shuttle", data, part.Library())
	require.Empty(b, problems)
	return network.Build(d.Job, d.Job.Sheet(model.Plan), part.Library())
}

// BenchmarkTabulate reads every test point of a full cart in every state, tolerances
// included.
func BenchmarkTabulate(b *testing.B) {
	n := shuttle(b)
	for b.Loop() {
		_, err := meter.Tabulate(n, n.States())
		require.NoError(b, err)
	}
}

// BenchmarkTry solves a full cart in every setting of its controls.
func BenchmarkTry(b *testing.B) {
	n := shuttle(b)
	for b.Loop() {
		_, err := meter.Try(n)
		require.NoError(b, err)
	}
}

// BenchmarkVolts is one reading with its tolerance.
func BenchmarkVolts(b *testing.B) {
	n := shuttle(b)
	s := stateOf(b, n, "drive-forward")
	red, black := at(b, "sol.coil+"), at(b, "pack.NEG")
	for b.Loop() {
		_, err := meter.Volts(n, s, red, black)
		require.NoError(b, err)
	}
}
