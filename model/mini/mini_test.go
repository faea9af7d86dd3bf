package mini_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	"example.com/lugbook/model/mini"
	"example.com/lugbook/model/unit"
)

func TestJobReadsEveryKindOfLine(t *testing.T) {
	j, err := mini.Job(`
		// a comment
		job system=36V title=two_words
		part fu1 fuse-class-t fuse-rating=250A zone=tray condition=corroded
		wire w1 fu1.in cut gauge=2AWG from-lug=5/16_in sheathed
		stack fu1.in w1
		at fu1.in cover=fitted
		run tray bay 0.8m`)
	require.NoError(t, err)
	require.Equal(t, unit.V(36), j.System)
	require.Equal(t, "two words", j.Title)
	s := j.Sheet(model.AsFound)
	require.Equal(t, model.ZoneID("tray"), s.Part("fu1").Zone)
	require.Equal(t, []model.Condition{model.Corroded}, s.Part("fu1").Condition)
	r, ok := s.Part("fu1").Rating("fuse-rating")
	require.True(t, ok)
	require.Equal(t, "250 A", r.Value.String())
	require.Equal(t, mini.Label, r.Source)
	require.True(t, s.Wire("w1").Sheathed)
	require.Equal(t, "5/16 in", s.Wire("w1").FromLug.String())
	require.Equal(t, model.Terminal{At: s.Wire("w1").From.At, Stack: []model.WireID{"w1"}, Cover: model.CoverFitted}, s.Terminals[0])
	run, ok := j.RunLength("bay", "tray")
	require.True(t, ok)
	require.InDelta(t, 0.8, run.Metres(), 1e-9)
	require.Len(t, j.Zones, 2)
}

func TestJobNamesTheLineItCannotRead(t *testing.T) {
	for _, line := range []string{
		"thing x y", "part fu1", "wire w1 a.b", "wire w1 nowhere a.b", "wire w1 a.b nowhere", "wire w1 a.b c.d colour=mauve",
		"part x fuse fuse-rating=lots", "stack here w1", "at here cover=fitted", "at a.b cover=perhaps", "run a b far", "job system=high",
		"no other", "opens other 1A 1s 1s", "opens ok 1A 1s soon", "sheet",
	} {
		_, err := mini.Job("part ok splice\n" + line)
		require.ErrorContains(t, err, line)
	}
}

func TestJobChangesWhatIsThere(t *testing.T) {
	j, err := mini.Job(`
		part fu1 fuse-class-t
		part sp splice
		wire w1 fu1.out sp.1 gauge=2AWG
		stack fu1.out w1
		opens fu1 600A 1s 3s
		sheet plan
		wire w1 fu1.out sp.1 gauge=1AWG
		part fu1 fuse-class-t fuse-rating=200A
		sheet as-built
		no w1
		no sp`)
	require.NoError(t, err)
	require.Len(t, j.Sheets, 3)
	found, plan, built := j.Sheet(model.AsFound), j.Sheet(model.Plan), j.Sheet(model.AsBuilt)
	require.Equal(t, []model.OpenPoint{{At: unit.A(600), Least: unit.S(1), Most: unit.S(3)}}, found.Part("fu1").Opens)
	require.Equal(t, "2 AWG", found.Wire("w1").Gauge.String())
	require.Equal(t, "1 AWG", plan.Wire("w1").Gauge.String())
	require.Len(t, plan.Part("fu1").Ratings, 1)
	require.Nil(t, built.Wire("w1"))
	require.Nil(t, built.Part("sp"))
	require.Empty(t, built.Terminals)
}
