package model

import (
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model/basis"
	"example.com/lugbook/model/unit"
)

// A job's own limit stands above its basis, and that above the base table: a fuse may sit 72 in
// along a sheathed battery cable (ABYC E-11 11.10.2.8.1), by the house rule 40 in.
func TestLimitOf(t *testing.T) {
	j := &Job{}
	limit := func() string {
		value, _ := j.LimitOf(basis.FuseOffBattery)
		return value.String()
	}
	require.Equal(t, "72 in", limit())
	require.False(t, j.OwnLimit(basis.FuseOffBattery))
	j.Basis = HouseRule
	require.Equal(t, "40 in", limit())
	require.True(t, j.OwnLimit(basis.FuseOffBattery))
	require.False(t, j.OwnLimit(basis.FuseDistance), "the house has the same")
	j.Limits = []Limit{{Name: basis.FuseOffBattery, Value: unit.Inches(50).Any(), Reason: "the maker's paper"}}
	require.Equal(t, "50 in", limit())
	_, source := j.LimitOf(basis.FuseOffBattery)
	require.Equal(t, "limit of this job: the maker's paper", source)
	none, _ := j.LimitOf("no-such-limit")
	require.True(t, none.IsZero())
}
